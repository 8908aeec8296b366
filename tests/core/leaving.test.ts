import { describe, expect, it } from 'vitest';
import {
  type AnimalRecord,
  type Decision,
  decideLeaving,
  type Leaving,
  leavingNotes,
  lostCaution,
  type Moment,
  parseEvent,
  saleFault,
  sayLeaving,
} from '../../src/core/index.ts';
import { added, CLUTCH, DAM, data, day, fed, type Line, REX, rex, SIRE, site, undo, weighed } from './log.ts';

const D = day('2026-03-20');
const now: Moment = { day: D, today: D, nowMs: Date.parse(`${D}T09:30:00Z`) };
const SOLD: Leaving = { how: 'sold', to: 'Osier Lane', note: null };
const PRESCRIPTION = {
  drug: 'as written',
  prescriber: 'Dr Ash',
  amount: { by: 'volume', ml: 0.2 },
  route: 'by mouth',
  everyHours: 24,
  count: 3,
  startsOn: '2026-03-18',
} as const;

function outcome(decision: Decision): string {
  return decision.kind === 'accepted' ? 'accepted' : `${decision.kind} ${decision.problem.code}`;
}

const leave = (animal: AnimalRecord, leaving: Leaving = SOLD, moment: Partial<Moment> = {}) =>
  decideLeaving(animal, leaving, { ...now, ...moment });

describe('a leaving', () => {
  const writes: readonly [Leaving, string, Record<string, unknown>][] = [
    [SOLD, 'sold to Osier Lane', { how: 'sold', to: 'Osier Lane' }],
    [{ how: 'sold', to: null, note: 'with papers' }, 'sold', { how: 'sold', note: 'with papers' }],
    [{ how: 'given', to: 'a school', note: null }, 'given to a school', { how: 'given', to: 'a school' }],
    [{ how: 'died', cause: 'a growth', note: null }, 'died: a growth', { how: 'died', cause: 'a growth' }],
    [{ how: 'died', cause: null, note: 'found' }, 'died, cause not known', { how: 'died', note: 'found' }],
    [{ how: 'lost', note: null }, 'lost', { how: 'lost' }],
  ];
  it.each(writes)('%j is written', (leaving, said, payload) => {
    expect(leave(rex({}), leaving)).toEqual({
      kind: 'accepted',
      said,
      drafts: [{ kind: 'animal-left', subjects: [REX], payload, day: D }],
    });
    expect(sayLeaving(leaving)).toBe(said);
    expect(parseEvent({ ...data(added(), 1), kind: 'animal-left', payload }).ok).toBe(true);
  });
  const paired = site(
    added({ name: 'Rex', sex: 'male' }),
    added({ name: 'Fern', sex: 'female' }, { subjects: [DAM] }),
    ['2026-03-01', 'pairing-started', {}, { subjects: [DAM, REX] }],
    ['2026-03-02', 'animal-offered', { priceMinor: 12_000 }],
  );
  const male = paired.animals.get(REX) ?? expect.fail();
  it('ends open pairings and the offer with it, in one', () => {
    const decision = leave(male);
    expect(decision.kind === 'accepted' && decision.drafts.map(({ kind, subjects }) => [kind, ...subjects])).toEqual([
      ['pairing-ended', DAM, REX],
      ['offer-ended', REX],
      ['animal-left', REX],
    ]);
    expect(leavingNotes(paired, male, 'sold', D)).toEqual([
      'Its pairing with Fern ends.',
      'It is on offer; the offer ends.',
    ]);
  });
  it('is taken back by a slip, and the animal is here again', () => {
    const lines: readonly Line[] = [added(), ['2026-03-20', 'animal-left', { how: 'died' }], undo('2026-03-20', 1)];
    expect(site(...lines).animals.get(REX)?.left).toBeNull();
  });
  it('tells of young, clutches, doses and the vet', () => {
    const facility = site(
      added({ sex: 'female' }),
      added({ dam: REX }, { subjects: [SIRE] }),
      ['2026-03-10', 'clutch-laid', { clutch: CLUTCH, eggs: 5 }, { subjects: [REX, CLUTCH] }],
      ['2026-03-18', 'prescription-written', PRESCRIPTION],
    );
    const notes = leavingNotes(facility, facility.animals.get(REX) ?? expect.fail(), 'died', D).join(' ');
    for (const words of ['Doses are still due (as written)', 'parent of 1 animal', 'Its clutch stays', 'necropsy'])
      expect(notes).toContain(words);
  });
  const refused: readonly [string, Leaving, readonly Line[], string][] = [
    ['twice', SOLD, [['2026-03-19', 'animal-left', { how: 'died' }]], 'refused left-already'],
    ['before it came', SOLD, [], 'refused date-before-life'],
  ];
  it.each(refused)('%s is refused', (name, leaving, lines, expected) => {
    const moment = name === 'before it came' ? { day: day('2026-01-01') } : {};
    expect(outcome(leave(rex({ acquiredOn: '2026-02-01' }, ...lines), leaving, moment))).toBe(expected);
  });
  it('on a day ahead is refused', () => {
    expect(outcome(leave(rex({}), SOLD, { day: day('2026-03-21') }))).toBe('refused date-future');
  });
  it('before its last entry is asked about', () => {
    const animal = rex({}, fed('2026-03-19'), weighed('2026-03-12', 500));
    expect(outcome(leave(animal, SOLD, { day: day('2026-03-18') }))).toBe('asks left-before');
    expect(outcome(leave(animal, SOLD, { day: day('2026-03-19') }))).toBe('accepted');
  });
});

