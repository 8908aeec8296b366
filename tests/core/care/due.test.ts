import { describe, expect, it } from 'vitest';
import { type AnimalRecord, addDays, type DueState, nextFeedDue } from '../../../src/core/index.ts';
import { CLUTCH, day, eventId, fed, type Line, REX, refusal, refused, rex, value, weighed } from '../log.ts';

const ON = day('2026-03-20');
const W = weighed('2026-03-01', 850);
const due = (animal: AnimalRecord, on = ON) => value(nextFeedDue(animal, on));
const stateOn = (animal: AnimalRecord, on: string): DueState => due(animal, day(on)).state;

describe('CARE-DUE: the next meal is due the plan’s days after the last one taken', () => {
  // A ball python of 850 g is fed every 7-14 days.
  const states: readonly [string, DueState][] = [
    ['2026-03-02', 'soon'],
    ['2026-03-07', 'soon'],
    ['2026-03-08', 'due'],
    ['2026-03-15', 'due'],
    ['2026-03-16', 'overdue'],
  ];
  it.each(states)('fed on 1 March, it is on %s: %s', (on, state) => {
    expect(stateOn(rex({}, W, fed('2026-03-01')), on)).toBe(state);
  });
  it('says why and since when', () => {
    const { why, next, last } = due(rex({}, W, fed('2026-03-10')));
    expect([next, last]).toEqual(['2026-03-17', '2026-03-24']);
    expect(why[0]).toBe(
      'last meal 10 Mar 2026, every 7–14 days: Python regius, under 1000 g (C: common practice, no source)',
    );
    expect(why[1]).toBe('Tue 17 Mar 2026 is 3 days ago');
  });
  it('goes by the keeper’s own days where there are some', () => {
    const own: Line = ['2026-03-01', 'feed-plan-set', { everyDays: [20, 25] }];
    expect(due(rex({}, W, own, fed('2026-03-10')))).toMatchObject({
      next: '2026-03-30',
      last: '2026-04-04',
      state: 'soon',
    });
  });
  it('spans all bands while there is no weight', () => {
    expect(due(rex({}, fed('2026-03-10')))).toMatchObject({ next: '2026-03-15', last: '2026-04-09' });
  });
  it('counts from the arrival while nothing was eaten', () => {
    expect(due(rex({ acquiredOn: '2026-03-01' }, W))).toMatchObject({ next: '2026-03-08', state: 'due' });
    expect(due(rex({}, W)).why[0]).toContain('no meal taken yet since 1 Jan 2025');
  });
  it('an offer that was undone never was', () => {
    const undone: Line = ['2026-03-19', 'slip-made', { corrects: eventId(3), how: 'undo' }];
    expect(due(rex({}, W, fed('2026-03-01'), fed('2026-03-15'), undone)).next).toBe('2026-03-08');
  });
  it('has no answer for a species without a plan, and takes the keeper’s', () => {
    const other = { species: 'Lampropeltis getula' };
    expect(refusal(nextFeedDue(rex(other, W), ON))).toBe('species-unknown');
    const days: Line = ['2026-03-01', 'feed-plan-set', { everyDays: [7, 10] }];
    expect(refusal(nextFeedDue(rex(other, W, days), ON))).toBe('species-unknown');
    const both: Line = ['2026-03-01', 'feed-plan-set', { everyDays: [7, 10], percent: [5, 8] }];
    expect(due(rex(other, W, both, fed('2026-03-10')))).toMatchObject({ next: '2026-03-17', last: '2026-03-20' });
  });
  it('refuses a plan that runs from high to low', () => {
    const wrong: Line = ['2026-03-01', 'feed-plan-set', { everyDays: [14, 7] }];
    expect(refusal(nextFeedDue(rex({}, W, wrong), ON))).toBe('plan-malformed');
  });
});

