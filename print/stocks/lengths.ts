import { ok, type Result, refuse } from '../../src/core/index.ts';

/** What lengths of paper are typed and shown in. */
export type PaperUnit = 'mm' | 'inch';

const INCH_MM = 25.4;
const PER_UNIT_MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: INCH_MM,
  inch: INCH_MM,
  inches: INCH_MM,
  '"': INCH_MM,
  '″': INCH_MM,
  '”': INCH_MM,
};
/** A whole number, parts behind a point or a comma, or a fraction with or without a whole number before it. */
const TYPED = /^\s*([+\-−]?)\s*(?:(\d+(?:[.,]\d*)?|[.,]\d+)|(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+))\s*([a-z]*|["″”])\s*$/i;
/** A ten-thousandth of a millimetre is less than any printer's dot, and keeps 1/32 inch to four decimals. */
const KEPT = 1e4;
const DECIMALS: Readonly<Record<PaperUnit, number>> = { mm: 2, inch: 4 };

/**
 * Reads a length as it is typed: `85`, `85,5 mm`, `2.625`, `2 5/8"`; without a unit it is in `unit`. Gives mm.
 * Errors: `not-a-number`, `unit-missing`.
 */
export function parsePaperMm(text: string, unit: PaperUnit): Result<number> {
  const example = unit === 'mm' ? '85 or 85.5 mm' : '2.625 or 2 5/8';
  const found = TYPED.exec(text);
  if (!found) return refuse('not-a-number', { text: text.trim(), example });
  const [, sign, plain, whole = '0', over, under, behind = ''] = found;
  const factor = behind === '' ? PER_UNIT_MM[unit] : PER_UNIT_MM[behind.toLowerCase()];
  if (factor === undefined) return refuse('unit-missing', { text: text.trim(), example });
  const figure = plain === undefined ? Number(whole) + Number(over) / Number(under) : Number(plain.replace(',', '.'));
  if (!Number.isFinite(figure)) return refuse('not-a-number', { text: text.trim(), example });
  const mm = Math.round(figure * factor * KEPT) / KEPT;
  return ok(sign === '-' || sign === '−' ? 0 - mm : mm);
}

/** A length in mm as a figure of that unit, as it would be typed: `85.5`, `2.625`. */
export function sayPaperMm(mm: number, unit: PaperUnit): string {
  const power = 10 ** DECIMALS[unit];
  return String(Math.round((unit === 'mm' ? mm : mm / INCH_MM) * power) / power + 0);
}
