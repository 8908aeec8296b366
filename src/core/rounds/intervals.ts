import { type AnimalRecord, lastWeight } from '../animal/index.ts';
import { type Day, daysBetween } from '../days.ts';
import type { RoundTask } from '../events/index.ts';
import type { Facility, PlaceRecord } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { Mark } from '../stock/index.ts';
import { type Home, wayUp } from './homes.ts';

/** How many days pass between two deeds of a task: the first is the soonest, after the second it is overdue. */
export type Days = readonly [low: number, high: number];

/** The default of a task, with where it comes from. */
export interface DefaultInterval {
  readonly task: RoundTask;
  /** Which places it is for, in words. */
  readonly where: string;
  readonly everyDays: Days;
  readonly mark: Mark;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';
const row = (task: RoundTask, where: string, everyDays: Days): DefaultInterval => ({
  ...{ task, where, everyDays },
  mark: 'C',
  source: PRACTICE,
});

/** Rule CARE-ROUND: how often a task is done where nobody has said or done otherwise. Spot cleaning is done when seen and has no days. */
export const DEFAULT_INTERVALS = {
  look: row('look', 'every animal', [1, 1]),
  water: row('water', 'every home', [1, 3]),
  cleanTub: row('clean', 'tub', [14, 28]),
  cleanExhibit: row('clean', 'exhibit', [30, 90]),
  poolDrain: row('pool-drain', 'pool without a filter', [1, 3]),
  poolPart: row('pool-part', 'filtered pool', [7, 7]),
} as const;

/** Rule CARE-INTERVAL: the default counts as so many gaps of the place's own log (ours). */
export const DEFAULT_GAPS = 4;
/** Rule CARE-INTERVAL: the latest gaps that are learned from; older ones tell of other days (ours). */
export const LEARNED_GAPS = 6;
/** Rule CARE-INTERVAL: a gap of more than so many times the default's end was a holiday or a round that nobody logged (ours). */
export const LATE_TIMES = 3;
/** Rule CARE-INTERVAL: a task without a default is learned from so many gaps on (ours). */
export const LEAST_GAPS = 3;
/** Rule CARE-GROWING: what an animal leaves behind grows as its metabolism does, with this power of its mass (Andrews & Pough 1985). */
export const WASTE_POWER = 0.8;

/** Tasks whose interval a place learns from its own log; looks are daily, and weighing has rules of its own. */
const LEARNED: ReadonlySet<RoundTask> = new Set(['water', 'clean', 'pool-part', 'pool-filter', 'pool-drain']);

/** How a place's animals have grown since its interval was learned. */
export interface Grown {
  /** How many times as heavy they are. */
  readonly times: number;
  /** What the interval is multiplied by; never more than 1. */
  readonly factor: number;
}

/** How often a task is due at a place, and where that comes from. */
export interface Interval {
  readonly everyDays: Days;
  readonly from: 'default' | 'learned' | 'own';
  /** The default of its kind; null where there is none. */
  readonly usual: DefaultInterval | null;
  /** What the log of the place says; null where it says too little. */
  readonly learned: { readonly everyDays: Days; readonly gaps: number; readonly grown: Grown | null } | null;
  /** The keeper's own days, and the place at which they were written. */
  readonly own: { readonly everyDays: Days; readonly at: Id } | null;
}

/** The default of a task at a place; null where there is none, such as the filter of a pool. */
export function defaultInterval(place: PlaceRecord, task: RoundTask): DefaultInterval | null {
  switch (task) {
    case 'look':
      return DEFAULT_INTERVALS.look;
    case 'water':
      return DEFAULT_INTERVALS.water;
    case 'clean':
      return place.placeKind === 'exhibit' ? DEFAULT_INTERVALS.cleanExhibit : DEFAULT_INTERVALS.cleanTub;
    case 'pool-drain':
      return place.pool?.filtered === false ? DEFAULT_INTERVALS.poolDrain : null;
    case 'pool-part':
      return place.pool?.filtered === true ? DEFAULT_INTERVALS.poolPart : null;
    case 'pool-filter':
    case 'spot':
    case 'weigh':
    case 'feeding':
    case 'treat':
      return null;
    default:
      return task satisfies never;
  }
}

/**
 * Rule CARE-INTERVAL: the keeper's own days at the place or at the nearest place above it; else what its log says, the
 * default counted in; else the default. Null where there is none of them.
 */
export function intervalOf(
  facility: Facility,
  home: Pick<Home, 'place' | 'animals'>,
  task: RoundTask,
): Interval | null {
  const usual = defaultInterval(home.place, task);
  const learned = LEARNED.has(task) ? learnedAt(home, task, usual) : null;
  const own = ownInterval(facility, home.place.id, task);
  const rest = { usual, learned, own };
  if (own !== null) return { everyDays: own.everyDays, from: 'own', ...rest };
  if (learned !== null) return { everyDays: learned.everyDays, from: 'learned', ...rest };
  return usual === null ? null : { everyDays: usual.everyDays, from: 'default', ...rest };
}

/** The keeper's own days for a task at a place, or at the nearest place above it. */
export function ownInterval(facility: Facility, place: Id, task: RoundTask): Interval['own'] {
  for (const { id, intervals } of wayUp(facility, place)) {
    const set = intervals[task];
    // Written from high to low on another device it still means the same two days.
    if (set !== undefined) return { everyDays: [Math.min(...set), Math.max(...set)], at: id };
  }
  return null;
}

/**
 * Rule CARE-INTERVAL as a formula: the middle is (4 × the default's middle + n × the median of the n gaps) ÷ (4 + n), and
 * half the width the same mean of half the default's width and the median distance of the gaps from their median. Gaps in
 * any order. The end is never later than the default's: what a place was left waiting does not become its rule. Without a
 * default it is the median and that distance, from 3 gaps on.
 */
export function learnedDays(gaps: readonly number[], usual: Days | null): { everyDays: Days; gaps: number } | null {
  const latest = usual === null ? Number.POSITIVE_INFINITY : LATE_TIMES * usual[1];
  const counted = gaps.filter((gap) => gap >= 1 && gap <= latest);
  const least = usual === null ? LEAST_GAPS : 1;
  if (counted.length < least) return null;
  const median = medianOf(counted);
  const spread = medianOf(counted.map((gap) => Math.abs(gap - median)));
  const weight = usual === null ? 0 : DEFAULT_GAPS;
  const [low, high] = usual ?? [0, 0];
  const pooled = (prior: number, seen: number): number =>
    (weight * prior + counted.length * seen) / (weight + counted.length);
  const [middle, half] = [pooled((low + high) / 2, median), pooled((high - low) / 2, spread)];
  const last = Math.min(Math.max(1, Math.round(middle + half)), usual?.[1] ?? Number.POSITIVE_INFINITY);
  return { everyDays: [Math.min(last, Math.max(1, Math.round(middle - half))), last], gaps: counted.length };
}

/** Rule CARE-GROWING: an interval that was learned from smaller animals, shortened by (then ÷ now) to the power 0.80. */
export function shortened([low, high]: Days, { factor }: Grown): Days {
  return [Math.max(1, Math.round(low * factor)), Math.max(1, Math.round(high * factor))];
}

function learnedAt(
  { place, animals }: Pick<Home, 'place' | 'animals'>,
  task: RoundTask,
  usual: DefaultInterval | null,
) {
  const days = daysToLearnFrom(place, animals, task);
  const gaps = days.slice(1).map((day, at) => daysBetween(days[at] ?? day, day));
  const learned = learnedDays(gaps, usual?.everyDays ?? null);
  const middle = days[Math.floor(days.length / 2)];
  if (learned === null || middle === undefined) return null;
  const grown = grownSince(animals, middle);
  const everyDays = grown === null ? learned.everyDays : shortened(learned.everyDays, grown);
  const isShorter = everyDays.some((days, at) => days !== learned.everyDays[at]);
  return { ...learned, everyDays, grown: isShorter ? grown : null };
}

/** The latest days on which it was done, since those who live there now moved in: gaps with others tell of others. */
function daysToLearnFrom(place: PlaceRecord, animals: readonly AnimalRecord[], task: RoundTask): readonly Day[] {
  const since = animals
    .flatMap((animal) => animal.movedOn ?? [])
    .sort()
    .at(-1);
  const days = (place.deeds[task] ?? []).map((deed) => deed.day);
  return days.filter((day) => since === undefined || day >= since).slice(-1 - LEARNED_GAPS);
}

/** How much heavier those are that were weighed then and later; null where nothing grew or nobody knows. */
function grownSince(animals: readonly AnimalRecord[], then: Day): Grown | null {
  let [before, now] = [0, 0];
  for (const animal of animals) {
    const [last, first] = [lastWeight(animal), weightOn(animal, then)];
    if (last === null || first === null || last.day <= then) continue;
    before += first;
    now += last.weightG;
  }
  if (before <= 0 || now <= before) return null;
  return { times: now / before, factor: (before / now) ** WASTE_POWER };
}

/** The last weight up to a day, else the first one after it. */
function weightOn({ weights }: AnimalRecord, day: Day): number | null {
  const found = weights.findLast((weight) => weight.day <= day) ?? weights[0];
  return found?.weightG ?? null;
}

function medianOf(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const [low, high] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.floor(sorted.length / 2)]];
  return ((low ?? 0) + (high ?? 0)) / 2;
}
