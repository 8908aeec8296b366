import { type Skip, withSkip } from '../animal/index.ts';
import type { Day } from '../days.ts';
import {
  type EventOf,
  type LastWritten,
  lastWritten,
  laterWriter,
  type Payload,
  type RoundTask,
  type SiteEvent,
} from '../events/index.ts';
import type { Id } from '../ids.ts';
import { latest } from './latest.ts';

/** A round of one task at a place as it was begun, and ended if it was. */
export interface RoundRecord {
  readonly day: Day;
  readonly keeper: string;
  readonly second: string | null;
  /** Null while nobody has ended it. */
  readonly ended: {
    readonly done: number;
    readonly refused: number;
    readonly skipped: number;
    readonly left: number;
  } | null;
}

/** What was done last for a task, and by whom. */
export interface Deed {
  readonly day: Day;
  readonly keeper: string;
}

/** So many of the latest days of each task are kept: enough to learn an interval from. */
export const KEPT_DEEDS = 13;

/** A place: its own label, its place in the walk, what was done there last. */
export interface PlaceRecord {
  readonly id: Id;
  readonly placeKind: Payload<'place-added'>['placeKind'];
  readonly name: string;
  readonly parent: Id | null;
  /** Where it stands in the walk among its neighbours. */
  readonly walk: number;
  /** Inside, in mm; null where nobody measured. */
  readonly sizeMm: { readonly length: number; readonly width: number; readonly height: number } | null;
  readonly pool: { readonly litres: number; readonly filtered: boolean } | null;
  /** True where the site says that nobody opens it alone. */
  readonly twoPeople: boolean;
  readonly cleanedOn: Day | null;
  readonly cleanedFullyOn: Day | null;
  readonly waterOn: Day | null;
  /** By task, the days on which it was done here, oldest first, at most {@link KEPT_DEEDS}. */
  readonly deeds: Readonly<Partial<Record<RoundTask, readonly Deed[]>>>;
  /** By task, the keeper's own interval in days; it holds for all places below too. */
  readonly intervals: Readonly<Partial<Record<RoundTask, readonly [number, number]>>>;
  readonly skipped: Readonly<Partial<Record<RoundTask, readonly Skip[]>>>;
  readonly rounds: Readonly<Partial<Record<RoundTask, RoundRecord>>>;
  readonly lastWritten: LastWritten;
}

/** The place that these events are about; null if none added it. */
export function placeRecord(id: Id, events: readonly SiteEvent[]): PlaceRecord | null {
  const said = latest(events, 'place-added')?.payload;
  if (said === undefined) return null;
  const set = latest(events, 'place-set')?.payload;
  const parent = ((set?.parent ?? said.parent) as Id | undefined) ?? null;
  const deeds = deedsOf(events);
  return {
    id,
    placeKind: said.placeKind,
    name: set?.name ?? said.name,
    parent,
    walk: set?.walk ?? said.walk,
    sizeMm: set?.sizeMm ?? null,
    pool: set?.pool ?? null,
    twoPeople: set?.twoPeople ?? false,
    cleanedOn: lastDay(deeds, ['spot', 'clean']),
    cleanedFullyOn: lastDay(deeds, ['clean']),
    waterOn: lastDay(deeds, ['water']),
    deeds,
    intervals: intervalsOf(events),
    skipped: skippedOf(events),
    rounds: roundsOf(events),
    lastWritten: lastWritten(events),
  };
}

type Deeds = Partial<Record<RoundTask, readonly Deed[]>>;

/** Events come in the order in which they happened; two deeds of a day count as one, the later. */
function deedsOf(events: readonly SiteEvent[]): Deeds {
  const all = new Map<RoundTask, Deed[]>();
  for (const event of events) {
    const task = taskOf(event);
    if (task === null) continue;
    const deeds = all.get(task) ?? [];
    if (deeds.length === 0) all.set(task, deeds);
    if (deeds.at(-1)?.day === event.day) deeds.pop();
    deeds.push({ day: event.day, keeper: event.keeper });
  }
  return Object.fromEntries([...all].map(([task, deeds]) => [task, deeds.slice(-KEPT_DEEDS)]));
}

const POOL_TASKS = { part: 'pool-part', filter: 'pool-filter', drain: 'pool-drain' } as const;

/** The task that an event is a deed of at a place; null for every other event. */
export function taskOf(event: SiteEvent): RoundTask | null {
  switch (event.kind) {
    case 'water-changed':
      return 'water';
    case 'place-cleaned':
      return event.payload.how === 'full' ? 'clean' : 'spot';
    case 'pool-served':
      return POOL_TASKS[event.payload.work];
    case 'health-looked':
      return 'look';
    default:
      return null;
  }
}

function lastDay(deeds: Deeds, tasks: readonly RoundTask[]): Day | null {
  const days = tasks.flatMap((task) => deeds[task]?.at(-1)?.day ?? []);
  return days.sort().at(-1) ?? null;
}

/** The last writer of each task wins; one without days takes the interval off again. */
function intervalsOf(events: readonly SiteEvent[]): PlaceRecord['intervals'] {
  const last = new Map<RoundTask, EventOf<'interval-set'>>();
  for (const event of events) {
    if (event.kind !== 'interval-set') continue;
    const before = last.get(event.payload.task);
    if (before === undefined || laterWriter(before, event) < 0) last.set(event.payload.task, event);
  }
  const set = [...last].flatMap(([task, { payload }]) =>
    payload.everyDays ? [[task, payload.everyDays] as const] : [],
  );
  return Object.fromEntries(set.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function skippedOf(events: readonly SiteEvent[]): PlaceRecord['skipped'] {
  const skipped: Partial<Record<RoundTask, readonly Skip[]>> = {};
  for (const event of events) {
    if (event.kind !== 'task-skipped') continue;
    const { task, why } = event.payload;
    skipped[task] = withSkip(skipped[task], { day: event.day, keeper: event.keeper, why: why ?? null });
  }
  return skipped;
}

function roundsOf(events: readonly SiteEvent[]): PlaceRecord['rounds'] {
  const rounds: Partial<Record<RoundTask, RoundRecord>> = {};
  for (const event of events) {
    if (event.kind !== 'round-started' && event.kind !== 'round-ended') continue;
    const { task } = event.payload;
    const second = event.payload.second ?? null;
    if (event.kind === 'round-started') {
      rounds[task] = { day: event.day, keeper: event.keeper, second, ended: null };
      continue;
    }
    const { done, refused, skipped, left } = event.payload;
    const begun = rounds[task]?.day === event.day ? rounds[task] : { day: event.day, keeper: event.keeper, second };
    rounds[task] = { ...begun, ended: { done, refused: refused ?? 0, skipped, left } };
  }
  return rounds;
}
