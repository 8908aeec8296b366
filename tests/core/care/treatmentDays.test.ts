import { describe, expect, it } from 'vitest';
import { decideDose, type EventId, enteredDose, type Payload, treatmentsOn, wayOf } from '../../../src/core/index.ts';
import { day, eventId, type Line, rex, weighed } from '../log.ts';

const HOUR_MS = 3_600_000;
const ID: EventId = eventId(50);
const PAPER: Payload<'prescription-written'> = {
  drug: 'as the vet wrote it',
  prescriber: 'Dr Linnet Sallowfield',
  amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
  route: 'by injection',
  everyHours: 24,
  count: 3,
  startsOn: '2026-03-09',
};
const paper = (more: Partial<typeof PAPER> = {}): Line => [
  '2026-03-09',
  'prescription-written',
  { ...PAPER, ...more },
  { n: 50 },
];
const WEIGHED = weighed('2026-03-08', 1060);

/** How the course stands at an instant, on the site’s own day. */
function standing(on: string, instant: string, aheadHours: number, ...lines: readonly Line[]) {
  const [first] = treatmentsOn(rex({}, WEIGHED, ...lines), day(on), Date.parse(instant), aheadHours * HOUR_MS);
  if (first === undefined || !first.schedule.ok) throw new Error('no course');
  const { state, missed, nextMs } = first.schedule.value;
  return { state, missed, next: nextMs === null ? null : new Date(nextMs).toISOString().slice(0, 16) };
}

describe('the first dose of a paper that gives a day and no hour', () => {
  it.each([
    ['at dawn', '2026-03-09', '2026-03-09T05:00:00Z', 'due', 0],
    ['late in the evening', '2026-03-09', '2026-03-09T23:30:00Z', 'due', 0],
    ['the morning after', '2026-03-10', '2026-03-10T08:00:00Z', 'due', 0],
    ['a day and a half later', '2026-03-11', '2026-03-11T13:00:00Z', 'missed', 2],
    ['the day before', '2026-03-08', '2026-03-08T20:00:00Z', 'before', 0],
  ])('%s: %s', (_what, on, instant, state, missed) => {
    expect(standing(on, instant, 0, paper())).toMatchObject({ state, missed });
  });
});

describe('a course on the site’s own clock', () => {
  const dose: Line = ['2026-03-12', 'dose-given', { prescription: ID, ml: 0.53 }, { at: '2026-03-13T01:00:00.000Z' }];
  const lines = [paper({ endsOn: '2026-03-13', count: undefined, startsOn: '2026-03-12' }), dose];
  it('has its last dose on the evening of the last day, where UTC counts the next day already', () => {
    expect(standing('2026-03-13', '2026-03-13T20:00:00Z', -8, ...lines)).toMatchObject({
      state: 'waiting',
      next: '2026-03-14T01:00',
    });
  });
  it('has none after it where the clock is UTC', () => {
    expect(standing('2026-03-13', '2026-03-13T20:00:00Z', 0, ...lines)).toMatchObject({ state: 'done', next: null });
  });
});

describe('a prescription that is being entered', () => {
  it('comes to the volume of today’s weight, also where it begins later', () => {
    const later = enteredDose(rex({}, WEIGHED), { ...PAPER, startsOn: '2026-03-20' }, day('2026-03-09'));
    expect(later.ok && later.value.ml).toBe(0.53);
  });
  it.each<[string, string, readonly Line[], Partial<typeof PAPER>]>([
    ['a weight', 'weight-none', [], {}],
    ['a fresh weight', 'weight-too-old', [weighed('2026-01-02', 1060)], {}],
    ['a paper that is still good', 'prescription-expired', [WEIGHED], { validUntil: '2026-03-01' }],
    [
      'room under the cap',
      'over-cap',
      [WEIGHED],
      { amount: { by: 'mass', dose: { mgPerKg: 900 }, strength: { mgPerMl: 10 } } },
    ],
  ])('comes to none without %s: %s', (_what, code, lines, more) => {
    const dose = enteredDose(rex({}, ...lines), { ...PAPER, ...more }, day('2026-03-09'));
    expect(dose.ok ? 'ok' : dose.problem.code).toBe(code);
  });
});

describe('a second person at a dose', () => {
  const NOW = { day: day('2026-03-09'), today: day('2026-03-09'), nowMs: Date.parse('2026-03-09T08:00:00Z') };
  it.each([
    ['nobody', '', 'dose-second-person'],
    ['who gives it', ' ada ', 'dose-second-same'],
    ['somebody else', 'Tilda', 'accepted'],
  ])('%s: %s', (_who, second, expected) => {
    const dose = { prescription: ID, ml: 0.53, second };
    const decision = decideDose(rex({}, WEIGHED, paper()), dose, NOW, { needsSecond: true, keeper: 'Ada' });
    expect(decision.kind === 'refused' ? decision.problem.code : decision.kind).toBe(expected);
  });
});

describe('a route as people write it', () => {
  it.each([
    ['by stomach tube', 'stomach'],
    ['Via the tube', 'stomach'],
    ['by injection', 'other'],
    ['by mouth', 'stomach'],
    ['by and by', 'unknown'],
  ])('%s leads to: %s', (route, way) => {
    expect(wayOf(route)).toBe(way);
  });
});

describe('a dose in words', () => {
  const NOW = { day: day('2026-03-09'), today: day('2026-03-09'), nowMs: Date.parse('2026-03-09T08:00:00Z') };
  it('says its unit once', () => {
    const given = decideDose(rex({}, WEIGHED, paper()), { prescription: ID, ml: 0.53 }, NOW);
    expect(given.kind !== 'refused' && given.said).toBe('dose given: 0.53 mL');
    const other = decideDose(rex({}, WEIGHED, paper()), { prescription: ID, ml: 5 }, NOW);
    expect(other.kind === 'refused' && other.problem.message).toBe(
      'The volume is 0.53 mL now, and 5 mL was confirmed.',
    );
  });
});
