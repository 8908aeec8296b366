import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  exactKinship,
  type Fraction,
  fraction,
  inbreedingByAncestors,
  inbreedingBySires,
  inbreedingOf,
  kinshipOfMany,
  type Parentage,
  pedigreeArrays,
  pedigreeOrder,
  toNumber,
} from '../../../src/core/genetics/index.ts';
import { value } from './given.ts';

/** A pedigree of generations: so many animals each, parents drawn from the one before, a few of them unknown. */
const pedigrees = fc
  .record({
    generations: fc.integer({ min: 2, max: 9 }),
    each: fc.integer({ min: 2, max: 12 }),
    picks: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: 0, max: 12 })), { minLength: 108, maxLength: 108 }),
  })
  .map(({ generations, each, picks }) =>
    picks.slice(0, generations * each).map(([s, d, luck], at): Parentage => {
      const first = (Math.floor(at / each) - 1) * each;
      const half = Math.ceil(each / 2);
      const sire = first < 0 || luck === 0 ? null : `n${first + (s % half)}`;
      const dam = first < 0 || luck === 1 ? null : `n${first + half + (d % (each - half))}`;
      return { id: `n${at}`, sire, dam };
    }),
  );

const founderF = new Map([
  ['n0', fraction(1n, 4n)],
  ['n1', fraction(1n, 8n)],
]);

function worked(animals: readonly Parentage[], inbred: ReadonlyMap<string, Fraction>) {
  const ordered = value(pedigreeOrder(animals));
  const pedigree = pedigreeArrays(ordered);
  const founders = Float64Array.from(ordered, ({ id }) => toNumber(inbred.get(id) ?? fraction(0n, 1n)));
  return { ordered, pedigree, founders, exact: exactKinship(ordered, { inbreeding: inbred, kinship: [] }) };
}

describe('kinship of many', () => {
  it('is the exact kinship of each with everyone', () => {
    fc.assert(
      fc.property(pedigrees, fc.array(fc.nat(), { maxLength: 6 }), (animals, picks) => {
        const { ordered, pedigree, founders, exact } = worked(animals, founderF);
        const places = picks.map((pick) => pick % ordered.length);
        const found = kinshipOfMany(pedigree, places, inbreedingOf(pedigree, founders), founders);
        expect(found.length).toBe(places.length);
        for (const [at, row] of found.entries()) {
          const own = ordered[places[at] ?? 0]?.id ?? '';
          for (const [other, { id }] of ordered.entries())
            expect(row[other]).toBeCloseTo(toNumber(exact.of(own, id)), 12);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('is zero with everyone for a number that no animal has', () => {
    const { pedigree, founders } = worked([{ id: 'n0', sire: null, dam: null }], new Map());
    const rows = kinshipOfMany(pedigree, [-1, 0, 7], founders, founders);
    expect(rows.map((row) => [...row])).toEqual([[0], [0.5], [0]]);
  });

  it('says how far it has come and stops when told to', () => {
    const { pedigree, founders } = worked([{ id: 'n0', sire: null, dam: null }], new Map());
    const told: number[] = [];
    const stop = () =>
      kinshipOfMany(pedigree, [0, 0, 0], founders, founders, (done, of) => {
        told.push(done, of);
        if (done === 1) throw new RangeError('stopped');
      });
    expect(stop).toThrow('stopped');
    expect(told).toEqual([0, 3, 1, 3]);
  });
});

describe('inbreeding of whole pedigrees', () => {
  it('is exact on every way, founders that are inbred included', () => {
    fc.assert(
      fc.property(pedigrees, (animals) => {
        const { ordered, pedigree, founders, exact } = worked(animals, founderF);
        for (const way of [inbreedingOf, inbreedingByAncestors, inbreedingBySires]) {
          const found = way(pedigree, founders);
          for (const [at, { id }] of ordered.entries())
            expect(found[at]).toBeCloseTo(toNumber(exact.inbreeding(id)), 12);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('counts up to the whole pedigree', () => {
    const animals = Array.from({ length: 3000 }, (_, at): Parentage => {
      const [sire, dam] = [2 * Math.floor(at / 8), 2 * Math.floor(at / 6) + 1];
      return at < 8 ? { id: `n${at}`, sire: null, dam: null } : { id: `n${at}`, sire: `n${sire}`, dam: `n${dam}` };
    });
    const told: number[] = [];
    inbreedingOf(pedigreeArrays(animals), new Float64Array(animals.length), (done) => told.push(done));
    expect(told.at(-1)).toBe(3000);
    expect(told).toEqual([...told].sort((a, b) => a - b));
  });
});
