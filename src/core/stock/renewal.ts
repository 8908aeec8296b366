import { addConvolution, OVER } from './convolve.ts';

/** How likely each number of days is from one offer to the next: `chances[n]` belongs to `first + n` days. */
export interface Gaps {
  readonly first: number;
  readonly chances: Float64Array;
}

/** How an animal goes on from one offer to the next, for two chances of taking it that stand for all that is possible. */
export interface Rhythm {
  readonly afterTaken: Gaps;
  readonly afterRefused: Gaps;
  readonly ways: readonly Way[];
}

/** One of the two: how much it weighs, its gaps, and what {@link weekShares} makes of them. */
export interface Way {
  readonly weight: number;
  readonly gaps: Gaps;
  readonly ofWeek: readonly Float64Array[];
}

/** The days of a week, which is what need is counted by. */
export const WEEK_DAYS = 7;

/** How likely the next offer falls on each day from today on; less than 1 in all where it may come later than asked. */
export type Start = Float64Array;

/** For each way of a rhythm the chance of an offer so many days after one; that one itself stands at 0. */
export type Afters = readonly Float64Array[];

/** What follows an offer, for fewer than so many days: a renewal process, worked out day by day. */
export function aftersOf({ ways }: Rhythm, days: number): Afters {
  return ways.map(({ gaps }) => density(Float64Array.of(1), gaps, days));
}

/** The chance that an offer is made on each of so many days. */
export function offersByDay(start: Start, { ways }: Rhythm, afters: Afters, days: number): Float64Array {
  const sum = new Float64Array(days);
  for (const [at, { weight }] of ways.entries()) {
    const each = begunWith(start, afters[at], days);
    for (let day = 0; day < days; day++) sum[day] = (sum[day] ?? 0) + weight * (each[day] ?? 0);
  }
  return sum;
}

/** Rows of chances one after another, each of that size. */
export interface Rows {
  readonly size: number;
  readonly chances: Float64Array;
}

/** The chances of 0, 1, 2 … offers in each of so many weeks, exactly; one row a week. */
export function offersByWeek(start: Start, { ways }: Rhythm, afters: Afters, weeks: number): Rows {
  const size = ways.reduce((most, { ofWeek }) => Math.max(most, ofWeek.length), 0) + 1;
  const all = new Float64Array(weeks * size);
  for (const [at, way] of ways.entries()) addWay(all, size, way, begunWith(start, afters[at], weeks * WEEK_DAYS));
  return { size, chances: all };
}

/** Each offer is the first one or follows it; what comes after the last day is cut off. */
function begunWith(start: Start, after: Float64Array | undefined, days: number): Float64Array {
  const first = Math.min(start.length, days);
  const each = new Float64Array(days + first + OVER);
  if (after === undefined) return each;
  addConvolution({ of: start, from: 0, length: first }, { of: after, from: 0, length: days }, each);
  return each;
}

/** Adds one way's chances to those of all weeks; `each` has the chance of an offer by day. */
function addWay(all: Float64Array, size: number, { weight, ofWeek }: Way, each: Float64Array): void {
  for (let at = 0, day = 0; at < all.length; at += size, day += WEEK_DAYS) {
    let atLeast = weight;
    for (let more = 0; more < ofWeek.length; more++) {
      const shares = ofWeek[more];
      const oneMore = shares === undefined ? 0 : Math.max(0, weight * dot(shares, each, day));
      all[at + more] = (all[at + more] ?? 0) + Math.max(0, atLeast - oneMore);
      atLeast = oneMore;
    }
    all[at + ofWeek.length] = (all[at + ofWeek.length] ?? 0) + atLeast;
  }
}

/**
 * What the chance of an offer on each day of a week adds to the chance of at least 1, 2 … offers in it: that chance is
 * the sum over the days, because the first offer of a week is any offer less those that another one came before.
 */
export function weekShares(gaps: Gaps): readonly Float64Array[] {
  const again = density(gapsAsStart(gaps), gaps, WEEK_DAYS);
  const shares = Array.from({ length: mostInWeek(gaps) }, () => new Float64Array(WEEK_DAYS));
  for (let day = 0; day < WEEK_DAYS; day++) {
    let nth = firstOfWeek(day, again);
    for (const share of shares) {
      share[day] = sum(nth);
      nth = nextInWeek(nth, gaps);
    }
  }
  return shares;
}

