import { describe, expect, it } from 'vitest';
import {
  type AnimalRecord,
  holdsOn,
  mealsSinceRegurgitation,
  needsVet,
  nextFeedDue,
  type Payload,
} from '../../../src/core/index.ts';
import { day, fed, type Line, refusal, rex, value, weighed } from '../log.ts';

const W = weighed('2026-01-01', 850);
const held = (animal: AnimalRecord, on: string): string =>
  holdsOn(animal, day(on))
    .map((hold) => `${hold.kind} ${hold.until}`)
    .join(', ');
const regurgitated = (on: string): Line => [on, 'regurgitation-seen', {}];
const cleared = (on: string): Line => [on, 'vet-cleared', { by: 'Dr Ash' }];

describe('CARE-OPAQUE: no food from opaque until the shed is seen', () => {
  const opaque: Line = ['2026-03-01', 'opaque-seen', {}];
  it('holds from that day on, and three weeks later a shed was missed', () => {
    const animal = rex({}, W, opaque);
    expect(held(animal, '2026-02-28')).toBe('');
    expect(held(animal, '2026-03-01')).toBe('opaque 2026-03-22');
    expect(held(animal, '2026-03-21')).toBe('opaque 2026-03-22');
    expect(held(animal, '2026-03-22')).toBe('');
  });
  it('ends with the shed; the meal that it put off is due then', () => {
    const animal = rex({}, W, fed('2026-02-01'), opaque, ['2026-03-12', 'shed-seen', { whole: true }]);
    expect(held(animal, '2026-03-12')).toBe('');
    expect(value(nextFeedDue(animal, day('2026-03-12')))).toMatchObject({ state: 'due', next: '2026-03-12' });
  });
});

describe('CARE-REGURGITATION: the first one rests, the second within 60 days is the vet’s', () => {
  it('the first rests ten days', () => {
    const animal = rex({}, W, fed('2026-02-28'), regurgitated('2026-03-01'));
    expect(held(animal, '2026-03-10')).toBe('regurgitation 2026-03-11');
    expect(held(animal, '2026-03-11')).toBe('');
    expect(needsVet(animal)).toBeNull();
    expect(value(nextFeedDue(animal, day('2026-03-11')))).toMatchObject({ state: 'due', next: '2026-03-11' });
  });

  const seconds: readonly [string, boolean][] = [
    ['2026-03-02', true],
    ['2026-04-30', true],
    ['2026-05-01', false],
  ];
  it.each(seconds)('after 1 March, one on %s needs the vet: %s', (on, vet) => {
    expect(needsVet(rex({}, W, regurgitated('2026-03-01'), regurgitated(on))) !== null).toBe(vet);
  });
  it('no meal until the vet has spoken, however long that is', () => {
    const animal = rex({}, W, regurgitated('2026-03-01'), regurgitated('2026-03-20'));
    for (const on of ['2026-03-20', '2026-05-20', '2027-05-20'])
      expect(value(nextFeedDue(animal, day(on)))).toMatchObject({ state: 'vet', next: null, last: null });
    expect(value(nextFeedDue(animal, day('2026-03-20'))).why.join()).toContain('without a vet’s word');
  });
  it('a vet’s word from between the two does not count', () => {
    expect(
      needsVet(rex({}, W, regurgitated('2026-03-01'), cleared('2026-03-05'), regurgitated('2026-03-20'))),
    ).not.toBeNull();
  });
  it('a third one long afterwards does not stand in for the vet’s word', () => {
    const lines = [regurgitated('2026-03-01'), regurgitated('2026-03-20'), regurgitated('2026-08-01')];
    expect(needsVet(rex({}, W, ...lines))).toContain('1 Mar 2026 and again on 20 Mar 2026');
    expect(needsVet(rex({}, W, ...lines, cleared('2026-08-02')))).toBeNull();
  });
  it('one written down twice for the same day is a second one; an undone one is none', () => {
    const twice = [regurgitated('2026-03-01'), regurgitated('2026-03-01')] as const;
    expect(needsVet(rex({}, ...twice))).not.toBeNull();
  });
  it('the vet’s word ends rest and doubt; a third within 60 days begins them again', () => {
    const lines = [regurgitated('2026-03-01'), regurgitated('2026-03-20'), cleared('2026-03-22')] as const;
    expect(needsVet(rex({}, W, ...lines))).toBeNull();
    expect(held(rex({}, W, ...lines), '2026-03-22')).toBe('');
    expect(needsVet(rex({}, W, ...lines, regurgitated('2026-04-20')))).not.toBeNull();
  });
  it('counts the meals since; those of the day itself came before', () => {
    const animal = rex({}, W, fed('2026-03-01'), regurgitated('2026-03-01'), fed('2026-03-12'), fed('2026-03-20'));
    expect(mealsSinceRegurgitation(animal)).toBe(2);
    expect(mealsSinceRegurgitation(rex({}, W))).toBeNull();
  });
});

