import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addFractions,
  allGenotypes,
  type Block,
  type Cross,
  carrierChances,
  chanceOf,
  compareFractions,
  exactKinship,
  type Fraction,
  fraction,
  inbreedingByAncestors,
  inbreedingBySires,
  type Locus,
  ONE,
  outcomesOf,
  type Parentage,
  type Phenotype,
  pedigreeArrays,
  pedigreeOrder,
  sayFraction,
  toNumber,
  topPhenotypes,
  ZERO,
} from '../../src/core/index.ts';

const share = fc.integer({ min: 0, max: 4 }).map((top) => fraction(BigInt(top), 8n));
const allele = fc.constantFrom('+', 'a', 'b');
const pair = fc.tuple(allele, allele);

function locus(name: string): Locus {
  const keys = ['+/+', '+/a', '+/b', 'a/a', 'a/b', 'b/b'];
  const sexed = ['+', 'a', 'b'].flatMap((x) => ['+', 'a', 'b'].map((y) => `${x}|${y}`));
  return {
    name,
    alleles: ['+', 'a', 'b'],
    phen: new Map([...keys, ...sexed].map((key) => [key, key.includes('b') ? 'seen' : 'plain'])),
  };
}

function blockOf(name: string, states: readonly (readonly [string, string])[]): Block {
  const p = fraction(1n, BigInt(states.length));
  return { loci: [name], states: states.map((strands) => ({ p, pairs: [strands] })) };
}

const states = fc.array(pair, { minLength: 1, maxLength: 3 });
/** Two loci on one autosome, one on another, one beside the sex point; some lethal, some masked. */
const crosses = fc
  .record({
    system: fc.constantFrom('XY' as const, 'ZW' as const),
    r: fc.tuple(share, share),
    sire: fc.tuple(states, states, states, states),
    dam: fc.tuple(states, states, states, states),
    isLethal: fc.boolean(),
    isMasked: fc.boolean(),
  })
  .map(({ system, r, sire, dam, isLethal, isMasked }): Cross => {
    const names = ['A', 'B', 'C', 'S'];
    const side = (all: typeof sire) => all.map((one, at) => blockOf(names[at] ?? '', one));
    return {
      system,
      chromosomes: [
        { id: 'x', sex: true, loci: ['SD', 'S'], r: { sire: [r[0]], dam: [r[0]] } },
        { id: '1', sex: false, loci: ['A', 'B'], r: { sire: [r[1]], dam: [r[1]] } },
        { id: '2', sex: false, loci: ['C'], r: { sire: [], dam: [] } },
      ],
      loci: new Map(names.map((name) => [name, locus(name)])),
      sire: side(sire),
      dam: side(dam),
      lethal: isLethal
        ? [
            new Map([
              ['A', new Set(['a/a'])],
              ['C', new Set(['+/a', 'a/a'])],
            ]),
          ]
        : [],
      mask: isMasked ? [{ when: new Map([['C', new Set(['seen'])]]), hide: ['B'] }] : [],
    };
  });

/** What comes out, as text that does not depend on any order. */
function said(cross: Cross, by: readonly string[] = []): readonly string[] {
  const order = cross.chromosomes.flatMap((one) => one.loci).filter((name) => name !== 'SD');
  const labelled = ({ sex, labels, p }: Phenotype): string => {
    const named = order.map((name, at) => `${name}:${labels[at]}`).sort();
    return `${by.includes('sexless') ? '' : sex} ${named.join(' ')} ${sayFraction(p)}`;
  };
  return topPhenotypes(outcomesOf(cross)).map(labelled).sort();
}

const sum = (all: readonly { readonly p: Fraction }[]): Fraction => all.map(({ p }) => p).reduce(addFractions, ZERO);

