import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chance, type Counts, enoughFor, meanOf, sumOfChances } from '../../../src/core/stock/sum.ts';

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
