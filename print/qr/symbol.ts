import qrcode, { type QRCodeSegment } from 'qrcode';

/** A QR symbol: `size` × `size` modules, row by row, 1 is dark; without the quiet zone. */
export interface QrSymbol {
  readonly payload: string;
  readonly version: number;
  readonly level: Level;
  readonly size: number;
  readonly modules: Uint8Array;
}

/** The blank rim that a reader needs, in modules (ISO/IEC 18004, 9.1). */
export const QUIET_MODULES = 4;

/** Error correction: about 7, 15, 25 and 30 % of the codewords (ISO/IEC 18004, table 1). */
export type Level = 'L' | 'M' | 'Q' | 'H';

/** The numeric and alphanumeric sets of ISO/IEC 18004, 7.3.3 and table 5. */
const DIGITS = /^[0-9]+$/;
const ALPHANUMERIC = /^[0-9A-Z $%*+\-./:]+$/;
/** Capacities of ISO/IEC 18004, table 7: 1-Q holds 16 alphanumeric characters, 2-M 38. */
const GRADES = [
  { version: 1, level: 'Q', most: 16 },
  { version: 2, level: 'M', most: 38 },
] as const;
/** Any mask decodes; a fixed one makes encoding nine times faster, and the same everywhere. */
const MASK = 2;

/** The symbol of a text: 1-Q up to 16 alphanumeric characters, 2-M up to 38, else the smallest at M that holds it. */
export function qrSymbol(payload: string): QrSymbol {
  const grade = ALPHANUMERIC.test(payload) ? GRADES.find(({ most }) => payload.length <= most) : undefined;
  return encodeQr(payload, grade?.level ?? 'M', grade?.version);
}

/** The same table for version 2: H 20, Q 29, M 38. */
const SECOND = [
  { level: 'H', most: 20 },
  { level: 'Q', most: 29 },
  { level: 'M', most: 38 },
] as const;

/**
 * The symbols that a label may have, the best first: of version 2, whose fourth mark lets a reader see the last corner
 * instead of working it out, with as much correction as its length allows; then the one of {@link qrSymbol} if smaller.
 */
export function labelSymbols(payload: string): readonly QrSymbol[] {
  const plain = qrSymbol(payload);
  const grade = ALPHANUMERIC.test(payload) ? SECOND.find(({ most }) => payload.length <= most) : undefined;
  if (grade === undefined) return [plain];
  const second = encodeQr(payload, grade.level, 2);
  return plain.size < second.size ? [second, plain] : [second];
}

/** The symbol of a text at that level and, if given, of that version. */
export function encodeQr(payload: string, level: Level, version?: number): QrSymbol {
  const size = version === undefined ? {} : { version };
  const made = qrcode.create(segmentsOf(payload), { ...size, errorCorrectionLevel: level, maskPattern: MASK });
  return { payload, version: made.version, level, size: made.modules.size, modules: made.modules.data };
}

/** One segment where it can be: the package's search for the shortest mix costs more than it saves here. */
function segmentsOf(payload: string): string | QRCodeSegment[] {
  if (DIGITS.test(payload)) return [{ data: payload, mode: 'numeric' }];
  return ALPHANUMERIC.test(payload) ? [{ data: payload, mode: 'alphanumeric' }] : payload;
}