describe('a cross', () => {
  it('gives probabilities that add up to 1, unless no egg lives', () => {
    fc.assert(
      fc.property(crosses, (cross) => {
        const outcomes = outcomesOf(cross);
        if (outcomes.viable.top === 0n) return topPhenotypes(outcomes).length === 0;
        return (
          compareFractions(sum(allGenotypes(outcomes)), ONE) === 0 &&
          compareFractions(sum(topPhenotypes(outcomes)), ONE) === 0
        );
      }),
      { numRuns: 60 },
    );
  });

  it('does not mind the order of chromosomes', () => {
    fc.assert(
      fc.property(crosses, (cross) => {
        const turned = { ...cross, chromosomes: [...cross.chromosomes].reverse(), sire: [...cross.sire].reverse() };
        expect(said(turned)).toEqual(said(cross));
      }),
      { numRuns: 40 },
    );
  });

  it('gives the same at autosomal loci when sire and dam change places', () => {
    fc.assert(
      fc.property(crosses, (cross) => {
        const autosomal = { ...cross, chromosomes: cross.chromosomes.slice(1) };
        const swapped = { ...autosomal, sire: autosomal.dam, dam: autosomal.sire };
        expect(said(swapped)).toEqual(said(autosomal));
      }),
      { numRuns: 40 },
    );
  });

  it('lists its likeliest phenotypes first, and the same ones as the whole list', () => {
    fc.assert(
      fc.property(crosses, fc.integer({ min: 1, max: 9 }), (cross, limit) => {
        const all = topPhenotypes(outcomesOf(cross));
        const top = topPhenotypes(outcomesOf(cross), limit);
        expect(top.map(({ p }) => sayFraction(p))).toEqual(all.slice(0, limit).map(({ p }) => sayFraction(p)));
        for (let at = 1; at < all.length; at++)
          expect(compareFractions(all[at]?.p ?? ZERO, all[at - 1]?.p ?? ONE)).toBeLessThanOrEqual(0);
      }),
      { numRuns: 40 },
    );
  });

  it('gives a wanted phenotype the chance that the whole table gives it', () => {
    fc.assert(
      fc.property(crosses, (cross) => {
        const outcomes = outcomesOf({ ...cross, mask: [] });
        const order = ['S', 'A', 'B', 'C'];
        const wanted = new Map([
          ['A', 'seen'],
          ['C', 'plain'],
        ]);
        const fits = topPhenotypes(outcomes).filter(
          ({ labels }) => labels[order.indexOf('A')] === 'seen' && labels[order.indexOf('C')] === 'plain',
        );
        if (outcomes.viable.top === 0n) return;
        expect(sayFraction(chanceOf(outcomes, wanted))).toBe(sayFraction(sum(fits)));
      }),
      { numRuns: 40 },
    );
  });
});

/** A pedigree of so many animals, parents before young, sires even and dams odd. */
const pedigrees = fc
  .array(fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: 0, max: 9 })), { minLength: 4, maxLength: 40 })
  .map((picks) =>
    picks.map(([s, d, luck], at): Parentage => {
      const founder = at < 4 || luck === 0;
      const [sire, dam] = [2 * (s % Math.ceil(at / 2)), 2 * (d % Math.floor(at / 2)) + 1];
      return { id: `n${at}`, sire: founder ? null : `n${sire}`, dam: founder || luck === 1 ? null : `n${dam}` };
    }),
  );

describe('a pedigree', () => {
  it('has the same inbreeding by both fast ways as by exact fractions', () => {
    fc.assert(
      fc.property(pedigrees, (animals) => {
        const ordered = pedigreeOrder(animals);
        if (!ordered.ok) throw new RangeError(ordered.problem.message);
        const exact = exactKinship(ordered.value, { inbreeding: new Map(), kinship: [] });
        const arrays = pedigreeArrays(ordered.value);
        const none = new Float64Array(animals.length);
        for (const found of [inbreedingByAncestors(arrays, none), inbreedingBySires(arrays, none)]) {
          for (const [at, one] of ordered.value.entries())
            expect(found[at]).toBeCloseTo(toNumber(exact.inbreeding(one.id)), 12);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('gives each animal genotype chances that add up to 1', () => {
    const freq = new Map([
      ['+', fraction(3n, 4n)],
      ['a', fraction(1n, 4n)],
    ]);
    const looks = fc.array(fc.constantFrom(null, ['+/+', '+/a'], ['+/+', '+/a', 'a/a']), {
      minLength: 12,
      maxLength: 12,
    });
    fc.assert(
      fc.property(pedigrees, looks, (animals, seen) => {
        const few = animals
          .slice(0, 12)
          .map((one, at) => ({ ...one, prior: null, seen: seen[at] ? new Set(seen[at]) : null }));
        const found = carrierChances(['+', 'a'], few, freq);
        if (!found.ok) throw new RangeError(found.problem.message);
        for (const chances of found.value.post.values())
          expect(sayFraction([...chances.values()].reduce(addFractions, ZERO))).toBe('1');
      }),
      { numRuns: 40 },
    );
  });
});
