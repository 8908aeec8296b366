import { ok, type Result, refuse } from '../../core/index.ts';

/** Digits with at most one point or comma, and a digit before it: `.5` on paper is read as 5 too easily. */
const FIGURE = /^\d{1,7}(?:[.,]\d{1,6})?$/;
/** `1,250` can be a thousand and more, or one and a quarter. */
const THOUSANDS = /^[1-9]\d{0,2},\d{3}$/;

/** Reads a figure of the vet’s paper: `5`, `0.5`, `0,5`. Errors: `text-missing`, `not-a-number`, `not-positive`. */
export function readFigure(text: string, what: string): Result<number> {
  const typed = text.trim();
  if (typed === '') return refuse('text-missing', { what });
  if (!FIGURE.test(typed) || THOUSANDS.test(typed))
    return refuse('not-a-number', { text: typed, example: '0.5 or 12, and never .5 or 1,250' });
  const value = Number(typed.replace(',', '.'));
  return value > 0 ? ok(value) : refuse('not-positive', { what });
}

const LENGTH = /^(\d{1,5}(?:[.,]\d{1,2})?)\s*([a-z]*)$/i;
const MM_PER: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

/** Reads a length with its unit, in mm: `90 cm`, `900 mm`; empty for none. Errors: `not-a-number`, `unit-missing`. */
export function readLengthMm(text: string): Result<number | null> {
  const typed = text.trim();
  if (typed === '') return ok(null);
  const found = LENGTH.exec(typed);
  const example = '90 cm or 900 mm';
  if (found === null) return refuse('not-a-number', { text: typed, example });
  const perUnit = MM_PER[(found[2] ?? '').toLowerCase()];
  if (perUnit === undefined) return refuse('unit-missing', { text: typed, example });
  return ok(Number((found[1] ?? '').replace(',', '.')) * perUnit);
}
