import { describe, expect, it } from 'vitest';
import {
  grams,
  millimetres,
  parseWeight,
  roundTo,
  sayGramRange,
  sayGrams,
  sayNumber,
  weightInRange,
} from '../../src/core/index.ts';
import { refusal, value } from './log.ts';

describe('a weight as typed', () => {
  const reads: readonly [string, number][] = [
    ['900', 900],
    [' 900 g ', 900],
    ['1.2kg', 1200],
    ['1,2 kg', 1200],
    ['1,250 kg', 1250],
    ['.5', 0.5],
    ['12,5', 12.5],
    ['12.345', 12.35],
    ['2 LB', 907.18],
    ['8 oz', 226.8],
    ['0,500', 0.5],
  ];
  it.each(reads)('reads %s as %d g', (text, weightG) => {
    expect(value(parseWeight(text))).toBe(weightG);
  });

  const refuses: readonly [string, string][] = [
    ['', 'not-a-number'],
    ['heavy', 'not-a-number'],
    ['1.2.3', 'not-a-number'],
    ['-5 g', 'not-a-number'],
    ['1e3', 'not-a-number'],
    ['NaN', 'not-a-number'],
    ['12 stone', 'unit-missing'],
    ['0', 'not-positive'],
    ['0 kg', 'not-positive'],
    ['0.4', 'weight-impossible'],
    ['900 kg', 'weight-impossible'],
    ['9'.repeat(400), 'not-finite'],
    ['1,480', 'number-ambiguous'],
    ['1,480 g', 'number-ambiguous'],
  ];
  it.each(refuses)('refuses “%s”: %s', (text, code) => {
    expect(refusal(parseWeight(text))).toBe(code);
  });
  it('says both readings where a comma could be for thousands or for a part', () => {
    const read = parseWeight('1,480 g');
    expect(read.ok ? '' : read.problem.message).toContain('1480 g or 1.48 g');
  });
});

describe('a weight from elsewhere', () => {
  const cases: readonly [number, string][] = [
    [0, 'not-positive'],
    [-3, 'not-positive'],
    [0.49, 'weight-impossible'],
    [150_001, 'weight-impossible'],
    [Number.NaN, 'not-finite'],
    [Number.POSITIVE_INFINITY, 'not-finite'],
  ];
  it.each(cases)('refuses %d g: %s', (weightG, code) => {
    expect(refusal(weightInRange(weightG))).toBe(code);
  });
  it('takes both ends of the range', () => {
    expect([0.5, 150_000].map((weightG) => value(weightInRange(weightG)))).toEqual([0.5, 150_000]);
  });
});

describe('makers of branded numbers', () => {
  it('throw for what is a bug and not data', () => {
    expect(() => grams(Number.NaN)).toThrow(RangeError);
    expect(() => millimetres(Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(grams(5) + millimetres(6)).toBe(11);
  });
});

describe('rounding', () => {
  const cases: readonly [number, number, number][] = [
    [1.005, 2, 1.01],
    [-1.005, 2, -1.01],
    [2.5, 0, 3],
    [-2.5, 0, -3],
    [1e21, 2, 1e21],
    [1e-7, 2, 0],
    [-1e-9, 3, 0],
    [0.1 + 0.2, 3, 0.3],
  ];
  it.each(cases)('rounds %d to %d decimals: %d', (given, decimals, rounded) => {
    expect(roundTo(given, decimals)).toBeCloseTo(rounded, 12);
  });
  it('leaves what is no number alone', () => {
    expect(roundTo(Number.NaN, 2)).toBeNaN();
  });
});

describe('saying grams', () => {
  it('shows a tenth below 20 g only, and a comma between thousands', () => {
    expect([4.26, 19.96, 20.4, 1480, 123456.7].map(sayGrams)).toEqual([
      '4.3 g',
      '20 g',
      '20 g',
      '1,480 g',
      '123,457 g',
    ]);
    expect([0, 999, 1000, 1234567.25, -1500].map(sayNumber)).toEqual(['0', '999', '1,000', '1,234,567.25', '-1,500']);
  });
  it('shows a range as one figure where both ends look the same', () => {
    expect(sayGramRange([60, 100])).toBe('60–100 g');
    expect(sayGramRange([60.1, 60.4])).toBe('60 g');
  });
});
