import { addDays, type Day } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import { type Eater, eatersOf, type Uncounted } from './eaters.ts';
import {
  offersByDay,
  offersByWeek,
  offersInAll,
  type Rest,
  type Rhythm,
  restsOf,
  type Start,
  WEEK_DAYS,
} from './renewal.ts';
import { type Counts, enoughFor, meanOf, sumOfChances } from './sum.ts';

/** Rule CARE-NEED: so many items are enough in this share of cases. */
export const ENOUGH_SHARE = 0.9;

/** Items of prey that will be offered in a time. */
export interface Need {
  readonly mean: number;
  /** The least count that is enough in 90 of 100 cases. */
  readonly most: number;
}

/** One week of the forecast. */
export interface WeekNeed extends Need {
  readonly from: Day;
}

/** What is needed of one class of prey, week by week from the day of the forecast on. */
export interface PreyForecast {
  readonly prey: string;
  readonly animals: number;
  readonly weeks: readonly WeekNeed[];
}

/** The forecast of a site, with the animals that it does not count. */
export interface SiteForecast {
  readonly classes: readonly PreyForecast[];
  readonly uncounted: readonly Uncounted[];
}

/**
 * Rule CARE-NEED: items per class of prey and week. What is offered is used up, taken or refused; a refusal brings the
 * next offer of the same animal forward or puts it off as CARE-REFUSAL says. The distribution of a week is exact: the sum
 * of the animals' own unlike chances of 0, 1, 2 … offers, each worked out day by day.
 */
export function preyForecast(facility: Facility, on: Day, weeks: number): SiteForecast {
  const { counted, uncounted } = eatersOf(facility, on);
  const offers = onceEach((start, rhythm) => offersByWeek(start, rhythm, weeks));
  const classes = [...byPrey(counted)].map(([prey, eaters]) => {
    const known = eaters.map(({ items, start, rhythm }) => ({ step: items, weeks: offers(start, rhythm) }));
    const each = Array.from({ length: weeks }, (_, week) => ({
      from: addDays(on, week * WEEK_DAYS),
      ...needOf(sumOfChances(known.map(({ step, weeks }) => ({ step, chances: weeks[week] ?? NEVER })))),
    }));
    return { prey, animals: eaters.length, weeks: each };
  });
  return { classes, uncounted };
}

const NEVER = Float64Array.of(1);

/** Works out once what depends on a start and its rhythm alone: animals that are alike share them. */
function onceEach<T>(make: (start: Start, rhythm: Rhythm) => T): (start: Start, rhythm: Rhythm) => T {
  const known = new Map<Start, T>();
  return (start, rhythm) => {
    const found = known.get(start) ?? make(start, rhythm);
    known.set(start, found);
    return found;
  };
}

/** What is needed of one class in so many days together. */
export interface WholeNeed extends Need {
  readonly prey: string;
  readonly animals: number;
  /** The mean of each day. */
  readonly byDay: Float64Array;
}

/** Rule CARE-NEED over so many days as one time: an animal's weeks hang together, so their 90 % figures do not add up. */
export function wholeNeed(
  facility: Facility,
  on: Day,
  days: number,
): { readonly classes: readonly WholeNeed[]; readonly uncounted: readonly Uncounted[] } {
  const { counted, uncounted } = eatersOf(facility, on);
  const rests = new Map<Rhythm, readonly Rest[]>();
  const inAll = onceEach((start, rhythm) => {
    const found = rests.get(rhythm) ?? restsOf(rhythm, days);
    rests.set(rhythm, found);
    return offersInAll(start, found, days);
  });
  const daily = onceEach((start, rhythm) => offersByDay(start, rhythm, days));
  const classes = [...byPrey(counted)].map(([prey, eaters]) => {
    const chances = eaters.map(({ items, start, rhythm }) => ({ step: items, chances: inAll(start, rhythm) }));
    const byDay = new Float64Array(days);
    for (const { items, start, rhythm } of eaters) addTimes(byDay, items, daily(start, rhythm));
    return { prey, animals: eaters.length, byDay, ...needOf(sumOfChances(chances)) };
  });
  return { classes, uncounted };
}

function addTimes(sum: Float64Array, times: number, more: Float64Array): void {
  for (const [at, value] of more.entries()) sum[at] = (sum[at] ?? 0) + times * value;
}

function byPrey(eaters: readonly Eater[]): ReadonlyMap<string, readonly Eater[]> {
  const found = new Map<string, Eater[]>();
  for (const one of eaters) {
    const same = found.get(one.prey);
    if (same === undefined) found.set(one.prey, [one]);
    else same.push(one);
  }
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function needOf(counts: Counts): Need {
  return { mean: meanOf(counts), most: enoughFor(counts, ENOUGH_SHARE) };
}
