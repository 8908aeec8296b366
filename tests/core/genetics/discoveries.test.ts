import { describe, expect, it } from 'vitest';
import {
  clutchTest,
  compare,
  type Dependence,
  fraction,
  MOST_TESTS,
  ONE,
  parseFraction,
  sayFraction,
  seasonFlags,
  ZERO,
} from '../../../src/core/genetics/index.ts';
import { fault, value } from './given.ts';

const f = (text: string) => value(parseFraction(text));
const season = (ps: readonly string[], dependence: Dependence = 'independent', rate = '0.05') =>
  value(
    seasonFlags(
      ps.map((p, at) => ({ id: `c${at + 1}`, p: f(p) })),
      f(rate),
      dependence,
    ),
  );
const flagged = (...given: Parameters<typeof season>) =>
  season(...given).flags.flatMap((one) => (one.isFlagged ? [one.id] : []));

// Benjamini & Hochberg 1995, J R Stat Soc B 57:289, the worked example of fifteen p (a myocardial infarction trial):
// the list and its outcome (four rejected, three by Bonferroni) are from memory.
const EXAMPLE =
  '0.0001 0.0004 0.0019 0.0095 0.0201 0.0278 0.0298 0.0344 0.0459 0.3240 0.4262 0.5719 0.6528 0.7590 1'.split(' ');

describe('the worked example of 1995 (from memory)', () => {
  it('has its first four flagged at 0.05', () => expect(flagged(EXAMPLE)).toEqual(['c1', 'c2', 'c3', 'c4']));

  it('would have three flagged by p x 15 alone', () => {
    const bonferroni = EXAMPLE.filter((p) => compare(f(p), fraction(1n, 300n)) <= 0);
    expect(bonferroni).toHaveLength(3);
  });

  // Own arithmetic: p x 15 / rank, and the sixth takes the smaller figure of the seventh, 0.0298 x 15 / 7.
  it('has these adjusted p, exactly', () => {
    const adjusted = season(EXAMPLE).flags.map((one) => sayFraction(one.adjusted ?? ZERO));
    expect(adjusted.slice(0, 8)).toEqual(
      [f('0.0015'), f('0.003'), f('0.0095'), f('0.035625'), f('0.0603'), f('447/7000'), f('447/7000'), f('0.0645')].map(
        sayFraction,
      ),
    );
    expect(adjusted.at(-1)).toBe('1');
  });

  // Benjamini & Yekutieli 2001, Ann Stat 29:1165 (from memory): 1 + 1/2 + … + 1/15 = 1195757/360360, own arithmetic.
  it('has three flagged whatever hangs together, with p x 15 / rank x 1195757/360360', () => {
    expect(flagged(EXAMPLE, 'any')).toEqual(['c1', 'c2', 'c3']);
    const [first] = season(EXAMPLE, 'any').flags;
    expect(first?.adjusted).toEqual(f(`${3n * 1195757n}/${2000n * 360360n}`));
  });

  it('does not mind the order in which clutches are given', () => {
    const turned = season(EXAMPLE.toReversed()).flags.map((one) => one.adjusted);
    expect(turned.toReversed()).toEqual(season(EXAMPLE).flags.map((one) => one.adjusted));
  });
});

describe('a season', () => {
  it('steps up: what misses its own step is carried by a later one', () =>
    expect(flagged(['0.04', '0.045', '0.05'])).toEqual(['c1', 'c2', 'c3']));

  it('flags nothing where nothing is small, and nothing of nothing', () => {
    expect(flagged(['0.5', '0.06', '1'])).toEqual([]);
    expect(season([])).toEqual({ tests: 0, flags: [] });
  });

  it('flags a look of chance 0 at any rate, and counts it with no other test', () => {
    const impossible = value(clutchTest([f('1/2'), f('1/2'), ZERO], [3, 3, 1]));
    const found = value(
      seasonFlags(
        [
          { id: 'impossible', p: impossible.pValue },
          { id: 'even', p: ONE },
          { id: 'odd', p: f('1/32') },
        ],
        f('1/1000'),
      ),
    );
    expect(found.tests).toBe(2);
    expect(found.flags.map((one) => [one.id, one.isFlagged, one.isImpossible])).toEqual([
      ['impossible', true, true],
      ['even', false, false],
      ['odd', false, false],
    ]);
    expect(found.flags.map((one) => one.adjusted && sayFraction(one.adjusted))).toEqual([null, '1', '1/16']);
  });

  it('of 2,000 clutches is judged at once, whatever hangs together', () => {
    const many = Array.from({ length: 2000 }, (_, at) => `${at + 1}/2001`);
    expect(season(many, 'any').flags.every((one) => one.adjusted !== null && !one.isFlagged)).toBe(true);
  });
});

describe('what is no rate and no p', () => {
  it.each(['0', '1', '-1/20', '5'])('the rate %s', (rate) => {
    const found = fault(seasonFlags([], f(rate)));
    expect([found.code, found.path]).toEqual(['flag-rate', 'rate']);
    expect(found.words).toMatch(/between 0 and 1/);
  });

  it.each(['-1/2', '3/2'])('the p %s', (p) =>
    expect(fault(seasonFlags([{ id: 'c1', p: f(p) }], f('1/20')))).toMatchObject({ code: 'flag-p', path: 'tests.0.p' }),
  );

  it('a list of many seasons', () => {
    const many = Array.from({ length: MOST_TESTS + 1 }, () => ({ id: '', p: ONE }));
    expect(fault(seasonFlags(many, f('1/20'))).code).toBe('flags-many');
  });
});
