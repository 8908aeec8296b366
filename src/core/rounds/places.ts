import type { Decision, Moment } from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import type { Payload, RoundTask } from '../events/index.ts';
import { type Facility, keptPlace, type PlaceRecord } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { ok, problem, type Result, refuse } from '../problems.ts';
import { roundTo, sayNumber } from '../units.ts';
import { sayRange } from './animalLines.ts';
import { deedDraft } from './deeds.ts';
import { concerns, type Home, homeAt, homesOf } from './homes.ts';
import { type Days, type Interval, intervalOf } from './intervals.ts';
import type { RoundLine } from './line.ts';
import { countsOfRound, type RoundCounts, roundPlan } from './plan.ts';

/** Days between deeds that a keeper can set. */
export const OWN_DAYS = { least: 1, most: 400 } as const;
/** Litres that a pool can hold. */
export const POOL_LITRES = { most: 1_000_000 } as const;
const SHARES = { most: 100 } as const;

/** What the keeper says of a place beyond its size. */
export interface PlaceFacts {
  readonly pool: { readonly litres: number; readonly filtered: boolean } | null;
  readonly twoPeople: boolean;
}

/** Writes the pool of a place and whether it is opened alone, and keeps whatever else is known of it. Refused: `pool-litres`, `place-same`. */
export function setPlaceFacts(place: PlaceRecord, { pool, twoPeople }: PlaceFacts, day: Day): Decision {
  if (pool !== null && !(pool.litres > 0 && pool.litres <= POOL_LITRES.most))
    return { kind: 'refused', problem: problem('pool-litres', { text: sayNumber(pool.litres) }, 'litres') };
  const isSame = twoPeople === place.twoPeople && JSON.stringify(pool) === JSON.stringify(place.pool);
  if (isSame) return { kind: 'refused', problem: problem('place-same', { place: place.name }) };
  const { pool: _pool, twoPeople: _twoPeople, ...kept } = keptPlace(place);
  const payload: Payload<'place-set'> = { ...kept, ...(pool !== null && { pool }), ...(twoPeople && { twoPeople }) };
  const water =
    pool === null ? 'no pool' : `pool of ${sayNumber(pool.litres)} L, ${pool.filtered ? 'filtered' : 'no filter'}`;
  const said = `${water}${twoPeople ? ', two people' : ''}`;
  return { kind: 'accepted', drafts: [{ kind: 'place-set', subjects: [place.id], payload, day }], said };
}

/** Rule CARE-POOL: the litres that a part-change takes out, to the litre, and below 10 L to the tenth. */
export function partLitres(litres: number, percent: number): number {
  const part = (litres * percent) / 100;
  return roundTo(part, part < 10 ? 1 : 0);
}

/** Work on a pool: a share of it changed, the filter cleaned, or drained. Refused: `pool-none`, `pool-percent`, `date-future`. */
export function servePool(
  place: PlaceRecord,
  work: { readonly do: 'part'; readonly percent: number } | { readonly do: 'filter' } | { readonly do: 'drain' },
  { day, today }: Pick<Moment, 'day' | 'today'>,
): Decision {
  if (place.pool === null) return { kind: 'refused', problem: problem('pool-none', { place: place.name }) };
  if (day > today) return { kind: 'refused', problem: problem('date-future', { day: sayDayShort(day) }) };
  if (work.do === 'filter' && !place.pool.filtered)
    return { kind: 'refused', problem: problem('pool-no-filter', { place: place.name }) };
  if (work.do !== 'part') {
    const said = work.do === 'filter' ? 'pool filter cleaned' : `pool drained, ${sayNumber(place.pool.litres)} L`;
    return { kind: 'accepted', drafts: [deedDraft(`pool-${work.do}`, [place.id], day)], said };
  }
  if (!(work.percent > 0 && work.percent <= SHARES.most))
    return { kind: 'refused', problem: problem('pool-percent', { text: sayNumber(work.percent) }, 'percent') };
  const said = `pool changed in part: ${sayNumber(work.percent)} %, ${sayNumber(partLitres(place.pool.litres, work.percent))} L`;
  return { kind: 'accepted', drafts: [deedDraft('pool-part', [place.id], day, work.percent)], said };
}

