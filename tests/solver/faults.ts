import type { SeasonPlanCase } from '../../src/core/index.ts';

/** What core takes as met in doubles, as the contract's sums of decimals need it. */
const MET = 1e-8;

/**
 * Everything a plan does against its case, worked out from the contract's own sentences and with nothing of core's: an empty list is
 * a sound plan with the value it claims.
 */
export function faultsOf(
  season: SeasonPlanCase,
  chosen: readonly (readonly [number, number])[],
  claimed: number,
): string[] {
  const faults: string[] = [];
  const listed = new Map(season.pairs.map((pair) => [`${pair[0]}/${pair[1]}`, pair]));
  const [females, males] = [new Set<number>(), new Map<number, number>()];
  let [value, kinship] = [0, 0];
  const eggs = (season.goalMinExpected ?? []).map(() => 0);
  for (const [female, male] of chosen) {
    const pair = listed.get(`${female}/${male}`);
    if (pair === undefined) faults.push(`${female}/${male} is not listed`);
    if (females.has(female)) faults.push(`female ${female} twice`);
    females.add(female);
    males.set(male, (males.get(male) ?? 0) + 1);
    value += pair?.[3] ?? 0;
    kinship += pair?.[2] ?? 0;
    for (const goal of eggs.keys()) eggs[goal] = (eggs[goal] ?? 0) + (pair?.[4]?.[goal] ?? 0);
  }
  for (const [male, times] of males) if (times > season.capPerMale) faults.push(`male ${male} ${times} times`);
  if (males.size > season.maxMales) faults.push(`${males.size} males`);
  const limit = season.meanKinshipLimit;
  if (limit !== null && kinship > limit * chosen.length + MET) faults.push(`kinship ${kinship} of ${chosen.length}`);
  for (const [goal, least] of (season.goalMinExpected ?? []).entries()) {
    const isReachable = season.pairs.some((pair) => (pair[4]?.[goal] ?? 0) > 0);
    if (isReachable && (eggs[goal] ?? 0) < least - MET) faults.push(`goal ${goal} has ${eggs[goal]} of ${least}`);
  }
  value -= season.maleCost * males.size;
  if (Math.abs(value - claimed) > 1e-6 * Math.max(1, Math.abs(value))) faults.push(`worth ${value}, said ${claimed}`);
  return faults;
}
