import { describe, expect, it } from 'vitest';
import {
  add,
  chanceOf,
  clutchChances,
  crossOf,
  type LocusTable,
  lociOf,
  ONE,
  outcomesOf,
  parseTraits,
  type Sex,
  sayFraction,
  toNumber,
  ZERO,
} from '../../../src/core/genetics/index.ts';
import { BALL, fault, siteRow, value } from './given.ts';

type Wanted = Readonly<Record<string, string>>;

const crossFor = (sire: string, dam: string, loci: LocusTable = BALL) => {
  const parent = (code: string, sex: Sex) => ({ traits: value(parseTraits(code, loci, sex)), sex });
  return value(crossOf(parent(sire, 'M'), parent(dam, 'F'), { loci })).cross;
};
const asked = (
  [sire, dam]: readonly [string, string],
  wanted: Wanted,
  size: number,
  { sex = null, of = 'eggs', loci = BALL }: { sex?: Sex | null; of?: 'eggs' | 'young'; loci?: LocusTable } = {},
) => clutchChances(crossFor(sire, dam, loci), new Map(Object.entries(wanted)), sex, size, of);
const chances = (...args: Parameters<typeof asked>) => value(asked(...args));

const CLOWN = { CLN: 'Clown' };
const POSS = '[cln 2:3]/+';

describe('a clutch of two 66 % hets', () => {
  // Own computation: both are het with 4/9, and only then can any of six eggs be a visual: (4/9)(1 - (3/4)^6).
  it('of 6 eggs holds a visual with 0.3653, not the 0.5067 of eggs taken each for itself', () => {
    const { atLeastOne, perEgg } = chances([POSS, POSS], CLOWN, 6);
    expect(sayFraction(atLeastOne)).toBe('3367/9216');
    expect(toNumber(atLeastOne)).toBeCloseTo(0.3653, 4);
    expect(sayFraction(perEgg)).toBe('1/9');
    expect(1 - (1 - toNumber(perEgg)) ** 6).toBeCloseTo(0.5067, 4);
  });

  it('gives on average the same number as eggs taken each for itself', () =>
    expect(sayFraction(chances([POSS, POSS], CLOWN, 6).expected)).toBe('2/3'));

  it('gives every count its chance', () => {
    const { counts } = chances([POSS, POSS], CLOWN, 6);
    // 4/9 C(6, k) (1/4)^k (3/4)^(6 - k), and 5/9 more for none.
    expect(counts.map(sayFraction)).toEqual([
      '5849/9216',
      '81/512',
      '135/1024',
      '15/256',
      '15/1024',
      '1/512',
      '1/9216',
    ]);
  });
});

describe('a clutch of known parents', () => {
  // The binomial; that (3/4)^10 = 0.0563 of Mendel's test families of ten hide a hybrid is Fisher 1936 (from memory).
  it('of ten from het × het holds no visual with 0.0563', () => {
    const { counts } = chances(['cln/+', 'cln/+'], CLOWN, 10);
    expect(sayFraction(counts[0] ?? ONE)).toBe('59049/1048576');
    expect(toNumber(counts[0] ?? ONE)).toBeCloseTo(0.0563, 4);
  });

  it('of two loci multiplies per egg', () => {
    const { atLeastOne, perEgg } = chances(['cln/+; pie/+', 'cln/+; pie/+'], { CLN: 'Clown', TFEC: 'Piebald' }, 2);
    expect([sayFraction(perEgg), sayFraction(atLeastOne)]).toEqual(['1/16', '31/256']);
  });

  it('asks for a sex as well', () =>
    expect(sayFraction(chances(['cln/+', 'cln/cln'], CLOWN, 1, { sex: 'F' }).atLeastOne)).toBe('1/4'));

  it('keeps a locus on the sex chromosome and the sex together: male-maker, r = 1/20 (from memory)', () =>
    expect(sayFraction(chances(['+/Y:Ban', 'wt'], { BAN: 'Banana' }, 1, { sex: 'M' }).perYoung)).toBe('19/40'));

  it('holds what is sure in every egg, and what cannot be in none', () => {
    expect(chances(['cln/cln', 'cln/cln'], CLOWN, 3).counts.map(sayFraction)).toEqual(['0', '0', '0', '1']);
    expect(chances(['wt', 'wt'], {}, 2).counts.map(sayFraction)).toEqual(['0', '0', '1']);
    expect(sayFraction(chances(['wt', 'pie/+'], CLOWN, 6).atLeastOne)).toBe('0');
    expect(sayFraction(chances(['wt', 'pie/+'], { CLN: 'normal' }, 6).perEgg)).toBe('1');
  });
});

