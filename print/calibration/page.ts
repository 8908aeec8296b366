import { type Day, ok, type Result, refuse, sayDayShort } from '../../src/core/index.ts';
import { textMark } from '../layout/blocks.ts';
import type { CodeMark, Mark, TextMark } from '../layout/marks.ts';
import { type Measure, PT_MM } from '../layout/measure.ts';
import { wrap } from '../pack/wrap.ts';
import { symbolParts } from '../qr/parts.ts';
import { moduleMm, type PrinterProfile, placeMm } from '../qr/profiles.ts';
import { type QrSymbol, QUIET_MODULES, qrSymbol } from '../qr/symbol.ts';
import { labelBox, labelsPerPage, type Stock } from '../stocks/stock.ts';
import { crossA, type Rulers, rulersOf } from './calibration.ts';
import { calibrationPayload } from './payload.ts';

/** What a calibration page is set with. */
export interface CalibrationSetting {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  readonly measure: Measure;
  readonly printedOn: Day;
}

/** A calibration page ready to draw, in mm from the page's corner. */
export interface CalibrationPage {
  readonly marks: readonly Mark[];
  readonly code: CodeMark;
  readonly symbol: QrSymbol;
  /** Every text on the page, top to bottom. */
  readonly lines: readonly string[];
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const ARM_MM = 2;
/** Words keep off the edge of a label that the code may reach. */
const FIRST_MM = 1;
/** Lower pages have one cross and one ruler. */
const LOW_MM = 45;
/** A code's blank rim stays this far inside the cut edge. */
const EDGE_MM = 0.5;
/** Modules of less are hard to read (as on labels). */
const LEAST_MODULE_MM = 0.33;
const THIN_MM = 0.1;
const THICK_MM = 0.2;
/** Between crosses, rulers, words and code. */
const GAP_MM = 1.5;
const TICK_MM = { long: 2, short: 1.2 } as const;
const SIZES_PT = [12, 11, 10, 9, 8, 7.5, 7] as const;
const LEADING = 1.22;
const LETTER_PT = 7;
/** The side of the code with its blank rim; less only where the page is small. */
const CODE_MM = 25.2;

/**
 * Sets a calibration page: crosses at the corners of the label grid, rulers across and down, what to do in words, and a
 * code that opens the entry for this stock and printer. Error: `piece-unfit` on stocks too small for words and code.
 */
export function calibrationPage(setting: CalibrationSetting): Result<CalibrationPage> {
  const { stock, printer, measure } = setting;
  const rulers = rulersOf(stock);
  const symbol = qrSymbol(calibrationPayload({ stock: stock.id, printer: printer.id }));
  const { inner, downX, rulerY } = roomOf(stock, rulers);
  const code = codeIn(inner, symbol, printer);
  const words = code && wordsBeside(inner, code, setting, rulers);
  if (code === null || words === null) return refuse('piece-unfit', { what: 'calibration page', stock: stock.id });
  const marks = [
    ...crosses(stock),
    ...rulerAcross([(stock.pageWidthMm - (rulers.acrossMm ?? 0)) / 2, rulerY], rulers.acrossMm),
    ...rulerDown([downX, inner.top], rulers.alongMm),
    ...words,
    letterA(stock, measure),
  ];
  const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
  const lines = texts.toSorted((a, b) => a.yMm - b.yMm || a.xMm - b.xMm).map(({ text }) => text);
  return ok({ marks, code, symbol, lines });
}

interface Room {
  /** For words and code. */
  readonly inner: Box;
  readonly downX: number;
  readonly rulerY: number;
}

/** On a low label there is one cross, and the code with its own blank rim may reach the edge. */
function roomOf(stock: Stock, { alongMm }: Rulers): Room {
  const [left, top] = crossA(stock);
  const { pageWidthMm: width, pageHeightMm: height, printerInsetMm: inset } = stock;
  const downX = left + ARM_MM + GAP_MM;
  const wordsX = alongMm === null ? downX : downX + TICK_MM.long + GAP_MM;
  if (isLow(stock)) {
    const rulerY = height - inset - TICK_MM.long - EDGE_MM;
    return { inner: { left: wordsX, top: EDGE_MM, right: width - EDGE_MM, bottom: rulerY - GAP_MM }, downX, rulerY };
  }
  const rulerY = height - Math.max(top, inset) - ARM_MM - TICK_MM.long - GAP_MM;
  const inner = { left: wordsX, top: top + ARM_MM, right: width - left - ARM_MM, bottom: rulerY - GAP_MM };
  return { inner, downX, rulerY };
}

function isLow({ pageHeightMm }: Stock): boolean {
  return pageHeightMm < LOW_MM;
}

/** Four crosses where there is room, else the one that is measured. */
function crosses(stock: Stock): readonly Mark[] {
  return crossPlaces(stock).flatMap(([xMm, yMm]) => [
    bar(xMm - ARM_MM, yMm - THIN_MM / 2, 2 * ARM_MM, THIN_MM),
    bar(xMm - THIN_MM / 2, yMm - ARM_MM, THIN_MM, 2 * ARM_MM),
  ]);
}

/** The corners of the label grid, or as near as the printer reaches; A is the first. */
export function crossPlaces(stock: Stock): readonly (readonly [xMm: number, yMm: number])[] {
  const [left, top] = crossA(stock);
  if (isLow(stock)) return [[left, top]];
  const [x, y, width, height] = labelBox(stock, labelsPerPage(stock));
  const least = stock.printerInsetMm + ARM_MM + THIN_MM;
  const right = Math.min(x + width, stock.pageWidthMm - least);
  const bottom = Math.min(y + height, stock.pageHeightMm - least);
  return [
    [left, top],
    [right, top],
    [left, bottom],
    [right, bottom],
  ];
}

function letterA(stock: Stock, measure: Measure): TextMark {
  const [x, y] = crossA(stock);
  const wording = measure.read('A', 'bold');
  return textMark({ wording, cut: 'bold', xMm: x + 0.4 }, LETTER_PT, y + 0.4 + measure.capHeight * LETTER_PT * PT_MM);
}

function rulerAcross([xMm, yMm]: readonly [number, number], lengthMm: number | null): readonly Mark[] {
  if (lengthMm === null) return [];
  const ticks = ticksOf(lengthMm).map(({ at, long }) =>
    bar(xMm + at, yMm, THICK_MM, long ? TICK_MM.long : TICK_MM.short),
  );
  return [bar(xMm, yMm, lengthMm, THICK_MM), ...ticks];
}

function rulerDown([xMm, yMm]: readonly [number, number], lengthMm: number | null): readonly Mark[] {
  if (lengthMm === null) return [];
  const ticks = ticksOf(lengthMm).map(({ at, long }) =>
    bar(xMm, yMm + at, long ? TICK_MM.long : TICK_MM.short, THICK_MM),
  );
  return [bar(xMm, yMm, THICK_MM, lengthMm), ...ticks];
}

/** The outer edges of the first and last tick are the length apart. */
function ticksOf(lengthMm: number): readonly { readonly at: number; readonly long: boolean }[] {
  return Array.from({ length: lengthMm / 10 + 1 }, (_none, step) => ({
    at: step * 10 - (step === 0 ? 0 : step * 10 === lengthMm ? THICK_MM : THICK_MM / 2),
    long: step % 5 === 0 || step * 10 === lengthMm,
  }));
}

function bar(xMm: number, yMm: number, widthMm: number, heightMm: number): Mark {
  return { kind: 'rule', xMm, yMm, widthMm, heightMm };
}

/** At the right, below the cross there; as large as on a card, or as the page lets it be. Null when it does not fit. */
function codeIn(inner: Box, symbol: QrSymbol, printer: PrinterProfile): CodeMark | null {
  const room = Math.min(CODE_MM, inner.bottom - inner.top, (inner.right - inner.left) * 0.6);
  const module = moduleMm(symbol.size, room, printer);
  const side = module * (symbol.size + 2 * QUIET_MODULES);
  if (side > room + 1e-6 || module < LEAST_MODULE_MM) return null;
  return {
    kind: 'code',
    xMm: placeMm(inner.right - side + module * QUIET_MODULES, printer),
    yMm: placeMm(inner.top + module * QUIET_MODULES, printer),
    moduleMm: module,
    insetModules: printer.insetDots / (module * printer.dotsPerMm),
    size: symbol.size,
    ...symbolParts(symbol),
  };
}

/** What to do, in the longest words and the largest type that stand beside the code, or on a large page below it too. */
function wordsBeside(
  inner: Box,
  code: CodeMark,
  setting: CalibrationSetting,
  rulers: Rulers,
): readonly TextMark[] | null {
  const quiet = code.moduleMm * QUIET_MODULES;
  const widthMm = code.xMm - quiet - inner.left - GAP_MM / 2;
  for (const paragraphs of wordings(setting, rulers))
    for (const sizePt of SIZES_PT) {
      const marks = setWords(paragraphs, inner, widthMm, sizePt, setting.measure);
      if (marks !== null) return marks;
    }
  return null;
}

function setWords(
  paragraphs: readonly string[],
  inner: Box,
  widthMm: number,
  sizePt: number,
  measure: Measure,
): readonly TextMark[] | null {
  const step = sizePt * PT_MM * LEADING;
  const marks: TextMark[] = [];
  let y = inner.top + FIRST_MM + measure.capHeight * sizePt * PT_MM;
  for (const [at, paragraph] of paragraphs.entries()) {
    const cut = at === 0 ? 'bold' : 'regular';
    for (const wording of wrap(paragraph, cut, { widthMm, sizePt, measure })) {
      if (wording.widthAtOnePt * sizePt > widthMm) return null;
      marks.push(textMark({ wording, cut, xMm: inner.left }, sizePt, y));
      y += step;
    }
    y += step * 0.35;
  }
  const lowest = marks.at(-1)?.yMm ?? y;
  return lowest + measure.descent * sizePt * PT_MM <= inner.bottom ? marks : null;
}

/** From long to short; the first paragraph is the heading. */
function wordings({ stock, printer, printedOn }: CalibrationSetting, rulers: Rulers): readonly (readonly string[])[] {
  const [x, y] = crossA(stock).map((mm) => String(Math.round(mm * 100) / 100));
  const about = `${stock.id} · ${printer.id} · ${sayDayShort(printedOn)}`;
  const { acrossMm, alongMm } = rulers;
  const across =
    acrossMm === null ? [] : [`The ruler across is ${acrossMm} mm long from end to end: how long is yours?`];
  const along = alongMm === null ? [] : [`The ruler down is ${alongMm} mm long from end to end: how long is yours?`];
  const short = [acrossMm === null ? '' : `across ${acrossMm}`, alongMm === null ? '' : `down ${alongMm}`];
  return [
    [
      'Calibration page',
      about,
      'Print it at actual size, not “fit to page”, on the paper that you print on. Measure in millimetres.',
      `The middle of cross A should be ${x} mm from the left edge of the paper and ${y} mm from its top edge. How much further right and further down is it? Left and up count as less than nothing.`,
      ...across,
      ...along,
      'Scan the code, or open Print, Calibration, and enter the four figures.',
    ],
    [
      'Calibration',
      about,
      `A: ${x} mm from the left, ${y} mm from the top?`,
      `Rulers: ${short.filter(Boolean).join(', ')} mm?`,
    ],
    [`A: ${x}, ${y} mm`, `${short.filter(Boolean).join(', ')} mm`, stock.id, printer.id],
  ];
}
