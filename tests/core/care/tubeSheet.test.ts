import { describe, expect, it } from 'vitest';
import {
  FLUSH_ML,
  fluidsPerDay,
  TUBE_CAUTION,
  type TubeQuestion,
  type TubeSheet,
  tubeSheet,
} from '../../../src/core/index.ts';
import { day, value } from '../log.ts';

const ON = day('2026-11-25');
const BASE: TubeQuestion = {
  massG: 500,
  massDate: ON,
  on: ON,
  young: false,
  volumeMl: 5,
  slurry: true,
  snoutVentMm: 901,
};
const sheet = (more: Partial<TubeQuestion> = {}): TubeSheet => value(tubeSheet({ ...BASE, ...more }));
const code = (more: Partial<TubeQuestion>): string => {
  const answer = tubeSheet({ ...BASE, ...more });
  return answer.ok ? 'answered' : answer.problem.code;
};

describe('CARE-TUBE: the sheet of one tube feeding', () => {
  it('has volume, syringe, flush, depth for orientation and cap', () => {
    expect(sheet()).toMatchObject({
      ...{ ml: 5, syringeMl: 5, capMl: 10, flushMl: [2, 3], stomachMm: [234, 450] },
      ...{ warnings: [], caution: TUBE_CAUTION },
    });
  });
  it('never shows a depth beyond half the snout-vent length', () => {
    for (const snoutVentMm of [51, 333, 901, 2499]) {
      const [from, to] = sheet({ snoutVentMm }).stomachMm ?? [0, 0];
      expect(from < to && to <= snoutVentMm / 2).toBe(true);
    }
    expect(sheet({ snoutVentMm: undefined }).stomachMm).toBeNull();
  });
  it('flushes after a slurry only', () => {
    expect(sheet({ slurry: false }).flushMl).toBeNull();
    expect(FLUSH_ML).toEqual([2, 3]);
  });
  it('counts the flush towards the cap: a small snake has no room for the usual one', () => {
    expect(sheet({ volumeMl: 7.4 }).flushMl).toEqual([2, 2.6]);
    const small = sheet({ massG: 60, volumeMl: 1 });
    expect(small.flushMl).toBeNull();
    expect(small.warnings.join()).toMatch(/would go over the cap of 1.2 mL: ask the vet/);
  });
  it('says that only trained people feed by tube, and that the vet’s cm rules', () => {
    expect(TUBE_CAUTION).toMatch(/Only people whom the vet has trained/);
    expect(TUBE_CAUTION).toMatch(/depth in cm are the vet’s/);
  });
  it.each<readonly [string, Partial<TubeQuestion>, string]>([
    ['too much', { volumeMl: 10.2 }, 'over-cap'],
    ['no volume', { volumeMl: 0 }, 'not-positive'],
    ['a volume that is no number', { volumeMl: Number.NaN }, 'not-finite'],
    ['no mass', { massG: undefined }, 'unit-missing'],
    ['an old weight', { massDate: day('2026-10-01') }, 'weight-too-old'],
    ['a doubted weight', { flagged: true }, 'weight-flagged'],
    ['a length that no snake has', { snoutVentMm: 40 }, 'length-impossible'],
    ['a length that is no number', { snoutVentMm: Number.NaN }, 'not-finite'],
    ['no syringe that holds it', { syringesMl: [1] }, 'syringe-too-small'],
  ])('is refused for %s', (_name, more, expected) => {
    expect(code(more)).toBe(expected);
  });
  it('takes more than 2 % only with the vet’s cap, and says so', () => {
    expect(sheet({ volumeMl: 12, capPercent: 3 }).warnings.join()).toMatch(/only with the volume that the vet wrote/);
  });
});

describe('the range of fluids', () => {
  it('is a range to compare with and leaves the order to the vet', () => {
    expect(value(fluidsPerDay(1000))).toEqual({
      ml: [10, 30],
      mark: 'S',
      caution: expect.stringMatching(/not an order: the vet/),
    });
    expect(fluidsPerDay(0)).toMatchObject({ problem: { code: 'not-positive' } });
  });
});
