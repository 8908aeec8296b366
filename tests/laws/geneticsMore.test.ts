import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addFractions,
  type Cross,
  compareFractions,
  completenessOf,
  crossesOf,
  crossOf,
  evidenceOf,
  type Fraction,
  fraction,
  isZeroFraction,
  lociOf,
  locusOrder,
  multiplyFractions,
  type Observed,
  ONE,
  outcomesOf,
  type Parent,
  type Parentage,
  parseTraits,
  parthenogenesisFlag,
  type Result,
  type Sex,
  type SireCross,
  sayFraction,
  sayInbreeding,
  seasonFlags,
  siresEvidence,
  topPhenotypes,
  ZERO,
} from '../../src/core/index.ts';

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new RangeError(result.problem.message);
  return result.value;
}

const sum = (all: readonly Fraction[]): Fraction => all.reduce(addFractions, ZERO);
const isAtMost = (a: Fraction, b: Fraction): boolean => compareFractions(a, b) <= 0;

const p = fc
  .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 40, max: 400 }))
  .map(([top, bottom]) => fraction(BigInt(top), BigInt(bottom)));
const season = fc.array(p, { maxLength: 25 }).map((ps) => ps.map((one, at) => ({ id: `c${at}`, p: one })));
const rate = fc.integer({ min: 1, max: 99 }).map((top) => fraction(BigInt(top), 100n));
const dependence = fc.constantFrom('independent' as const, 'any' as const);

describe('the flags of a season', () => {
  it('have adjusted p from p to 1 that rise with p', () => {
    fc.assert(
      fc.property(season, rate, dependence, (tests, q, way) => {
        const judged = value(seasonFlags(tests, q, way))
          .flags.flatMap((one) => (one.adjusted === null ? [] : [{ p: one.p, adjusted: one.adjusted }]))
          .sort((a, b) => compareFractions(a.p, b.p));
        for (const [at, one] of judged.entries()) {
          expect(isAtMost(one.p, one.adjusted) && isAtMost(one.adjusted, ONE)).toBe(true);
          expect(isAtMost(judged[at - 1]?.adjusted ?? ZERO, one.adjusted)).toBe(true);
        }
      }),
    );
  });

  it('are those of the step-up rule said the other way: all up to the last p of at most rank x rate / tests', () => {
    fc.assert(
      fc.property(season, rate, (tests, q) => {
        const found = value(seasonFlags(tests, q));
        const judged = found.flags.filter((one) => !one.isImpossible).sort((a, b) => compareFractions(a.p, b.p));
        const step = (rank: number): Fraction => multiplyFractions(q, fraction(BigInt(rank), BigInt(judged.length)));
        const last = judged.findLastIndex((one, at) => isAtMost(one.p, step(at + 1)));
        const limit = judged[last]?.p;
        for (const one of judged) expect(one.isFlagged).toBe(limit !== undefined && isAtMost(one.p, limit));
      }),
    );
  });

  it('are no more whatever hangs together, and p = 0 is always one', () => {
    fc.assert(
      fc.property(season, rate, (tests, q) => {
        const [loose, strict] = [value(seasonFlags(tests, q)), value(seasonFlags(tests, q, 'any'))];
        for (const [at, one] of strict.flags.entries()) {
          if (one.isFlagged) expect(loose.flags[at]?.isFlagged).toBe(true);
          expect(one.isImpossible).toBe(isZeroFraction(one.p));
        }
      }),
    );
  });

  it('are refused in words for anything that is no chance', () => {
    const odd = fc.tuple(fc.bigInt(-9n, 9n), fc.bigInt(-3n, 9n)).map(([top, bottom]) => ({ top, bottom }));
    fc.assert(
      fc.property(fc.array(odd, { maxLength: 5 }), odd, dependence, (ps, q, way) => {
        const found = seasonFlags(
          ps.map((one) => ({ id: '', p: one })),
          q,
          way,
        );
        expect(found.ok || found.problem.remedy.length > 0).toBe(true);
      }),
    );
  });
});

