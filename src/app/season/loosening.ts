import { ok, type Result, type SeasonPlanCase } from '../../core/index.ts';
import type { PlanAnswer } from '../../solver/index.ts';

/** One limit that alone stands in the way, and what would be possible without it. */
export type Loosening =
  | { readonly limit: 'kinship'; readonly possible: number }
  | { readonly limit: 'cap'; readonly possible: number }
  | { readonly limit: 'males'; readonly possible: number }
  | { readonly limit: 'goal'; readonly goal: number; readonly possible: number };

/** Solves a case, somewhere else. */
export type Solve = (plan: SeasonPlanCase) => Promise<Result<PlanAnswer>>;

/**
 * Which limits of a case without a plan bind: those of which a single one, loosened, lets a plan be. `possible` is what it
 * would have to be loosened to: the mean kinship, females of a male, males, or the most eggs of that goal beside all other
 * limits. Empty where several have to be loosened together. Errors of the solver.
 */
export async function loosenings(plan: SeasonPlanCase, solve: Solve): Promise<Result<readonly Loosening[]>> {
  const found: Loosening[] = [];
  for (const { looser, read } of trials(plan)) {
    const answer = await solve(looser);
    if (!answer.ok) return answer;
    if (answer.value.plan !== null) found.push(read(answer.value.plan, looser));
  }
  return ok(found);
}

type Plan = NonNullable<PlanAnswer['plan']>;

interface Trial {
  readonly looser: SeasonPlanCase;
  read(plan: Plan, looser: SeasonPlanCase): Loosening;
}

function trials(plan: SeasonPlanCase): readonly Trial[] {
  const { meanKinshipLimit, goalMinExpected, maxMales, males, capPerMale, females } = plan;
  const kinship: Trial = {
    // The nearest kin count least, so that what is found lies as low as the goals let it.
    looser: { ...plan, meanKinshipLimit: null, maleCost: 0, pairs: plan.pairs.map(worthByKinship) },
    read: (one) => ({ limit: 'kinship', possible: one.meanKinship ?? 0 }),
  };
  const cap: Trial = {
    looser: { ...plan, capPerMale: females },
    read: (one) => ({ limit: 'cap', possible: mostOfOneMale(one) }),
  };
  const most: Trial = {
    looser: { ...plan, maxMales: males },
    read: (one) => ({ limit: 'males', possible: one.malesUsed }),
  };
  const goals = (goalMinExpected ?? []).map(
    (_least, goal): Trial => ({
      looser: {
        ...plan,
        maleCost: 0,
        goalMinExpected: (goalMinExpected ?? []).map((least, at) => (at === goal ? 0 : least)),
        pairs: plan.pairs.map(([female, male, kin, , eggs]) => [female, male, kin, eggs?.[goal] ?? 0, eggs]),
      },
      read: (one) => ({ limit: 'goal', goal, possible: one.expected[goal] ?? 0 }),
    }),
  );
  return [
    ...(meanKinshipLimit === null ? [] : [kinship]),
    ...(capPerMale < females ? [cap] : []),
    ...(maxMales < males ? [most] : []),
    ...goals,
  ];
}

function worthByKinship([
  female,
  male,
  kinship,
  ,
  goals,
]: SeasonPlanCase['pairs'][number]): SeasonPlanCase['pairs'][number] {
  return [female, male, kinship, 1 - kinship, goals];
}

function mostOfOneMale({ pairs }: Plan): number {
  const counts = new Map<number, number>();
  for (const [, male] of pairs) counts.set(male, (counts.get(male) ?? 0) + 1);
  return Math.max(0, ...counts.values());
}
