import { type EventId, eventIdMs } from '../ids.ts';
import type { SiteEvent } from './event.ts';

/**
 * The last event of each kind that was written about something, by its id. Ids tell the time of the device that wrote
 * them and sort by it; an event's own clock does not: it is never behind any clock that was heard, so one phone that runs
 * hours ahead pushes it ahead on all.
 */
export type LastWritten = Readonly<Record<string, EventId>>;

/** The last of each kind among these events. */
export function lastWritten(events: readonly SiteEvent[]): LastWritten {
  const last: Record<string, EventId> = {};
  for (const event of events) noteWritten(last, event);
  return last;
}

/** Puts an event among the last ones, if it is later than what is there. */
export function noteWritten(last: Record<string, EventId>, { kind, id }: SiteEvent): void {
  const known = last[kind];
  if (known === undefined || known < id) last[kind] = id;
}

/** Minutes since an event of that kind was written; less than 0 where a device was ahead, infinite where there is none. */
export function minutesSince(last: LastWritten, kind: string, nowMs: number): number {
  const id = last[kind];
  return id === undefined ? Number.POSITIVE_INFINITY : (nowMs - eventIdMs(id)) / 60_000;
}
