import { type EventId, eventIdMs } from '../ids.ts';
import type { SiteEvent } from './event.ts';

/**
 * The last event of each kind that was written about something, by its id. Ids tell the time of the device that wrote
 * them and sort by it; an event's own clock does not: it is never behind any clock that was heard, so one phone that runs
 * hours ahead pushes it ahead on all.
 */
export type LastWritten = Readonly<Record<string, EventId>>;

/** The last of each kind among these events; kinds stand as they first come. */
export function lastWritten(events: readonly SiteEvent[]): LastWritten {
  // A log asks this of every event: one look into the map for each, not two.
  const last = new Map<string, { id: EventId }>();
  for (const { kind, id } of events) {
    const known = last.get(kind);
    if (known === undefined) last.set(kind, { id });
    else if (known.id < id) known.id = id;
  }
  return Object.fromEntries([...last].map(([kind, { id }]) => [kind, id]));
}

/** Minutes since an event of that kind was written; less than 0 where a device was ahead, infinite where there is none. */
export function minutesSince(last: LastWritten, kind: string, nowMs: number): number {
  const id = last[kind];
  return id === undefined ? Number.POSITIVE_INFINITY : (nowMs - eventIdMs(id)) / 60_000;
}
