import type { PlanPair, SeasonPlanCase } from '../../../src/core/index.ts';

/** A source of numbers from 0 to 1 that gives the same ones for the same seed (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A season in figures of few digits, as a site would have it; whatever is not said is drawn. */
export function seasonOf(
  seed: number,
  females: number,
  males: number,
  limits: Partial<SeasonPlanCase> = {},
): SeasonPlanCase {
  const random = seeded(seed);
  const figure = (most: number, digits: number): number => Number((random() * most).toFixed(digits));
  const goals = limits.goalMinExpected === null ? 0 : (limits.goalMinExpected?.length ?? 1);
  const pairs: PlanPair[] = [];
  for (let female = 0; female < females; female++) {
    for (let male = 0; male < males; male++) {
      const [isListed, kinship, value] = [random() < 0.8, figure(0.12, 4), 1 + figure(59, 3)];
      const eggs = Array.from({ length: goals }, () => figure(2, 3));
      if (isListed) pairs.push([female, male, kinship, Number(value.toFixed(3)), goals === 0 ? null : eggs]);
    }
  }
  return {
    females,
    males,
    capPerMale: 2,
    maxMales: males,
    maleCost: 3,
    meanKinshipLimit: 0.05,
    goalMinExpected: goals === 0 ? null : [1.5],
    pairs,
    ...limits,
  };
}

/** 200 females and 40 males, where the bound on kinship and the goal both hold the plan back. */
export function largeSeason(seed: number): SeasonPlanCase {
  return seasonOf(seed, 200, 40, { capPerMale: 8, maxMales: 30, meanKinshipLimit: 0.02, goalMinExpected: [250] });
}

/** The best value of a small season by trying every plan there is; null where none keeps to the bounds. */
export function bestByTrial(plan: SeasonPlanCase): number | null {
  const goals = plan.goalMinExpected ?? [];
  const open = goals.flatMap((_least, goal) => (plan.pairs.some((pair) => (pair[4]?.[goal] ?? 0) > 0) ? [goal] : []));
  const choices = Array.from({ length: plan.females }, (_none, female) => [
    null,
    ...plan.pairs.filter((pair) => pair[0] === female),
  ]);
  let best: number | null = null;
  const walk = (female: number, chosen: readonly PlanPair[]): void => {
    for (const choice of choices[female] ?? []) walk(female + 1, choice === null ? chosen : [...chosen, choice]);
    if (female < plan.females) return;
    const males = new Map<number, number>();
    for (const [, male] of chosen) males.set(male, (males.get(male) ?? 0) + 1);
    const sum = (of: (pair: PlanPair) => number): number => chosen.reduce((all, pair) => all + of(pair), 0);
    const limit = plan.meanKinshipLimit;
    if ([...males.values()].some((times) => times > plan.capPerMale) || males.size > plan.maxMales) return;
    if (limit !== null && sum((pair) => pair[2] - limit) > 1e-9) return;
    if (open.some((goal) => sum((pair) => pair[4]?.[goal] ?? 0) < (goals[goal] ?? 0) - 1e-9)) return;
    const value = sum((pair) => pair[3]) - plan.maleCost * males.size;
    if (best === null || value > best) best = value;
  };
  walk(0, []);
  return best;
}
