import { ok, type Result, refuse } from '../problems.ts';
import {
  add,
  commonBottom,
  compare,
  divide,
  type Fraction,
  fraction,
  isZero,
  multiply,
  power,
  subtract,
  ZERO,
} from './fraction.ts';

/** How a clutch fits what its parents should give. */
export interface ClutchTest {
  readonly probability: Fraction;
  /** The sum over all outcomes that are no likelier than this one, exact. */
  readonly pValue: Fraction;
  /** How many outcomes there are. */
  readonly outcomes: number;
  /** Pearson's statistic; null where a class of chance 0 was seen. */
  readonly chi2: Fraction | null;
  readonly df: number;
}

/** Above so many outcomes the exact sum takes too long to wait for. */
export const MOST_OUTCOMES = 2_000_000;

/**
 * The exact multinomial test of a clutch: P(observed), and the sum of P over outcomes with P <= P(observed).
 * Errors: `case-malformed` for shapes, `clutch-too-large`.
 */
export function clutchTest(p: readonly Fraction[], n: readonly number[]): Result<ClutchTest> {
  if (p.length === 0 || p.length !== n.length)
    return refuse('case-malformed', { why: 'p and n must be of one length' });
  if (p.some((one) => one.top < 0n) || compare(p.reduce(add, ZERO), { top: 1n, bottom: 1n }) !== 0)
    return refuse('case-malformed', { why: 'p must add up to 1' }, 'p');
  if (n.some((one) => !Number.isInteger(one) || one < 0))
    return refuse('case-malformed', { why: 'n must be whole numbers of 0 or more' }, 'n');
  const size = n.reduce((sum, one) => sum + one, 0);
  const outcomes = choose(size + p.length - 1, p.length - 1);
  if (outcomes > BigInt(MOST_OUTCOMES)) return refuse('clutch-too-large', { outcomes: String(outcomes) });
  const bottom = commonBottom(p);
  const tops = p.map((one) => (one.top * bottom) / one.bottom);
  const observed = weightOf(tops, n);
  let rarer = 0n;
  eachOutcome(tops, size, (weight) => {
    if (weight <= observed) rarer += weight;
  });
  const total = bottom ** BigInt(size);
  const seen = p.filter((one) => !isZero(one)).length;
  return ok({
    probability: fraction(observed, total),
    pValue: fraction(rarer, total),
    outcomes: Number(outcomes),
    chi2: pearson(p, n, size),
    df: seen - 1,
  });
}

/** Pearson's chi-squared as an exact fraction. */
export function pearson(p: readonly Fraction[], n: readonly number[], size: number): Fraction | null {
  let sum = ZERO;
  for (const [at, chance] of p.entries()) {
    const expected = multiply(chance, fraction(BigInt(size), 1n));
    const difference = subtract(fraction(BigInt(n[at] ?? 0), 1n), expected);
    if (isZero(difference)) continue;
    if (isZero(expected)) return null;
    sum = add(sum, divide(power(difference, 2), expected));
  }
  return sum;
}

/** Walks every way to share out `size` among the classes; the weight is multinomial coefficient times powers. */
function eachOutcome(tops: readonly bigint[], size: number, visit: (weight: bigint) => void): void {
  const walk = (at: number, left: number, weight: bigint): void => {
    const top = tops[at] ?? 0n;
    if (at === tops.length - 1) {
      visit(weight * top ** BigInt(left));
      return;
    }
    let grown = weight;
    for (let here = 0; here <= left; here++) {
      walk(at + 1, left - here, grown);
      // C(left, here + 1) from C(left, here), and one more power of the class.
      grown = (grown * BigInt(left - here) * top) / BigInt(here + 1);
    }
  };
  walk(0, size, 1n);
}

function weightOf(tops: readonly bigint[], n: readonly number[]): bigint {
  let left = n.reduce((sum, one) => sum + one, 0);
  let weight = 1n;
  n.forEach((count, at) => {
    weight *= choose(left, count) * (tops[at] ?? 0n) ** BigInt(count);
    left -= count;
  });
  return weight;
}

function choose(n: number, k: number): bigint {
  let result = 1n;
  for (let at = 1; at <= Math.min(k, n - k); at++) result = (result * BigInt(n - Math.min(k, n - k) + at)) / BigInt(at);
  return result;
}
