import { describe, expect, it } from 'vitest';
import {
  type Cross,
  carrierChances,
  chanceOf,
  clutchTest,
  evidenceOf,
  exactKinship,
  fraction,
  ONE,
  outcomesOf,
  parseFraction,
  pearson,
  pedigreeOrder,
  sayFraction,
  toNumber,
} from '../../src/core/index.ts';

const f = (text: string) => {
  const read = parseFraction(text);
  if (!read.ok) throw new RangeError(read.problem.message);
  return read.value;
};

/** One recessive locus on an autosome, with what each parent may be. */
function recessive(sire: readonly (readonly [string, string])[], dam: readonly (readonly [string, string])[]): Cross {
  const block = (states: readonly (readonly [string, string])[]) => [
    { loci: ['A'], states: states.map(([p, key]) => ({ p: f(p), pairs: [key.split('/') as [string, string]] })) },
  ];
  const phen = new Map([
    ['+/+', 'normal'],
    ['+/a', 'normal'],
    ['a/a', 'visual'],
  ]);
  return {
    system: 'XY',
    chromosomes: [{ id: '1', sex: false, loci: ['A'], r: { sire: [], dam: [] } }],
    loci: new Map([['A', { name: 'A', alleles: ['+', 'a'], phen }]]),
    sire: block(sire),
    dam: block(dam),
    lethal: [],
    mask: [],
  };
}

const HET: readonly (readonly [string, string])[] = [['1', '+/a']];
const VISUAL: readonly (readonly [string, string])[] = [['1', 'a/a']];
const POSS_66: readonly (readonly [string, string])[] = [
  ['2/3', '+/a'],
  ['1/3', '+/+'],
];
const POSS_50: readonly (readonly [string, string])[] = [
  ['1/2', '+/a'],
  ['1/2', '+/+'],
];

// Mendel 1866, "Versuche über Pflanzen-Hybriden": round and wrinkled, yellow and green, and the dihybrid counts.
describe('Mendel’s counts (1866)', () => {
  it.each([
    ['round : wrinkled', ['3/4', '1/4'], [5474, 1850], '1444/5493'],
    ['yellow : green', ['3/4', '1/4'], [6022, 2001], '361/24069'],
    ['the four classes of two pairs', ['9/16', '3/16', '3/16', '1/16'], [315, 101, 108, 32], '196/417'],
  ])('%s', (_what, p, n, chi2) => {
    const found = pearson(
      p.map(f),
      n,
      n.reduce((sum, one) => sum + one, 0),
    );
    expect(found && sayFraction(found)).toBe(chi2);
  });

  it('sweet pea 284, 21, 21, 55 against 9:3:3:1 (counts from memory)', () => {
    const found = pearson(['9/16', '3/16', '3/16', '1/16'].map(f), [284, 21, 21, 55], 381);
    expect(found && sayFraction(found)).toBe('461983/3429');
  });
});

// Elementary probability; the arithmetic is written out beside each.
describe('possible hets (own computation)', () => {
  it.each([
    [1, '1/2'],
    [2, '1/3'],
    [3, '1/5'],
    [4, '1/9'],
    [5, '1/17'],
    [6, '1/33'],
  ])('66 %% het x visual after %i normal hatchlings is het with %s', (k, p) => {
    expect(hetAfter(recessive(POSS_66, VISUAL), k)).toBe(p);
  });

  it.each([
    [1, '3/5'],
    [2, '9/17'],
    [3, '27/59'],
    [4, '81/209'],
    [5, '243/755'],
  ])('66 %% het x het after %i normal hatchlings is het with %s', (k, p) => {
    expect(hetAfter(recessive(POSS_66, HET), k)).toBe(p);
  });

  it.each([1, 2, 5])('50 %% het x visual after %i normals is het with 1/(1+2^k)', (k) => {
    expect(hetAfter(recessive(POSS_50, VISUAL), k)).toBe(`1/${1 + 2 ** k}`);
  });

  it('66 x 66 after 6 normals: both het 729/5849', () => {
    const seen = evidenceOf(recessive(POSS_66, POSS_66), [{ sex: null, labels: ['normal'], count: 6 }]);
    expect(seen.joint?.find((one) => one.sire === 0 && one.dam === 0)?.p).toEqual(f('729/5849'));
  });

  it('a clutch of 6 from two 66 % hets holds a visual with 0.3653, and not 0.5067', () => {
    const both = recessive(POSS_66, POSS_66);
    const none = evidenceOf(both, [{ sex: null, labels: ['normal'], count: 6 }]).evidence;
    expect(1 - toNumber(none)).toBeCloseTo(0.3653, 4);
    expect(1 - (1 - toNumber(chanceOf(outcomesOf(both), new Map([['A', 'visual']])))) ** 6).toBeCloseTo(0.5067, 4);
  });
});

function hetAfter(cross: Cross, normals: number): string {
  const seen = evidenceOf(cross, [{ sex: null, labels: ['normal'], count: normals }]);
  return sayFraction(seen.sire[0]?.p ?? ONE);
}

describe('the exact clutch test (own computation)', () => {
  it.each([
    [['1/2', '1/2'], [6, 0], '1/32'],
    [['1/4', '1/2', '1/4'], [4, 1, 1], '41/512'],
  ])('of %j seen %j has p %s', (p, n, value) => {
    const test = clutchTest(p.map(f), n);
    expect(test.ok && sayFraction(test.value.pValue)).toBe(value);
  });
});