/** The chances of 0, 1, 2 … offers in so many days together. */
export function offersInAll(start: Start, rests: readonly Rest[], days: number): Float64Array {
  const most = rests.reduce((longest, rest) => Math.max(longest, (rest.after[days - 1]?.length ?? 1) + 1), 2);
  const chances = new Float64Array(most);
  for (const { weight, after } of rests) {
    let never = 1;
    for (let day = 0; day < Math.min(days, start.length); day++) {
      const chance = start[day] ?? 0;
      never -= chance;
      for (const [count, more] of (after[days - 1 - day] ?? []).entries())
        chances[count + 1] = (chances[count + 1] ?? 0) + weight * chance * more;
    }
    chances[0] = (chances[0] ?? 0) + weight * Math.max(0, never);
  }
  return chances;
}

/** `after[days]`: the chances of 0, 1, 2 … further offers in so many days after one. */
export interface Rest {
  readonly weight: number;
  readonly after: readonly Float64Array[];
}

/** What may follow an offer, for each number of days that may be left. */
export function restsOf({ ways }: Rhythm, days: number): readonly Rest[] {
  return ways.map(({ weight, gaps }) => {
    const after: Float64Array[] = [];
    for (let left = 0; left < days; left++) after.push(restOf(gaps, left, after));
    return { weight, after };
  });
}

function restOf(gaps: Gaps, left: number, after: readonly Float64Array[]): Float64Array {
  const chances = new Float64Array(Math.floor(left / gaps.first) + 1);
  let never = 1;
  for (let at = 0; at < gaps.chances.length && gaps.first + at <= left; at++) {
    const chance = gaps.chances[at] ?? 0;
    never -= chance;
    const more = after[left - gaps.first - at];
    if (more === undefined || chance === 0) continue;
    for (let count = 0; count < more.length; count++)
      chances[count + 1] = (chances[count + 1] ?? 0) + chance * (more[count] ?? 0);
  }
  chances[0] = Math.max(0, never);
  return chances;
}

/** Each offer is either the first or comes one gap after another. */
function density(start: Start, { first, chances }: Gaps, days: number): Float64Array {
  const each = new Float64Array(days);
  each.set(start.subarray(0, days));
  for (let day = first; day < days; day++) {
    const gaps = Math.min(chances.length, day - first + 1);
    let chance = each[day] ?? 0;
    for (let at = 0; at < gaps; at++) chance += (chances[at] ?? 0) * (each[day - first - at] ?? 0);
    each[day] = chance;
  }
  return each;
}

function gapsAsStart({ first, chances }: Gaps): Start {
  const start = new Float64Array(first + chances.length);
  start.set(chances, first);
  return start;
}

/** How the offer of one day changes which offer is the first of the week: it is one there, and later ones are so no more. */
function firstOfWeek(day: number, again: Float64Array): Float64Array {
  const first = new Float64Array(WEEK_DAYS);
  first[day] = 1;
  for (let later = day + 1; later < WEEK_DAYS; later++) {
    let taken = 0;
    for (let before = day; before < later; before++) taken += (first[before] ?? 0) * (again[later - before] ?? 0);
    first[later] = -taken;
  }
  return first;
}

function mostInWeek({ first }: Gaps): number {
  return Math.floor((WEEK_DAYS - 1) / first) + 1;
}

function dot(shares: Float64Array, each: Float64Array, from: number): number {
  let all = 0;
  for (let day = 0; day < WEEK_DAYS; day++) all += (shares[day] ?? 0) * (each[from + day] ?? 0);
  return all;
}

function nextInWeek(nth: Float64Array, { first, chances }: Gaps): Float64Array {
  const next = new Float64Array(WEEK_DAYS);
  for (let day = 0; day + first < WEEK_DAYS; day++)
    for (let at = 0; at < chances.length && day + first + at < WEEK_DAYS; at++)
      next[day + first + at] = (next[day + first + at] ?? 0) + (nth[day] ?? 0) * (chances[at] ?? 0);
  return next;
}

function sum(values: Float64Array): number {
  let all = 0;
  for (const value of values) all += value;
  return all;
}
