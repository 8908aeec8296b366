import type { Day } from '../days.ts';
import { laterWriter, type Payload, type SiteEvent } from '../events/index.ts';
import { type RunRecord, runsOf } from './printRuns.ts';

/** What the site knows of its own paper and printers, and how far its print runs have come. */
export interface PaperRecord {
  readonly stocks: readonly Payload<'own-stock-set'>[];
  readonly printers: readonly Payload<'own-printer-set'>[];
  readonly calibrations: readonly CalibrationRecord[];
  /** The latest runs that are not all on paper, oldest first, as many as {@link runsOf} keeps. */
  readonly runs: readonly RunRecord[];
}

/** What a calibration page showed, with the day on which somebody measured it. */
export interface CalibrationRecord extends Payload<'printer-calibrated'> {
  readonly day: Day;
}

/** A site that has only our paper. */
export const NO_PAPER: PaperRecord = { stocks: [], printers: [], calibrations: [], runs: [] };

/** Each own stock, printer and calibration by its last writer, and the latest runs. */
export function paperRecord(events: readonly SiteEvent[]): PaperRecord {
  const stocks = lastOfEach(events, 'own-stock-set', ({ stock }) => stock).map(({ payload }) => payload);
  const printers = lastOfEach(events, 'own-printer-set', ({ printer }) => printer).map(({ payload }) => payload);
  const calibrations = lastOfEach(events, 'printer-calibrated', ({ printer, stock }) => `${printer} ${stock}`);
  return {
    stocks: stocks.filter(({ removed }) => removed !== true),
    printers: printers.filter(({ removed }) => removed !== true),
    calibrations: calibrations.map(({ payload, day }) => ({ ...payload, day })),
    runs: runsOf(events),
  };
}

function lastOfEach<K extends 'own-stock-set' | 'own-printer-set' | 'printer-calibrated'>(
  events: readonly SiteEvent[],
  kind: K,
  keyOf: (payload: Payload<K>) => string,
): readonly { readonly payload: Payload<K>; readonly day: Day }[] {
  const last = new Map<string, SiteEvent>();
  for (const event of events) {
    if (event.kind !== kind) continue;
    const key = keyOf(event.payload as Payload<K>);
    const before = last.get(key);
    if (before === undefined || laterWriter(before, event) < 0) last.set(key, event);
  }
  return [...last]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { payload, day }]) => ({ payload: payload as Payload<K>, day }));
}
