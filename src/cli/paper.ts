import { PRINTERS, type PrinterProfile, type Stock, slots, stockById } from '../../print/index.ts';
import { type Given, needed, oneOf, wholeOf } from './args.ts';
import { orRefuse, refusal } from './refused.ts';

/** On what to print, how, and where to. */
export interface PaperAsked {
  readonly stock: Stock;
  readonly printer: PrinterProfile | undefined;
  readonly first: number | undefined;
  readonly order: 'walk' | 'stack' | undefined;
  readonly out: string;
  readonly manifest: string;
}

const MOST_FIRST = 1000;

/**
 * Everything that can be wrong with the paper is refused before anything is read or written. Refusals: `option-missing`,
 * `option-value`, `stock-unknown`, `label-unknown`, `printer-unknown`.
 */
export function paperOf(given: Given): PaperAsked {
  const [out, manifest] = [needed(given, 'out'), needed(given, 'manifest')];
  const stock = orRefuse(stockById(needed(given, 'stock')));
  const order = oneOf(given, 'order', ['walk', 'stack']);
  const first = wholeOf(given, 'first', [1, MOST_FIRST]);
  orRefuse(slots(stock, 1, { first, order }));
  return { stock, printer: printerOf(given), first, order, out, manifest };
}

function printerOf(given: Given): PrinterProfile | undefined {
  const id = given.texts['printer'];
  if (id === undefined) return undefined;
  const found = PRINTERS.find((one) => one.id === id);
  if (found !== undefined) return found;
  throw refusal('printer-unknown', { printer: id, known: PRINTERS.map((one) => one.id).join(', ') });
}
