import { describe, expect, it } from 'vitest';
import { ALPHABET, checkSymbol, encodeBase32, parseId } from '../../src/core/index.ts';
import { refusal, value } from '../core/log.ts';

/** The value of a text longer than a JavaScript number holds, modulo 37. */
function modulo37(text: string): number {
  return [...text].reduce((rest, letter) => (rest * 32 + ALPHABET.indexOf(letter)) % 37, 0);
}

describe('Crockford, “Base 32” (the archived specification of 2002)', () => {
  it('has no I, L, O and U among its 32 symbols', () => {
    expect(ALPHABET).toBe('0123456789ABCDEFGHJKMNPQRSTVWXYZ');
  });
  it('reads i and l as 1, o as 0, any case, and ignores hyphens', () => {
    const sound = `0000001${checkSymbol(1)}`;
    for (const text of ['000000i1', '000000L1', 'ooooOO11', '0-0-0-0-0-0-1-1'])
      expect(value(parseId(text)).id, text).toBe(sound);
    expect(refusal(parseId('000000U1'))).toBe('not-an-id');
  });
  it('checks by the number modulo 37, with * ~ $ = U for 32 to 36', () => {
    expect([0, 31, 32, 33, 34, 35, 36, 37].map(checkSymbol).join('')).toBe('0Z*~$=U0');
  });
  // The worked example that the project’s notes saw in the specification.
  it('writes 42 with its check as 1A5', () => {
    expect(encodeBase32(42) + checkSymbol(42)).toBe('1A5');
  });
  // Own computation, by hand: 1234 = 1·1024 + 6·32 + 18 (J); 1234 = 33·37 + 13 (D).
  it('writes 1234 as 16J, with the check D', () => {
    expect(encodeBase32(1234) + checkSymbol(1234)).toBe('16JD');
  });
});

describe('another implementation’s figures (johndcook.com, “Check sums and error detection”, 28 December 2018)', () => {
  const printed: readonly [string, string][] = [
    ['H88CMK9BVJ1V', 'P'],
    ['H88CMK9BVJ1W', 'Q'],
    ['H88CMK9BVJV1', 'E'],
    ['H88CMK9BVJ10', '*'],
  ];
  it.each(printed)('%s has the check %s', (text, check) => {
    expect(checkSymbol(modulo37(text))).toBe(check);
  });
});

describe('another implementation’s figure (dcode.fr, “Crockford Base-32”)', () => {
  it('1650553701 has the check J', () => {
    expect(checkSymbol(1_650_553_701)).toBe('J');
  });
});
