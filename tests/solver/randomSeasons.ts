import fc from 'fast-check';
import type { PlanPair, SeasonPlanCase } from '../../src/core/index.ts';

/** Few figures, so that ties, pairs worth nothing or less, and bounds that are met exactly turn up often. */
const VALUES = [-2, 0, 0, 1, 3, 3, 7.5, 7.51, 12.125];
const KINSHIPS = [0, 0, 0.0156, 0.03, 0.0625, 0.125, 0.25];
const EGGS = [0, 0, 1, 1.5, 2.25];

/** Small seasons of every kind: no males, caps of 0, all pairs too near in kin, goals out of reach or that nobody gives to. */
export const smallSeasons: fc.Arbitrary<SeasonPlanCase> = fc
  .record({
    females: fc.integer({ min: 1, max: 5 }),
    males: fc.integer({ min: 0, max: 4 }),
    capPerMale: fc.integer({ min: 0, max: 3 }),
    maxMales: fc.integer({ min: 0, max: 4 }),
    maleCost: fc.constantFrom(-2, 0, 0, 1, 2.5, 9),
    meanKinshipLimit: fc.constantFrom(null, 0, 0.0156, 0.05, 0.1),
    goalMinExpected: fc.option(fc.array(fc.constantFrom(0, 1, 2.5, 3, 6), { maxLength: 3 })),
  })
  .chain((season) => pairsOf(season).map((pairs) => ({ ...season, pairs })));

function pairsOf(season: Omit<SeasonPlanCase, 'pairs'>): fc.Arbitrary<PlanPair[]> {
  const goals = season.goalMinExpected?.length ?? 0;
  const eggs = fc.option(fc.array(fc.constantFrom(...EGGS), { minLength: goals, maxLength: goals }), { freq: 6 });
  const places = Array.from({ length: season.females * season.males }, (_none, at) => at);
  const pair = (at: number): fc.Arbitrary<PlanPair> =>
    fc.tuple(
      fc.constant(Math.floor(at / season.males)),
      fc.constant(at % season.males),
      fc.constantFrom(...KINSHIPS),
      fc.constantFrom(...VALUES),
      season.goalMinExpected === null ? fc.constant(null) : eggs,
    );
  return fc.subarray(places).chain((listed) => fc.tuple(...listed.map(pair)));
}
