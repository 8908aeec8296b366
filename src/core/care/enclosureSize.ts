import { ok, type Result, refuse } from '../problems.ts';

/** The inside of a place, in mm. */
export interface SizeMm {
  readonly length: number;
  readonly width: number;
  readonly height: number;
}

/** The smallest and largest side of a place that is taken, in mm: a hatchling's cup and a hall (common practice, no source). */
export const SIDE_LIMITS_MM = { least: 40, most: 20_000 } as const;

/** The exact inch, in mm (international yard and pound agreement of 1959; NIST SP 811, appendix B.8). */
const INCH_MM = 25.4;
const PER_UNIT_MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: INCH_MM,
  inch: INCH_MM,
  inches: INCH_MM,
  ft: 12 * INCH_MM,
  feet: 12 * INCH_MM,
  foot: 12 * INCH_MM,
};
const EXAMPLE = '90 x 45 x 30 cm';
const SIDE = /^([0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)\s*([a-z]*)$/i;
/** `1,200` is 1200 where a comma stands between thousands and 1.2 where it stands before the parts. */
const EITHER_WAY = /^[1-9]\d{0,2},\d{3}$/;

/**
 * Reads length x width x height as typed: `90 x 45 x 30 cm`, `0.9 × 0.45 × 0.3 m`, `36" x 18" x 12"`. A side without
 * a unit takes that of the next side which has one. Errors: `size-malformed`, `unit-missing`, `size-impossible`.
 */
export function parseSize(text: string): Result<SizeMm> {
  const plain = text.trim().replace(/["″”]/g, ' in ').replace(/['′’]/g, ' ft ');
  const parts = plain.split(/\s*(?:[x×*]|\bby\b)\s*/i).map((part) => SIDE.exec(part.trim()));
  if (parts.length !== 3) return refuse('size-malformed', { text: clip(text), example: EXAMPLE });
  const sides: number[] = [];
  for (const [at, found] of parts.entries()) {
    if (found === null) return refuse('size-malformed', { text: clip(text), example: EXAMPLE });
    const unit = parts.slice(at).find((part) => part !== null && part[2] !== '')?.[2] ?? lastUnit(parts);
    const factor = Object.hasOwn(PER_UNIT_MM, unit.toLowerCase()) ? PER_UNIT_MM[unit.toLowerCase()] : undefined;
    if (factor === undefined) return refuse('unit-missing', { text: clip(text), example: EXAMPLE });
    const side = sideMm(found[1] ?? '', factor);
    if (side === null) return refuse('size-impossible', { side: found[0].trim() });
    sides.push(side);
  }
  const [length = 0, width = 0, height = 0] = sides;
  return ok({ length, width, height });
}

/** `90 × 45 × 30 cm`: length, width and height. */
export function saySize({ length, width, height }: SizeMm): string {
  return `${[length, width, height].map((mm) => mm / 10).join(' × ')} cm`;
}

function lastUnit(parts: readonly (RegExpExecArray | null)[]): string {
  return parts.findLast((part) => part !== null && part[2] !== '')?.[2] ?? '';
}

/** A side in whole mm; null where no reading of the figure is a side of a place. */
function sideMm(figure: string, factor: number): number | null {
  const readings = EITHER_WAY.test(figure)
    ? [figure.replace(',', '.'), figure.replace(',', '')]
    : [figure.replace(',', '.')];
  const sides = readings.map((one) => Math.round(Number(one) * factor));
  // The limits span less than a thousand times, so never more than one of two readings lies within them.
  return sides.find((mm) => mm >= SIDE_LIMITS_MM.least && mm <= SIDE_LIMITS_MM.most) ?? null;
}

function clip(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
