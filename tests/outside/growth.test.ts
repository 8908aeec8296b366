import { describe, expect, it } from 'vitest';
import { bandFor, chooseMeal, speciesOf, weighEveryDays } from '../../src/core/index.ts';
import { day, value } from '../core/log.ts';

type Point = readonly [ageDays: number, massG: number, bandBelowG: number | null, weighDays: number];

function check(name: string, points: readonly Point[]): void {
  const species = speciesOf(name);
  const on = day('2026-03-09');
  it.each(points)(
    'at %d days and %d g it is fed by the band below %s and weighed every %d days',
    (_, massG, below, days) => {
      expect(species && bandFor(species, massG)?.belowG).toBe(below);
      expect(weighEveryDays(species, massG)).toBe(days);
      const asked = { species: name, massG, massDay: on, on, plan: null, lastPrey: [], stock: null, share: 1 };
      const { count, eachG, mealG } = value(chooseMeal(asked));
      const middle = (count * (eachG[0] + eachG[1])) / 2;
      expect(middle >= mealG[0] && middle <= mealG[1]).toBe(true);
    },
  );
}

describe('Barnard, Hollinger and Romaine 1979, Copeia 1979(4): growth of corn snakes (single points, read via Add-my-Pet)', () => {
  check('Pantherophis guttatus', [
    [43, 11.1, 30, 14],
    [188, 72.2, 150, 30],
    [366, 230.6, null, 90],
    [721, 654.2, null, 90],
  ]);
});

describe('Fearn 1996, Litteratura Serpentium 16(4): one carpet python (single points, read via Add-my-Pet)', () => {
  check('Morelia spilota', [
    [0, 31.8, 200, 14],
    [93, 158.9, 200, 14],
    [155, 481.1, null, 90],
    [364, 3100.1, null, 90],
  ]);
});
