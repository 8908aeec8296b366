import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Chance,
  type Counts,
  enoughFor,
  meanOf,
  sumOfChances,
  sumsOfChances,
} from '../../../src/core/stock/sum.ts';

const chance = (step: number, ...chances: number[]): Chance => ({ step, chances: Float64Array.from(chances) });
const at = ({ least, chances }: Counts, count: number): number => chances[count - least] ?? 0;

/** The chance of k in n, by products alone. */
function binomial(n: number, k: number, p: number): number {
  let chances = (1 - p) ** (n - k);
  for (let i = 1; i <= k; i++) chances *= ((n - k + i) / i) * p;
  return chances;
}

const someChance: fc.Arbitrary<Chance> = fc
  .tuple(fc.integer({ min: 1, max: 4 }), fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 4 }))
  .map(([step, weights]) => {
    const all = weights.reduce((sum, one) => sum + one, 1);
    return chance(step, ...weights.map((one, n) => (one + (n === 0 ? 1 : 0)) / all));
  });

describe('CARE-NEED: the exact sum of unlike chances', () => {
  it('of no chances is none', () => {
    expect([meanOf(sumOfChances([])), enoughFor(sumOfChances([]), 0.9)]).toEqual([0, 0]);
  });
  it('of two unlike coins and a pair of items is what paper says', () => {
    const sum = sumOfChances([chance(1, 0.5, 0.5), chance(1, 0.8, 0.2), chance(2, 0.9, 0.1)]);
    expect([0, 1, 2, 3, 4].map((count) => Number(at(sum, count).toFixed(12)))).toEqual([0.36, 0.45, 0.13, 0.05, 0.01]);
  });
  it.each([60, 200])('of %d like coins is the binomial distribution', (n) => {
    const sum = sumOfChances(Array.from({ length: n }, () => chance(1, 0.7, 0.3)));
    for (let k = 0; k <= n; k++) expect(at(sum, k)).toBeCloseTo(binomial(n, k, 0.3), 13);
  });
  it('of 4,000 chances still adds up to 1, with the mean and the variance of its parts', () => {
    const parts = Array.from({ length: 4000 }, (_, n) => chance(1 + (n % 3), 1 - (n % 97) / 100, (n % 97) / 100));
    const sum = sumOfChances(parts);
    const mean = parts.reduce((all, { step, chances }) => all + step * (chances[1] ?? 0), 0);
    const spread = parts.reduce((all, { step, chances }) => {
      const p = chances[1] ?? 0;
      return all + step * step * p * (1 - p);
    }, 0);
    expect(sum.chances.reduce((all, one) => all + one, 0)).toBeCloseTo(1, 12);
    expect(meanOf(sum)).toBeCloseTo(mean, 7);
    const found = sum.chances.reduce((all, one, n) => all + one * (sum.least + n - mean) ** 2, 0);
    expect(found / spread).toBeCloseTo(1, 9);
  });
  it.each([1, 2, 23, 24, 25, 200])('of %d that are alike is what they come to one by one', (alike) => {
    const parts = [chance(1, 0.25, 0.5, 0.25), { ...chance(3, 0.9, 0.08, 0.02), alike }];
    const apart = [chance(1, 0.25, 0.5, 0.25), ...Array.from({ length: alike }, () => chance(3, 0.9, 0.08, 0.02))];
    const [together, oneByOne] = [sumOfChances(parts), sumOfChances(apart)];
    for (let count = 0; count <= 3 * 2 * alike + 2; count++)
      expect(Math.abs(at(together, count) - at(oneByOne, count))).toBeLessThan(1e-14);
  });
  it('of rows is that of each row, whatever stood in the row before', () => {
    const rows = { step: 2, size: 3, chances: Float64Array.of(0.5, 0.25, 0.25, 1, 0, 0, 0, 1, 0), alike: 30 };
    const other = { step: 1, size: 2, chances: Float64Array.of(0.5, 0.5, 0.1, 0.9, 1, 0) };
    const row = (from: Float64Array, at: number, size: number) => [...from.slice(at * size, (at + 1) * size)];
    for (const [at, found] of sumsOfChances([rows, other], 3).entries()) {
      const alone = [{ ...chance(2, ...row(rows.chances, at, 3)), alike: 30 }, chance(1, ...row(other.chances, at, 2))];
      expect(found).toEqual(sumOfChances(alone));
    }
  });
  it('of 120 unlike chances is that of whole numbers to 12 places', () => {
    const weights = Array.from({ length: 120 }, (_, n) => [
      BigInt(40 - (n % 31)),
      BigInt(20 + (n % 29)),
      BigInt(4 + (n % 7)),
    ]);
    let exact = [1n];
    let whole = 1n;
    for (const [none = 0n, one = 0n, two = 0n] of weights) {
      const next = new Array<bigint>(exact.length + 2).fill(0n);
      for (const [count, chance] of exact.entries())
        for (const [more, weight] of [none, one, two].entries())
          next[count + more] = (next[count + more] ?? 0n) + chance * weight;
      exact = next;
      whole *= none + one + two;
    }
    const all = weights.map((each) => {
      const sum = Number(each.reduce((left, right) => left + right, 0n));
      return chance(1, ...each.map((one) => Number(one) / sum));
    });
    const found = sumOfChances(all);
    for (const [count, chance] of exact.entries())
      expect(Math.abs(at(found, count) - Number((chance * 10n ** 18n) / whole) / 1e18)).toBeLessThan(1e-12);
  });
  it('is the sum over all outcomes, whatever the chances', () => {
    fc.assert(
      fc.property(fc.array(someChance, { maxLength: 6 }), (parts) => {
        const all = new Map<number, number>([[0, 1]]);
        for (const { step, chances } of parts) {
          const before = [...all];
          all.clear();
          for (const [count, p] of before)
            for (const [times, q] of chances.entries())
              all.set(count + step * times, (all.get(count + step * times) ?? 0) + p * q);
        }
        const sum = sumOfChances(parts);
        for (const [count, p] of all) expect(at(sum, count)).toBeCloseTo(p, 12);
      }),
    );
  });
  it('is enough with the first count whose chances add up to the share, rounding left aside', () => {
    const sum = sumOfChances([chance(1, 0.3, 0.6, 0.1)]);
    expect([0.3, 0.31, 0.9, 0.91, 1].map((share) => enoughFor(sum, share))).toEqual([0, 1, 1, 2, 2]);
  });
});
