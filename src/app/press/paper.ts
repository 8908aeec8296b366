// Not by print's face: that would bring the PDF maker (half a megabyte) onto the page, and it runs in the worker only.
import { OFFICE_600, PRINTERS, type PrinterProfile } from '../../../print/qr/profiles.ts';
import { STOCKS } from '../../../print/stocks/list.ts';
import type { Order } from '../../../print/stocks/slots.ts';
import { labelsPerPage, type Stock } from '../../../print/stocks/stock.ts';
import type { What } from './batch.ts';

/** What a card can be printed on: the sheets and single cards that a whole card fits on. */
const CARD_STOCKS = ['a4-85x54', 'a4-70x52', 'letter-88.9x50.8', 'card-85x54', 'card-70x52'];
const CARD_PAPERS: readonly Stock[] = STOCKS.filter(({ id }) => CARD_STOCKS.includes(id));

/** The stock that a kind is laid on until the keeper chooses another. */
const USUAL: Readonly<Record<What, string>> = {
  card: 'a4-85x54',
  place: 'a4-63.5x38.1',
  clutch: 'a4-85x54',
  egg: 'a4-38.1x21.2',
  pairing: 'a4-85x54',
  treatment: 'a4-105x148',
  tube: 'a4-105x148',
  lot: 'a4-99.1x38.1',
  ware: 'a4-63.5x38.1',
  shed: 'a4-85x54',
  shelf: 'a4-99.1x38.1',
  hang: 'a4-63.5x38.1',
  sale: 'a4-85x54',
  exhibit: 'a4-105x148',
  stamps: 'a4-85x54',
  'layout-test': 'a4-85x54',
};

/** The stocks that a kind can be printed on; what does not fit on one is named when it is laid out. */
export function papersFor(what: What): readonly Stock[] {
  return what === 'card' ? CARD_PAPERS : STOCKS;
}

/** The paper in the printer, as this device remembers it. */
export interface Paper {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  readonly order: Order;
  /** The first free label of the sheet on top, from 1. */
  readonly first: number;
}

const KEY = 'press';
const keyOf = (what: What): string => (what === 'card' ? KEY : `${KEY}-${what}`);

/** What was in the printer last time for this kind; anything unreadable is the usual of each list. */
export function rememberedPaper(what: What, storage: Storage = localStorage): Paper {
  const [id, printer, order, first] = (storage.getItem(keyOf(what)) ?? '').split(' ');
  const papers = papersFor(what);
  const stock = papers.find((one) => one.id === id) ?? papers.find((one) => one.id === USUAL[what]);
  if (stock === undefined) throw new RangeError(`no stock takes a ${what}`);
  const label = Number(first);
  return {
    stock,
    printer: PRINTERS.find((one) => one.id === printer) ?? OFFICE_600,
    order: order === 'stack' ? 'stack' : 'walk',
    first: Number.isInteger(label) && label >= 1 && label <= labelsPerPage(stock) ? label : 1,
  };
}

export function rememberPaper(
  what: What,
  { stock, printer, order, first }: Paper,
  storage: Storage = localStorage,
): void {
  storage.setItem(keyOf(what), [stock.id, printer.id, order, first].join(' '));
}

/** The first free label once so many pieces are on the paper; a full sheet begins anew. */
export function nextFirst({ stock, first }: Paper, pieces: number): number {
  return ((first - 1 + pieces) % labelsPerPage(stock)) + 1;
}
