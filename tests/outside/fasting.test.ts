import { describe, expect, it } from 'vitest';
import { lossPercentPerDay, lossSinceReset, speciesOf } from '../../src/core/index.ts';
import { rex, weighed } from '../core/log.ts';

describe('McCue 2007, Zoology (as told in J. Exp. Biol. 210(23)): ball pythons lost 18.3 % in 168 days of fasting', () => {
  it('is 0.1202 % a day, compound', () => {
    expect(lossPercentPerDay(100, 100 - 18.3, 168)).toBeCloseTo(0.1202, 4);
  });
  it('reaches 10 % on day 87.6', () => {
    const rate = lossPercentPerDay(100, 100 - 18.3, 168) / 100;
    expect(Math.log(0.9) / Math.log(1 - rate)).toBeCloseTo(87.6, 1);
  });
  it('is what the ball python’s expected rate rounds', () => {
    expect(speciesOf('Python regius')?.fastingLossPercentPerDay?.adult).toBeCloseTo(0.1202, 3);
  });
  it('CARE-LOSS: such a fast is for review by its size and is not rapid', () => {
    const fasted = rex({}, weighed('2025-07-01', 1000), weighed('2025-12-16', 817));
    expect(lossSinceReset(fasted)).toMatchObject({ percent: 18.3, rapid: false, level: 'urgent' });
    const at88Days = rex({}, weighed('2025-07-01', 1000), weighed('2025-09-27', 899.5));
    expect(lossSinceReset(at88Days)).toMatchObject({ level: 'review', rapid: false });
  });
});
