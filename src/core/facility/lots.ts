import type { Day } from '../days.ts';
import { lastMsOf, type SiteEvent } from '../events/index.ts';
import type { Id } from '../ids.ts';
import { latest } from './latest.ts';

/** What one feeding day took out of a lot, and what of it was thrown away thawed. */
export interface LotSession {
  /** The day on which the prey is fed. */
  readonly day: Day;
  readonly used: number;
  readonly thrown: number;
}

/** So many feeding days are kept in the record; the log holds all. */
export const KEPT_SESSIONS = 7;

/** A lot in the freezer. */
export interface LotRecord {
  readonly id: Id;
  readonly prey: string;
  readonly eachG: readonly [number, number];
  readonly received: number;
  readonly receivedOn: Day;
  readonly useBy: Day | null;
  readonly source: string | null;
  /** What the prey was treated with on the outside, as somebody wrote it; null if nobody did. */
  readonly topical: string | null;
  /** The last count, or what came if nobody counted, less what was thawed or thrown away frozen since. */
  readonly left: number;
  readonly used: number;
  readonly wasted: number;
  readonly countedOn: Day | null;
  /** The latest feeding days that took from it, oldest first. */
  readonly sessions: readonly LotSession[];
  readonly lastMs: Readonly<Record<string, number>>;
}

/** The lot that these events are about; null if none received it. */
export function lotRecord(id: Id, events: readonly SiteEvent[]): LotRecord | null {
  const got = latest(events, 'lot-received');
  if (got === undefined) return null;
  const { prey, eachG, count, useBy, source, topical } = got.payload;
  const own = events.filter((event) => event.subjects[0] === id);
  return {
    id,
    prey,
    eachG,
    received: count,
    receivedOn: got.day,
    useBy: (useBy as Day | undefined) ?? null,
    source: source ?? null,
    topical: topical ?? null,
    ...whatIsLeft(count, own),
    sessions: sessionsOf(own),
    lastMs: lastMsOf(own),
  };
}

/** A count begins anew: what was thawed before it is in it already. What is thrown away thawed had left the freezer before. */
function whatIsLeft(received: number, events: readonly SiteEvent[]) {
  let [left, used, wasted] = [received, 0, 0];
  let countedOn: Day | null = null;
  for (const event of events) {
    if (event.kind === 'stock-counted') [left, countedOn] = [event.payload.count, event.day];
    if (event.kind === 'lot-used') used += event.payload.count;
    if (event.kind === 'lot-wasted') wasted += event.payload.count;
    const isOut = event.kind === 'lot-used' || (event.kind === 'lot-wasted' && event.payload.thawed !== true);
    if (isOut) left = Math.max(0, left - event.payload.count);
  }
  return { left, used, wasted, countedOn };
}

function sessionsOf(events: readonly SiteEvent[]): readonly LotSession[] {
  const days = new Map<Day, LotSession>();
  const add = (day: Day, used: number, thrown: number): void => {
    const known = days.get(day);
    days.set(day, { day, used: (known?.used ?? 0) + used, thrown: (known?.thrown ?? 0) + thrown });
  };
  for (const event of events) {
    if (event.kind !== 'lot-used' && event.kind !== 'lot-wasted') continue;
    const day = (event.payload.forDay as Day | undefined) ?? event.day;
    if (event.kind === 'lot-used') add(day, event.payload.count, 0);
    else if (event.payload.thawed === true) add(day, 0, event.payload.count);
  }
  return [...days.values()].sort((a, b) => (a.day < b.day ? -1 : 1)).slice(-KEPT_SESSIONS);
}
