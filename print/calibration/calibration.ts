import { ok, type Result, refuse } from '../../src/core/index.ts';
import { type PrinterProfile, placeMm } from '../qr/profiles.ts';
import { contentInset, labelBox, labelsPerPage, type Stock } from '../stocks/stock.ts';

/**
 * What a calibration page showed of one printer with one stock: how far right of and below its place the cross A came
 * out, and how many times as long as drawn everything is.
 */
export interface Calibration {
  readonly offsetXMm: number;
  readonly offsetYMm: number;
  readonly scaleX: number;
  readonly scaleY: number;
}

/** A printer that puts everything where it was drawn. */
export const TRUE: Calibration = { offsetXMm: 0, offsetYMm: 0, scaleX: 1, scaleY: 1 };

/** What a keeper measures on a calibration page, in mm; left and up are negative. */
export interface Measured {
  readonly rightMm: number;
  readonly downMm: number;
  /** Length on paper of the ruler across; null where the page has none. */
  readonly acrossMm: number | null;
  /** Of the ruler down the page. */
  readonly alongMm: number | null;
}

/** The rulers of a calibration page as they are drawn; null where the stock is too small for one that tells anything. */
export interface Rulers {
  readonly acrossMm: number | null;
  readonly alongMm: number | null;
}

const LONGEST_MM = 100;
const SHORTEST_MM = 20;
const STEP_MM = 10;
/** What a ruler down a page leaves to the one across. */
const RULER_MM = 8;
/** Crosses stand this far inside what the printer reaches. */
const CROSS_MM = 2.5;
/** More than this is no drift: the paper lies wrong, or another size is set. */
const MOST_OFFSET_MM = 10;
const MOST_SCALE = 0.1;
/** 110 mm for 100 is a tenth, whatever the last binary place says. */
const SLACK = 1e-9;

/** The rulers that a stock has room for: 100 mm, or as many whole centimetres as there is room. */
export function rulersOf(stock: Stock): Rulers {
  const length = (sideMm: number): number | null => {
    const room = sideMm - 2 * (stock.printerInsetMm + CROSS_MM) - RULER_MM;
    const whole = Math.min(LONGEST_MM, Math.floor(room / STEP_MM) * STEP_MM);
    return whole >= SHORTEST_MM ? whole : null;
  };
  return { acrossMm: length(stock.pageWidthMm + RULER_MM), alongMm: length(stock.pageHeightMm) };
}

/** Where the cross A stands, in mm from the page's top left corner: the first label's corner, or as near as can be printed. */
export function crossA(stock: Stock): readonly [xMm: number, yMm: number] {
  const least = stock.printerInsetMm + CROSS_MM;
  return [Math.max(stock.firstXMm, least), Math.max(stock.firstYMm, least)];
}

/** The calibration that a keeper's measurements make. Error: `calibration-wrong`, at the figure, for what no printer does. */
export function calibrationFrom(measured: Measured, rulers: Rulers): Result<Calibration> {
  const scales = [scaleOf(measured.acrossMm, rulers.acrossMm), scaleOf(measured.alongMm, rulers.alongMm)] as const;
  for (const path of ['rightMm', 'downMm'] as const)
    if (!(Math.abs(measured[path]) <= MOST_OFFSET_MM))
      return refuse(
        'calibration-wrong',
        { why: `the cross is ${measured[path]} mm off, and at most ${MOST_OFFSET_MM} mm can be set right` },
        path,
      );
  for (const [at, scale] of scales.entries())
    if (!(Math.abs(scale - 1) <= MOST_SCALE + SLACK)) {
      const path = at === 0 ? 'acrossMm' : 'alongMm';
      const why = `a ruler of ${rulers[path]} mm was measured as ${measured[path]} mm`;
      return refuse('calibration-wrong', { why }, path);
    }
  return ok({ offsetXMm: measured.rightMm, offsetYMm: measured.downMm, scaleX: scales[0], scaleY: scales[1] });
}

/** To a hundred-thousandth: a hundredth of a millimetre on a metre. */
function scaleOf(measuredMm: number | null, drawnMm: number | null): number {
  if (measuredMm === null || drawnMm === null) return 1;
  return Math.round((measuredMm / drawnMm) * 1e5) / 1e5;
}

/** Where to draw what should come out in a place on the page. */
export interface Placing {
  /** In mm from the page's corner: a whole dot of the printer. */
  at(xMm: number, yMm: number): readonly [xMm: number, yMm: number];
  /** How long to draw what should come out so long across the page. */
  acrossMm(mm: number): number;
}

/**
 * Rule PRINT-CALIBRATE: boxes are moved, never stretched: a box goes to the whole dot from which this printer brings it
 * to its place, and a code in it stays on the dots. The cross A is the fixed point that offsets are measured at.
 */
export function placing(stock: Stock, printer: PrinterProfile, calibration: Calibration = TRUE): Placing {
  const { offsetXMm, offsetYMm, scaleX, scaleY } = calibration;
  const [ax, ay] = crossA(stock);
  return {
    at: (xMm, yMm) => [
      placeMm(ax + (xMm - ax - offsetXMm) / scaleX, printer),
      placeMm(ay + (yMm - ay - offsetYMm) / scaleY, printer),
    ],
    acrossMm: (mm) => mm / scaleX,
  };
}

/** A calibration that leaves what stands on the labels on the page. Error: `calibration-too-far`. */
export function checkCalibration(stock: Stock, place: Placing): Result<null> {
  const inset = contentInset(stock);
  for (const label of [1, labelsPerPage(stock)]) {
    const [x, y, width, height] = labelBox(stock, label);
    const [left, top] = place.at(x, y);
    const isOn =
      left + inset.left >= 0 &&
      top + inset.top >= 0 &&
      left + width - inset.right <= stock.pageWidthMm &&
      top + height - inset.bottom <= stock.pageHeightMm;
    if (!isOn) return refuse('calibration-too-far', { stock: stock.id });
  }
  return ok(null);
}
