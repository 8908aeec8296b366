import type { Placing } from '../calibration/calibration.ts';
import { cutMarks } from '../drawing/cutMarks.ts';
import type { Drawing, PageSize } from '../drawing/drawing.ts';
import { rulerMarks } from '../drawing/ruler.ts';
import { barBox } from '../ean/eanBlock.ts';
import type { BarMark, CodeMark } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';
import type { ManifestBar, ManifestPiece } from '../manifest.ts';
import { symbolParts } from '../qr/parts.ts';
import { type PrinterProfile, placeMm } from '../qr/profiles.ts';
import type { BoxMm, Stock } from '../stocks/stock.ts';
import type { PlacedFace, SheetSide } from './job.ts';

/** What all sides of a run are drawn with. */
export interface Press {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  readonly place: Placing;
  readonly isCalibrated: boolean;
  readonly cutMarks: boolean;
  readonly measure: Measure;
}

/** A page of PDF has at most 14,400 points a side (ISO 32000-1, annex C). */
const LONGEST_PAGE_MM = 5080;

/** Draws what stands beside the labels of a side, and then each face; tells where each came to stand. */
export function drawSide(side: SheetSide, press: Press, drawing: Drawing): readonly ManifestPiece[] {
  const { stock, place, measure } = press;
  drawing.beginPage(pageSize(stock, press.printer));
  drawing.put(rulerMarks(stock, side, measure, place), 0, 0);
  if (press.cutMarks && !side.isBack) drawing.put(cutMarks(stock, place), 0, 0);
  return side.faces.map((face) => drawFace(face, side.page, press, drawing));
}

/**
 * A stock's page. Where a printer's dots matter it is a whole number of them: a renderer that counts from the bottom would
 * otherwise shift everything by a part of a dot (measured: Ghostscript then grows every run by one). A4 for a stock whose
 * sizes are no sizes, on which nothing is printed but the sheet itself.
 */
export function pageSize({ pageWidthMm, pageHeightMm }: Stock, printer: PrinterProfile): PageSize {
  const isSize = Math.min(pageWidthMm, pageHeightMm) > 0 && Math.max(pageWidthMm, pageHeightMm) < LONGEST_PAGE_MM;
  if (!isSize) return { widthMm: 210, heightMm: 297 };
  if (printer.insetDots === 0) return { widthMm: pageWidthMm, heightMm: pageHeightMm };
  const whole = (mm: number) => Math.ceil(mm * printer.dotsPerMm - 1e-6) / printer.dotsPerMm;
  return { widthMm: whole(pageWidthMm), heightMm: whole(pageHeightMm) };
}

/** The face's corner is a whole dot, and so is the code's place in it: the code is on the dots wherever the label is. */
function drawFace(placed: PlacedFace, page: number, press: Press, drawing: Drawing): ManifestPiece {
  const { kind, id, face, code, symbol, slot } = placed;
  const { printer } = press;
  const [, , width, height] = slot.boxMm;
  const [x, y] = press.place.at(slot.boxMm[0], slot.boxMm[1]);
  const mark: CodeMark = {
    kind: 'code',
    xMm: placeMm(code.xMm, printer),
    yMm: placeMm(code.yMm, printer),
    moduleMm: code.moduleMm,
    insetModules: code.insetModules,
    size: symbol.size,
    ...symbolParts(symbol),
  };
  drawing.put([mark, ...face.marks], x, y);
  const bar = face.marks.find((one) => one.kind === 'bar');
  return {
    kind,
    id,
    payload: symbol.payload,
    page,
    boxMm: press.isCalibrated ? rounded([x, y, width, height]) : slot.boxMm,
    symbolMm: rounded([x + mark.xMm, y + mark.yMm, code.sizeMm, code.sizeMm]),
    symbology: 'qr',
    modules: symbol.size,
    ...(bar === undefined ? {} : { bar: barOf(bar, x, y) }),
    lines: face.lines,
    form: face.form,
    back: face.back,
  };
}

function barOf(bar: BarMark, x: number, y: number): ManifestBar {
  const [left, top, width, height] = barBox(bar);
  return { digits: bar.digits, symbology: 'ean-13', boxMm: rounded([x + left, y + top, width, height]) };
}

function rounded([x, y, width, height]: BoxMm): BoxMm {
  const round = (mm: number) => Math.round(mm * 1e4) / 1e4;
  return [round(x), round(y), round(width), round(height)];
}
