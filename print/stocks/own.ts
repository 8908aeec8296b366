import { ok, type PaperRecord, type Payload, type Result, refuse } from '../../src/core/index.ts';
import type { Calibration } from '../calibration/calibration.ts';
import { PRINTERS, type PrinterProfile } from '../qr/profiles.ts';
import { STOCKS } from './list.ts';
import { checkStock, type Stock } from './stock.ts';

/** A stock of the site's own as print uses it. Errors: `stock-overlaps`, `stock-off-page`. */
export function ownStock(set: Payload<'own-stock-set'>): Result<Stock> {
  const { stock, typedIn: _typedIn, removed: _removed, ...lengths } = set;
  return checkStock({ id: stock, ...lengths });
}

/** A printer of the site's own as print uses it. */
export function ownPrinter({ printer, name, dotsPerMm, insetDots }: Payload<'own-printer-set'>): PrinterProfile {
  return { id: printer, name, dotsPerMm, insetDots };
}

/** Every stock that a site can print on: ours, then its own, as far as they can be laid out. */
export function stocksOf({ stocks }: Pick<PaperRecord, 'stocks'>): readonly Stock[] {
  const own = stocks.map(ownStock);
  return [...STOCKS, ...own.flatMap((one) => (one.ok ? [one.value] : []))];
}

/** Every printer that a site can print with: ours, then its own. */
export function printersOf({ printers }: Pick<PaperRecord, 'printers'>): readonly PrinterProfile[] {
  return [...PRINTERS, ...printers.map(ownPrinter)];
}

/** The stock with that id, ours or the site's own. Errors: `stock-unknown`, `stock-overlaps`, `stock-off-page`. */
export function findStock(id: string, paper: Pick<PaperRecord, 'stocks'>): Result<Stock> {
  const own = paper.stocks.find(({ stock }) => stock === id);
  if (own !== undefined) return ownStock(own);
  const all = stocksOf(paper);
  const found = all.find((stock) => stock.id === id);
  return found ? ok(found) : refuse('stock-unknown', { stock: id, known: all.map((stock) => stock.id).join(', ') });
}

/** The printer with that id, ours or the site's own. Error: `printer-unknown`. */
export function findPrinter(id: string, paper: Pick<PaperRecord, 'printers'>): Result<PrinterProfile> {
  const all = printersOf(paper);
  const found = all.find((printer) => printer.id === id);
  return found ? ok(found) : refuse('printer-unknown', { printer: id, known: all.map((one) => one.id).join(', ') });
}

/** What a calibration page showed of a printer with a stock; undefined when none was printed. */
export function calibrationFor(
  paper: Pick<PaperRecord, 'calibrations'>,
  printerId: string,
  stockId: string,
): Calibration | undefined {
  const found = paper.calibrations.find(({ printer, stock }) => printer === printerId && stock === stockId);
  if (found === undefined) return undefined;
  const { offsetXMm, offsetYMm, scaleX, scaleY } = found;
  return { offsetXMm, offsetYMm, scaleX, scaleY };
}
