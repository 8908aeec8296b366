/** What stands before the paper and the printer in the code of a calibration page. */
const SCHEME = 'CALIBRATE:';
/** What ids of stocks and printers are made of, in the capitals of the alphanumeric set. */
const SHAPE = /^CALIBRATE:([0-9A-Z.-]{1,40})\/([0-9A-Z.-]{1,40})$/;

/** Which printer and stock a calibration page is about. */
export interface CalibrationOf {
  readonly stock: string;
  readonly printer: string;
}

/** What the code on a calibration page holds: `CALIBRATE:STOCK/PRINTER` in capitals, short in a code of capitals. */
export function calibrationPayload({ stock, printer }: CalibrationOf): string {
  return `${SCHEME}${stock}/${printer}`.toUpperCase();
}

/** True for a text that means to be such a code, whole or not. */
export function isCalibrationCode(text: string): boolean {
  return text.trim().slice(0, SCHEME.length).toUpperCase() === SCHEME;
}

/** Reads it back; ids are lower case. Null for any other text. */
export function readCalibrationPayload(text: string): CalibrationOf | null {
  const found = SHAPE.exec(text.trim().toUpperCase());
  const [, stock, printer] = found ?? [];
  return stock === undefined || printer === undefined
    ? null
    : { stock: stock.toLowerCase(), printer: printer.toLowerCase() };
}
