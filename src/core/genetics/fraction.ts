import { ok, type Result, refuse } from '../problems.ts';

/** An exact rational number in lowest terms; the denominator is positive. */
export interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

export const ZERO: Fraction = { top: 0n, bottom: 1n };
export const ONE: Fraction = { top: 1n, bottom: 1n };
export const HALF: Fraction = { top: 1n, bottom: 2n };

/** top/bottom in lowest terms; a bug, not data, if bottom is 0. */
export function fraction(top: bigint, bottom: bigint): Fraction {
  if (bottom === 0n) throw new RangeError('a fraction needs a bottom that is not 0');
  const sign = bottom < 0n ? -1n : 1n;
  const common = gcd(top, bottom);
  return common === 1n && sign === 1n
    ? { top, bottom }
    : { top: (sign * top) / common, bottom: (sign * bottom) / common };
}

export function add(a: Fraction, b: Fraction): Fraction {
  if (a.bottom === b.bottom) return fraction(a.top + b.top, a.bottom);
  return fraction(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
}

export function subtract(a: Fraction, b: Fraction): Fraction {
  return add(a, { top: -b.top, bottom: b.bottom });
}

export function multiply(a: Fraction, b: Fraction): Fraction {
  return fraction(a.top * b.top, a.bottom * b.bottom);
}

export function divide(a: Fraction, b: Fraction): Fraction {
  return fraction(a.top * b.bottom, a.bottom * b.top);
}

/** Negative, 0 or positive, as a is less than, equal to or more than b. */
export function compare(a: Fraction, b: Fraction): number {
  const difference = a.top * b.bottom - b.top * a.bottom;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export function isZero(a: Fraction): boolean {
  return a.top === 0n;
}

/** a to a whole power of 0 or more. */
export function power(a: Fraction, exponent: number): Fraction {
  return { top: a.top ** BigInt(exponent), bottom: a.bottom ** BigInt(exponent) };
}

const WRITTEN = /^\s*(-?\d{1,400})(?:\/(\d{1,400}))?\s*$/;
const DECIMAL = /^\s*(-?)(\d{1,100})\.(\d{1,100})\s*$/;

/** Reads `p/q`, `p` or a plain decimal such as `0.05`. Errors: `not-a-number`. */
export function parseFraction(text: string, path?: string): Result<Fraction> {
  const whole = WRITTEN.exec(text);
  if (whole) {
    const bottom = BigInt(whole[2] ?? '1');
    return bottom === 0n
      ? refuse('not-a-number', { text, example: '2/3' }, path)
      : ok(fraction(BigInt(whole[1] ?? '0'), bottom));
  }
  const decimal = DECIMAL.exec(text);
  if (!decimal) return refuse('not-a-number', { text: text.slice(0, 40), example: '2/3' }, path);
  const digits = decimal[3] ?? '';
  const top = BigInt(`${decimal[2]}${digits}`);
  return ok(fraction(decimal[1] === '-' ? -top : top, 10n ** BigInt(digits.length)));
}

/** `p/q` in lowest terms, and a bare `p` for whole numbers. */
export function sayFraction(a: Fraction): string {
  return a.bottom === 1n ? `${a.top}` : `${a.top}/${a.bottom}`;
}

/** The nearest double; exact digits first, so that very long tops and bottoms do not overflow. */
export function toNumber(a: Fraction): number {
  const [top, bottom] = [Number(a.top), Number(a.bottom)];
  if (Number.isFinite(top) && Number.isFinite(bottom)) return top / bottom;
  const shift = BigInt(Math.max(0, bits(a.bottom) - 1000));
  return Number(a.top >> shift) / Number(a.bottom >> shift);
}

/** The least common multiple of the bottoms. */
export function commonBottom(all: Iterable<Fraction>): bigint {
  let bottom = 1n;
  for (const one of all) bottom = (bottom / gcd(bottom, one.bottom)) * one.bottom;
  return bottom;
}

export function gcd(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

function bits(a: bigint): number {
  return a.toString(16).length * 4;
}
