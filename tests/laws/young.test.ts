import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addFractions,
  type Block,
  type ClutchChances,
  type Cross,
  chanceOf,
  clutchChances,
  crossOf,
  divideFractions,
  evidenceOf,
  type Fraction,
  fraction,
  isZeroFraction,
  type LocusTable,
  lociOf,
  multiplyFractions,
  ONE,
  type Outcomes,
  outcomesOf,
  parseTraits,
  powerOfFraction,
  printTraits,
  provingOf,
  type Sex,
  subtractFractions,
  type Traits,
  topPhenotypes,
  traitsOfYoung,
  youngLooks,
  ZERO,
} from '../../src/core/index.ts';
import { anyTraits, BALL, CORN, INVENTED, siteRow, value } from '../core/genetics/given.ts';

/** A table with what the species’ own have none of: a dominant on X and Y, deaths over two loci, a trait that hides two others. */
const HARD = value(
  lociOf('Fictiserpens durus', [
    siteRow('Fictiserpens durus', 'XYD', 'Xyd', {
      inheritance: 'dominant',
      sexLink: { system: 'XY', kind: 'partial', r: '1/10' },
    }),
    siteRow('Fictiserpens durus', 'AAA', 'aa'),
    siteRow('Fictiserpens durus', 'DOM', 'Dd', {
      inheritance: 'dominant',
      lethal: [{ carrying: ['Dd', 'aa'], says: 'together', basis: 'the site' }],
    }),
    siteRow('Fictiserpens durus', 'MSK', 'Msk', {
      masks: [{ carrying: ['Msk', 'Msk'], hides: ['XYD', 'BBB'], basis: 'the site' }],
    }),
    siteRow('Fictiserpens durus', 'BBB', 'Bb'),
  ]),
);
const TABLES: readonly (readonly [string, LocusTable])[] = [
  ['ball pythons', BALL],
  ['corn snakes', CORN],
  ['the invented', INVENTED],
  ['the hard', HARD],
];

/** Any pairing of two animals of at most so many named loci. */
const pairings = (loci: LocusTable, most: number): fc.Arbitrary<Cross> => {
  const secondDose = new Map(loci.rows.map((row) => [row.locus, fraction(1n, 4n)] as const));
  const animals = anyTraits(loci).filter(({ traits }) => traits.pieces.length <= most);
  return fc
    .tuple(animals, animals)
    .filter(([one, other]) => one.sex !== other.sex)
    .map(([one, other]) => {
      const [sire, dam] = one.sex === 'M' ? [one, other] : [other, one];
      return value(crossOf(sire, dam, { loci, secondDose })).cross;
    });
};

const sum = (all: readonly Fraction[]): Fraction => all.reduce(addFractions, ZERO);

/** Every way both parents can be, each written out as a cross of certain parents. */
function everyState(cross: Cross): readonly { readonly p: Fraction; readonly outcomes: Outcomes }[] {
  const ways = (blocks: readonly Block[]) =>
    blocks.reduce<readonly { p: Fraction; blocks: readonly Block[] }[]>(
      (all, block) =>
        all.flatMap((sofar) =>
          block.states.map((state) => ({
            p: multiplyFractions(sofar.p, state.p),
            blocks: [...sofar.blocks, { ...block, states: [{ ...state, p: ONE }] }],
          })),
        ),
      [{ p: ONE, blocks: [] }],
    );
  return ways(cross.sire).flatMap((sire) =>
    ways(cross.dam).map((dam) => ({
      p: multiplyFractions(sire.p, dam.p),
      outcomes: outcomesOf({ ...cross, sire: sire.blocks, dam: dam.blocks }),
    })),
  );
}

type Asked = {
  readonly wanted: ReadonlyMap<string, string>;
  readonly sex: Sex | null;
  readonly size: number;
  readonly of: 'eggs' | 'young';
};

/** P(exactly k) as the plain sum over all parent states of a binomial. */
function plainly(cross: Cross, { wanted, sex, size, of }: Asked): readonly Fraction[] {
  const every = everyState(cross).filter(({ outcomes }) => of === 'eggs' || !isZeroFraction(outcomes.viable));
  const total = sum(every.map(({ p }) => p));
  let ways = 1n;
  return Array.from({ length: size + 1 }, (_, k) => {
    if (k > 0) ways = (ways * BigInt(size - k + 1)) / BigInt(k);
    const terms = every.map(({ p, outcomes }) => {
      const young = chanceOf(outcomes, wanted, sex);
      const q = of === 'eggs' ? multiplyFractions(outcomes.viable, young) : young;
      const own = multiplyFractions(powerOfFraction(q, k), powerOfFraction(subtractFractions(ONE, q), size - k));
      return multiplyFractions(multiplyFractions(p, own), fraction(ways, 1n));
    });
    return divideFractions(sum(terms), total);
  });
}

