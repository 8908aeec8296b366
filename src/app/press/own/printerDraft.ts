import { moduleMm, type PrinterProfile } from '../../../../print/qr/profiles.ts';
import { type Payload, type Problem, problem } from '../../../core/index.ts';

export type PrinterField = 'name' | 'dots' | 'insetDots';
export type DotsPer = 'inch' | 'mm';

/** A printer of the site's own as it stands on the form, all of it as typed. */
export type PrinterText = Readonly<Record<PrinterField, string>> & {
  readonly per: DotsPer;
};

/** Dots that printers commonly have (203 and 203.2 an inch are two printers: 7.992 and 8 a mm); the dots per inch, and in words. */
export const READY_DOTS: readonly (readonly [dpi: string, words: string])[] = [
  ['203', '203 dots per inch'],
  ['203.2', '203.2 dots per inch, which is 8 per mm'],
  ['300', '300 dots per inch'],
  ['304.8', '304.8 dots per inch, which is 12 per mm'],
  ['600', '600 dots per inch'],
];

const INCH_MM = 25.4;
/** What the log takes: coarser, and a code would be larger than a card; finer, and no printer is. */
const DOTS_PER_MM = { least: 4, most: 100 } as const;
const MOST_INSET = 1;
const LONGEST_NAME = 80;
/** A tub card's code with the site's address in it, and the room that it has with its blank rim. */
const CARD_CODE = { modules: 25, roomMm: 25.2 } as const;

/** A printer, or every problem with the line at which it stands. */
export function printerFrom(
  text: PrinterText,
  id: string,
): { readonly printer: PrinterProfile | null; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const name = text.name.trim().slice(0, LONGEST_NAME);
  if (name === '') problems.push(problem('text-missing', { what: 'name of the printer' }, 'name'));
  const dots = readFigure(text.dots);
  if (dots === null) problems.push(figureProblem(text.dots, '203 or 203.2', 'dots'));
  const dotsPerMm = dots === null ? null : text.per === 'inch' ? dots / INCH_MM : dots;
  if (dotsPerMm !== null && !(dotsPerMm >= DOTS_PER_MM.least && dotsPerMm <= DOTS_PER_MM.most))
    problems.push(problem('printer-dots', dotsWords(text), 'dots'));
  const insetDots = readFigure(text.insetDots);
  if (insetDots === null) problems.push(figureProblem(text.insetDots, '0.25', 'insetDots'));
  else if (insetDots > MOST_INSET)
    problems.push(problem('printer-inset', { dots: text.insetDots.trim() }, 'insetDots'));
  const isWhole = problems.length === 0 && dotsPerMm !== null && insetDots !== null;
  return { printer: isWhole ? { id, name, dotsPerMm, insetDots } : null, problems };
}

/** What the log keeps. */
export function printerPayload({ id, name, dotsPerMm, insetDots }: PrinterProfile): Payload<'own-printer-set'> {
  return { printer: id, name, dotsPerMm, insetDots };
}

/** A printer as the form shows it: in dots per inch, rounded to what a maker would write. */
export function textOfPrinter({ name, dotsPerMm, insetDots }: Omit<PrinterProfile, 'id'>): PrinterText {
  return { name, dots: String(rounded(dotsPerMm * INCH_MM)), per: 'inch', insetDots: String(insetDots) };
}

/** What a printer's dots mean for a card: the size of one, and of a code's smallest part. */
export function sayPrinter(printer: PrinterProfile): string {
  const module = moduleMm(CARD_CODE.modules, CARD_CODE.roomMm, printer);
  const dots = Math.round(module * printer.dotsPerMm);
  const side = rounded(module * CARD_CODE.modules);
  return `One dot is ${rounded(1 / printer.dotsPerMm)} mm. A tub card’s code has ${dots} dots to a square and is ${side} mm wide.`;
}

/** Digits with a point or a comma; null for all else. */
function readFigure(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  return /^\d{1,5}(\.\d{1,6})?$/.test(plain) ? Number(plain) : null;
}

function figureProblem(text: string, example: string, path: PrinterField): Problem {
  const what = path === 'dots' ? 'number of dots' : 'figure for the edges';
  return text.trim() === ''
    ? problem('text-missing', { what }, path)
    : problem('not-a-number', { text: text.trim(), example }, path);
}

function dotsWords({ dots, per }: PrinterText) {
  const factor = per === 'inch' ? INCH_MM : 1;
  const [least, most] = [Math.ceil(DOTS_PER_MM.least * factor), Math.floor(DOTS_PER_MM.most * factor)];
  return { dots: `${dots.trim()} dots per ${per}`, least, most };
}

function rounded(figure: number): number {
  return Math.round(figure * 1000) / 1000;
}
