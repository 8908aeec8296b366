import { ok, type Result, refuse } from '../problems.ts';
import { type Millimetres, millimetres } from '../units.ts';

/** The shortest and longest snake that a figure is taken for, in m: a newborn and more than a record python (common practice, no source). */
export const LENGTH_LIMITS_M = { least: 0.05, most: 10 } as const;

/** Takes a length in m if a snake can have it. Errors: `not-finite`, `not-positive`, `length-impossible`, at the path. */
export function lengthInRange(lengthM: number, path = 'lengthM'): Result<number> {
  if (!Number.isFinite(lengthM)) return refuse('not-finite', { what: 'length' }, path);
  if (lengthM <= 0) return refuse('not-positive', { what: 'length' }, path);
  const possible = lengthM >= LENGTH_LIMITS_M.least && lengthM <= LENGTH_LIMITS_M.most;
  return possible ? ok(lengthM) : refuse('length-impossible', { lengthM }, path);
}

const PER_UNIT_MM: Readonly<Record<string, number>> = { '': 10, cm: 10, mm: 1, m: 1000, in: 25.4, ft: 304.8 };
const TYPED = /^\s*([0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)\s*([a-z]*)\s*$/i;

/**
 * Reads a length as typed: `152.5`, `152,5 cm`, `1.52 m`, `60 in`; without a unit it is centimetres, as on the tape. The
 * inch is 25.4 mm (international yard and pound agreement of 1959; NIST SP 811, appendix B.8). Errors: `not-a-number`,
 * `unit-missing`, and those of {@link lengthInRange}.
 */
export function parseLength(text: string): Result<Millimetres> {
  const found = TYPED.exec(text);
  if (!found) return refuse('not-a-number', { text: text.trim(), example: '152 or 1.52 m' });
  const factor = PER_UNIT_MM[(found[2] ?? '').toLowerCase()];
  if (factor === undefined) return refuse('unit-missing', { text: text.trim(), example: '152 cm or 1.52 m' });
  const lengthMm = Math.round(Number((found[1] ?? '').replace(',', '.')) * factor);
  const possible = lengthInRange(lengthMm / 1000);
  return possible.ok ? ok(millimetres(lengthMm)) : possible;
}
