import { describe, expect, it } from 'vitest';
import {
  type AnimalRecord,
  checkWeighing,
  lossPercentPerDay,
  lossSinceReset,
  sayChange,
} from '../../../src/core/index.ts';
import { CLUTCH, day, fed, type Line, REX, rex, weighed } from '../log.ts';

const laid = (on: string): Line => [on, 'clutch-laid', { clutch: CLUTCH, eggs: 6 }, { subjects: [REX, CLUTCH] }];
const asks = (animal: AnimalRecord, weightG: number, on = '2026-03-20'): boolean =>
  checkWeighing(animal, weightG, day(on)) !== null;

describe('CARE-ENTRY: a weighing that food cannot explain is asked about', () => {
  const last = weighed('2026-03-01', 1000);
  it('a first weight is never asked about', () => {
    expect(asks(rex({}), 9000)).toBe(false);
  });

  const cases: readonly [number, boolean][] = [
    [1050, false],
    [1051, true],
    [500, false],
    [499, true],
    [1000, false],
  ];
  it.each(cases)('after 1,000 g without food, %d g is asked about: %s', (weightG, asked) => {
    expect(asks(rex({}, last), weightG)).toBe(asked);
  });
  it('food since the last weighing explains a gain; refused food and earlier food do not', () => {
    expect(asks(rex({}, last, fed('2026-03-02', 100)), 1150)).toBe(false);
    expect(asks(rex({}, last, fed('2026-03-02', 100)), 1151)).toBe(true);
    expect(asks(rex({}, fed('2026-02-28', 100), last), 1100)).toBe(true);
  });
  it('says how many times the last weight it is', () => {
    expect(checkWeighing(rex({}, last), 10_000, day('2026-03-20'))?.message).toBe(
      '10,000 g is 10 times the last weight, 1,000 g.',
    );
  });
  it('is silent where more was eaten than the record keeps', () => {
    const meals = Array.from({ length: 20 }, (_, at): Line => fed(`2026-03-${String(at + 2).padStart(2, '0')}`, 60));
    expect(asks(rex({}, last, ...meals), 2100, '2026-03-25')).toBe(false);
    expect(asks(rex({}, last, ...meals), 400, '2026-03-25')).toBe(true);
  });
  it('does not compare with a later weighing', () => {
    expect(asks(rex({}, last), 5000, '2026-02-01')).toBe(false);
  });
  it('less than half is no slip after a laying', () => {
    expect(asks(rex({}, last, laid('2026-03-10')), 450)).toBe(false);
  });
});

describe('CARE-LOSS: a loss since the last reset is noted, then for review, then urgent', () => {
  const levels: readonly [number, string][] = [
    [1000, 'none'],
    [951, 'none'],
    [950, 'note'],
    [901, 'note'],
    [900, 'review'],
    [851, 'review'],
    [850, 'urgent'],
    [1001, 'none'],
  ];
  it.each(levels)('from 1,000 g to %d g: %s', (weightG, level) => {
    expect(lossSinceReset(rex({}, weighed('2026-01-01', 1000), weighed('2026-03-01', weightG))).level).toBe(level);
  });
  it('is measured from the peak, not from the weighing before', () => {
    const animal = rex({}, weighed('2026-01-01', 1000), weighed('2026-02-01', 930), weighed('2026-03-01', 890));
    expect(lossSinceReset(animal)).toMatchObject({ level: 'review', percent: 11 });
  });
  it('sends to a reptile vet in words', () => {
    const { words } = lossSinceReset(rex({}, weighed('2026-01-01', 1000), weighed('2026-03-01', 840)));
    expect(words).toBe(
      'down 16 % since 1 Jan 2026, faster than a fast explains: weigh again empty; if it stands, speak to a reptile vet without delay',
    );
  });
  it('is rapid above twice what fasting takes, and unknown where nobody measured that', () => {
    const lines = [weighed('2026-01-01', 1000), weighed('2026-04-11', 900)] as const;
    expect(lossSinceReset(rex({}, ...lines)).rapid).toBe(false);
    expect(lossSinceReset(rex({}, weighed('2026-01-01', 1000), weighed('2026-01-11', 900))).rapid).toBe(true);
    expect(lossSinceReset(rex({ species: 'Boa imperator' }, ...lines)).rapid).toBeNull();
  });
  it('of one day counts as one day', () => {
    expect(lossSinceReset(rex({}, weighed('2026-01-01', 1000), weighed('2026-01-01', 900))).rapid).toBe(true);
  });
  it('is none without a weight', () => {
    expect(lossSinceReset(rex({})).level).toBe('none');
  });
  it('CARE-LAYING: laying is a reset and raises no alarm', () => {
    expect(
      lossSinceReset(rex({}, weighed('2026-01-01', 1735), laid('2026-03-01'), weighed('2026-03-02', 1227))).level,
    ).toBe('none');
    expect(lossSinceReset(rex({}, weighed('2026-01-01', 1735), laid('2026-03-01'))).level).toBe('none');
  });
});

describe('changes in words', () => {
  it('tell the change against the weighing before', () => {
    expect(sayChange(rex({}, weighed('2026-01-01', 1000), weighed('2026-02-01', 1480)))).toBe(
      '+480 g since 1 Jan 2026',
    );
    expect(sayChange(rex({}, weighed('2026-01-01', 80), weighed('2026-02-01', 69)))).toBe('−11 g since 1 Jan 2026');
    expect(sayChange(rex({}, weighed('2026-01-01', 80)))).toBeNull();
  });
  it('are no rate without days or mass', () => {
    expect([lossPercentPerDay(100, 90, 0), lossPercentPerDay(0, 90, 5), lossPercentPerDay(100, 90, 1)]).toEqual([
      0,
      0,
      expect.closeTo(10),
    ]);
  });
});