describe('CARE-REFUSAL: after a refusal prey is offered again in 4 to 7 days', () => {
  it('puts off a meal that was due', () => {
    expect(due(rex({}, W, fed('2026-03-01'), refused('2026-03-18')))).toMatchObject({
      next: '2026-03-22',
      last: '2026-03-25',
      state: 'soon',
    });
  });
  it('does not bring a meal forward', () => {
    expect(due(rex({}, W, fed('2026-03-17'), refused('2026-03-18'))).next).toBe('2026-03-24');
  });
  it('is over when something was taken', () => {
    expect(due(rex({}, W, refused('2026-03-10'), fed('2026-03-14'))).next).toBe('2026-03-21');
  });
  it('of the gravid time is over with the laying', () => {
    const laid: Line = ['2026-03-18', 'clutch-laid', { clutch: CLUTCH, eggs: 6 }, { subjects: [REX, CLUTCH] }];
    expect(due(rex({}, W, fed('2026-01-01'), refused('2026-03-17'), laid))).toMatchObject({
      next: '2026-03-19',
      last: '2026-03-25',
    });
  });
});

describe('CARE-LAYING: after laying, a small meal in 1 to 7 days', () => {
  const laid: Line = ['2026-03-18', 'clutch-laid', { clutch: CLUTCH, eggs: 6 }, { subjects: [REX, CLUTCH] }];
  it('whatever the plan says', () => {
    const { next, last, state, why } = due(rex({}, W, fed('2026-03-10'), laid));
    expect([next, last, state]).toEqual(['2026-03-19', '2026-03-25', 'due']);
    expect(why[0]).toContain('laid on 18 Mar 2026');
  });
  it('until she has eaten', () => {
    expect(due(rex({}, W, laid, fed('2026-03-19'))).next).toBe('2026-03-26');
  });
});

describe('CARE-FAST: a fast of more than 60 days is to be looked at', () => {
  const fasting = rex({}, W, fed('2026-03-01'));
  const says = (animal: AnimalRecord, days: number): boolean =>
    due(animal, addDays(day('2026-03-01'), days)).why.some((line) => line.includes(`no meal taken for ${days} days`));

  it('is told from day 61 on', () => {
    expect([says(fasting, 60), says(fasting, 61)]).toEqual([false, true]);
  });
  it('is told on hold as well', () => {
    const held = rex({}, W, fed('2026-03-01'), ['2026-03-02', 'hold-placed', { reason: 'keeper' }]);
    expect(says(held, 61)).toBe(true);
  });
  it('is not told while gravid or cooled', () => {
    expect(says(rex({}, W, fed('2026-03-01'), ['2026-03-02', 'ovulation-seen', {}]), 90)).toBe(false);
    expect(says(rex({}, W, fed('2026-03-01'), ['2026-03-20', 'cooling-started', {}]), 90)).toBe(false);
  });
});

describe('what stands against a meal', () => {
  it('puts it off to the end of the hold, due from then and not overdue', () => {
    const animal = rex(
      {},
      W,
      fed('2026-01-01'),
      ['2026-03-01', 'cooling-started', {}],
      ['2026-03-18', 'cooling-ended', {}],
    );
    expect(due(animal)).toMatchObject({ state: 'hold', next: '2026-03-21', last: '2026-03-28' });
    expect(stateOn(animal, '2026-03-21')).toBe('due');
    expect(stateOn(animal, '2026-03-29')).toBe('overdue');
  });
  it('without an end leaves the day open', () => {
    const animal = rex({}, W, ['2026-03-10', 'hold-placed', { reason: 'keeper', words: 'moving house' }]);
    expect(due(animal)).toMatchObject({
      state: 'hold',
      next: null,
      last: null,
      hold: { reason: 'moving house', until: null },
    });
  });
  it('is all told, the longest first', () => {
    const animal = rex({}, W, ['2026-03-15', 'regurgitation-seen', {}], ['2026-03-16', 'opaque-seen', {}]);
    expect(due(animal).holds.map((hold) => hold.kind)).toEqual(['opaque', 'regurgitation']);
    expect(
      due(animal)
        .why.slice(0, 2)
        .every((line) => line.includes('until')),
    ).toBe(true);
  });
  it('does not shorten a wait that is longer than the hold', () => {
    const animal = rex({}, W, fed('2026-03-19'), [
      '2026-03-20',
      'hold-placed',
      { reason: 'keeper', until: '2026-03-22' },
    ]);
    expect(due(animal)).toMatchObject({ next: '2026-03-26', last: '2026-04-02' });
  });
});
