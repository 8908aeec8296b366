import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayAboutPercent, sayExpected, sayPercent } from '../../src/app/genetics/sayPercent.ts';
import { type Fraction, fraction, toNumber } from '../../src/core/index.ts';

const of = (text: string): Fraction => {
  const [top = '0', bottom = '1'] = text.split('/');
  return fraction(BigInt(top), BigInt(bottom));
};

describe('a percent', () => {
  it.each([
    ['1/4', '25 %'],
    ['0', '0 %'],
    ['1', '100 %'],
    ['1/8', '12.5 %'],
    ['1/16', '6.25 %'],
    ['9/16', '≈ 56.3 %'],
    ['3367/9216', '≈ 36.5 %'],
    ['1/3', '≈ 33.3 %'],
    ['1/800', '0.125 %'],
    ['1/1000', '0.1 %'],
    ['1/1001', '< 0.1 %'],
    ['9996/100000', '≈ 10 %'],
    ['999/1000', '99.9 %'],
    ['9999/10000', '> 99.9 %'],
  ])('of %s is %s', (chance, said) => {
    expect(sayPercent(of(chance))).toBe(said);
  });

  it('never says 0 of what is possible, nor 100 of what is open, and is off by less than half a step of its digits', () => {
    const chance = fc.tuple(fc.bigInt(1n, 10n ** 12n), fc.bigInt(1n, 10n ** 12n)).map(([a, b]) => fraction(a, a + b));
    fc.assert(
      fc.property(chance, (one) => {
        const said = sayPercent(one);
        if (/^[<>]/.test(said)) return /^(< 0\.1|> 99\.9) %$/.test(said);
        const figure = Number(said.replace(/[^\d.]/g, ''));
        const exact = 100 * toNumber(one);
        return (
          figure > 0 &&
          figure < 100 &&
          Math.abs(figure - exact) <= 0.5 * 10 ** (Math.floor(Math.log10(exact)) - 2) + 1e-9
        );
      }),
    );
  });

  it('of a double is never said to be exact', () => {
    expect(sayAboutPercent(0.125)).toBe('≈ 12.5 %');
    expect(sayAboutPercent(1 / 3)).toBe('≈ 33.3 %');
    expect(sayAboutPercent(0.0001)).toBe('< 0.1 %');
  });
});

describe('an expected count', () => {
  it.each([
    ['9/2', '4.5'],
    ['4/3', '≈ 1.33'],
    ['2/3', '≈ 0.667'],
    ['1/81', '≈ 0.0123'],
    ['1000/3', '≈ 333'],
  ])('of %s is %s', (count, said) => {
    expect(sayExpected(of(count))).toBe(said);
  });
});
