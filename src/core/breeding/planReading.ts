import { ok, type Result, refuse } from '../problems.ts';
import { type SeasonPlanCase, unreachableGoals } from './plan.ts';

/** A plan as it was worked out from the case itself, whoever found it. */
export interface ChosenPlan {
  /** The value of the pairs less what the used males cost. */
  readonly value: number;
  readonly pairs: readonly (readonly [female: number, male: number])[];
  readonly malesUsed: number;
  /** Null where nobody is paired. */
  readonly meanKinship: number | null;
  /** The expected eggs towards each goal, the unreachable ones with 0. */
  readonly expected: readonly number[];
  readonly unreachableGoals: readonly number[];
}

/** A solver's 0 and 1 are this near to it, or they are neither. */
const WHOLE = 1e-5;
/** Sums of decimals that meet a bound exactly may pass it by so much in doubles. */
export const PLAN_TOLERANCE = 1e-8;

/**
 * The plan that a solver's column values stand for (in the order of the model's columns), checked against every bound of the
 * case and valued anew, since no solver is trusted. Errors: `plan-unsound`, naming what does not hold.
 */
export function readPlan(plan: SeasonPlanCase, columnValues: ArrayLike<number>): Result<ChosenPlan> {
  const chosen: number[] = [];
  for (const at of plan.pairs.keys()) {
    const value = columnValues[at] ?? Number.NaN;
    if (!(Math.abs(value - Math.round(value)) <= WHOLE && Math.round(value) >= 0 && Math.round(value) <= 1))
      return refuse('plan-unsound', { why: `pair ${at} is neither chosen nor left: ${value}` });
    if (Math.round(value) === 1) chosen.push(at);
  }
  return weighPlan(plan, chosen);
}

/** The plan of some pairs, given by their places in the case. Errors: `plan-unsound`, naming the bound that does not hold. */
export function weighPlan(plan: SeasonPlanCase, chosen: readonly number[]): Result<ChosenPlan> {
  const pairs = chosen.map((at) => plan.pairs[at]).filter((pair) => pair !== undefined);
  if (pairs.length !== chosen.length) return refuse('plan-unsound', { why: 'a pair is not in the case' });
  const females = counted(pairs.map(([female]) => female));
  const males = counted(pairs.map(([, male]) => male));
  const kinship = pairs.reduce((sum, [, , one]) => sum + one, 0);
  const found: ChosenPlan = {
    value: pairs.reduce((sum, [, , , one]) => sum + one, 0) - plan.maleCost * males.size,
    pairs: pairs.map(([female, male]) => [female, male]),
    malesUsed: males.size,
    meanKinship: pairs.length === 0 ? null : kinship / pairs.length,
    expected: (plan.goalMinExpected ?? []).map((_least, goal) =>
      pairs.reduce((sum, [, , , , goals]) => sum + (goals?.[goal] ?? 0), 0),
    ),
    unreachableGoals: unreachableGoals(plan),
  };
  const why = broken(plan, found, females, males);
  return why === null ? ok(found) : refuse('plan-unsound', { why });
}

function broken(
  plan: SeasonPlanCase,
  found: ChosenPlan,
  females: ReadonlyMap<number, number>,
  males: ReadonlyMap<number, number>,
): string | null {
  for (const [female, times] of females) if (times > 1) return `female ${female} is paired ${times} times`;
  for (const [male, times] of males)
    if (times > plan.capPerMale) return `male ${male} covers ${times} females, at most ${plan.capPerMale}`;
  if (males.size > plan.maxMales) return `${males.size} males are used, at most ${plan.maxMales}`;
  const limit = plan.meanKinshipLimit;
  // The sum and not the mean is compared: the tolerance is then the same however many are paired.
  if (limit !== null && found.meanKinship !== null) {
    const over = (found.meanKinship - limit) * found.pairs.length;
    if (over > PLAN_TOLERANCE) return `the mean kinship is ${found.meanKinship}, at most ${limit}`;
  }
  const short = found.expected.findIndex(
    (eggs, goal) =>
      eggs < (plan.goalMinExpected?.[goal] ?? 0) - PLAN_TOLERANCE && !found.unreachableGoals.includes(goal),
  );
  return short < 0
    ? null
    : `goal ${short} is at ${found.expected[short]} eggs, at least ${plan.goalMinExpected?.[short]} are wanted`;
}

function counted(all: readonly number[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1);
  return counts;
}