describe.each(TABLES)('a clutch of %s', (_, loci) => {
  const asked = pairings(loci, 3).chain((cross) => {
    const looks = topPhenotypes(outcomesOf(cross), 6);
    const names = [...cross.loci.keys()];
    const wanted = fc
      .tuple(fc.nat(), fc.subarray(names))
      .map(([at, own]) => new Map(own.map((name) => [name, labelAt(cross, looks[at % looks.length]?.labels, name)])));
    return fc.record({
      cross: fc.constant(cross),
      wanted,
      sex: fc.constantFrom('M' as const, 'F' as const, null),
      size: fc.integer({ min: 1, max: 5 }),
      of: fc.constantFrom('eggs' as const, 'young' as const),
    });
  });

  it('is the plain sum over all states of both parents, and its counts add up to 1', () => {
    fc.assert(
      fc.property(asked, ({ cross, wanted, sex, size, of }) => {
        const states = everyState(cross);
        fc.pre(states.length <= 64 && states.some(({ outcomes }) => !isZeroFraction(outcomes.viable)));
        const found: ClutchChances = value(clutchChances(cross, wanted, sex, size, of));
        expect(sum(found.counts)).toEqual(ONE);
        expect(found.counts).toEqual(plainly(cross, { wanted, sex, size, of }));
        expect(found.atLeastOne).toEqual(subtractFractions(ONE, found.counts[0] ?? ZERO));
        const mean = sum(found.counts.map((p, k) => multiplyFractions(p, fraction(BigInt(k), 1n))));
        expect(found.expected).toEqual(mean);
        const outcomes = outcomesOf(cross);
        expect(found.perEgg).toEqual(multiplyFractions(outcomes.viable, chanceOf(outcomes, wanted, sex)));
      }),
      { numRuns: 40 },
    );
  });
});

function labelAt(cross: Cross, labels: readonly string[] | undefined, name: string): string {
  const order = cross.chromosomes.flatMap((one) => one.loci).filter((locus) => locus !== 'SD');
  return labels?.[order.indexOf(name)] ?? 'normal';
}

