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
  let before: LogEvent | undefined;
  for (const event of history) {
    if (before !== undefined && inOrder(before, event) > 0) return false;
    before = event;
  }
  return true;
}

function hasTwins(events: readonly LogEvent[]): boolean {
  const ids = new Set<string>();
  for (const event of events) ids.add(event.id);
  return ids.size < events.length;
}

function withoutTwins(events: readonly LogEvent[]): readonly LogEvent[] {
  const byId = new Map<string, LogEvent>();
  for (const event of events) {
    const twin = byId.get(event.id);
    if (!twin || canonicalJson(event) < canonicalJson(twin)) byId.set(event.id, event);
  }
  return [...byId.values()].sort(inOrder);
}

/** The slips that count, by what they correct. */
function slipsByTarget(events: readonly LogEvent[]): ReadonlyMap<string, readonly Slip[]> {
  const slips = new Map<string, Slip[]>();
  for (const event of events) {
    if (event.kind !== 'slip-made' || !isKnown(event)) continue;
    add(slips, event);
  }
  return slips.size === 0 ? slips : withoutTakenBack(slips);
}

/**
 * Slips may correct slips. One is judged when all that correct it have been, from the last one backwards and without
 * calling itself, so that no chain is too long; a ring of slips, which only damage can make, is never judged and
 * corrects nothing.
 */
function withoutTakenBack(slips: ReadonlyMap<string, readonly Slip[]>): ReadonlyMap<string, readonly Slip[]> {
  const all = [...slips.values()].flat();
  const known = new Map(all.map((slip) => [slip.id as string, slip]));
  const waiting = new Map(all.map((slip) => [slip.id as string, slips.get(slip.id)?.length ?? 0]));
  const takenBack = new Set<string>();
  const ready = all.filter((slip) => waiting.get(slip.id) === 0);
  const counting = new Map<string, Slip[]>();
  // The list grows while it is walked: judging a slip may make the one that it corrects ready.
  for (const slip of ready) {
    const target = slip.payload.corrects;
    const stands = !takenBack.has(slip.id);
    if (stands) add(counting, slip);
    if (stands && slip.payload.how === 'undo') takenBack.add(target);
    const left = (waiting.get(target) ?? 0) - 1;
    waiting.set(target, left);
    const corrected = known.get(target);
    if (corrected !== undefined && left === 0) ready.push(corrected);
  }
  return counting;
}

function add(slips: Map<string, Slip[]>, slip: Slip): void {
  const same = slips.get(slip.payload.corrects);
  if (same === undefined) slips.set(slip.payload.corrects, [slip]);
  else same.push(slip);
}

function corrected(event: LogEvent, slips: ReadonlyMap<string, readonly Slip[]>): Entry {
  const valid = slips.get(event.id) ?? [];
  const undone = valid.some((slip) => slip.payload.how === 'undo');
  const amends = valid.filter((slip) => slip.payload.how === 'amend').sort(laterWriter);
  const last = amends.at(-1);
  const changed = last && isKnown(event) ? withPayload(event, last.payload.payload ?? {}) : null;
  return { event: changed ?? event, undone, amended: changed !== null };
}

function withPayload(event: SiteEvent, payload: Record<string, unknown>): SiteEvent | null {
  const read = PAYLOADS[event.kind].safeParse(payload);
  return read.success ? ({ ...event, payload: read.data } as SiteEvent) : null;
}