describe('eggs that die', () => {
  const spider = { SPI: 'Spider' };
  it('count among the eggs and not among the young', () => {
    const eggs = chances(['Spi/+', 'Spi/+'], spider, 2);
    expect([sayFraction(eggs.perEgg), sayFraction(eggs.perYoung)]).toEqual(['1/2', '2/3']);
    expect(eggs.counts.map(sayFraction)).toEqual(['1/4', '1/2', '1/4']);
    expect(chances(['Spi/+', 'Spi/+'], spider, 2, { of: 'young' }).counts.map(sayFraction)).toEqual([
      '1/9',
      '4/9',
      '4/9',
    ]);
  });

  it('of other loci count as well', () =>
    expect(sayFraction(chances(['Spi/+; cln/cln', 'Spi/+; cln/cln'], CLOWN, 1).atLeastOne)).toBe('3/4'));

  it('leave no young where all die: each chance is 0', () => {
    const row = siteRow('Python regius', 'DED', 'Ded', {
      lethal: [{ carrying: ['Ded'], says: 'all die', basis: 'the site' }],
    });
    const loci = value(lociOf('Python regius', [row]));
    const none = chances(['Ded/Ded', 'wt'], { DED: 'Site Ded' }, 4, { of: 'young', loci });
    expect([none.perYoung, none.atLeastOne, none.expected].map(sayFraction)).toEqual(['0', '0', '0']);
  });
});

describe('a clutch size', () => {
  it.each([0, -1, 2.5, 201, Number.NaN])('of %d is refused', (size) => {
    expect(fault(asked(['cln/+', 'cln/+'], CLOWN, size)).code).toBe('clutch-size');
    expect(fault(asked(['cln/+', 'cln/+'], CLOWN, size)).words).toMatch(/from 1 to 200/);
  });

  it('of 200 is worked out to the last egg, and quickly', () => {
    const pair = ['[cln 2:3]/+; [pie 17:61]/+; Ban/Y?+', '[cln 2:3]/+; [pie 5:7]/+'] as const;
    const wanted = { CLN: 'normal', TFEC: 'normal', BAN: 'Banana' };
    const { counts, atLeastOne, perEgg } = chances(pair, wanted, 200, { sex: 'M' });
    expect(counts).toHaveLength(201);
    expect(counts.reduce(add, ZERO)).toEqual(ONE);
    expect(atLeastOne.top < atLeastOne.bottom).toBe(true);
    const outcomes = outcomesOf(crossFor(...pair));
    expect(perEgg).toEqual(chanceOf(outcomes, new Map(Object.entries(wanted)), 'M'));
  });

  it('is not worked out from parents of too many possible states', () => {
    const signs = Array.from({ length: 9 }, (_, at) => `qa${at}`);
    const rows = signs.map((sign, at) =>
      siteRow('Python regius', `QQ${at}`, sign, {
        lethal: at === 0 ? [{ carrying: signs, says: 'together', basis: 'the site' }] : [],
      }),
    );
    const loci = value(lociOf('Python regius', rows));
    const open = signs.map((sign) => `[${sign} 1:2]/+`).join('; ');
    expect(fault(asked([open, open], { QQ0: 'normal' }, 6, { loci })).code).toBe('parents-too-open');
  });
});
