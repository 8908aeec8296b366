import type { Day, NewPlan, PlannedPair } from '../../core/index.ts';
import { chosenPairs } from './planWords.ts';
import type { PlanMade } from './usePlan.ts';

/** What of a plan that was worked out is kept when it is accepted: its pairs, for what and within which limits. */
export function newPlanOf(plan: PlanMade, from: Day): NewPlan {
  const { asked, answer } = plan;
  const { goals, limits, eggs } = asked.setting;
  const { capPerMale, maxMales, meanKinshipLimit, maleCost } = limits;
  return {
    species: asked.herd.species,
    from,
    eggs,
    basis: asked.basis,
    goals: goals.map(({ words, leastEggs, weight }) => ({ words, least: leastEggs, weight })),
    limits: { capPerMale, maxMales, meanKinship: meanKinshipLimit, maleCost },
    gap: answer.status === 'optimal' ? 0 : answer.gap,
    pairs: chosenPairs(plan).map(({ sire, dam, figures }) => ({ female: dam, male: sire, ...figures })),
  };
}

/** Whether two plans pair the same animals. */
export function isSamePairs(some: readonly PlannedPair[], others: readonly PlannedPair[]): boolean {
  const keys = (pairs: readonly PlannedPair[]): string =>
    pairs
      .map(({ female, male }) => `${female}${male}`)
      .sort()
      .join();
  return keys(some) === keys(others);
}
