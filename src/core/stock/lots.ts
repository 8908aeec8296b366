import { addDays, type Day, daysBetween, laterDay } from '../days.ts';
import type { Facility, LotRecord } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { ok, type Result, refuse } from '../problems.ts';

/**
 * Rule CARE-LOT: oldest lot first; prey keeps 6 to 12 months at −18 °C (S, a source of low quality). A lot without a day
 * of its own is past it after the second figure, and any lot is old from the first one on.
 */
export const LOT_LIFE_DAYS = [183, 365] as const;

/** Stands beside whatever says how much to thaw or to order. */
export const STOCK_CAUTION =
  'Refused thawed prey is for the same session only, never refrozen. Freezing does not kill germs: keep prey out of kitchens and wash your hands.';

/** A lot with something left in it, as it stands on a day. */
export interface StockLot {
  readonly id: Id;
  readonly prey: string;
  readonly eachG: readonly [number, number];
  readonly left: number;
  readonly receivedOn: Day;
  /** The last day on which it may be fed. */
  readonly lastDay: Day;
  /** True where nobody wrote a day and the rule stands in. */
  readonly isAssumed: boolean;
  readonly state: 'good' | 'old' | 'past';
  readonly source: string | null;
  readonly topical: string | null;
}

/** What is in the freezer on a day by prey class: the lots that hold something, the oldest first, with those past their day. */
export function lotsInFreezer(facility: Facility, on: Day): ReadonlyMap<string, readonly StockLot[]> {
  const found = [...facility.lots.values()].filter((lot) => lot.left > 0).map((lot) => stockLot(lot, on));
  const classes = [...new Set(found.map((lot) => lot.prey))].sort();
  return new Map(classes.map((prey) => [prey, found.filter((lot) => lot.prey === prey).sort(olderFirst)]));
}

/** The last day on which a lot may be fed: the one written on it, else the one of the rule. */
export function lastDayOf(lot: LotRecord): Day {
  return lot.useBy ?? addDays(lot.receivedOn, LOT_LIFE_DAYS[1]);
}

/** Which lots to take from, what is then still missing, and what lies there past its day. */
export interface Taking {
  readonly take: readonly { readonly lot: Id; readonly count: number }[];
  readonly short: number;
  readonly past: readonly StockLot[];
}

/** So many items of a class from these lots, oldest first; nothing from a lot past its day. Errors: `not-whole`. */
export function useFirst(lots: readonly StockLot[], prey: string, count: number): Result<Taking> {
  if (!Number.isInteger(count) || count < 1) return refuse('not-whole', { what: 'count of prey' }, 'count');
  const ofClass = lots.filter((lot) => lot.prey === prey).sort(olderFirst);
  const take: { lot: Id; count: number }[] = [];
  let wanted = count;
  for (const lot of ofClass) {
    const taken = lot.state === 'past' ? 0 : Math.min(lot.left, wanted);
    if (taken > 0) take.push({ lot: lot.id, count: taken });
    wanted -= taken;
  }
  return ok({ take, short: wanted, past: ofClass.filter((lot) => lot.state === 'past') });
}

/** A lot as it stands on a day, even when it is empty. */
export function stockLot(lot: LotRecord, on: Day): StockLot {
  const { id, prey, eachG, left, receivedOn, source, topical } = lot;
  const lastDay = lastDayOf(lot);
  const isOld = daysBetween(receivedOn, on) >= LOT_LIFE_DAYS[0];
  const state = on > lastDay ? 'past' : isOld ? 'old' : 'good';
  return { id, prey, eachG, left, receivedOn, lastDay, isAssumed: lot.useBy === null, state, source, topical };
}

/** Of lots of one day the one that ends sooner goes first. */
function olderFirst(a: StockLot, b: StockLot): number {
  if (a.receivedOn !== b.receivedOn) return a.receivedOn < b.receivedOn ? -1 : 1;
  if (a.lastDay !== b.lastDay) return laterDay(a.lastDay, b.lastDay) === b.lastDay ? -1 : 1;
  return a.id < b.id ? -1 : 1;
}
