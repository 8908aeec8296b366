import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { planModel, readPlan, type SeasonPlanCase } from '../../src/core/index.ts';
import { startClock } from '../../src/solver/clock.ts';
import { searchKernel } from '../../src/solver/kernelSearch.ts';
import { type Relaxed, relax } from '../../src/solver/relaxation.ts';
import { loadSolver } from '../../src/solver/runtime.ts';
import { bestByTrial, seasonOf } from '../core/breeding/seasons.ts';
import { smallSeasons } from './randomSeasons.ts';
import { soundValue } from './sound.ts';

const RUNS = 400;
let highs: Highs;
beforeAll(async () => {
  highs = await loadSolver();
});

describe('any small season', () => {
  it('has the value of the best of all plans there are, or none where none keeps to the bounds', async () => {
    const met = new Set<string>();
    await fc.assert(
      fc.asyncProperty(smallSeasons, async (season) => {
        const [value, best] = [await soundValue(season), bestByTrial(season)];
        met.add(best === null ? 'infeasible' : best === 0 ? 'nothing' : best < 0 ? 'loss' : 'gain');
        if (best === null) expect(value).toBeNull();
        else expect(value).toBeCloseTo(best, 6);
      }),
      { numRuns: RUNS },
    );
    expect([...met].sort()).toEqual(['gain', 'infeasible', 'loss', 'nothing']);
  });
  it('is found by the search of our own alone, which either gets through to the best plan or says that it did not', () => {
    let [through, tried] = [0, 0];
    fc.assert(
      fc.property(smallSeasons, (season) => {
        const model = planModel(season);
        const relaxed = model.columns.length === 0 ? null : relax(highs, model, startClock(60));
        if (relaxed?.kind !== 'relaxed') return;
        const { closed, value } = kernelAlone(season, relaxed);
        tried += 1;
        if (closed !== 'done') return;
        through += 1;
        expect(value).toBeCloseTo(bestByTrial(season) ?? Number.NEGATIVE_INFINITY, 6);
      }),
      { numRuns: RUNS },
    );
    expect(through).toBeGreaterThan(0.95 * tried);
  });
  it.each([
    ['no males', { males: 0, pairs: [] }],
    ['a cap of 0', { capPerMale: 0, goalMinExpected: null }],
    ['no male that may be used', { maxMales: 0, goalMinExpected: null }],
    ['all pairs too near in kin', { meanKinshipLimit: 0, goalMinExpected: null }],
  ] as const)('with %s leaves everybody unpaired', async (_what, limits) => {
    const season = seasonOf(7, 5, 3, limits);
    const near = { ...season, pairs: season.pairs.filter(([, , kinship]) => kinship > 0) };
    expect(await soundValue(near)).toBe(0);
  });
  it('with a goal and no pair near enough is infeasible', async () => {
    const season = seasonOf(7, 5, 3, { meanKinshipLimit: 0 });
    expect(await soundValue({ ...season, pairs: season.pairs.filter(([, , kinship]) => kinship > 0) })).toBeNull();
  });
  it('with nothing but ties is solved', async () => {
    const season = seasonOf(5, 6, 4);
    const pairs = season.pairs.map(([female, male, , , goals]) => [female, male, 0.02, 5, goals] as const);
    expect(await soundValue({ ...season, pairs })).toBeCloseTo(bestByTrial({ ...season, pairs }) ?? Number.NaN, 6);
  });
  it('with values far apart loses no small one beside a large one', async () => {
    const season = seasonOf(5, 4, 3, { maleCost: 0, goalMinExpected: null, meanKinshipLimit: 0.05 });
    const pairs = season.pairs.map(([f, m], at) => [f, m, at === 0 ? 0.9 : 0, at === 0 ? 5 : 1e-9, null] as const);
    expect(await soundValue({ ...season, pairs })).toBe(bestByTrial({ ...season, pairs }));
  });
});

/** What the search of our own comes to with every column open and no other plan to begin with; `judge` values its plans. */
function kernelAlone(
  season: SeasonPlanCase,
  relaxed: Relaxed,
  judge = (columns: Float64Array): number | null => {
    const read = readPlan(season, columns);
    return read.ok ? read.value.value : null;
  },
): { closed: string; value: number } {
  let value = Number.NEGATIVE_INFINITY;
  const closed = searchKernel('best', Number.POSITIVE_INFINITY, {
    model: planModel(season),
    pairs: season.pairs.length,
    relaxed,
    best: Number.NEGATIVE_INFINITY,
    isOver: () => false,
    take: (columns) => {
      const judged = judge(columns);
      value = Math.max(value, judged ?? value);
      return judged;
    },
    bound: () => undefined,
  });
  return { closed, value };
}

describe('the search of our own', () => {
  const season = seasonOf(3, 20, 8, { capPerMale: 3, maxMales: 6, meanKinshipLimit: 0.02, goalMinExpected: [22] });
  const known = (): Relaxed => {
    const relaxed = relax(highs, planModel(season), startClock(60));
    if (relaxed.kind !== 'relaxed') throw new Error(relaxed.kind);
    return relaxed;
  };
  it('gives up where the relaxation says another value than its own', () => {
    expect(kernelAlone(season, known()).closed).toBe('done');
    for (const by of [-5, 5]) {
      const wrong = { ...known(), bound: known().bound + by };
      expect(kernelAlone(season, wrong).closed).toBe('given-up');
    }
  });
  it('gives up where its plans are none', () => {
    let told = 0;
    const { closed } = kernelAlone(season, known(), () => {
      told += 1;
      return null;
    });
    expect([closed, told]).toEqual(['given-up', 1]);
  });
});