describe('CARE-ARRIVAL: no food for 7 days after an arrival', () => {
  it('holds what came from elsewhere until it has eaten here', () => {
    const animal = rex({ acquiredOn: '2026-03-01' }, W);
    expect([held(animal, '2026-03-07'), held(animal, '2026-03-08')]).toEqual(['arrival 2026-03-08', '']);
    expect(held(rex({ acquiredOn: '2026-03-01' }, W, fed('2026-03-02')), '2026-03-03')).toBe('');
  });
  it('does not hold what hatched here', () => {
    const born = { hatchedOn: '2026-03-01', acquiredOn: '2026-03-01' };
    expect(held(rex(born, ['2026-03-01', 'shed-seen', {}]), '2026-03-02')).toBe('');
  });
});

describe('CARE-HATCHLING: the first meal comes after the first shed', () => {
  const born = { hatchedOn: '2026-03-01' };
  it('or after two weeks if nobody saw one', () => {
    expect(held(rex(born), '2026-03-02')).toBe('first-shed 2026-03-15');
    expect(held(rex(born), '2026-03-15')).toBe('');
  });
  it('ends with the shed', () => {
    expect(held(rex(born, ['2026-03-09', 'shed-seen', {}]), '2026-03-09')).toBe('');
  });
});

describe('CARE-COOLING: no food while cooled, and for 3 days after warming', () => {
  const begun: Line = ['2026-01-01', 'cooling-started', {}];
  it('holds without an end until the warming', () => {
    expect(held(rex({}, W, begun), '2026-02-01')).toBe('cooling null');
    expect(held(rex({}, W, begun), '2025-12-31')).toBe('');
  });
  it('holds for three days after it', () => {
    const animal = rex({}, W, begun, ['2026-03-01', 'cooling-ended', {}]);
    expect([held(animal, '2026-03-03'), held(animal, '2026-03-04')]).toEqual(['cooling 2026-03-04', '']);
  });
});

describe('holds that people place', () => {
  const hold = (payload: Payload<'hold-placed'>): AnimalRecord => rex({}, W, ['2026-03-01', 'hold-placed', payload]);
  it('hold until their day, or until they are lifted', () => {
    expect(held(hold({ reason: 'keeper', until: '2026-03-10' }), '2026-03-09')).toBe('keeper 2026-03-10');
    expect(held(hold({ reason: 'keeper', until: '2026-03-10' }), '2026-03-10')).toBe('');
    expect(held(hold({ reason: 'treatment' }), '2030-01-01')).toBe('treatment null');
  });
  it('quarantine is a flag and no reason to starve', () => {
    expect(held(hold({ reason: 'quarantine' }), '2026-03-02')).toBe('');
  });
  it('for the vet stands until the vet’s word, whatever day was written on it', () => {
    const animal = hold({ reason: 'vet', words: 'sore mouth', until: '2026-03-10' });
    expect(needsVet(animal)).toBe('sore mouth');
    expect(value(nextFeedDue(animal, day('2026-04-01'))).state).toBe('vet');
  });
  it('a vet’s hold comes before a missing plan', () => {
    const animal = rex({ species: 'Lampropeltis getula' }, ['2026-03-01', 'hold-placed', { reason: 'vet' }]);
    expect(value(nextFeedDue(animal, day('2026-04-01'))).state).toBe('vet');
    expect(refusal(nextFeedDue(rex({ species: 'Lampropeltis getula' }), day('2026-04-01')))).toBe('species-unknown');
  });
});