describe('CARE-SALE: a sale or a gift', () => {
  // England: SI 2018/486, Schedule 3, paragraph 2(2): an animal under treatment is so marked and is not sold.
  const cases: readonly [string, readonly Line[], string][] = [
    ['of a well animal', [], 'accepted'],
    ['under treatment', [['2026-03-18', 'prescription-written', PRESCRIPTION]], 'refused sale-treated'],
    [
      'when its course is done',
      [['2026-03-01', 'prescription-written', { ...PRESCRIPTION, startsOn: '2026-03-01', endsOn: '2026-03-04' }]],
      'accepted',
    ],
    ['on a hold for treatment', [['2026-03-18', 'hold-placed', { reason: 'treatment' }]], 'refused sale-treated'],
    ['after such a hold', [['2026-03-01', 'hold-placed', { reason: 'treatment', until: '2026-03-20' }]], 'accepted'],
    ['on a hold for the vet', [['2026-03-18', 'hold-placed', { reason: 'vet', words: 'wheezes' }]], 'refused sale-vet'],
    [
      'after two regurgitations',
      [
        ['2026-02-20', 'regurgitation-seen', {}],
        ['2026-03-10', 'regurgitation-seen', {}],
      ],
      'refused sale-vet',
    ],
    [
      'in quarantine',
      [['2026-01-01', 'hold-placed', { reason: 'quarantine', until: '2026-02-01' }]],
      'refused sale-quarantine',
    ],
    ['flagged so', [['2026-03-01', 'animal-flagged', { flags: ['not-for-sale'] }]], 'asks sale-kept'],
  ];
  it.each(cases)('%s', (_, lines, expected) => {
    expect(outcome(leave(rex({}, ...lines)))).toBe(expected);
    expect(outcome(leave(rex({}, ...lines), { how: 'given', to: null, note: null }))).toBe(expected);
  });
  it.each(['died', 'lost'] as const)('holds back no animal that %s', (how) => {
    const animal = rex({}, ['2026-03-18', 'prescription-written', PRESCRIPTION]);
    const leaving: Leaving = how === 'died' ? { how, cause: null, note: null } : { how, note: null };
    expect(outcome(leave(animal, leaving))).toBe('accepted');
  });
  it('says what to do', () => {
    const fault = saleFault(rex({ name: 'Rex' }, ['2026-03-18', 'hold-placed', { reason: 'treatment' }]), D);
    expect(fault?.message).toBe('Rex is under treatment and is not to be sold or given away.');
    expect(fault?.remedy).toMatch(/until the course is done or the vet has stopped it.*SI 2018\/486/);
  });
});

describe('one that is lost', () => {
  const flagged = (flags: readonly ('venomous' | 'two-people')[]) =>
    rex({}, ['2026-03-01', 'animal-flagged', { flags: [...flags] }]);
  it('has its caution where it can hurt somebody, and none else', () => {
    expect(lostCaution(flagged(['venomous']), 1)).toMatch(/^VENOMOUS: keep everybody out.*licence and local code/);
    expect(lostCaution(flagged(['two-people']), 1)).toMatch(/^LARGE: never look for it or lift it alone/);
    expect(lostCaution(rex({}), 3)).toMatch(/^LARGE/);
    expect(lostCaution(rex({}), 1)).toBeNull();
  });
});