describe.each(TABLES)('the looks of young %s', (_, loci) => {
  it('are those of males and females put together, likeliest first', () => {
    fc.assert(
      fc.property(pairings(loci, 3), fc.integer({ min: 1, max: 6 }), (cross, limit) => {
        const outcomes = outcomesOf(cross);
        const apart = topPhenotypes(outcomes);
        const { looks, count, shown } = youngLooks(outcomes, loci, Number.POSITIVE_INFINITY);
        expect(BigInt(looks.length)).toBe(count);
        expect(shown).toEqual(looks.length === 0 ? ZERO : ONE);
        for (const look of looks) {
          const own = apart.filter((one) => one.labels.join() === look.labels.join());
          const ofSex = (sex: Sex): Fraction => sum(own.filter((one) => one.sex === sex).map((one) => one.p));
          expect([look.males, look.females]).toEqual([ofSex('M'), ofSex('F')]);
          expect(look.p).toEqual(addFractions(look.males, look.females));
          for (const keys of look.within.values()) expect(sum([...keys.values()])).toEqual(ONE);
        }
        const few = youngLooks(outcomes, loci, limit).looks;
        expect(few.map(({ p }) => p)).toEqual(looks.slice(0, limit).map(({ p }) => p));
      }),
      { numRuns: 40 },
    );
  });

  it('settle as traits, print and read back, and hold the chances that were worked out', () => {
    fc.assert(
      fc.property(pairings(loci, 3), (cross) => {
        for (const look of youngLooks(outcomesOf(cross), loci, 8).looks) {
          expect(traitsOfYoung(look, loci, null).ok).toBe(true);
          for (const sex of ['M', 'F'] as const) {
            const made = traitsOfYoung(look, loci, sex);
            expect(made.ok).toBe(!isZeroFraction(sex === 'M' ? look.males : look.females) || unsexable(look, loci));
            if (!made.ok) continue;
            const { traits, unsaid } = made.value;
            expect(value(parseTraits(printTraits(traits), loci, sex))).toEqual(traits);
            for (const [locus, keys] of look.within)
              if (!unsaid.includes(locus) && !hasOpen(traits, locus))
                expect(keyChances(traits, sex, loci, locus)).toEqual(ownKeys(keys, sex, loci, locus));
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});

/** Nothing in its genotypes says that a look is of one sex alone. */
function unsexable(look: { readonly within: ReadonlyMap<string, unknown> }, loci: LocusTable): boolean {
  return !loci.rows.some((row) => row.sexLink !== null && look.within.has(row.locus));
}

function hasOpen(traits: Traits, locus: string): boolean {
  return traits.pieces.some(
    (piece) => piece.loci.includes(locus) && piece.copies.flat().some((slot) => slot.kind === 'unknown'),
  );
}

/** The genotype chances that a cross with these traits works with. */
function keyChances(traits: Traits, sex: Sex, loci: LocusTable, locus: string): ReadonlyMap<string, Fraction> {
  const mate = { traits: { species: loci.species, pieces: [] }, sex: sex === 'M' ? 'F' : 'M' } as const;
  const secondDose = new Map(loci.rows.map((row) => [row.locus, fraction(1n, 4n)] as const));
  const animal = { traits, sex };
  const planned = value(
    sex === 'M' ? crossOf(animal, mate, { loci, secondDose }) : crossOf(mate, animal, { loci, secondDose }),
  );
  const found = new Map<string, Fraction>();
  for (const block of planned.cross[sex === 'M' ? 'sire' : 'dam']) {
    const at = block.loci.indexOf(locus);
    if (at >= 0)
      for (const { p, pairs } of block.states) count(found, pairs[at]?.join(sided(locus, sex, loci)) ?? '', p);
  }
  return found.size === 0 ? new Map([[wildKey(locus, sex, loci), ONE]]) : sorted(found);
}

function ownKeys(
  keys: ReadonlyMap<string, Fraction>,
  sex: Sex,
  loci: LocusTable,
  locus: string,
): ReadonlyMap<string, Fraction> {
  const row = loci.rows.find((one) => one.locus === locus);
  const own = [...keys].filter(
    ([key]) => row?.sexLink == null || key.includes('|') === (sided(locus, sex, loci) === '|'),
  );
  const total = sum(own.map(([, p]) => p));
  const found = new Map<string, Fraction>();
  for (const [key, p] of own) count(found, key, divideFractions(p, total));
  return sorted(found);
}

function count(found: Map<string, Fraction>, key: string, p: Fraction): void {
  const like = key.includes('/') ? key.split('/').sort().join('/') : key;
  if (!isZeroFraction(p)) found.set(like, addFractions(found.get(like) ?? ZERO, p));
}

function sorted(found: ReadonlyMap<string, Fraction>): ReadonlyMap<string, Fraction> {
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function sided(locus: string, sex: Sex, loci: LocusTable): '|' | '/' {
  const system = loci.rows.find((row) => row.locus === locus)?.sexLink?.system;
  return (system === 'XY' && sex === 'M') || (system === 'ZW' && sex === 'F') ? '|' : '/';
}

function wildKey(locus: string, sex: Sex, loci: LocusTable): string {
  const side = sided(locus, sex, loci);
  return side === '|' && loci.sexSystem === 'ZW' ? '+|W' : `+${side}+`;
}

describe('what would prove a trait', () => {
  it('is what evidence says of so many young seen at once', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 })),
        fc.constantFrom('cln', 'pie', 'gho'),
        fc.integer({ min: 1, max: 12 }),
        ([p, more], sign, young) => {
          const code = `[${sign} ${p}:${p + more}]/+`;
          const animal = { traits: value(parseTraits(code, BALL, 'M')), sex: 'M' } as const;
          for (const way of provingOf(animal.traits, BALL, 'M')[0]?.ways ?? []) {
            const dam = { traits: value(parseTraits(way.mateCode, BALL, 'F')), sex: 'F' } as const;
            const { cross } = value(crossOf(animal, dam, { loci: BALL }));
            const seen = evidenceOf(cross, [{ sex: null, labels: ['normal'], count: young }]);
            const carries = seen.sire.filter(({ strands }) => [...strands.values()].flat().includes(sign));
            expect(way.after[young - 1]).toEqual(sum(carries.map((one) => one.p)));
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it.each(TABLES)('of any of %s falls or grows with every young, and comes below what is asked', (_, loci) => {
    fc.assert(
      fc.property(
        anyTraits(loci).filter(({ traits }) => traits.pieces.length <= 3),
        ({ traits, sex }) => {
          for (const { prior, ways } of provingOf(traits, loci, sex)) {
            for (const { after, perYoung, youngFor } of ways) {
              const rising = order(after[0] ?? ZERO, prior) > 0;
              const steps = [prior, ...after].map((p) => (rising ? subtractFractions(ONE, p) : p));
              for (const [at, p] of steps.entries()) {
                if (at > 0) expect(order(p, steps[at - 1] ?? ONE)).toBeLessThan(0);
                if (at > 0 && at < youngFor.in20) expect(order(p, fraction(1n, 20n))).toBeGreaterThanOrEqual(0);
                if (at >= youngFor.in20) expect(order(p, fraction(1n, 20n))).toBeLessThan(0);
                if (at >= youngFor.in100) expect(order(p, fraction(1n, 100n))).toBeLessThan(0);
              }
              expect(after).toHaveLength(12);
              expect(perYoung.top > 0n).toBe(true);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

function order(a: Fraction, b: Fraction): number {
  const difference = subtractFractions(a, b).top;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}
