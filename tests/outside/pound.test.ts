import { describe, expect, it } from 'vitest';
import { POUND_G, parseWeight } from '../../src/core/index.ts';
import { value } from '../core/log.ts';

describe('the pound of 1959 (NIST SP 811, appendix B; exact value as also stated by the Weights and Measures Act 1963)', () => {
  it('is 453.59237 g exactly', () => {
    expect(POUND_G).toBe(453.59237);
  });
  // NIST SP 811, B.8: pound 4.535 924 E-01 kg, ounce 2.834 952 E-02 kg (seven figures, from memory).
  it('agrees with the rounded factors of B.8', () => {
    expect(POUND_G / 1000).toBeCloseTo(0.4535924, 7);
    expect(POUND_G / 16_000).toBeCloseTo(0.02834952, 8);
  });
  // bestvetaustin.com, “Medical math for fun”: 20 lb and 15 lb; the source rounds to 9.1 kg, we do not round inside.
  it('makes 9.07 kg of 20 lb and 6.80 kg of 15 lb', () => {
    expect(value(parseWeight('20 lb'))).toBe(9071.85);
    expect(value(parseWeight('15 lb'))).toBe(6803.89);
  });
});
