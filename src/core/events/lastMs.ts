import type { SiteEvent } from './event.ts';

/** The latest clock, in milliseconds since 1970, of each kind among these events; kinds stand as they first come. */
export function lastMsOf(events: readonly SiteEvent[]): Record<string, number> {
  // A log asks this of every event: one look into the map for each, not two.
  const last = new Map<string, { ms: number }>();
  for (const { kind, clock } of events) {
    const known = last.get(kind);
    if (known === undefined) last.set(kind, { ms: Math.max(0, clock[0]) });
    else if (known.ms < clock[0]) known.ms = clock[0];
  }
  return Object.fromEntries([...last].map(([kind, { ms }]) => [kind, ms]));
}
