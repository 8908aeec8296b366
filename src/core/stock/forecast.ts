import { addDays, type Day } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import { type Eater, eatersOf, kept, type Uncounted } from './eaters.ts';
import {
  aftersOf,
  offersByDay,
  offersByWeek,
  offersInAll,
  type Rhythm,
  restsOf,
  type Start,
  WEEK_DAYS,
} from './renewal.ts';
import { type Counts, enoughFor, meanOf, sumOfChances, sumsOfChances } from './sum.ts';

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

/** Is told after each class of prey how many animals are done, of how many. */
export type OnAnimals = (done: number, of: number) => void;

/**
 * Rule CARE-NEED: items per class of prey and week. What is offered is used up, taken or refused; a refusal brings the
 * next offer of the same animal forward or puts it off as CARE-REFUSAL says. The distribution of a week is exact: the sum
 * of the animals' own unlike chances of 0, 1, 2 … offers, each worked out day by day.
 */
export function preyForecast(facility: Facility, on: Day, weeks: number, onAnimals: OnAnimals = NOBODY): SiteForecast {
  const { counted, uncounted } = eatersOf(facility, on);
  const afters = onceEach((rhythm: Rhythm) => aftersOf(rhythm, weeks * WEEK_DAYS));
  const offers = onceEach((start: Start, rhythm: Rhythm) => offersByWeek(start, rhythm, afters(rhythm), weeks));
  const classes = eachClass(counted, onAnimals, (groups) => {
    const chances = groups.map(({ items, animals, start, rhythm }) => ({
      step: items,
      alike: animals,
      ...offers(start, rhythm),
    }));
    const sums = sumsOfChances(chances, weeks);
    return { weeks: sums.map((sum, week) => ({ from: addDays(on, week * WEEK_DAYS), ...needOf(sum) })) };
  });
  return { classes, uncounted };
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
  onAnimals: OnAnimals = NOBODY,
): { readonly classes: readonly WholeNeed[]; readonly uncounted: readonly Uncounted[] } {
  const { counted, uncounted } = eatersOf(facility, on);
  const rests = onceEach((rhythm: Rhythm) => restsOf(rhythm, days));
  const afters = onceEach((rhythm: Rhythm) => aftersOf(rhythm, days));
  const inAll = onceEach((start: Start, rhythm: Rhythm) => offersInAll(start, rests(rhythm), days));
  const daily = onceEach((start: Start, rhythm: Rhythm) => offersByDay(start, rhythm, afters(rhythm), days));
  const classes = eachClass(counted, onAnimals, (groups) => {
    const byDay = new Float64Array(days);
    for (const { items, animals, start, rhythm } of groups) addTimes(byDay, items * animals, daily(start, rhythm));
    const chances = groups.map(({ items, animals, start, rhythm }) => ({
      step: items,
      alike: animals,
      chances: inAll(start, rhythm),
    }));
    return { byDay, ...needOf(sumOfChances(chances)) };
  });
  return { classes, uncounted };
}

const NOBODY: OnAnimals = () => undefined;

/** Works out once what depends on its first word alone: a rhythm, or a start, which belongs to one rhythm. Animals that are alike share them. */
function onceEach<K, A extends readonly unknown[], T>(make: (key: K, ...more: A) => T): (key: K, ...more: A) => T {
  const known = new Map<K, T>();
  return (key, ...more) => kept(known, key, () => make(key, ...more));
}

/** So many animals that get the same, from the same start on and in the same rhythm. */
interface Group extends Eater {
  readonly animals: number;
}

function eachClass<T extends object>(
  eaters: readonly Eater[],
  onAnimals: OnAnimals,
  work: (groups: readonly Group[]) => T,
): readonly (T & { readonly prey: string; readonly animals: number })[] {
  let done = 0;
  onAnimals(done, eaters.length);
  return byPrey(eaters).map(([prey, groups]) => {
    const found = { prey, animals: groups.reduce((all, one) => all + one.animals, 0), ...work(groups) };
    done += found.animals;
    onAnimals(done, eaters.length);
    return found;
  });
}

function byPrey(eaters: readonly Eater[]): readonly (readonly [string, readonly Group[]])[] {
  const classes = new Map<string, Map<Start, (Group & { animals: number })[]>>();
  for (const eater of eaters) {
    const starts = kept(classes, eater.prey, () => new Map<Start, (Group & { animals: number })[]>());
    const alike = kept(starts, eater.start, () => []);
    const same = alike.find((one) => one.items === eater.items);
    if (same === undefined) alike.push({ ...eater, animals: 1 });
    else same.animals += 1;
  }
  const sorted = [...classes].sort(([a], [b]) => (a < b ? -1 : 1));
  return sorted.map(([prey, starts]) => [prey, [...starts.values()].flat()] as const);
}

function addTimes(sum: Float64Array, times: number, more: Float64Array): void {
  for (const [at, value] of more.entries()) sum[at] = (sum[at] ?? 0) + times * value;
}

function needOf(counts: Counts): Need {
  return { mean: meanOf(counts), most: enoughFor(counts, ENOUGH_SHARE) };
}
