import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  type Cross,
  type CrossSetting,
  chanceOf,
  compare,
  countsOf,
  crossOf,
  type Fraction,
  fraction,
  type LocusTable,
  lociOf,
  MOST_PHENOTYPES,
  ONE,
  type Outcomes,
  outcomesOf,
  type Parent,
  type PhenotypeTable,
  parseTraits,
  phenotypeTable,
  type Sex,
  sayFraction,
  toNumber,
  topPhenotypes,
  ZERO,
} from '../../../src/core/genetics/index.ts';
import { anyTraits, BALL, CORN, fault, INVENTED, siteRow, value } from './given.ts';

const parent = (code: string, sex: Sex, loci: LocusTable): Parent => ({
  traits: value(parseTraits(code, loci, sex)),
  sex,
});
const outcomes = (sire: string, dam: string, setting: CrossSetting = { loci: BALL }): Outcomes => {
  const { loci } = setting;
  return outcomesOf(value(crossOf(parent(sire, 'M', loci), parent(dam, 'F', loci), setting)).cross);
};
const rowsOf = (table: PhenotypeTable): readonly number[] => Array.from({ length: table.size }, (_, row) => row);
const said = (sex: Sex | null, labels: readonly string[], p: Fraction): string =>
  `${sex} ${labels.join(', ')}: ${sayFraction(p)}`;

/** All that holds for any table. */
function checkTable(found: Outcomes): PhenotypeTable {
  const table = value(phenotypeTable(found));
  const rows = rowsOf(table);
  expect(BigInt(table.size)).toBe(countsOf(found).phenotypes);
  const listed = rows.map((row) => said(table.sexAt(row), table.labelsAt(row), table.chanceAt(row)));
  expect(listed.sort()).toEqual(
    topPhenotypes(found)
      .map(({ sex, labels, p }) => said(sex, labels, p))
      .sort(),
  );
  if (table.size > 0) expect(sayFraction(rows.map((row) => table.chanceAt(row)).reduce(add, ZERO))).toBe('1');
  for (const row of rows) {
    const [chance, exact] = [table.chances[row] ?? Number.NaN, table.chanceAt(row)];
    if (table.exact) expect(chance).toBe(toNumber(exact));
    else expect(chance / toNumber(exact)).toBeCloseTo(1, 12);
    const labels = table.labelsAt(row);
    const wanted = new Map(table.loci.map((locus, at) => [locus, labels[at] ?? '']));
    expect(compare(chanceOf(found, wanted, table.sexAt(row)), exact)).toBe(0);
  }
  checkOrder(table);
  return table;
}

/** Every row once, exact chances never rising, the lower row first among equals. */
function checkOrder(table: PhenotypeTable): void {
  const order = table.order();
  expect(new Set(order).size).toBe(table.size);
  let broken = 0;
  for (let at = 1; at < order.length; at++) {
    const [before, here] = [order[at - 1] ?? 0, order[at] ?? 0];
    const difference = compare(table.chanceAt(before), table.chanceAt(here));
    if (difference < 0 || (difference === 0 && before > here)) broken++;
  }
  expect([order.length, broken]).toEqual([table.size, 0]);
}

const masking = value(
  lociOf('Python regius', [
    siteRow('Python regius', 'MSK', 'Msk', { masks: [{ carrying: ['Msk'], hides: ['PAS'], basis: 'the site' }] }),
  ]),
);

describe('the full table', () => {
  it.each<[string, string, string, LocusTable]>([
    ['one locus', 'cln/+', 'cln/+', BALL],
    ['what neither carries', 'wt', 'wt', BALL],
    ['three loci', 'Pas/+; cln/+; pie/+', 'Pas/+; cln/+; pie/pie', BALL],
    ['possible hets', '[cln 2:3]/+; [pie 1:2]/+', '[cln 17:61]/+; pie/+', BALL],
    ['a series', 'alb/cdy', '+/alb', BALL],
    ['a lethal genotype', 'Spi/+; Pas/+', 'Spi/+; cln/+', BALL],
    ['a lethal of two loci', 'Cha/+; Pas/+', 'Spi/+; Pas/+', BALL],
    ['a hidden locus', 'Msk/+; Pas/+', 'Msk/+; Pas/+; cln/+', masking],
    ['a locus partly linked to sex', '+/Y:Ban; Pas/+', 'Ban/+; Pas/+', BALL],
    ['linked loci in coupling', 'aa Bb/+ +', 'aa Bb cc/+ + +', INVENTED],
    ['loci on Z', 'zre/+; aa/+', 'Zed/W; aa/+', INVENTED],
    ['another species', 'amel/ultr; mot/str', 'amel/+; mot/+', CORN],
  ])('of %s is what the other questions say', (_, sire, dam, loci) => {
    expect(checkTable(outcomes(sire, dam, { loci })).exact).toBe(true);
  });

  it('counts in mixed radix, the first part slowest', () => {
    const table = value(phenotypeTable(outcomes('cln/+', 'cln/+')));
    expect(rowsOf(table).map((row) => said(table.sexAt(row), table.labelsAt(row), table.chanceAt(row)))).toEqual([
      'F normal: 3/8',
      'F Clown: 1/8',
      'M normal: 3/8',
      'M Clown: 1/8',
    ]);
    expect([...table.order()]).toEqual([0, 2, 1, 3]);
    expect([table.loci, table.total, table.exact]).toEqual([['CLN'], 8n, true]);
  });

  it('is empty where no egg lives', () => {
    const { cross } = value(crossOf(parent('cln/cln', 'M', BALL), parent('cln/cln', 'F', BALL), { loci: BALL }));
    const lethal = [new Map([['CLN', new Set(['cln/cln'])]])];
    const table = value(phenotypeTable(outcomesOf({ ...cross, lethal })));
    expect([table.size, table.chances.length, table.order().length]).toEqual([0, 0, 0]);
  });

  it('of any two ball pythons is what the other questions say', () => {
    fc.assert(
      fc.property(anyTraits(BALL), anyTraits(BALL), (sire, dam) => {
        const crossed = crossOf({ ...sire, sex: null }, { ...dam, sex: null }, { loci: BALL });
        fc.pre(crossed.ok && countsOf(outcomesOf(crossed.value.cross)).phenotypes < 500n);
        if (crossed.ok) checkTable(outcomesOf(crossed.value.cross));
      }),
      { numRuns: 30 },
    );
  });
});

