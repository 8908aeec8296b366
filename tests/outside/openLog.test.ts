import { describe, expect, it } from 'vitest';
import { checkWeighing, lossPercentPerDay, lossSinceReset, type Payload } from '../../src/core/index.ts';
import { CLUTCH, day, fed, type Line, REX, rex, weighed } from '../core/log.ts';

/*
 * Single figures of the open feeding and weight log of twelve ball pythons in the Add-my-Pet collection, entry
 * Python_regius (B. Laarhoven, pers. comm. 2010; S. Kooijman). The days between the figures are as cited; the calendar
 * days here are ours, and so are the 10 g of food of the third animal. The notes also give 24.2 % for the laying, which does
 * not follow from its two weights (29.3 %); only the weights are used.
 */
describe('the open log of ball pythons in Add-my-Pet (Laarhoven 2010)', () => {
  it('CARE-LAYING: 1,735 g to 1,227 g across a laying, in 8 days, raises no alarm', () => {
    const payload: Payload<'clutch-laid'> = { clutch: CLUTCH, eggs: 7, clutchG: 472 };
    const laid: Line = ['2026-03-05', 'clutch-laid', payload, { subjects: [REX, CLUTCH] }];
    const before = rex({ sex: 'female' }, weighed('2026-03-01', 1735), laid);
    expect(checkWeighing(before, 1227, day('2026-03-09'))).toBeNull();
    const after = rex({ sex: 'female' }, weighed('2026-03-01', 1735), laid, weighed('2026-03-09', 1227));
    expect(lossSinceReset(after).level).toBe('none');
    expect(472 / 1735).toBeCloseTo(0.272, 3);
  });
  it('CARE-LOSS: the same figures without a laying are urgent', () => {
    const ill = rex({ sex: 'female' }, weighed('2026-03-01', 1735), weighed('2026-03-09', 1227));
    expect(lossSinceReset(ill)).toMatchObject({ level: 'urgent', rapid: true });
  });

  const slip = [weighed('2026-03-01', 111), fed('2026-03-03', 10)] as const;
  it('CARE-ENTRY: of 111, 209 and 125 g the 209 is asked about', () => {
    expect(checkWeighing(rex({}, ...slip), 209, day('2026-03-09'))?.code).toBe('weight-unlikely');
  });
  it('CARE-ENTRY: and the 125 is not, whether the 209 was taken back or let stand', () => {
    expect(checkWeighing(rex({}, ...slip), 125, day('2026-03-20'))).toBeNull();
    expect(checkWeighing(rex({}, ...slip, weighed('2026-03-09', 209)), 125, day('2026-03-20'))).toBeNull();
  });

  it('CARE-LOSS: an unfed hatchling from 80 to 69 g in 56 days lost 13.75 %, 0.26 % a day: for review', () => {
    const hatchling = rex({}, weighed('2026-01-01', 80), weighed('2026-02-26', 69));
    expect(lossPercentPerDay(80, 69, 56)).toBeCloseTo(0.264, 3);
    expect(lossSinceReset(hatchling)).toMatchObject({ level: 'review', percent: 13.8 });
  });
});
