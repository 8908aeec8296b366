import { textMark } from '../layout/blocks.ts';
import type { BarMark, Mark, TextMark } from '../layout/marks.ts';
import { type Measure, PT_MM } from '../layout/measure.ts';
import { type PrinterProfile, snapMm } from '../qr/profiles.ts';
import { EAN_MODULES, EAN_QUIET } from './ean13.ts';

/** A module of 100 %, and the least and most that a till takes: 80 to 200 % (GS1 General Specifications). */
const NOMINAL_MM = 0.33;
const LEAST = 0.8;
const MOST = 2;
/** Two pixels of a check at 150 dots per inch: with less a reader there misses numbers (measured), so it comes first if a printer has it. */
const LEAST_READ_MM = 0.335;
/** Guard bars are five modules longer than the others. */
const GUARD_MODULES = 5;
/** Between bars and digits, in modules. */
const DIGIT_GAP_MODULES = 1;
/** Six digits keep within so many of the 42 modules above them. */
const SIX_DIGITS_MODULES = 40;
const LARGEST_PT = 14;
const PIXEL_MM = 25.4 / 150;
const BEFORE = 0.05;

/** What an EAN-13 takes up: bars, blank rims and digits. */
export interface EanSize {
  readonly moduleMm: number;
  readonly widthMm: number;
  /** From the top of the bars to the foot of the digits. */
  readonly heightMm: number;
  /** Of the bars without the guards’ extra length. */
  readonly barHeightMm: number;
  readonly sizePt: number;
}

/**
 * Widths of a module that this printer can draw in whole dots, the best first: the least that is not under 101.5 %, then
 * smaller ones down to 80 %, then larger ones up to 200 %. At 203 dots per inch that is three dots, 114 %.
 */
export function eanModules({ dotsPerMm }: PrinterProfile): readonly number[] {
  const [least, most] = [Math.ceil(NOMINAL_MM * LEAST * dotsPerMm), Math.floor(NOMINAL_MM * MOST * dotsPerMm)];
  const all = Array.from({ length: Math.max(0, most - least + 1) }, (_none, at) => least + at);
  const ideal = all.find((dots) => dots >= LEAST_READ_MM * dotsPerMm - 1e-6) ?? most;
  const smaller = all.filter((dots) => dots < ideal).reverse();
  return [ideal, ...smaller, ...all.filter((dots) => dots > ideal)].map((dots) => dots / dotsPerMm);
}

/** The room that bars of this module and height take; the digits are as large as their half of the bars lets them be. */
export function eanSize(moduleMm: number, barHeightMm: number, measure: Measure): EanSize {
  const six = measure.read('000000', 'regular').widthAtOnePt;
  const sizePt = Math.min(LARGEST_PT, Math.floor(((SIX_DIGITS_MODULES * moduleMm) / six) * 10) / 10);
  return {
    moduleMm,
    barHeightMm,
    sizePt,
    widthMm: (EAN_QUIET.left + EAN_MODULES + EAN_QUIET.right) * moduleMm,
    heightMm: barHeightMm + DIGIT_GAP_MODULES * moduleMm + measure.capHeight * sizePt * PT_MM,
  };
}

/** Where the top left corner of the block with its blank rim is, in mm from the face's. */
export interface EanPlace {
  readonly xMm: number;
  readonly yMm: number;
}

/**
 * The marks of an EAN-13: its bars on the printer's dots, and its digits below them, the first one in the blank rim. The
 * place moves by up to half a dot. `digits` are thirteen; whether the check digit is right is for whoever made them.
 */
export function eanMarks(
  digits: string,
  size: EanSize,
  place: EanPlace,
  { printer, measure }: { readonly printer: PrinterProfile; readonly measure: Measure },
): readonly Mark[] {
  const { moduleMm, barHeightMm, sizePt } = size;
  const xMm = sharpMm(place.xMm + EAN_QUIET.left * moduleMm, printer);
  const yMm = snapMm(place.yMm, printer);
  const heightMm = snapMm(barHeightMm, printer);
  const bar: BarMark = {
    kind: 'bar',
    digits,
    xMm,
    yMm,
    moduleMm,
    heightMm,
    guardMm: heightMm + GUARD_MODULES * moduleMm,
    insetMm: printer.insetDots / printer.dotsPerMm,
  };
  const baseline = yMm + heightMm + DIGIT_GAP_MODULES * moduleMm + measure.capHeight * sizePt * PT_MM;
  const text = (said: string, from: number, across: number): TextMark => {
    const wording = measure.read(said, 'regular');
    const left = xMm + from * moduleMm + (across * moduleMm - wording.widthAtOnePt * sizePt) / 2;
    return textMark({ wording, cut: 'regular', xMm: left }, sizePt, baseline);
  };
  return [bar, text(digits.slice(0, 1), -9, 7), text(digits.slice(1, 7), 3, 42), text(digits.slice(7), 50, 42)];
}

/**
 * Of the nearest dots the one that lies best on the pixels of a check at 150 dots per inch, where a module is about two:
 * on an edge or just before it (measured: just behind it a reader misses one number in fifteen).
 */
function sharpMm(mm: number, printer: PrinterProfile): number {
  const dots = Math.round(mm * printer.dotsPerMm);
  const near = [0, 1, -1, 2, -2].map((more) => (dots + more) / printer.dotsPerMm);
  const off = (at: number) => Math.abs(at / PIXEL_MM + BEFORE - Math.round(at / PIXEL_MM + BEFORE));
  return near.reduce((best, at) => (off(at) < off(best) - 1e-6 ? at : best));
}

/** The bars without their blank rims, guards included, as x, y, width and height in mm from the face's corner. */
export function barBox({ xMm, yMm, moduleMm, guardMm }: BarMark): readonly [number, number, number, number] {
  return [xMm, yMm, EAN_MODULES * moduleMm, guardMm];
}
