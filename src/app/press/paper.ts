// Not by print's face: that would bring the PDF maker (half a megabyte) onto the page, and it runs in the worker only.
import type { Calibration } from '../../../print/calibration/calibration.ts';
import { OFFICE_600, type PrinterProfile } from '../../../print/qr/profiles.ts';
import { calibrationFor, printersOf, stocksOf } from '../../../print/stocks/own.ts';
import type { Flip, Order } from '../../../print/stocks/slots.ts';
import { labelsPerPage, type Stock, takesCards } from '../../../print/stocks/stock.ts';
import type { PaperRecord } from '../../core/index.ts';
import type { What } from './batch.ts';

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

/** What of the site's paper a choice is made from. */
type SitePaper = Pick<PaperRecord, 'stocks' | 'printers' | 'calibrations'>;

/** The stocks that a kind can be printed on, ours and the site's; what does not fit on one is named when it is laid out. */
export function papersFor(what: What, site: SitePaper): readonly Stock[] {
  const all = stocksOf(site);
  return what === 'card' ? all.filter(takesCards) : all;
}

/** Pages of a run, from and to, both from 1. */
export type Pages = readonly [from: number, to: number];

/** The paper in the printer as this device remembers it, by the ids of what the site knows. */
export interface KeptPaper {
  readonly stock: string;
  readonly printer: string;
  readonly order: Order;
  /** The first free label of the sheet on top, from 1. */
  readonly first: number;
  /** The edge over which the printer turns its sheets; null for printing on fronts only. */
  readonly flip: Flip | null;
  readonly cutMarks: boolean;
}

/** The paper in the printer. */
export interface Paper extends Omit<KeptPaper, 'stock' | 'printer'> {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  /** What a calibration page showed of the two. */
  readonly calibration: Calibration | undefined;
  /** Only these pages of the run; null for all. The next run is another one, so they are not remembered. */
  readonly pages: Pages | null;
}

const KEY = 'press';
const keyOf = (what: What): string => (what === 'card' ? KEY : `${KEY}-${what}`);

/** What was in the printer last time for this kind. */
export function rememberedPaper(what: What, storage: Storage = localStorage): KeptPaper {
  const [stock, printer, order, first, flip, cutMarks] = (storage.getItem(keyOf(what)) ?? '').split(' ');
  return {
    stock: stock || USUAL[what],
    printer: printer || OFFICE_600.id,
    order: order === 'stack' ? 'stack' : 'walk',
    first: Number(first),
    flip: flip === 'long' || flip === 'short' ? flip : null,
    cutMarks: cutMarks === 'cut',
  };
}

export function rememberPaper(what: What, kept: KeptPaper, storage: Storage = localStorage): void {
  const { stock, printer, order, first, flip, cutMarks } = kept;
  storage.setItem(keyOf(what), [stock, printer, order, first, flip ?? 'front', cutMarks ? 'cut' : 'whole'].join(' '));
}

/** What is remembered, looked up in what the site has now; whatever it has no more is the usual of each list. */
export function laidPaper(what: What, kept: KeptPaper, pages: Pages | null, site: SitePaper): Paper {
  const papers = papersFor(what, site);
  const stock = papers.find(({ id }) => id === kept.stock) ?? papers.find(({ id }) => id === USUAL[what]);
  if (stock === undefined) throw new RangeError(`no stock takes a ${what}`);
  const printer = printersOf(site).find(({ id }) => id === kept.printer) ?? OFFICE_600;
  const isLabel = Number.isInteger(kept.first) && kept.first >= 1 && kept.first <= labelsPerPage(stock);
  const calibration = calibrationFor(site, printer.id, stock.id);
  return { ...kept, stock, printer, calibration, first: isLabel ? kept.first : 1, pages };
}

/** What is remembered of a paper. */
export function keptOf({ stock, printer, order, first, flip, cutMarks }: Paper): KeptPaper {
  return { stock: stock.id, printer: printer.id, order, first, flip, cutMarks };
}

/** The paper as print takes it. */
export function jobPaper({ stock, printer, calibration, order, first, flip, cutMarks, pages }: Paper) {
  return { stock, printer, calibration, order, first, cutMarks, flip: flip ?? undefined, pages: pages ?? undefined };
}

/**
 * The first free label once so many faces are on the paper; a full sheet begins anew. Pages after a run's first begin at
 * a whole sheet. Where two faces share a label the count of faces says nothing of labels: then it is a new sheet.
 */
export function nextFirst({ stock, first, flip, pages }: Paper, pieces: number): number {
  if (flip !== null) return 1;
  const begins = pages === null || pages[0] === 1 ? first : 1;
  return ((begins - 1 + pieces) % labelsPerPage(stock)) + 1;
}
