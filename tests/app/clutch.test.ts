import { describe, expect, it } from 'vitest';
import { sayOdds, sayOneIn } from '../../src/app/clutch/sayFindings.ts';
import { settled } from '../../src/app/clutch/settled.ts';
import { readCount, readMm, readPercent, readTempC } from '../../src/app/clutch/typed.ts';
import { sayAhead, sayRange } from '../../src/app/clutch/window.ts';
import {
  type ChangedChance,
  clutchTest,
  type Day,
  foldFacility,
  fraction,
  ONE,
  type Result,
  ZERO,
} from '../../src/core/index.ts';
import { RAVEN, seasonLog } from '../browser/seasonSite.ts';

const said = <T>(read: Result<T>): T | string => (read.ok ? read.value : read.problem.code);

describe('a figure typed at the incubator or the scanner', () => {
  it.each([
    [readTempC, '31.8', 31.8],
    [readTempC, ' 31,8 °C ', 31.8],
    // 31.8 °C is 89.24 °F by the definition of the scales (NIST SP 811, appendix B.8, from memory).
    [readTempC, '89.24 F', 31.8],
    [readTempC, 'warm', 'not-a-number'],
    [readTempC, '31 K', 'unit-missing'],
    [readPercent, '92 %', 92],
    [readPercent, '920', 'unit-missing'],
    [readMm, '22', 22],
    [readMm, '2.2 cm', 22],
    [readMm, '22 kg', 'unit-missing'],
    [readCount, '', 0],
    [readCount, '7', 7],
    [readCount, '-1', 'count-whole'],
    [readCount, '7.5', 'count-whole'],
  ] as const)('%o reads %j as %j', (read, text, wanted) => {
    expect(said<number>(read(text))).toBe(wanted);
  });
});

describe('a window', () => {
  const window = (from: string, to: string) => ({ from: from as Day, to: to as Day });
  it.each([
    ['2026-12-01', '2026-12-06', 'Tue 1 – Sun 6 Dec', 'in 6 to 11 days'],
    ['2026-11-20', '2026-11-25', 'Fri 20 – Wed 25 Nov', 'now, today is its last day'],
    ['2026-11-20', '2026-11-26', 'Fri 20 – Thu 26 Nov', 'now, 1 day left'],
    ['2026-10-30', '2026-11-23', 'Fri 30 Oct – Mon 23 Nov', '2 days past its end'],
    ['2026-12-30', '2027-01-04', 'Wed 30 Dec 2026 – Mon 4 Jan 2027', 'in 35 to 40 days'],
    ['2026-11-26', '2026-11-26', 'Thu 26 Nov', 'in 1 day'],
  ])('from %s to %s is %s, %s', (from, to, range, ahead) => {
    expect([sayRange(window(from, to), '2026-11-25' as Day), sayAhead(window(from, to), '2026-11-25' as Day)]).toEqual([
      range,
      ahead,
    ]);
  });
});

describe('the exact test in words', () => {
  const half = fraction(1n, 2n);
  const test = (n: readonly number[], p = [half, half]) => {
    const found = clutchTest(p, n);
    if (!found.ok) throw new Error(found.problem.message);
    return found.value;
  };
  it('says how rarely chance does it only where that is small: none of 6 where half is expected, 2/64', () => {
    expect(sayOdds(test([0, 6]))).toContain('comes 1 in 32 by chance: a reason to look again');
    expect(sayOdds(test([3, 3]))).toBe('The numbers fit what the parents should give.');
    expect(sayOdds(test([1, 0], [ZERO, ONE]))).toContain('can have given no such clutch');
  });
  it('says about where it is rounded', () => {
    expect([sayOneIn(fraction(1n, 32n)), sayOneIn(fraction(2n, 65n)), sayOneIn(ZERO)]).toEqual([
      '1 in 32',
      'about 1 in 33',
      'never',
    ]);
  });
});

describe('a doubt that the young have settled', () => {
  const facility = foldFacility(seasonLog());
  const raven = facility.animals.get(RAVEN.id);
  if (raven === undefined) throw new Error('no Raven');
  const change = (after: ChangedChance['after'], symbol = 'cln', copies: 1 | 2 = 1): ChangedChance => ({
    ...{ locus: 'CLN', symbol, copies, allele: 'het Clown' },
    before: fraction(2n, 3n),
    after,
  });
  const withCode = (code: string) => ({ ...raven, traits: { code, words: null } });
  it.each([
    ['proven', '[cln 2:3]/+', change(ONE), 'cln/+'],
    ['proven, beside other traits', 'Pas/+; [cln 2:3]/+', change(ONE), 'Pas/+; cln/+'],
    ['ruled out', 'Pas/+; [cln 2:3]/+', change(ZERO), 'Pas/+'],
    ['still open', '[cln 2:3]/+', change(fraction(1n, 2n)), null],
    ['not what the record doubts', 'cln/+', change(ONE), null],
    ['of another allele', '[cln 2:3]/+', change(ONE, 'pie'), null],
  ])('%s', (_case, code, one, wanted) => {
    expect(settled(facility, withCode(code), one)?.code ?? null).toBe(wanted);
  });
  it('settles a second copy that nobody knew', () => {
    const second = (after: ChangedChance['after']) => ({ ...change(after, 'Pas', 2), locus: 'PAS' });
    const codes = [ONE, ZERO].map((after) => settled(facility, withCode('Pas/-'), second(after))?.code);
    expect(codes).toEqual(['Pas/Pas', 'Pas/+']);
  });
});
