import type { Day } from '../days.ts';
import type { SiteEvent } from '../events/index.ts';

/** Young that came out, as they were written at one time. */
export interface Hatching {
  readonly day: Day;
  readonly count: number;
}

/** What of a clutch is out: its young may come over several days, and each time is written on its own. */
export interface Hatched {
  /** The first day on which young came out; where none did, the day on which that was written. */
  readonly hatchedOn: Day | null;
  /** All together; null while nothing is written. */
  readonly hatched: number | null;
  /** In the order in which they came out. */
  readonly hatchings: readonly Hatching[];
  /** Somebody wrote that no more will come. */
  readonly isOver: boolean;
}

/** The hatchings among a clutch’s events, which come in the order in which they happened. */
export function hatchedOf(events: readonly SiteEvent[]): Hatched {
  const all = events.flatMap((event) => (event.kind === 'clutch-hatched' ? [event] : []));
  const hatchings = all
    .filter(({ payload }) => payload.hatched > 0)
    .map(({ day, payload }) => ({ day, count: payload.hatched }));
  return {
    hatchedOn: hatchings[0]?.day ?? all[0]?.day ?? null,
    hatched: all.length === 0 ? null : hatchings.reduce((sum, { count }) => sum + count, 0),
    hatchings,
    // “None hatched” says of itself that nobody waits for more.
    isOver: all.some(({ payload }) => payload.last === true) || (all.length > 0 && hatchings.length === 0),
  };
}
