import { createRequire } from 'node:module';
import type { Highs } from 'highs';
import { describe, expect, it } from 'vitest';
import { planModel, planText, type SeasonPlanCase } from '../../src/core/index.ts';
import { seasonOf } from '../core/breeding/seasons.ts';
import { SHARE, soundValue } from './sound.ts';

describe('a middle-sized season', () => {
  const load = createRequire(import.meta.url)('highs') as () => Promise<Highs>;
  /** The whole program in its text form, by a solver of its own without any step of ours; null where nothing is possible. */
  const plainly = async (season: SeasonPlanCase): Promise<number | null> => {
    const options = { output_flag: false, mip_rel_gap: 1e-9, mip_abs_gap: 0 };
    const { Status, ObjectiveValue } = (await load()).solve(planText(planModel(season)), options);
    if (Status !== 'Optimal') expect(Status).toBe('Infeasible');
    return Status === 'Optimal' ? ObjectiveValue : null;
  };
  const tight = { meanKinshipLimit: 0.02, maxMales: 6, capPerMale: 3 };
  it.each([
    ['20 × 8 with a goal', 20, 8, { ...tight, goalMinExpected: [22] }],
    ['20 × 8 with three goals', 20, 8, { ...tight, goalMinExpected: [18, 18, 18] }],
    ['20 × 8 with goals out of reach', 20, 8, { ...tight, goalMinExpected: [30, 30] }],
    ['60 × 12 with a goal', 60, 12, { meanKinshipLimit: 0.02, maxMales: 10, capPerMale: 6, goalMinExpected: [70] }],
    ['60 × 12 with tight caps', 60, 12, { meanKinshipLimit: 0.03, maxMales: 8, capPerMale: 4, goalMinExpected: null }],
  ] as const)('%s has the value that plain HiGHS gives it', async (_what, females, males, limits) => {
    for (const seed of females < 60 ? [1, 2, 3] : [1, 2]) {
      const season = seasonOf(seed, females, males, limits);
      const [value, plain] = [await soundValue(season), await plainly(season)];
      if (plain === null) expect(value).toBeNull();
      else expect(Math.abs((value ?? Number.NaN) / plain - 1)).toBeLessThan(SHARE);
    }
  });
});
