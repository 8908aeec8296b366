import { type EanPlace, type EanSize, eanMarks, eanModules, eanSize } from '../ean/eanBlock.ts';
import type { PrinterProfile } from '../qr/profiles.ts';
import type { Stock } from '../stocks/stock.ts';
import type { LabelFrame } from './labelFrame.ts';
import type { Mark } from './marks.ts';
import type { Measure } from './measure.ts';

/** Heights of the bars that are tried, the best first; lower ones ask for a steady hand at the till. */
const HEIGHTS_MM = [14, 11, 9, 7] as const;
/** Of the label's height at most this much is bars: the words come first. */
const MOST_PART = 0.3;
/** Between the words and the bars. */
const ABOVE_MM = 1;
/** The blank rim stays this far inside the cut edge; it is blank itself. */
const EDGE_MM = 0.24;
/** The first digit, which stands in the left rim, begins so many modules in: it lines up with the words. */
const DIGIT_AT = 2;

/** The room for words that is left above a bar code, and the marks of the code. */
export interface BarRoom {
  readonly frame: LabelFrame;
  readonly marks: readonly Mark[];
}

/** What a bar code is drawn with. */
export interface BarBench {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  readonly measure: Measure;
}

/**
 * Rule PRINT-BAR: the places of a bar code in a frame, the highest bars first: at the foot, left of the square code or below it. Only the
 * width of a module that reads best on this printer is tried. Empty where it is too wide, or the words would have no room.
 */
export function barRooms(digits: string, frame: LabelFrame, bench: BarBench): readonly BarRoom[] {
  const [moduleMm] = eanModules(bench.printer);
  if (moduleMm === undefined) return [];
  const most = Math.max(HEIGHTS_MM.at(-1) ?? 0, bench.stock.labelHeightMm * MOST_PART);
  return HEIGHTS_MM.filter((mm) => mm <= most).flatMap((heightMm) => {
    const size = eanSize(moduleMm, heightMm, bench.measure);
    const place = placeIn(frame, size, bench.stock);
    if (place === null) return [];
    const marks = eanMarks(digits, size, place, bench);
    return [{ marks, frame: { ...frame, bottom: place.yMm - ABOVE_MM } }];
  });
}

function placeIn(frame: LabelFrame, size: EanSize, { labelWidthMm }: Stock): EanPlace | null {
  const yMm = frame.bottom - size.heightMm;
  const isBelow = yMm >= frame.code.belowMm;
  const right = isBelow ? labelWidthMm - EDGE_MM : frame.code.besideMm;
  if (frame.way === 'tower') {
    const xMm = (labelWidthMm - size.widthMm) / 2;
    return isBelow && xMm >= EDGE_MM ? { xMm, yMm } : null;
  }
  const xMm = Math.max(EDGE_MM, frame.left - DIGIT_AT * size.moduleMm);
  return xMm + size.widthMm <= right ? { xMm, yMm } : null;
}
