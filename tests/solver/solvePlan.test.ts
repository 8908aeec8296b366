import { createRequire } from 'node:module';
import type { Highs } from 'highs';
import { describe, expect, it } from 'vitest';
import { planModel, planText, readPlan, type SeasonPlanCase } from '../../src/core/index.ts';
import { type PlanAnswer, type PlanProgress, solvePlan } from '../../src/solver/index.ts';
import { bestByTrial, largeSeason, seasonOf } from '../core/breeding/seasons.ts';

const solved = async (plan: SeasonPlanCase, options = {}): Promise<PlanAnswer> => {
  const answer = await solvePlan(plan, options);
  if (!answer.ok) throw new Error(answer.problem.message);
  return answer.value;
};
const SEEDS = Array.from({ length: 40 }, (_none, seed) => seed);

describe('a small season', () => {
  /** Each kind with what must turn up among its seeds, so that none of them is tried in vain. */
  const kinds: readonly [string, Partial<SeasonPlanCase>, readonly PlanAnswer['status'][]][] = [
    ['as usual', {}, ['optimal']],
    ['without a bound on kinship', { meanKinshipLimit: null }, ['optimal']],
    ['without goals', { goalMinExpected: null }, ['optimal']],
    ['with goals that are hard to meet', { goalMinExpected: [3.5, 5] }, ['optimal', 'infeasible']],
    ['with near kin only', { meanKinshipLimit: 0.012, goalMinExpected: [2] }, ['optimal', 'infeasible']],
    ['with one male to use', { maxMales: 1, capPerMale: 3 }, ['optimal', 'infeasible']],
    ['with males that cost more than most pairs bring', { maleCost: 60 }, ['optimal']],
    ['with males that are paid for', { maleCost: -10, goalMinExpected: null }, ['optimal']],
    ['with no male to use', { maxMales: 0, goalMinExpected: null }, ['optimal']],
  ];
  it.each(kinds)('%s: the best of all plans there are', async (_what, limits, statuses) => {
    const found = new Set<PlanAnswer['status']>();
    for (const seed of SEEDS) {
      const season = seasonOf(seed, 1 + (seed % 6), 1 + (seed % 4), limits);
      const answer = await solved(season);
      const best = bestByTrial(season);
      expect([seed, answer.status]).toEqual([seed, best === null ? 'infeasible' : 'optimal']);
      if (best !== null) expect(answer.plan?.value, `seed ${seed}`).toBeCloseTo(best, 6);
      found.add(answer.status);
    }
    for (const status of statuses) expect(found).toContain(status);
  });
  it('names a goal that no pair gives eggs towards, and plans without it', async () => {
    const season = seasonOf(3, 5, 3, { goalMinExpected: [1, 2] });
    const pairs = season.pairs.map(
      ([f, m, kinship, value, goals]) => [f, m, kinship, value, [goals?.[0] ?? 0, 0]] as const,
    );
    const answer = await solved({ ...season, pairs });
    expect(answer).toMatchObject({ status: 'optimal', unreachableGoals: [1], gap: 0 });
    expect(answer.plan?.value).toBeCloseTo(bestByTrial({ ...season, pairs }) ?? Number.NaN, 6);
  });
  it('without pairs is an empty plan', async () => {
    const answer = await solved(seasonOf(1, 2, 2, { pairs: [] }));
    expect(answer).toMatchObject({ status: 'optimal', plan: { value: 0, pairs: [] }, unreachableGoals: [0] });
  });
  it('keeps its digits in very large and very small units', async () => {
    for (const unit of [1e-7, 1e9]) {
      const season = seasonOf(11, 6, 4);
      const pairs = season.pairs.map(([f, m, kinship, value, goals]) => [f, m, kinship, value * unit, goals] as const);
      const scaled = { ...season, maleCost: season.maleCost * unit, pairs };
      const value = (await solved(scaled)).plan?.value ?? Number.NaN;
      expect(value / unit).toBeCloseTo(bestByTrial(season) ?? Number.NaN, 6);
    }
  });
  it('that does not hold together is refused before anything is loaded', async () => {
    expect(await solvePlan(seasonOf(1, 2, 2, { capPerMale: -1 }))).toMatchObject({ problem: { code: 'plan-case' } });
  });
});

describe('a season of 200 females and 40 males', () => {
  it('is proven, with the bounds on kinship and eggs both holding it back', async () => {
    const heard: PlanProgress[] = [];
    const answer = await solved(largeSeason(5), { onProgress: (progress: PlanProgress) => heard.push(progress) });
    expect(answer).toMatchObject({ status: 'optimal', gap: 0, plan: { malesUsed: 30 } });
    expect(answer.plan?.meanKinship).toBeGreaterThan(0.0199);
    expect(answer.plan?.expected[0]).toBeLessThan(250.5);
    const values = heard.flatMap(({ best }) => best?.value ?? []);
    expect(values.length).toBeGreaterThan(0);
    expect(values).toEqual([...values].sort((a, b) => a - b));
    expect(Math.max(...values)).toBeLessThanOrEqual((answer.plan?.value ?? 0) + 1e-9);
    for (const { bound } of heard) expect(bound).toBeGreaterThanOrEqual((answer.plan?.value ?? 0) - 1e-6);
  });
  it('stopped before it has begun has no plan, and stopped later a sound one with its gap', async () => {
    expect(await solved(largeSeason(3), { timeLimitSeconds: 0 })).toMatchObject({
      status: 'stopped',
      plan: null,
      gap: null,
    });
    const seasons = largeSeason(3);
    const later = await firstStoppedWithPlan(seasons);
    const best = (await solved(seasons)).plan?.value ?? 0;
    expect(later.status).toBe(later.gap === 0 ? 'optimal' : 'stopped');
    expect(later.plan?.value).toBeLessThanOrEqual(best + 1e-6);
    expect(later.bound).toBeGreaterThanOrEqual(best - 1e-6);
  });
});

/** Stops after ever longer times until a plan was found by then; how fast the machine is does not matter. */
async function firstStoppedWithPlan(season: SeasonPlanCase): Promise<PlanAnswer> {
  for (let timeLimitSeconds = 0.05; ; timeLimitSeconds *= 1.3) {
    const answer = await solved(season, { timeLimitSeconds });
    if (answer.plan !== null) return answer;
  }
}

describe('the open text form', () => {
  it('means the same to a reader of its own', async () => {
    const load = createRequire(import.meta.url)('highs') as () => Promise<Highs>;
    const highs = await load();
    for (const seed of SEEDS.slice(0, 10)) {
      const season = seasonOf(seed, 6, 4, { goalMinExpected: [4] });
      const model = planModel(season);
      const { Status, ObjectiveValue, Columns } = highs.solve(planText(model), { output_flag: false });
      const best = bestByTrial(season);
      expect(Status).toBe(best === null ? 'Infeasible' : 'Optimal');
      if (best === null) continue;
      expect(ObjectiveValue).toBeCloseTo(best, 6);
      const columns = model.columns.map(({ name }) => Columns[name]);
      const values = columns.map((column) => (column !== undefined && 'Primal' in column ? column.Primal : Number.NaN));
      const read = readPlan(season, values);
      expect(read.ok && read.value.value).toBeCloseTo(best, 6);
    }
  });
});
