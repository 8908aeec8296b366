import type { AnimalRecord } from '../animal/index.ts';
import { AFTER_REFUSAL_DAYS } from '../care/index.ts';
import { dayNumber } from '../days.ts';
import type { Acceptance } from './acceptance.ts';
import { type Gaps, type Rhythm, weekShares } from './renewal.ts';

/** Rule CARE-NEED: every day of the plan's range alike counts as so many meals against the site's own gaps (ours). */
export const TIMING_MEALS = 8;
/** Rule CARE-NEED: a gap that ends later than this after the range was a hold or a holiday, and says nothing of the habit (ours). */
export const LATE_DAYS = 7;

/** When in the plan's days a site offers: after a meal by plan, and after a refusal. */
export interface Timing {
  readonly afterMeal: (plan: Plan) => Gaps;
  readonly afterRefusal: Gaps;
}

type Plan = readonly [number, number];

/** One animal with the days between its meals. */
export interface Planned {
  readonly animal: AnimalRecord;
  readonly everyDays: Plan;
}

/** What the offers of all animals of a plan say about the day of the range on which they are made. */
export function timingOf(all: readonly Planned[]): Timing {
  const meals = new Map<number, Tally>();
  const refusals = tally(AFTER_REFUSAL_DAYS);
  for (const { animal, everyDays } of all) {
    const ofPlan = meals.get(planKey(everyDays)) ?? tally(everyDays);
    meals.set(planKey(everyDays), ofPlan);
    countGaps(animal, ofPlan, refusals);
  }
  const known = new Map([...meals].map(([key, one]) => [key, gapsOf(one)]));
  return {
    afterMeal: (plan) => known.get(planKey(plan)) ?? gapsOf(tally(plan)),
    afterRefusal: gapsOf(refusals),
  };
}

interface Tally {
  readonly first: number;
  readonly weights: Float64Array;
}

/** A plan has no more than 400 days. */
function planKey([low, high]: Plan): number {
  return low * 512 + high;
}

function tally([low, high]: Plan): Tally {
  const weights = new Float64Array(high - low + 1 + LATE_DAYS);
  weights.fill(TIMING_MEALS / (high - low + 1), 0, high - low + 1);
  return { first: low, weights };
}

function countGaps({ offers }: AnimalRecord, meals: Tally, refusals: Tally): void {
  let after: Tally | null = null;
  let before = 0;
  for (const { day, taken } of offers) {
    const number = dayNumber(day);
    if (after !== null) countGap(after, number - before);
    after = taken ? meals : refusals;
    before = number;
  }
}

function countGap({ first, weights }: Tally, days: number): void {
  const at = days - first;
  if (at >= 0 && at < weights.length) weights[at] = (weights[at] ?? 0) + 1;
}

function gapsOf({ first, weights }: Tally): Gaps {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const last = weights.findLastIndex((weight) => weight > 0);
  return { first, chances: weights.slice(0, last + 1).map((weight) => weight / all) };
}

/**
 * A meal that was taken is followed after the plan's days, one that was refused after those of CARE-REFUSAL. The two
 * chances have the mean, the spread and the skew of what is known of the animal (Gauss quadrature with two nodes).
 */
export function rhythmOf({ yes, no }: Pick<Acceptance, 'yes' | 'no'>, afterTaken: Gaps, afterRefused: Gaps): Rhythm {
  const ways = twoChances(yes, no).map(({ weight, chance }) => {
    const gaps = mixed(afterTaken, chance, afterRefused, 1 - chance);
    return { weight, gaps, ofWeek: weekShares(gaps) };
  });
  return { afterTaken, afterRefused, ways };
}

/** Two chances with the first three moments of a beta distribution; both lie above 0 and below 1. */
export function twoChances(yes: number, no: number): readonly { readonly weight: number; readonly chance: number }[] {
  const all = yes + no;
  const spread = Math.sqrt((yes * no) / (all * all * (all + 1)));
  const skew = (2 * (no - yes) * Math.sqrt(all + 1)) / ((all + 2) * Math.sqrt(yes * no));
  const half = Math.sqrt(1 + (skew * skew) / 4);
  return [
    { chance: yes / all + spread * (skew / 2 + half), weight: (half - skew / 2) / (2 * half) },
    { chance: yes / all + spread * (skew / 2 - half), weight: (half + skew / 2) / (2 * half) },
  ];
}

function mixed(a: Gaps, shareOfA: number, b: Gaps, shareOfB: number): Gaps {
  const first = Math.min(a.first, b.first);
  const chances = new Float64Array(Math.max(a.first + a.chances.length, b.first + b.chances.length) - first);
  for (const [gaps, share] of [
    [a, shareOfA],
    [b, shareOfB],
  ] as const)
    for (const [at, chance] of gaps.chances.entries())
      chances[gaps.first - first + at] = (chances[gaps.first - first + at] ?? 0) + share * chance;
  return { first, chances };
}