/** Reads `2` or `2-3` as the days from soonest to latest. Errors: `days-malformed`. */
export function parseDays(text: string): Result<Days> {
  const found = /^\s*(\d{1,3})\s*(?:(?:-|–|to)\s*(\d{1,3})\s*)?$/.exec(text);
  const [low, high] = [Number(found?.[1]), Number(found?.[2] ?? found?.[1])];
  const sound = found !== null && low >= OWN_DAYS.least && low <= high && high <= OWN_DAYS.most;
  return sound ? ok([low, high]) : refuse('days-malformed', { text }, 'days');
}

/** Writes the keeper's own days for a task at a place and all below it; null lets them be learned again. Refused: `days-malformed`, `days-same`. */
export function setInterval(place: PlaceRecord, task: RoundTask, everyDays: Days | null, day: Day): Decision {
  const known = place.intervals[task] ?? null;
  if (JSON.stringify(known) === JSON.stringify(everyDays))
    return { kind: 'refused', problem: problem('days-same', { place: place.name }) };
  const read = everyDays === null ? null : parseDays(everyDays.join('-'));
  if (read !== null && !read.ok) return { kind: 'refused', problem: read.problem };
  const payload = everyDays === null ? { task } : { task, everyDays: [everyDays[0], everyDays[1]] as [number, number] };
  const said = everyDays === null ? 'interval learned again' : `interval: every ${sayRange(everyDays)}`;
  return { kind: 'accepted', drafts: [{ kind: 'interval-set', subjects: [place.id], payload, day }], said };
}

/** What own days would make of a round, before anybody writes them. */
export interface IntervalEffect {
  readonly before: RoundCounts;
  readonly after: RoundCounts;
  /** The first line as it stands now and would stand then: for a single home this is all there is. */
  readonly first: { readonly before: RoundLine | null; readonly after: RoundLine | null };
}

/** The effect of own days at a place on a day; null: learned again. */
export function effectOf(
  facility: Facility,
  place: PlaceRecord,
  { task, everyDays, on }: { readonly task: RoundTask; readonly everyDays: Days | null; readonly on: Day },
): IntervalEffect {
  const { [task]: _own, ...others } = place.intervals;
  const changed = { ...place, intervals: everyDays === null ? others : { ...others, [task]: everyDays } };
  const then = { ...facility, places: new Map(facility.places).set(place.id, changed) };
  const lines = (at: Facility) => roundPlan(at, { task, on, within: place.id });
  const [before, after] = [lines(facility), lines(then)];
  return {
    before: countsOfRound(before),
    after: countsOfRound(after),
    first: { before: before[0] ?? null, after: after[0] ?? null },
  };
}

/** The tasks whose interval can be set at a place: those of any home in it. */
export function tasksAt(facility: Facility, place: Id): readonly RoundTask[] {
  const homes = homesOf(facility, place);
  const has = (is: (home: Home) => boolean): boolean => homes.some(is);
  return [
    ...(has(({ animals }) => animals.length > 0) ? (['look', 'water', 'spot', 'clean', 'weigh'] as const) : []),
    ...(has((home) => home.place.pool?.filtered === true) ? (['pool-part', 'pool-filter'] as const) : []),
    ...(has((home) => home.place.pool !== null) ? (['pool-drain'] as const) : []),
  ];
}

/** The interval of a task at a home as it stands; null for a place that is none, such as a rack, or has none of that task. */
export function intervalAt(facility: Facility, place: Id, task: RoundTask): Interval | null {
  const home = homeAt(facility, place);
  return home === null || !concerns(task, home) ? null : intervalOf(facility, home, task);
}