const BALL = value(lociOf('Python regius'));
const parentOf = (code: string, sex: Sex): Parent => ({ traits: value(parseTraits(code, BALL, sex)), sex });
const SURE = ['wt', 'cln/+', 'cln/cln', 'Pas/+', 'Pas/Pas', 'alb/cdy', 'alb/+; Pas/+', 'Les/Moj', 'cln/Cry; pie/+'];
const sure = fc.constantFrom(...SURE);
const open = fc.constantFrom(...SURE, '[cln 2:3]/+', '[pie 1:2]/+; Pas/-', 'Pin/-', '[alb 1:3]/[cdy 1:2]');

/** Some sires of a dam, each of any prior, one at least above 0. */
function candidates(code: typeof open): fc.Arbitrary<readonly SireCross[]> {
  return fc
    .tuple(fc.array(fc.tuple(code, fc.integer({ min: 0, max: 3 })), { minLength: 1, maxLength: 4 }), code)
    .filter(([sires]) => sires.some(([, weight]) => weight > 0))
    .map(([sires, dam]) =>
      value(
        crossesOf(
          sires.map(([one, weight], at) => ({
            id: `s${at}`,
            parent: parentOf(one, 'M'),
            prior: fraction(BigInt(weight), 1n),
          })),
          parentOf(dam, 'F'),
          { loci: BALL },
        ),
      ),
    );
}

/** A young of some sire, by two numbers: which sire, which of his looks. */
function youngOf(crosses: readonly SireCross[], [who, which]: readonly [number, number]): Observed {
  const looks = topPhenotypes(outcomesOf(crosses[who % crosses.length]?.cross ?? NO_CROSS), 50);
  const look = looks[which % looks.length];
  return { sex: look?.sex ?? null, labels: look?.labels ?? [], count: 1 + (which % 3) };
}
const NO_CROSS: Cross = { system: 'XY', chromosomes: [], loci: new Map(), sire: [], dam: [], lethal: [], mask: [] };
const picks = fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 4 });

