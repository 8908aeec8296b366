import { type AnimalRecord, lastWeight } from '../animal/index.ts';
import { addDays, type Day, daysBetween, laterDay, sayDay, sayDayShort, sayDistance } from '../days.ts';
import { ok, type Result } from '../problems.ts';
import { type Hold, holdsOn, needsVet, restEnds } from './holds.ts';
import { type FeedPlan, feedPlan } from './plan.ts';

/** `soon`: not yet; `due`: inside the plan's days; `overdue`: past them; `hold`: not to be fed; `vet`: not without a vet's word. */
export type DueState = 'soon' | 'due' | 'overdue' | 'hold' | 'vet';

/** When an animal is to be fed next, and why. */
export interface Due {
  readonly state: DueState;
  /** The first day of the plan's window; null where nobody can say. */
  readonly next: Day | null;
  /** The last day of the window; the day after is overdue. */
  readonly last: Day | null;
  readonly hold: { readonly reason: string; readonly until: Day | null } | null;
  readonly holds: readonly Hold[];
  readonly why: readonly string[];
}

/** Rule CARE-REFUSAL: after a refusal prey is offered again in 4–7 days (common practice, no source). */
export const AFTER_REFUSAL_DAYS = [4, 7] as const;
/** Rule CARE-LAYING: after laying, a small meal in 1–7 days (D, common practice). */
export const AFTER_LAYING_DAYS = [1, 7] as const;
/** Rule CARE-FAST: a fast that is looked at, outside breeding and cooling: over 60 days. */
export const FAST_DAYS = 60;

interface Window {
  readonly from: Day;
  readonly to: Day;
  /** In words; made only where somebody reads them. */
  readonly why: () => string;
}

/** When an animal is fed next, without words; null where nobody can say. */
export interface FeedDays {
  readonly next: Day | null;
  readonly last: Day | null;
  readonly hold: Due['hold'];
}

/**
 * Rule CARE-DUE: the plan's days after the last meal taken, put off by a refusal, never before a hold ends.
 * Errors: `species-unknown` where neither the species nor the keeper gives a plan, `plan-malformed`.
 */
export function nextFeedDue(animal: AnimalRecord, on: Day): Result<Due> {
  const vet = needsVet(animal);
  if (vet !== null) return ok(vetDue(vet));
  const plan = feedPlan(animal.species, lastWeight(animal)?.weightG ?? null, animal.plan);
  if (!plan.ok) return plan;
  const { window, holds, next, last, hold } = daysOf(animal, on, plan.value);
  const fast = fastWords(animal, on);
  if (hold !== null) return ok({ state: 'hold', next, last, hold, holds, why: heldWords(holds, window, fast) });
  const state = on < window.from ? 'soon' : on > window.to ? 'overdue' : 'due';
  const why = [window.why(), `${sayDay(window.from)} is ${sayDistance(on, window.from)}`, ...fast];
  return ok({ state, next, last, hold, holds, why });
}

/** The days of {@link nextFeedDue} alone, by a plan that is known already: for whoever asks about thousands of animals at once. */
export function feedDays(animal: AnimalRecord, on: Day, plan: FeedPlan): FeedDays {
  const vet = needsVet(animal);
  return vet === null ? daysOf(animal, on, plan) : { next: null, last: null, hold: { reason: vet, until: null } };
}

function daysOf(
  animal: AnimalRecord,
  on: Day,
  plan: FeedPlan,
): FeedDays & { readonly window: Window; readonly holds: readonly Hold[] } {
  const window = feedingWindow(animal, plan);
  const holds = holdsOn(animal, on);
  const longest = holds[0];
  if (longest === undefined) return { window, holds, next: window.from, last: window.to, hold: null };
  const { reason, until } = longest;
  const next = until === null ? null : laterDay(until, window.from);
  return { window, holds, next, last: next === null ? null : laterDay(next, window.to), hold: { reason, until } };
}

function vetDue(reason: string): Due {
  const words = `Not to be fed without a vet’s word: ${reason}.`;
  return {
    state: 'vet',
    next: null,
    last: null,
    hold: { reason, until: null },
    holds: [],
    why: [
      words,
      'Call a reptile vet; only the vet’s word ends this (rest after a second regurgitation is common practice, no source)',
    ],
  };
}

function heldWords(holds: readonly Hold[], window: Window, fast: readonly string[]): readonly string[] {
  return [
    ...holds.map((one) => `${one.reason}${one.until ? `, until ${sayDayShort(one.until)}` : ''} (${one.source})`),
    window.why(),
    ...fast,
  ];
}

function feedingWindow(animal: AnimalRecord, plan: FeedPlan): Window {
  const meal = mealWindow(animal, plan);
  const ends = restEnds(animal);
  const base = ends !== null && ends > meal.from ? shifted(meal, ends) : meal;
  const refused = animal.offers.at(-1);
  if (refused === undefined || refused.taken || isBefore(refused.day, animal.laidOn)) return base;
  const again = { from: addDays(refused.day, AFTER_REFUSAL_DAYS[0]), to: addDays(refused.day, AFTER_REFUSAL_DAYS[1]) };
  if (again.from <= base.from) return base;
  return {
    ...again,
    why: () =>
      `refused on ${sayDayShort(refused.day)}: offer again in ${AFTER_REFUSAL_DAYS.join('–')} days (C: common practice, no source)`,
  };
}

function mealWindow(animal: AnimalRecord, plan: FeedPlan): Window {
  const [low, high] = plan.everyDays;
  const last = animal.lastTaken;
  if (animal.laidOn !== null && (last === null || last.day < animal.laidOn)) {
    const [from, to] = AFTER_LAYING_DAYS.map((days) => addDays(animal.laidOn ?? animal.addedOn, days)) as [Day, Day];
    return {
      from,
      to,
      why: () =>
        `laid on ${sayDayShort(animal.laidOn ?? animal.addedOn)}: a small meal in ${AFTER_LAYING_DAYS.join('–')} days (D, common practice)`,
    };
  }
  if (last === null) {
    // An adult that was entered lately has eaten before: it is due from now on, not overdue since it hatched.
    const since = [animal.acquiredOn, animal.hatchedOn].filter((day) => day !== null).reduce(laterDay, animal.addedOn);
    return {
      from: since,
      to: addDays(since, high),
      why: () => `no meal taken yet since ${sayDayShort(since)}; every ${low}–${high} days: ${plan.because}`,
    };
  }
  return {
    from: addDays(last.day, low),
    to: addDays(last.day, high),
    why: () => `last meal ${sayDayShort(last.day)}, every ${low}–${high} days: ${plan.because}`,
  };
}

function shifted(window: Window, from: Day): Window {
  return {
    from,
    to: addDays(from, daysBetween(window.from, window.to)),
    why: () => `${window.why()}; put off to the end of the hold`,
  };
}

function fastWords(animal: AnimalRecord, on: Day): readonly string[] {
  const last = animal.lastTaken;
  if (last === null || animal.gravidSince !== null || animal.cooling?.to === null) return [];
  const days = daysBetween(last.day, on);
  if (days <= FAST_DAYS) return [];
  return [
    `no meal taken for ${days} days: weigh it and review; fasts of 2–6 months in the breeding season are usual in ball pythons (C)`,
  ];
}

function isBefore(day: Day, other: Day | null): boolean {
  return other !== null && day < other;
}
