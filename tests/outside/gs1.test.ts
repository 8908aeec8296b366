import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDigit, OWN_PREFIX, ownNumber, readGtin } from '../../src/core/index.ts';
import { id, value } from '../core/log.ts';

// Check-digit examples of GS1's own pages, through the project's notes; all of them were computed again.
const EXAMPLES = ['6291041500213', '7300011000017', '8904000210037', '036000291452', '726412175425'];

describe('SHOP-CHECK: GS1 check digits', () => {
  it.each(EXAMPLES)('%s is whole', (digits) => {
    expect(value(readGtin(digits))).toEqual({ full: digits, check: Number(digits.at(-1)), ok: true });
  });
  it.each(EXAMPLES)('%s without its last digit gets it back', (digits) => {
    expect(checkDigit(digits.slice(0, -1))).toBe(Number(digits.at(-1)));
  });
  it('reads thirteen digits that lack the last one', () => {
    expect(value(readGtin('629104150021'))).toEqual({ full: '6291041500213', check: 3, ok: true });
  });
  it('says the right check digit of a number with a wrong one', () => {
    expect(value(readGtin('629 1041-500214'))).toEqual({ full: '6291041500213', check: 3, ok: false });
  });
  it('notices every single wrong digit', () => {
    const body = fc.stringMatching(/^\d{12}$/);
    const law = fc.property(body, fc.nat(11), fc.integer({ min: 1, max: 9 }), (text, at, by) => {
      const wrong = `${text.slice(0, at)}${(Number(text[at]) + by) % 10}${text.slice(at + 1)}`;
      expect(checkDigit(wrong)).not.toBe(checkDigit(text));
    });
    fc.assert(law);
  });
});

describe('numbers of our own', () => {
  // GS1 General Specifications, 2.1.13.2, through the project's notes: 04 is free for use within one company.
  it('begin with 04, are thirteen digits and have a sound check digit', () => {
    const numbers = Array.from({ length: 500 }, (_none, at) => ownNumber(id(at)));
    expect(OWN_PREFIX).toBe('04');
    expect(numbers.every((number) => /^04\d{11}$/.test(number) && value(readGtin(number)).ok)).toBe(true);
    expect(new Set(numbers).size).toBe(500);
  });
});