describe('several possible sires', () => {
  it('have chances that add up to 1, or none; so has the dam', () => {
    fc.assert(
      fc.property(candidates(open), picks, (crosses, drawn) => {
        const found = value(
          siresEvidence(
            crosses,
            drawn.map((one) => youngOf(crosses, one)),
          ),
        );
        const chances = found.sires.flatMap((one) => (one.p === null ? [] : [one.p]));
        expect(sayFraction(sum(chances))).toBe(found.paternity === 'one' ? '1' : '0');
        expect(sayFraction(sum(found.dam.map((one) => one.p)))).toBe('1');
        expect(found.together.length > 0).toBe(found.paternity === 'more than one');
      }),
      { numRuns: 60 },
    );
  });

  it('explain together what they gave together, each set as small as it can be', () => {
    fc.assert(
      fc.property(candidates(sure), picks, (all, drawn) => {
        const crosses = all.filter((one) => !isZeroFraction(one.prior));
        const observed = drawn.map((one) => youngOf(crosses, one));
        const found = value(siresEvidence(crosses, observed));
        expect(found.paternity).not.toBe('none of these');
        for (const ids of found.together) {
          for (const left of ids) {
            const fewer = crosses.filter((one) => ids.includes(one.id) && one.id !== left);
            expect(value(siresEvidence(fewer, observed)).paternity).toBe('none of these');
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('make what a sire alone makes likely, where the others’ loci look normal', () => {
    fc.assert(
      fc.property(open, open, open, fc.nat(), (sire, other, dam, which) => {
        const [own, female] = [parentOf(sire, 'M'), parentOf(dam, 'F')];
        const alone = value(crossOf(own, female, { loci: BALL })).cross;
        const beside = value(crossOf(own, female, { loci: BALL, beside: [parentOf(other, 'M').traits] })).cross;
        const looks = topPhenotypes(outcomesOf(alone), 50);
        const look = looks[which % looks.length];
        const byLocus = new Map(locusOrder(alone).map((locus, at) => [locus, look?.labels[at] ?? '']));
        const labels = locusOrder(beside).map((locus) => byLocus.get(locus) ?? 'normal');
        const row = { sex: look?.sex ?? null, count: 2 };
        const evidence = evidenceOf(alone, [{ ...row, labels: look?.labels ?? [] }]).evidence;
        expect(evidenceOf(beside, [{ ...row, labels }]).evidence).toEqual(evidence);
      }),
      { numRuns: 60 },
    );
  });
});

const label = fc.constantFrom('normal', 'Clown', 'Pastel', 'Super Pastel', '?', '', 'Albino');
const rows = fc.array(
  fc.record({
    sex: fc.constantFrom<Sex | null>('M', 'F', null),
    labels: fc.array(label, { maxLength: 3 }),
    count: fc.oneof(fc.integer({ min: 0, max: 3 }), fc.double()),
  }),
  { maxLength: 4 },
);

describe('hatchlings', () => {
  it('that are odd give an answer or a refusal in words', () => {
    fc.assert(
      fc.property(candidates(open), rows, (crosses, observed) => {
        for (const found of [
          siresEvidence(crosses, observed),
          parthenogenesisFlag(crosses[0]?.cross ?? NO_CROSS, observed),
        ])
          expect(found.ok || found.problem.remedy.length > 0).toBe(true);
      }),
      { numRuns: 80 },
    );
  });

  it('that are doubled gametes of the dam are always flagged when few, and never as a finding', () => {
    fc.assert(
      fc.property(
        sure,
        sure,
        fc.array(fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }), { minLength: 1, maxLength: 3 }),
        (sire, dam, sides) => {
          const cross = value(crossOf(parentOf(sire, 'M'), parentOf(dam, 'F'), { loci: BALL })).cross;
          const strands = new Map(
            cross.dam.flatMap((block) => block.loci.map((locus, at) => [locus, block.states[0]?.pairs[at]] as const)),
          );
          const observed = sides.map(
            (side): Observed => ({
              sex: 'F',
              count: 1,
              labels: locusOrder(cross).map((locus, at) => {
                const allele = strands.get(locus)?.[side[at] ? 0 : 1] ?? '+';
                return cross.loci.get(locus)?.phen.get(`${allele}/${allele}`) ?? '';
              }),
            }),
          );
          const flag = value(parthenogenesisFlag(cross, observed));
          expect(flag?.says).toMatch(/^A flag, not a finding/);
          expect(isAtMost(flag?.bySire ?? ONE, fraction(1n, 2n ** BigInt(sides.length)))).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** A pedigree of so many animals, parents before young, sires even and dams odd; some parents unknown. */
const pedigrees = fc
  .array(fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: 0, max: 9 })), { minLength: 4, maxLength: 40 })
  .map((given) =>
    given.map(([s, d, luck], at): Parentage => {
      const isFounder = at < 4 || luck === 0;
      const [sire, dam] = [2 * (s % Math.ceil(at / 2)), 2 * (d % Math.floor(at / 2)) + 1];
      return { id: `n${at}`, sire: isFounder ? null : `n${sire}`, dam: isFounder || luck === 1 ? null : `n${dam}` };
    }),
  );

describe('completeness', () => {
  it('shares out the whole animal among its founders, the unknown ones counted', () => {
    fc.assert(
      fc.property(pedigrees, (animals) => {
        for (const { id } of animals) {
          const found = value(completenessOf(animals, id, 4));
          const shares = [...found.founders, ...found.unknown].map((one) => one.share);
          expect(sayFraction(sum(shares))).toBe('1');
          expect(found.unknownShare).toEqual(sum(found.unknown.map((one) => one.share)));
          expect(isAtMost(found.index, ONE) && isAtMost(ZERO, found.index)).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('is worth as many generations as its shares by generation add up to', () => {
    fc.assert(
      fc.property(pedigrees, (animals) => {
        for (const { id } of animals.slice(-3)) {
          const found = value(completenessOf(animals, id, animals.length));
          expect(found.equivalent).toEqual(sum(found.generations.map((one) => one.share)));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('of any tangle is an answer or a refusal in words, and words come of every answer', () => {
    const id = fc.constantFrom('a', 'b', 'c', 'd');
    const parent = fc.option(id);
    const tangle = fc.array(fc.record({ id, sire: parent, dam: parent }), { maxLength: 6 });
    fc.assert(
      fc.property(tangle, id, fc.oneof(fc.integer({ min: -1, max: 6 }), fc.double()), (animals, one, generations) => {
        const found = completenessOf(animals, one, generations);
        const words = found.ok ? sayInbreeding(fraction(1n, 8n), found.value) : found.problem.message;
        expect(words).toMatch(/\w/);
        expect(words).not.toMatch(/\{/);
      }),
    );
  });
});
