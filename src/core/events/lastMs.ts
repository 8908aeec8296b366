import type { SiteEvent } from './event.ts';

/** The latest clock, in milliseconds since 1970, of each kind among these events; kinds stand as they first come. */
export function lastMsOf(events: readonly SiteEvent[]): Record<string, number> {
  const last = new Map<string, number>();
  for (const { kind, clock } of events) last.set(kind, Math.max(last.get(kind) ?? 0, clock[0]));
  return Object.fromEntries(last);
}
