import { ok, type Problem, problem, type Result } from '../problems.ts';

/**
 * A female and a male that could be paired: their places in the season's lists (from 0), their kinship, what the pairing is
 * worth, and how many eggs it is expected to give towards each goal (null: towards none).
 */
export type PlanPair = readonly [
  female: number,
  male: number,
  kinship: number,
  value: number,
  goals: readonly number[] | null,
];

/** What a season is planned from. Nobody is paired who does not stand in `pairs`; value and cost are in one unit of the site's own. */
export interface SeasonPlanCase {
  readonly females: number;
  readonly males: number;
  /** How many females a male covers at most. */
  readonly capPerMale: number;
  /** How many males are used at most. */
  readonly maxMales: number;
  /** What each male costs that is used at all. */
  readonly maleCost: number;
  /** The mean kinship of the chosen pairs lies at or below it; null: no bound. */
  readonly meanKinshipLimit: number | null;
  /** How many eggs are expected at least towards each goal; null: no goals. */
  readonly goalMinExpected: readonly number[] | null;
  readonly pairs: readonly PlanPair[];
}

/** No site has so many possible pairs; a case beyond it is a mistake. */
export const MOST_PLAN_PAIRS = 100_000;

/** Checks that a case holds together. Errors: `plan-case` at the path of what is wrong, `plan-too-large`. */
export function checkPlan(plan: SeasonPlanCase): Result<SeasonPlanCase> {
  if (plan.pairs.length > MOST_PLAN_PAIRS)
    return {
      ok: false,
      problem: problem('plan-too-large', { pairs: plan.pairs.length, most: MOST_PLAN_PAIRS }, 'pairs'),
    };
  const fault = figureFault(plan) ?? pairsFault(plan);
  return fault === null ? ok(plan) : { ok: false, problem: fault };
}

function figureFault(plan: SeasonPlanCase): Problem | null {
  for (const name of ['females', 'males', 'capPerMale', 'maxMales'] as const) {
    if (!Number.isSafeInteger(plan[name]) || plan[name] < 0)
      return wrong(name, plan[name], 'a whole number from 0 is wanted');
  }
  if (!Number.isFinite(plan.maleCost)) return wrong('maleCost', plan.maleCost, 'a number is wanted');
  const limit = plan.meanKinshipLimit;
  if (limit !== null && !Number.isFinite(limit)) return wrong('meanKinshipLimit', limit, 'a number or null is wanted');
  const at = (plan.goalMinExpected ?? []).findIndex((least) => !isCount(least));
  return at < 0 ? null : wrong(`goalMinExpected.${at}`, plan.goalMinExpected?.[at], 'a number from 0 is wanted');
}

function pairsFault(plan: SeasonPlanCase): Problem | null {
  const known = new Map<number, number>();
  for (const [at, pair] of plan.pairs.entries()) {
    const fault = pairFault(plan, pair, `pairs.${at}`);
    if (fault !== null) return fault;
    const [female, male] = pair;
    const key = female * plan.males + male;
    const before = known.get(key);
    if (before !== undefined)
      return wrong(`pairs.${at}`, `[${female}, ${male}]`, `this pair stands at pairs.${before} already`);
    known.set(key, at);
  }
  return null;
}

function pairFault(
  plan: SeasonPlanCase,
  [female, male, kinship, value, goals]: PlanPair,
  path: string,
): Problem | null {
  if (!isPlace(female, plan.females)) return wrong(`${path}.0`, female, `${saysPlaces('female', plan.females)} wanted`);
  if (!isPlace(male, plan.males)) return wrong(`${path}.1`, male, `${saysPlaces('male', plan.males)} wanted`);
  if (!(kinship >= 0 && kinship <= 1)) return wrong(`${path}.2`, kinship, 'a kinship from 0 to 1 is wanted');
  if (!Number.isFinite(value)) return wrong(`${path}.3`, value, 'a number is wanted');
  if (plan.goalMinExpected === null || goals === null) return null;
  const count = plan.goalMinExpected.length;
  if (goals.length !== count)
    return wrong(`${path}.4`, `${goals.length} figures`, `${count} are wanted, one for each goal`);
  const odd = goals.findIndex((eggs) => !isCount(eggs));
  return odd < 0 ? null : wrong(`${path}.4.${odd}`, goals[odd], 'a number of eggs from 0 is wanted');
}

function isPlace(at: number, count: number): boolean {
  return Number.isSafeInteger(at) && at >= 0 && at < count;
}

function isCount(value: number): boolean {
  return Number.isFinite(value) && value >= 0;
}

function saysPlaces(who: string, count: number): string {
  return count === 0 ? `there is no ${who}, so no pair is` : `a ${who} from 0 to ${count - 1} is`;
}

function wrong(path: string, found: unknown, why: string): Problem {
  return problem('plan-case', { found: String(found), why: `${path}: ${why}` }, path);
}

/** The goals that no listed pair contributes to: they are named and left out, since no plan can reach them. */
export function unreachableGoals({ goalMinExpected, pairs }: SeasonPlanCase): readonly number[] {
  return (goalMinExpected ?? []).flatMap((_least, goal) =>
    pairs.some(([, , , , goals]) => (goals?.[goal] ?? 0) > 0) ? [] : [goal],
  );
}
