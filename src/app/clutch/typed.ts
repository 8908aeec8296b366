import { ok, type Result, refuse } from '../../core/index.ts';

const FIGURE = /^\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*(°?\s*[a-z%]*)\s*$/i;

/** Reads a temperature as typed, in °C: `31.8`, `31,8 C`, `89 °F`. Errors: `not-a-number`, `unit-missing`. */
export function readTempC(text: string): Result<number> {
  const read = figureIn(text, '31.8');
  if (!read.ok) return read;
  const [value, unit] = read.value;
  if (unit === '' || unit === 'c') return ok(value);
  // The exact scales, NIST SP 811, appendix B.8 (from memory).
  if (unit === 'f') return ok(Math.round(((value - 32) / 1.8) * 10) / 10);
  return refuse('unit-missing', { text, example: '31.8 °C' });
}

/** Reads a humidity as typed, in percent. Errors: `not-a-number`, `unit-missing`. */
export function readPercent(text: string): Result<number> {
  const read = figureIn(text, '92');
  if (!read.ok) return read;
  const [value, unit] = read.value;
  return (unit === '' || unit === '%') && value <= 100 ? ok(value) : refuse('unit-missing', { text, example: '92 %' });
}

/** Reads a small length as typed, in mm: `22`, `2.2 cm`. Errors: `not-a-number`, `unit-missing`. */
export function readMm(text: string): Result<number> {
  const read = figureIn(text, '22');
  if (!read.ok) return read;
  const [value, unit] = read.value;
  if (unit === '' || unit === 'mm') return ok(value);
  return unit === 'cm' ? ok(Math.round(value * 100) / 10) : refuse('unit-missing', { text, example: '22 mm' });
}

/** Reads a count that may stay empty for none. Errors: `count-whole`. */
export function readCount(text: string): Result<number> {
  const typed = text.trim();
  return /^\d{0,4}$/.test(typed) ? ok(Number(typed)) : refuse('count-whole', {});
}

function figureIn(text: string, example: string): Result<readonly [value: number, unit: string]> {
  const found = FIGURE.exec(text);
  if (found === null) return refuse('not-a-number', { text, example });
  const unit = (found[2] ?? '').replace(/[°\s]/g, '').toLowerCase();
  return ok([Number((found[1] ?? '').replace(',', '.')), unit]);
}
