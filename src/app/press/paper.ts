// Not by print's face: that would bring the PDF maker (half a megabyte) onto the page, and it runs in the worker only.
import { OFFICE_600, PRINTERS, type PrinterProfile } from '../../../print/qr/profiles.ts';
import { STOCKS } from '../../../print/stocks/list.ts';
import type { Order } from '../../../print/stocks/slots.ts';
import { labelsPerPage, type Stock } from '../../../print/stocks/stock.ts';

/** What a card can be printed on: the sheets and single cards that a whole card fits on. */
const CARD_STOCKS = ['a4-85x54', 'a4-70x52', 'letter-88.9x50.8', 'card-85x54', 'card-70x52'];

export const PAPERS: readonly Stock[] = STOCKS.filter(({ id }) => CARD_STOCKS.includes(id));

/** The paper in the printer, as this device remembers it. */
export interface Paper {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  readonly order: Order;
  /** The first free label of the sheet on top, from 1. */
  readonly first: number;
}

const KEY = 'press';

/** What was in the printer last time; anything unreadable is the first of each list. */
export function rememberedPaper(storage: Storage = localStorage): Paper {
  const [id, printer, order, first] = (storage.getItem(KEY) ?? '').split(' ');
  const stock = PAPERS.find((one) => one.id === id) ?? PAPERS[0];
  if (stock === undefined) throw new RangeError('no stock takes a card');
  const label = Number(first);
  return {
    stock,
    printer: PRINTERS.find((one) => one.id === printer) ?? OFFICE_600,
    order: order === 'stack' ? 'stack' : 'walk',
    first: Number.isInteger(label) && label >= 1 && label <= labelsPerPage(stock) ? label : 1,
  };
}

export function rememberPaper({ stock, printer, order, first }: Paper, storage: Storage = localStorage): void {
  storage.setItem(KEY, [stock.id, printer.id, order, first].join(' '));
}

/** The first free label once so many pieces are on the paper; a full sheet begins anew. */
export function nextFirst({ stock, first }: Paper, pieces: number): number {
  return ((first - 1 + pieces) % labelsPerPage(stock)) + 1;
}
