import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  clutchesUntil,
  type Fraction,
  fraction,
  lociOf,
  maturityOf,
  type ProjectCase,
  type ProjectRoute,
  type ProjectSheet,
  parseTraits,
  projectSheet,
  type Result,
  type Sex,
  sayFraction,
  toNumber,
} from '../../../src/core/index.ts';

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.path ?? ''} ${result.problem.message}`);
  return result.value;
}

const BALL = value(lociOf('Python regius'));
const MATURITY = maturityOf('Python regius') ?? { femaleYears: 0, maleYears: 0, mark: 'C' as const, source: '' };
type Start = readonly [name: string, code: string, sex: Sex | null];
const asked = (start: readonly Start[], wanted: string, more: Partial<ProjectCase> = {}): Result<ProjectSheet> =>
  projectSheet({
    loci: BALL,
    animals: start.map(([name, code, sex]) => ({ name, traits: value(parseTraits(code, BALL, sex)), sex })),
    wanted: wanted.split(' ').map((one) => ({ symbol: one.replace('2', ''), copies: one.endsWith('2') ? 2 : 1 })),
    clutch: 6,
    maturity: MATURITY,
    clutchesPerYear: 1,
    ...more,
  });
const sheet = (...given: Parameters<typeof asked>): ProjectSheet => value(asked(...given));
const routeOf = ({ routes }: ProjectSheet, name: string): ProjectRoute => {
  const found = routes.find(({ names }) => names.includes(name));
  if (found === undefined) throw new Error(`no route “${name}” in ${routes.flatMap(({ names }) => names).join('; ')}`);
  return found;
};
const hets = (...signs: string[]): readonly Start[] => {
  const code = signs.map((sign) => `${sign}/+`).join('; ');
  return [
    ['Wren', code, 'F'],
    ['Moss', code, 'M'],
  ];
};
const VISUALS: readonly Start[] = [
  ['Wren', 'pie/pie', 'F'],
  ['Moss', 'cln/cln', 'M'],
  ['Reed', 'alb/alb', 'M'],
  ['Fern', 'gho/gho', 'F'],
];

describe('clutches until a young has hatched', () => {
  // Source: the project's facts on genetics, “Clutches of 6 needed on average for a k-fold recessive visual, het x het,
  // k=1..4: 1.22, 3.11, 11.09, 43.1”; arithmetic of the geometric distribution on Mendel's quarters.
  const facts: readonly [number, string][] = [
    [1, '1.22'],
    [2, '3.11'],
    [3, '11.09'],
    [4, '43.1'],
  ];
  const digitsOf = (figure: string): number => figure.length - figure.indexOf('.') - 1;
  it.each(facts)('a %i-fold recessive visual of carriers takes %s clutches of 6', (k, clutches) => {
    expect(toNumber(clutchesUntil(fraction(1n, 4n ** BigInt(k)), 6, 'one')).toFixed(digitsOf(clutches))).toBe(clutches);
  });
  it('are the same in a sheet that begins with carriers of all', () => {
    for (const [k, clutches] of facts) {
      const signs = ['pie', 'cln', 'alb', 'gho'].slice(0, k);
      const [route] = sheet(hets(...signs), signs.map((sign) => `${sign}2`).join(' ')).routes.filter(({ names }) =>
        names.includes('carriers of all, visuals last'),
      );
      expect(toNumber(route?.clutches ?? fraction(0n, 1n)).toFixed(digitsOf(clutches))).toBe(clutches);
      expect(sayFraction(route?.steps[0]?.chance ?? fraction(0n, 1n))).toBe(`1/${4 ** k}`);
    }
  });
  it('are exact: one of two eggs, one of each sex of two', () => {
    const half = fraction(1n, 2n);
    const said = (p: Fraction, size: number, kept: Parameters<typeof clutchesUntil>[2]) =>
      sayFraction(clutchesUntil(p, size, kept));
    expect(said(half, 2, 'one')).toBe('4/3');
    expect(said(half, 2, 'F')).toBe('16/7');
    expect(said(fraction(1n, 1n), 1, 'pair')).toBe('3');
    expect(said(fraction(1n, 1n), 1, 'one')).toBe('1');
  });
  it('for one of each sex are those of a walk over what is still missing', () => {
    const cases = fc.record({ top: fc.integer({ min: 1, max: 16 }), size: fc.integer({ min: 1, max: 12 }) });
    fc.assert(
      fc.property(cases, ({ top, size }) => {
        const p = top / 16;
        const [none, noMale] = [(1 - p) ** size, (1 - p / 2) ** size];
        // From “both missing” a clutch leaves both, one or none missing; from “one missing” it ends with 1 - noMale.
        const oneLeft = 1 / (1 - noMale);
        const walk = (1 + 2 * (noMale - none) * oneLeft) / (1 - none);
        expect(toNumber(clutchesUntil(fraction(BigInt(top), 16n), size, 'pair'))).toBeCloseTo(walk, 8);
      }),
    );
  });
});

describe('BREED-PROJECT', () => {
  it('makes double carriers of two visuals first, keeps a pair and crosses them', () => {
    const [route] = sheet(VISUALS.slice(0, 2), 'pie2 cln2').routes;
    expect(route?.steps.map(({ sire, dam, young, keeps }) => [sire, dam, young, keeps])).toEqual([
      ['cln/cln', 'pie/pie', 'pie/+; cln/+', 'pair'],
      ['pie/+; cln/+', 'pie/+; cln/+', null, 'one'],
    ]);
    expect(route?.steps.map(({ chance }) => sayFraction(chance))).toEqual(['1', '1/16']);
    expect(route?.words[0]).toContain('Pair the male cln/cln (Moss) with the female pie/pie (Wren): all of the young');
  });
  it('adds the years to maturity of the later parent to each generation', () => {
    const [route] = sheet(VISUALS.slice(0, 2), 'pie2 cln2').routes;
    const [first, last] = route?.steps ?? [];
    expect(last?.from).toBeCloseTo((first?.until ?? 0) + 3, 9);
    expect(route?.years).toBeCloseTo(toNumber(clutchesUntil(fraction(1n, 1n), 6, 'pair')) + 3 + 3.114, 2);
    const slow = sheet(VISUALS.slice(0, 2), 'pie2 cln2', { maturity: { ...MATURITY, femaleYears: 4 } });
    expect((slow.routes[0]?.years ?? 0) - (route?.years ?? 0)).toBeCloseTo(1, 9);
  });
  it('takes fewer clutches by mixing visuals and carriers than by joining or by one line after another', () => {
    const found = sheet(VISUALS, 'pie2 cln2 alb2 gho2');
    const clutches = (name: string): number => toNumber(routeOf(found, name).clutches);
    expect(clutches('fewest clutches')).toBeLessThan(clutches('lines made apart, then joined'));
    expect(clutches('lines made apart, then joined')).toBeLessThan(clutches('one line after another'));
    expect(routeOf(found, 'soonest').years).toBeLessThan(routeOf(found, 'fewest clutches').years);
    const last = routeOf(found, 'lines made apart, then joined').steps.at(-1);
    expect(toNumber(last?.clutches ?? fraction(0n, 1n)).toFixed(1)).toBe('43.1');
    expect(sayFraction(last?.chance ?? fraction(0n, 1n))).toBe('1/256');
  });
  it('uses a visual at hand instead of a carrier', () => {
    const start: readonly Start[] = [...hets('pie'), ['Sage', 'pie/pie', 'M']];
    const route = routeOf(sheet(start, 'pie2'), 'fewest clutches');
    expect(route.steps).toMatchObject([{ sire: 'pie/pie', dam: 'pie/+', chance: fraction(1n, 2n) }]);
  });
  it('counts only young that can be told by their looks: no carrier out of carrier × normal', () => {
    const start: readonly Start[] = [
      ['Wren', 'pie/+', 'F'],
      ['Moss', 'pie/+; cln/cln', 'M'],
    ];
    for (const { steps } of sheet(start, 'pie2 cln2').routes) {
      for (const { dam, sire, young } of steps) {
        // A carrier beside a normal one has the same looks, so it is known only where a parent is visual or both copies show.
        if (young?.includes('pie/+')) expect([sire, dam].some((code) => code.includes('pie/pie'))).toBe(true);
      }
    }
  });
  it('tells one dose from two only where they look different', () => {
    const pair = (sign: string) => hets(sign);
    const chance = (start: readonly Start[], wanted: string) => sheet(start, wanted).routes[0]?.steps.at(-1)?.chance;
    expect(chance(pair('Pas'), 'Pas2')).toEqual(fraction(1n, 4n));
    expect(chance(pair('Pin'), 'Pin')).toEqual(fraction(3n, 4n));
    expect(asked(pair('Pin'), 'Pin2')).toMatchObject({ ok: false, problem: { code: 'project-no-way' } });
  });
  it('counts hatchlings and not eggs where two copies die', () => {
    const [route] = sheet(hets('Spi'), 'Spi').routes;
    expect(route?.steps[0]?.chance).toEqual(fraction(2n, 3n));
    expect(asked(hets('Spi'), 'Spi2')).toMatchObject({
      problem: { message: expect.stringContaining('not known alive') },
    });
  });
  it('warns of what is told of the wanted animal’s welfare', () => {
    expect(sheet(hets('Spi'), 'Spi').warnings.map(({ says }) => says)).toContain('every spider animal wobbles');
    expect(sheet(hets('pie'), 'pie2').warnings).toEqual([]);
  });
  it('keeps a male or a female by whom there is to pair it with', () => {
    const start: readonly Start[] = [
      ['Wren', 'pie/pie; Pas/+', 'F'],
      ['Moss', 'Ghi/+', 'M'],
    ];
    const route = routeOf(sheet(start, 'pie2 Ghi'), 'fewest clutches');
    expect(route.steps.map(({ keeps, dam }) => [keeps, dam])).toEqual([
      ['M', 'pie/pie'],
      ['one', 'pie/pie'],
    ]);
    expect(route.words[1]).toContain('(of step 1) with the female pie/pie (Wren)');
  });
  it('makes a step that two lines share once', () => {
    for (const { steps, clutches } of sheet(VISUALS, 'pie2 cln2 alb2 gho2').routes) {
      const crosses = steps.map(({ sire, dam, young }) => `${sire} × ${dam}: ${young}`);
      expect(new Set(crosses).size).toBe(crosses.length);
      expect(toNumber(clutches)).toBeCloseTo(
        steps.reduce((all, step) => all + toNumber(step.clutches), 0),
        9,
      );
    }
  });
  it('names animals that are what is wanted already', () => {
    expect(sheet([...hets('pie'), ['Sage', 'pie/pie; cln/+', 'M']], 'pie2').already).toEqual(['Sage']);
  });
  it('says what it takes for granted', () => {
    const open: readonly Start[] = [...hets('pie'), ['Sage', '[pie 2:3]/+', 'M'], ['Rue', 'alb/cdy', 'F']];
    const words = sheet(open, 'pie2').assumptions.join('\n');
    expect(words).toContain('best of its clutch');
    expect(words).toContain('Males are bred at 1.5 years and females at 3 (C: common practice, no source).');
    expect(words).toContain('Sage may carry more than is certain');
    expect(sheet([...hets('alb'), ['Rue', 'alb/cdy', 'F']], 'alb2').assumptions.join('\n')).toContain(
      'Rue is left out',
    );
  });
});

describe('BREED-MATURITY', () => {
  it('knows ball pythons by common practice, and nobody else (common practice, no source)', () => {
    expect(maturityOf('Python regius')).toMatchObject({ femaleYears: 3, maleYears: 1.5, mark: 'C' });
    expect(maturityOf('Anilius scytale')).toBeNull();
  });
});

describe('a project that cannot be planned', () => {
  const wrong: readonly [string, () => Result<ProjectSheet>, string, RegExp][] = [
    ['without a wanted gene', () => asked(hets('pie'), 'pie2', { wanted: [] }), 'project-case', /0 wanted genes/],
    ['with too many', () => asked(hets('pie'), 'pie2 cln2 alb2 gho2 Pas'), 'project-case', /5 wanted genes/],
    [
      'with an unknown sign',
      () => asked(hets('pie'), 'zzz2'),
      'project-case',
      /no allele of Python regius has the sign zzz/,
    ],
    ['with two alleles of one place', () => asked(hets('alb'), 'alb cdy'), 'project-case', /lie together/],
    ['on a sex chromosome', () => asked(hets('pie'), 'Ban'), 'project-case', /sex chromosome/],
    ['with a clutch of none', () => asked(hets('pie'), 'pie2', { clutch: 0 }), 'project-case', /clutch of 0/],
    [
      'with no clutch a year',
      () => asked(hets('pie'), 'pie2', { clutchesPerYear: 0 }),
      'project-case',
      /0 clutches a year/,
    ],
    [
      'with maturity that is no number',
      () => asked(hets('pie'), 'pie2', { maturity: { ...MATURITY, maleYears: Number.NaN } }),
      'project-case',
      /NaN years/,
    ],
    ['without a holder', () => asked(hets('pie'), 'pie2 cln2'), 'project-no-holder', /cln/],
    ['where it is only possible', () => asked([['Wren', '[pie 2:3]/+', 'F']], 'pie2'), 'project-no-holder', /pie/],
    ['without a partner', () => asked(hets('pie').slice(0, 1), 'pie2'), 'project-no-way', /No way leads/],
  ];
  it.each(wrong)('%s says so', (_what, made, code, words) => {
    expect(made()).toMatchObject({ ok: false, problem: { code, message: expect.stringMatching(words) } });
  });
});
