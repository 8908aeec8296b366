import {
  type Calibration,
  calibrationFor,
  type Flip,
  findPrinter,
  findStock,
  OFFICE_600,
  PRINTERS,
  type PrinterProfile,
  type Stock,
  slots,
} from '../../print/index.ts';
import { NO_PAPER, type PaperRecord } from '../core/index.ts';
import { type Given, needed, type Options, oneOf, wholeOf } from './args.ts';
import { orRefuse, refusal } from './refused.ts';

/** On what to print, how, and where to. */
export interface PaperAsked {
  readonly stock: Stock;
  readonly printer: PrinterProfile | undefined;
  /** What the site knows of this printer with this stock. */
  readonly calibration: Calibration | undefined;
  readonly first: number | undefined;
  readonly order: 'walk' | 'stack' | undefined;
  readonly flip: Flip | undefined;
  readonly cutMarks: boolean;
  readonly pages: readonly [from: number, to: number] | undefined;
  readonly out: string;
  readonly manifest: string;
}

const MOST_FIRST = 1000;
/** The ids of a site's own stocks and printers begin so. */
const OWN = 'own-';

/** The options that say on what to print. */
export const PAPER_OPTIONS: Options = {
  stock: 'text',
  first: 'text',
  order: 'text',
  printer: 'text',
  flip: 'text',
  'cut-marks': 'bare',
  pages: 'text',
  out: 'text',
  manifest: 'text',
};

/** What the help says of them. */
export const PAPER_HELP = `  --stock ID       the paper, ours or the site's own (own-…); an unknown id says which there are
  --first N        the first free label of a used sheet, from 1
  --order ORDER    walk: in walking order over the sheet (default);  stack: so that cut stacks are in that order
  --flip EDGE      long or short: second faces go on the backs, for a printer that turns sheets over that edge
  --cut-marks      marks in the margins to cut along
  --pages A-B      only these pages of the run, as they are in the whole run
  --printer ID     ${PRINTERS.map(({ id, name }) => `${id}: ${name}`).join('\n                   ')}
                   or one of the site's own (own-…); what its calibration page showed is set right`;

/**
 * Everything that can be wrong with the paper is refused before anything is read or written, except what only the site
 * knows: give its paper to what this returns. Refusals: `option-missing`, `option-value`, `stock-unknown` and what is wrong
 * with an own stock, `label-unknown`, `printer-unknown`.
 */
export function paperOf(given: Given): (paper: PaperRecord) => PaperAsked {
  const [out, manifest, stockId] = [needed(given, 'out'), needed(given, 'manifest'), needed(given, 'stock')];
  const order = oneOf(given, 'order', ['walk', 'stack']);
  const flip = oneOf(given, 'flip', ['long', 'short']);
  const first = wholeOf(given, 'first', [1, MOST_FIRST]);
  const pages = pagesOf(given);
  const cutMarks = given.bare.has('cut-marks');
  const asked = (paper: PaperRecord): PaperAsked => {
    const stock = orRefuse(findStock(stockId, paper));
    orRefuse(slots(stock, 1, { first, order }));
    const printer = printerOf(given, paper);
    const calibration = calibrationFor(paper, printer?.id ?? OFFICE_600.id, stock.id);
    return { stock, printer, calibration, first, order, flip, cutMarks, pages, out, manifest };
  };
  if (![stockId, given.texts['printer'] ?? ''].some((id) => id.startsWith(OWN))) asked(NO_PAPER);
  return asked;
}

/** The printer of `--printer`, ours or the site's own. Refusal: `printer-unknown`. */
export function printerOf(given: Given, paper: PaperRecord): PrinterProfile | undefined {
  const id = given.texts['printer'];
  return id === undefined ? undefined : orRefuse(findPrinter(id, paper));
}

function pagesOf(given: Given): readonly [number, number] | undefined {
  const text = given.texts['pages'];
  if (text === undefined) return undefined;
  const [, from, to] = /^([1-9]\d{0,4})-([1-9]\d{0,4})$/.exec(text) ?? [];
  if (from !== undefined && to !== undefined && Number(from) <= Number(to)) return [Number(from), Number(to)];
  throw refusal('option-value', { option: '--pages', text, wanted: 'two pages of the run, such as 8-12' });
}
