import { describe, expect, it } from 'vitest';
import {
  CAP_PERCENT,
  type DoseQuestion,
  doseVolume,
  fluidsPerDay,
  markOf,
  roundToMark,
  STOMACH_SHARE,
  tubeSheet,
} from '../../src/core/index.ts';
import { day, value } from '../core/log.ts';

const ON = day('2026-11-25');
const ask = (more: Pick<DoseQuestion, 'dose' | 'strength'> & Partial<DoseQuestion>): DoseQuestion => ({
  massDate: ON,
  on: ON,
  route: 'im',
  ...more,
});

describe('bestvetaustin.com, “Medical math for fun”: worked doses', () => {
  // The page answers 4.6 mL, because it rounds 20 lb to 9.1 kg first; without that step a 0.1 mL mark gives 4.5.
  it('CARE-DOSE: 20 lb at 5 mg/kg and 10 mg/mL are 4.5359 mL, and 4.5 at a mark of 0.1', () => {
    const answer = value(doseVolume(ask({ massLb: 20, dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } })));
    expect(answer.exactMl).toBe(4.5359237);
    expect(roundToMark(answer.exactMl, 0.1)).toBe(4.5);
    expect([answer.ml, answer.syringeMl, answer.markMl]).toEqual([4.6, 5, 0.2]);
  });
  it('the figure of the page comes out with its own rounded weight', () => {
    const answer = value(doseVolume(ask({ massKg: 9.1, dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } })));
    expect(answer.exactMl).toBe(4.55);
    expect(roundToMark(answer.exactMl, 0.1)).toBe(4.6);
  });
  it('CARE-DOSE: 15 lb at 1 mg/kg and 1 % are 0.6804 mL, and 0.68 in a 1 mL syringe', () => {
    const answer = value(doseVolume(ask({ massLb: 15, dose: { mgPerKg: 1 }, strength: { percentWv: 1 } })));
    expect(answer.exactMl).toBeCloseTo(0.6804, 4);
    expect([answer.ml, answer.syringeMl]).toEqual([0.68, 1]);
  });
  it('1 % w/v is 10 mg/mL', () => {
    const by = (strength: DoseQuestion['strength']) =>
      value(doseVolume(ask({ massG: 900, dose: { mgPerKg: 5 }, strength })));
    expect(by({ percentWv: 1 })).toEqual(by({ mgPerMl: 10 }));
  });
});

describe('RMIT, as quoted at 411answers.com: marks of syringes', () => {
  it.each([
    [1, 0.01],
    [3, 0.1],
    [5, 0.2],
    [10, 0.2],
  ])('CARE-MARK: a %d mL syringe has a mark each %d mL', (syringeMl, markMl) => {
    expect(value(markOf(syringeMl))).toBe(markMl);
  });
});

describe('LafeberVet and WikiVet: fluids 10–30 mL/kg a day, stomach 2–5 % of body mass, at most 2 % at once', () => {
  it('500 g: 5–15 mL a day', () => {
    expect(value(fluidsPerDay(500)).ml).toEqual([5, 15]);
  });
  it('CARE-CAP: 500 g: the cap of 2 % is 10 mL', () => {
    const fed = { massG: 500, massDate: ON, on: ON, slurry: false };
    expect(value(tubeSheet({ ...fed, volumeMl: 10 }))).toMatchObject({ ml: 10, capMl: 10 });
    expect(tubeSheet({ ...fed, volumeMl: 10.1 })).toMatchObject({ problem: { code: 'over-cap' } });
  });
  it('the cap lies at the lower end of the stomach’s range, and nothing goes above its upper end', () => {
    expect(CAP_PERCENT).toEqual({ gavage: 2, most: 5 });
  });
});

// The second quarter of the body (S, a veterinary web page); half the snout-vent length at most: common practice, no source.
describe('the stomach lies in the second quarter of the body, 26–50 %', () => {
  it('CARE-TUBE: 1,000 mm from snout to vent: 260–500 mm', () => {
    expect(STOMACH_SHARE).toEqual({ from: 0.26, to: 0.5 });
    const sheet = tubeSheet({ massG: 500, massDate: ON, on: ON, slurry: false, volumeMl: 5, snoutVentMm: 1000 });
    expect(value(sheet).stomachMm).toEqual([260, 500]);
  });
});
