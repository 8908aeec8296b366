import { canonicalJson } from './canonical.ts';
import { type EventOf, inOrder, isKnown, type LogEvent, laterWriter, type SiteEvent } from './event.ts';
import { PAYLOADS } from './payloads.ts';

/** One event of a history with what later slips made of it. */
export interface Entry {
  readonly event: LogEvent;
  readonly undone: boolean;
  /** The payload as amended by the last slip that stands, if any. */
  readonly amended: boolean;
}

type Slip = EventOf<'slip-made'>;

/**
 * A subject's history in the order in which it happened, slips applied; the same for any order of arrival.
 * An event that came twice counts once; of two events with one id the one with the smaller canonical text counts.
 */
export function entries(history: readonly LogEvent[]): readonly Entry[] {
  const events = inHappeningOrder(history);
  const slips = slipsByTarget(events);
  if (slips.size === 0) return events.map((event) => ({ event, undone: false, amended: false }));
  return events.map((event) => corrected(event, slips));
}

/** The events that count: known, not undone, amended where a slip says so, in the order in which they happened. */
export function standing(history: readonly LogEvent[]): readonly SiteEvent[] {
  const events = inHappeningOrder(history);
  const slips = slipsByTarget(events);
  const all =
    slips.size === 0
      ? events
      : events
          .map((event) => corrected(event, slips))
          .filter((entry) => !entry.undone)
          .map((entry) => entry.event);
  return all.filter(isKnown);
}

function inHappeningOrder(history: readonly LogEvent[]): readonly LogEvent[] {
  const sorted = isSorted(history) ? history : [...history].sort(inOrder);
  return hasTwins(sorted) ? withoutTwins(sorted) : sorted;
}

function isSorted(history: readonly LogEvent[]): boolean {
  for (let at = 1; at < history.length; at++) {
    const [before, after] = [history[at - 1], history[at]];
    if (before && after && inOrder(before, after) > 0) return false;
  }
  return true;
}

function hasTwins(events: readonly LogEvent[]): boolean {
  return new Set(events.map((event) => event.id)).size < events.length;
}

function withoutTwins(events: readonly LogEvent[]): readonly LogEvent[] {
  const byId = new Map<string, LogEvent>();
  for (const event of events) {
    const twin = byId.get(event.id);
    if (!twin || canonicalJson(event) < canonicalJson(twin)) byId.set(event.id, event);
  }
  return [...byId.values()].sort(inOrder);
}

function slipsByTarget(events: readonly LogEvent[]): ReadonlyMap<string, readonly Slip[]> {
  const slips = new Map<string, Slip[]>();
  for (const event of events) {
    if (event.kind !== 'slip-made' || !isKnown(event)) continue;
    slips.set(event.payload.corrects, [...(slips.get(event.payload.corrects) ?? []), event]);
  }
  return slips;
}

function corrected(event: LogEvent, slips: ReadonlyMap<string, readonly Slip[]>): Entry {
  const valid = (slips.get(event.id) ?? []).filter((slip) => !isUndone(slip.id, slips, [event.id]));
  const undone = valid.some((slip) => slip.payload.how === 'undo');
  const amends = valid.filter((slip) => slip.payload.how === 'amend').sort(laterWriter);
  const last = amends.at(-1);
  const changed = last && isKnown(event) ? withPayload(event, last.payload.payload ?? {}) : null;
  return { event: changed ?? event, undone, amended: changed !== null };
}

/** Slips may correct slips; a ring of slips, which only damage can make, corrects nothing. */
function isUndone(id: string, slips: ReadonlyMap<string, readonly Slip[]>, path: readonly string[]): boolean {
  if (path.includes(id)) return false;
  return (slips.get(id) ?? []).some((slip) => slip.payload.how === 'undo' && !isUndone(slip.id, slips, [...path, id]));
}

function withPayload(event: SiteEvent, payload: Record<string, unknown>): SiteEvent | null {
  const read = PAYLOADS[event.kind].safeParse(payload);
  return read.success ? ({ ...event, payload: read.data } as SiteEvent) : null;
}
