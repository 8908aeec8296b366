import type { Day } from '../days.ts';
import { type EventOf, isKnown, type LogEvent } from '../events/index.ts';
import type { Facility, ItemRecord } from '../facility/index.ts';
import { csvText } from '../pack/index.ts';
import { numberOf } from './items.ts';
import { plainPrice } from './price.ts';

/** What is in the shop as CSV: one row an item, with its bar code's digits. */
export function stockCsv(facility: Facility, currency: string): string {
  const heads = [
    'id',
    'kind',
    'name',
    'number',
    'price',
    'currency',
    'left',
    'made',
    'sold',
    'gone',
    'counted_on',
    'edition',
  ];
  const items = [...facility.items.values()].sort((a, b) =>
    a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1,
  );
  return csvText([heads, ...items.map((item) => stockCells(item, currency))]);
}

function stockCells(item: ItemRecord, currency: string) {
  const { id, kind, name, priceMinor, left, made, sold, wasted, countedOn, edition } = item;
  const price = plainPrice(priceMinor, currency);
  return [id, kind, name, numberOf(item), price, currency, left, made, sold, wasted, countedOn, edition];
}

/** The sales of some days as CSV, in the order in which they happened; `events` are those that still count. */
export function salesCsv(
  facility: Facility,
  events: readonly LogEvent[],
  { from, to, currency }: { readonly from: Day; readonly to: Day; readonly currency: string },
): string {
  const heads = ['day', 'time_utc', 'id', 'name', 'count', 'price_each', 'sum', 'currency', 'by'];
  const sales = events.filter(
    (event): event is EventOf<'item-sold'> =>
      isKnown(event) && event.kind === 'item-sold' && event.day >= from && event.day <= to,
  );
  return csvText([heads, ...sales.map((sale) => saleCells(facility, sale, currency))]);
}

function saleCells(facility: Facility, { day, at, subjects, payload, keeper }: EventOf<'item-sold'>, currency: string) {
  const id = subjects[0] ?? null;
  const name = id === null ? null : (facility.items.get(id)?.name ?? null);
  const { count, priceMinor } = payload;
  const sum = plainPrice(count * priceMinor, currency);
  return [day, at.slice(11, 19), id, name, count, plainPrice(priceMinor, currency), sum, currency, keeper];
}