/** Outcomes with nothing but weights in them: a part for each list, a look for each weight. */
function weighing(...parts: readonly (readonly bigint[])[]): Outcomes {
  const names = parts.map((_, at) => `L${at}`);
  const cross: Cross = {
    system: 'XY',
    chromosomes: names.map((name) => ({ id: name, sex: false, loci: [name], r: { sire: [], dam: [] } })),
    loci: new Map(),
    sire: [],
    dam: [],
    lethal: [],
    mask: [],
  };
  const made = parts.map((weights, at) => ({
    loci: [names[at] ?? ''],
    viable: ONE,
    total: weights.reduce((sum, weight) => sum + weight, 0n),
    genotypes: [],
    phenotypes: weights.map((weight, look) => ({ sex: null, labels: [`${look}`], weight, within: [] })),
  }));
  return { cross, parts: made, viable: ONE };
}

const upTo = (count: number, weight: (at: number) => bigint): readonly bigint[] =>
  Array.from({ length: count }, (_, at) => weight(at));

describe('the order of a table', () => {
  it('of 59,049 looks of ten loci goes by exact chances', () => {
    checkOrder(value(phenotypeTable(weighing(...upTo(10, () => 0n).map(() => [2n, 1n, 1n])))));
  });

  it('holds with so many different chances that they are not told apart beforehand', () => {
    const odd = upTo(500, (at) => 2n * BigInt(at) + 1n);
    const table = value(
      phenotypeTable(
        weighing(
          odd,
          upTo(500, (at) => 1009n + BigInt(at)),
        ),
      ),
    );
    expect(table.exact).toBe(true);
    checkOrder(table);
    for (let row = 0; row < table.size; row += 997) expect(table.chances[row]).toBe(toNumber(table.chanceAt(row)));
  });

  // Shares that differ in the last bit or not at all; the last look weighs as the first.
  const close = (count: number) =>
    upTo(count, (at) => 10n ** 30n + 10n ** 14n * BigInt((at * 61) % (count - 1)) + BigInt(at % (count - 1)));
  it.each([
    ['on both sides of a power of two', 256, 512],
    ['far from one', 250, 300],
  ])('holds where doubles cannot tell chances apart, %s', (_, one, other) => {
    const table = value(phenotypeTable(weighing(close(one), close(other))));
    expect([table.exact, new Set(table.chances).size < 2000]).toEqual([false, true]);
    checkOrder(table);
  });

  it('is called exact up to a total below 2^53', () => {
    const exact = (...weights: readonly bigint[]) => value(phenotypeTable(weighing(weights))).exact;
    expect([exact(2n ** 53n - 2n, 1n), exact(2n ** 53n - 1n, 1n)]).toEqual([true, false]);
  });

  it('does not mind a factor that all weights of a part share', () => {
    const [plain, times] = [weighing([2n, 1n], [3n, 1n]), weighing([2n << 70n, 1n << 70n], [3n, 1n])];
    const [one, other] = [value(phenotypeTable(plain)), value(phenotypeTable(times))];
    expect([other.exact, other.total, [...other.chances]]).toEqual([true, one.total, [...one.chances]]);
  });
});

describe('a table that is too large', () => {
  it('is refused with its size, however large', () => {
    const found = fault(phenotypeTable(weighing(...upTo(15, () => 0n).map(() => [2n, 1n, 1n]))));
    expect(found.code).toBe('table-too-large');
    expect(found.words).toContain('14348907');
    expect(found.words).toContain(`${MOST_PHENOTYPES}`);
    expect(fault(phenotypeTable(weighing(...upTo(900, () => 0n).map(() => [2n, 1n, 1n])))).code).toBe(
      'table-too-large',
    );
  });
});

it('a chance of half a million looks is the fraction that a chance alone is', () => {
  const hets = (count: number) => weighing(...upTo(count, () => 0n).map(() => [2n, 1n, 1n]));
  const table = value(phenotypeTable(hets(12)));
  expect([table.size, sayFraction(table.chanceAt(0)), sayFraction(table.chanceAt(531_440))]).toEqual([
    531_441,
    sayFraction(fraction(1n, 4096n)),
    sayFraction(fraction(1n, 4n ** 12n)),
  ]);
  expect([table.order()[0], table.chances[0]]).toEqual([0, 1 / 4096]);
});