type Line = readonly [id: string, sire: string | null, dam: string | null];

function kinshipOf(...lines: readonly Line[]) {
  const ordered = pedigreeOrder(lines.map(([id, sire, dam]) => ({ id, sire, dam })));
  if (!ordered.ok) throw new RangeError(ordered.problem.message);
  return exactKinship(ordered.value, { inbreeding: new Map(), kinship: [] });
}

// Mrode, "Linear Models for the Prediction of Animal Breeding Values", table 2.1; relationship A = 2 x kinship.
it('Mrode’s table 2.1: F5 = F6 = 1/8 and three relationships', () => {
  const k = kinshipOf(
    ['1', null, null],
    ['2', null, null],
    ['3', '1', '2'],
    ['4', '1', null],
    ['5', '4', '3'],
    ['6', '5', '2'],
  );
  expect(['5', '6'].map((id) => sayFraction(k.inbreeding(id)))).toEqual(['1/8', '1/8']);
  const related = [
    ['5', '6'],
    ['3', '5'],
    ['4', '6'],
  ].map(([a = '', b = '']) => 2 * toNumber(k.of(a, b)));
  expect(related).toEqual([0.6875, 0.625, 0.3125]);
});

// Fernando & Grossman 1990, the pedigree of eight animals.
it('Fernando & Grossman 1990: F5 = 1/8, F6 = 1/4, F7 = F8 = 9/32', () => {
  const k = kinshipOf(
    ['1', null, null],
    ['2', null, null],
    ['3', '1', null],
    ['4', '1', '2'],
    ['5', '3', '4'],
    ['6', '1', '4'],
    ['7', '5', '6'],
    ['8', '5', '6'],
  );
  expect(['5', '6', '7', '8'].map((id) => sayFraction(k.inbreeding(id)))).toEqual(['1/8', '1/4', '9/32', '9/32']);
});

// Wray 1990, the pedigree of eight animals.
it('Wray 1990: F5 = F6 = 1/4, F7 = 5/16, F8 = 15/32', () => {
  const k = kinshipOf(
    ['1', null, null],
    ['2', null, null],
    ['3', '2', '1'],
    ['4', '2', '1'],
    ['5', '3', '4'],
    ['6', '2', '4'],
    ['7', '5', '6'],
    ['8', '5', '7'],
  );
  expect(['5', '6', '7', '8'].map((id) => sayFraction(k.inbreeding(id)))).toEqual(['1/4', '1/4', '5/16', '15/32']);
});

// Wright 1921/1922 gave these series; the values are recomputed from his recurrence.
it('a line of full sibs: 1/4, 3/8, 1/2, 19/32, 43/64', () => {
  const lines: Line[] = [
    ['s0', null, null],
    ['d0', null, null],
  ];
  for (let at = 1; at <= 6; at++)
    lines.push([`s${at}`, `s${at - 1}`, `d${at - 1}`], [`d${at}`, `s${at - 1}`, `d${at - 1}`]);
  const k = kinshipOf(...lines);
  expect([2, 3, 4, 5, 6].map((at) => sayFraction(k.inbreeding(`s${at}`)))).toEqual([
    '1/4',
    '3/8',
    '1/2',
    '19/32',
    '43/64',
  ]);
});

it('back to one sire each time: 1/4, 3/8, 7/16, 15/32', () => {
  const lines: Line[] = [
    ['s', null, null],
    ['d0', null, null],
  ];
  for (let at = 1; at <= 5; at++) lines.push([`d${at}`, 's', `d${at - 1}`]);
  const k = kinshipOf(...lines);
  expect([2, 3, 4, 5].map((at) => sayFraction(k.inbreeding(`d${at}`)))).toEqual(['1/4', '3/8', '7/16', '15/32']);
});

// Own computation: clutches of 6 until a k-fold recessive visual from double, triple … hets: 1 / (1 - (1 - 4^-k)^6).
it.each([
  [1, 1.22],
  [2, 3.11],
  [3, 11.09],
  [4, 43.1],
])('a %i-fold visual wants %d clutches of 6 on average', (k, clutches) => {
  const each = toNumber(chanceOf(outcomesOf(recessive(HET, HET)), new Map([['A', 'visual']])));
  const wanted = 1 / (1 - (1 - each ** k) ** 6);
  expect(wanted).toBeCloseTo(clutches, clutches > 40 ? 1 : 2);
});

// Hardy 1908 and Weinberg 1908: genotype shares of an unrelated animal.
it('an unrelated founder stands at p^2, 2pq, q^2', () => {
  const freq = new Map([
    ['+', fraction(9n, 10n)],
    ['a', fraction(1n, 10n)],
  ]);
  const found = carrierChances(['+', 'a'], [{ id: 'x', sire: null, dam: null, prior: null, seen: null }], freq);
  const post = found.ok ? [...(found.value.post.get('x') ?? [])].map(([key, p]) => [key, sayFraction(p)]) : [];
  expect(post).toEqual([
    ['+/+', '81/100'],
    ['+/a', '9/50'],
    ['a/a', '1/100'],
  ]);
});
