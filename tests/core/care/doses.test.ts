import { describe, expect, it } from 'vitest';
import {
  cardContent,
  type Decision,
  decideDose,
  decideOutcome,
  decidePrescription,
  decideStop,
  type EventId,
  holdsOn,
  isTreated,
  type Payload,
  type Problem,
  treatmentsOn,
} from '../../../src/core/index.ts';
import { added, day, eventId, type Line, REX, rex, site, weighed } from '../log.ts';

type Written = Payload<'prescription-written'>;
const PAPER: Written = {
  drug: 'as the vet wrote it',
  prescriber: 'Dr Linnet Sallowfield',
  amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
  route: 'by injection, as shown',
  everyHours: 48,
  count: 3,
  startsOn: '2026-03-09',
  recheckOn: '2026-03-20',
};
const ID: EventId = eventId(50);
const paper = (more: Partial<Written> = {}): Line => [
  '2026-03-09',
  'prescription-written',
  { ...PAPER, ...more },
  { n: 50 },
];
const dose = (on: string, ml: number, hour = '08'): Line => [
  on,
  'dose-given',
  { prescription: ID, ml },
  { at: `${on}T${hour}:00:00.000Z` },
];
const WEIGHED = weighed('2026-03-08', 1000);
const moment = (on: string, hour = '08') => ({
  day: day(on),
  today: day(on),
  nowMs: Date.parse(`${on}T${hour}:00:00Z`),
});
const said = (decision: Decision) =>
  decision.kind === 'accepted' ? 'accepted' : `${decision.kind} ${decision.problem.code}`;
const codeOf = (result: { ok: true } | { ok: false; problem: Problem }) => (result.ok ? 'ok' : result.problem.code);
const treatment = (on: string, ...lines: readonly Line[]) => {
  const [first] = treatmentsOn(rex({ sex: 'male' }, ...lines), day(on), moment(on).nowMs);
  if (first === undefined) throw new Error('no treatment');
  return first;
};

describe('a prescription on a record', () => {
  it('gives the volume for today’s weight: 1 kg, 5 mg/kg, 10 mg/mL is 0.5 mL', () => {
    const { dose: next, state, schedule } = treatment('2026-03-09', WEIGHED, paper());
    expect(next.ok && [next.value.ml, next.value.syringeMl]).toEqual([0.5, 1]);
    expect([state.state, schedule.ok && schedule.value.state]).toEqual(['open', 'due']);
  });
  it.each<[string, string, readonly Line[]]>([
    ['without a weight', 'weight-none', [paper()]],
    ['with an old weight', 'weight-too-old', [weighed('2026-01-01', 1000), paper()]],
    [
      'with a weight that was asked about',
      'weight-flagged',
      [['2026-03-08', 'animal-weighed', { weightG: 1000, confirmed: true }], paper()],
    ],
    ['before it begins', 'prescription-not-begun', [WEIGHED, paper({ startsOn: '2026-03-12' })]],
    ['after its paper expired', 'prescription-expired', [WEIGHED, paper({ validUntil: '2026-03-08' })]],
  ])('gives no volume %s: %s', (_what, code, lines) => {
    expect(codeOf(treatment('2026-03-09', ...lines).dose)).toBe(code);
  });
  it('gives no volume that is ten times the earlier ones', () => {
    const { dose: next } = treatment(
      '2026-03-13',
      WEIGHED,
      paper(),
      dose('2026-03-09', 0.05),
      dose('2026-03-11', 0.05),
    );
    expect(codeOf(next)).toBe('dose-tenfold');
  });
  it('counts what was given, and when the next is due', () => {
    const { schedule } = treatment('2026-03-10', WEIGHED, paper(), dose('2026-03-09', 0.5));
    expect(schedule.ok && [schedule.value.given, schedule.value.left, schedule.value.state]).toEqual([1, 2, 'waiting']);
    expect(schedule.ok && schedule.value.nextMs).toBe(Date.parse('2026-03-11T08:00:00Z'));
  });
  it('ends with the vet’s word, and doses of another prescription are not its own', () => {
    const stop: Line = ['2026-03-10', 'prescription-stopped', { prescription: ID, by: 'Dr Sallowfield' }];
    const other: Line = ['2026-03-09', 'dose-given', { prescription: eventId(51), ml: 9 }];
    const { record, state } = treatment('2026-03-10', WEIGHED, paper(), other, stop);
    expect([record.given.length, state.state, record.stopped?.by]).toEqual([0, 'stopped', 'Dr Sallowfield']);
  });
});

describe('an animal under treatment (CARE-WITHHOLD)', () => {
  it('says so on its card, not for sale, until the course is done', () => {
    const flags = (on: string, ...lines: readonly Line[]) => {
      const facility = site(added({}), WEIGHED, paper(), ...lines);
      const animal = facility.animals.get(REX);
      return animal === undefined ? [] : cardContent(facility, animal, day(on)).flags.map((flag) => flag.long);
    };
    expect(flags('2026-03-10')).toContain('Under treatment, not for sale');
    const three = ['09', '11', '13'].map((at) => dose(`2026-03-${at}`, 0.5));
    expect(flags('2026-03-14', ...three)).not.toContain('Under treatment, not for sale');
  });
  it('gets no food where the vet wrote so, and food again after the last day', () => {
    const animal = rex({}, WEIGHED, paper({ withholdFood: true, endsOn: '2026-03-13' }));
    const holds = (on: string) => holdsOn(animal, day(on)).filter((hold) => hold.kind === 'treatment');
    expect(holds('2026-03-10').map((one) => one.until)).toEqual(['2026-03-14']);
    expect(holds('2026-03-14')).toEqual([]);
    expect(isTreated(animal, day('2026-03-10'))).toBe(true);
    expect(holdsOn(rex({}, WEIGHED, paper()), day('2026-03-10')).map((one) => one.kind)).not.toContain('treatment');
  });
});

describe('giving a dose', () => {
  const give = (
    ml: number,
    on: string,
    lines: readonly Line[] = [],
    more: { second?: string } = {},
    needsSecond = false,
  ) => decideDose(rex({}, WEIGHED, paper(), ...lines), { prescription: ID, ml, ...more }, moment(on), { needsSecond });
  it('writes the volume that was shown and confirmed', () => {
    const decision = give(0.5, '2026-03-09');
    expect(decision.kind === 'accepted' && decision.drafts[0]).toMatchObject({
      kind: 'dose-given',
      payload: { ml: 0.5 },
    });
  });
  it.each<[string, string, Decision]>([
    ['of another volume than shown', 'refused dose-not-shown', give(5, '2026-03-09')],
    ['too early', 'asks dose-too-early', give(0.5, '2026-03-10', [dose('2026-03-09', 0.5)])],
    ['on time', 'accepted', give(0.5, '2026-03-11', [dose('2026-03-09', 0.5)])],
    [
      'after the last one',
      'asks course-done',
      give(
        0.5,
        '2026-03-15',
        ['09', '11', '13'].map((at) => dose(`2026-03-${at}`, 0.5)),
      ),
    ],
    [
      'without a second person where the site asks for one',
      'refused dose-second-person',
      give(0.5, '2026-03-09', [], {}, true),
    ],
    ['with one', 'accepted', give(0.5, '2026-03-09', [], { second: 'Tilda' }, true)],
  ])('%s: %s', (_what, expected, decision) => {
    expect(said(decision)).toBe(expected);
  });
  describe('that is written down later', () => {
    const later = (atMs: number | undefined, lines: readonly Line[], more: Partial<Written> = {}) =>
      decideDose(
        rex({}, WEIGHED, paper({ everyHours: 12, count: 9, ...more }), ...lines),
        { prescription: ID, ml: 0.5, ...(atMs !== undefined && { atMs }) },
        { day: day('2026-03-10'), today: day('2026-03-11'), nowMs: Date.parse('2026-03-11T08:00:00Z') },
      );
    const at = (text: string) => Date.parse(`2026-03-${text}:00:00Z`);
    const DAWN = dose('2026-03-10', 0.5, '07');
    it.each<[string, string, Decision]>([
      ['with its hour, after the last one', 'accepted', later(at('10T19'), [DAWN])],
      ['with its hour, between two others', 'accepted', later(at('10T19'), [DAWN, dose('2026-03-11', 0.5, '07')])],
      ['too near to the one before it', 'asks dose-too-early', later(at('10T12'), [DAWN])],
      ['too near to the one after it', 'asks dose-close', later(at('10T23'), [dose('2026-03-11', 0.5, '07')])],
      ['the same as one that stands there', 'asks dose-too-early', later(at('10T07'), [DAWN])],
      ['with an hour that has not come', 'refused dose-ahead', later(at('11T09'), [])],
      ['with an hour that is none', 'refused not-finite', later(Number.NaN, [])],
      ['without its hour, which is taken as noon', 'asks dose-too-early', later(undefined, [DAWN])],
      ['one too many', 'asks course-done', later(at('10T05'), [DAWN], { count: 1 })],
    ])('%s: %s', (_what, expected, decision) => {
      expect(said(decision)).toBe(expected);
    });
    it('stands at its own instant, to the second', () => {
      const decision = later(at('10T19'), [DAWN]);
      expect(decision.kind === 'accepted' && decision.drafts).toMatchObject([
        { kind: 'dose-given', day: '2026-03-10', at: '2026-03-10T19:00:00Z' },
      ]);
    });
    it('goes by the weight of its own day, not by a later one', () => {
      const [first] = treatmentsOn(
        rex({}, WEIGHED, paper(), weighed('2026-03-11', 2000)),
        day('2026-03-10'),
        at('11T08'),
      );
      expect(first?.dose.ok && first.dose.value.ml).toBe(0.5);
      expect(said(later(at('10T19'), [weighed('2026-03-11', 2000)]))).toBe('accepted');
    });
  });
  it('that a device with a fast clock wrote takes nothing away from the course', () => {
    const { schedule } = treatment('2026-03-09', WEIGHED, paper(), dose('2026-03-09', 0.5, '09'));
    expect(schedule.ok && [schedule.value.given, schedule.value.state]).toEqual([1, 'waiting']);
    const tomorrow = treatment('2026-03-09', WEIGHED, paper(), dose('2026-03-10', 0.5, '09'));
    expect(codeOf(tomorrow.schedule as never)).toBe('date-future');
  });
  it('on a prescription that nobody wrote is refused', () => {
    const decision = decideDose(rex({}, WEIGHED), { prescription: ID, ml: 0.5 }, moment('2026-03-09'));
    expect(said(decision)).toBe('refused prescription-unknown');
  });
});

describe('entering a prescription', () => {
  const enter = (more: Partial<Written>) =>
    said(decidePrescription(rex({}, WEIGHED), { ...PAPER, ...more }, moment('2026-03-09')));
  it.each<[string, Partial<Written>, string]>([
    ['as the vet wrote it', {}, 'accepted'],
    ['with a fixed volume', { amount: { by: 'volume', ml: 0.3 } }, 'accepted'],
    ['with no end', { count: undefined }, 'refused course-open'],
    ['that ends before it begins', { endsOn: '2026-03-01' }, 'refused course-backwards'],
    [
      'with two strengths',
      { amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10, percentWv: 1 } } },
      'refused one-unit-only',
    ],
    ['with no strength', { amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: {} } }, 'refused unit-missing'],
    [
      'with a strength that cannot be',
      { amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { percentWv: 400 } } },
      'refused strength-impossible',
    ],
  ])('%s: %o', (_what, more, expected) => {
    expect(enter(more)).toBe(expected);
  });
  it.each<[string, string, string, EventId, string]>([
    ['without a name', ' ', 'healed', ID, 'refused vet-unnamed'],
    ['without a reason', 'Dr Sallowfield', ' ', ID, 'refused stop-unexplained'],
    ['with both', 'Dr Sallowfield', 'healed', ID, 'accepted'],
    ['of a prescription that nobody wrote', 'Dr Sallowfield', 'healed', eventId(77), 'refused prescription-unknown'],
  ])('is ended by the vet’s word only: %s', (_what, by, why, id, expected) => {
    const animal = rex({}, WEIGHED, paper());
    expect(said(decideStop(animal, id, { by, why }, moment('2026-03-10')))).toBe(expected);
  });
  it('keeps who stopped it and why, and asks before it is stopped twice', () => {
    const stopped: Line = [
      '2026-03-11',
      'prescription-stopped',
      { prescription: ID, by: 'Dr Sallowfield', why: 'healed' },
    ];
    const animal = rex({}, WEIGHED, paper(), stopped);
    expect(animal.prescriptions[0]?.stopped).toEqual({ day: '2026-03-11', by: 'Dr Sallowfield', why: 'healed' });
    const again = decideStop(animal, ID, { by: 'Dr Sallowfield', why: 'healed' }, moment('2026-03-12'));
    expect(said(again)).toBe('asks prescription-stopped');
  });
  it.each<[string, Partial<Written>, string]>([
    ['no syringe at all', { syringesMl: [] }, 'refused syringe-missing'],
    ['a syringe of unknown marks', { syringesMl: [1, 2] }, 'refused syringe-unknown'],
    [
      'a fixed volume of a strength that cannot be',
      { amount: { by: 'volume', ml: 1, strength: { percentWv: 400 } } },
      'refused strength-impossible',
    ],
    ['a fixed volume with its strength', { amount: { by: 'volume', ml: 1, strength: { mgPerMl: 5 } } }, 'accepted'],
  ])('with %s: %o', (_what, more, expected) => {
    expect(enter(more)).toBe(expected);
  });
  it('is written together with the pictures of its papers, each of which names it', () => {
    const picture = { mime: 'image/jpeg', base64: '/9j/AAAA', words: 'front' } as const;
    const papers = { id: eventId(88), pictures: [picture, { ...picture, words: ' ' }] };
    const decision = decidePrescription(rex({}, WEIGHED), PAPER, moment('2026-03-09'), papers);
    expect(decision.kind === 'accepted' && decision.drafts).toMatchObject([
      { kind: 'prescription-written', id: eventId(88) },
      { kind: 'paper-kept', payload: { of: eventId(88), mime: 'image/jpeg', words: 'front' } },
      { kind: 'paper-kept', payload: { of: eventId(88) } },
    ]);
    const bad = { id: eventId(88), pictures: [{ ...picture, base64: 'PHN2Zz4=' }] };
    expect(said(decidePrescription(rex({}, WEIGHED), PAPER, moment('2026-03-09'), bad))).toBe(
      'refused paper-unreadable',
    );
  });
});

describe('how a treatment went', () => {
  const outcome = (words: string, id = ID) =>
    decideOutcome(rex({}, WEIGHED, paper()), id, { words, by: ' Dr Sallowfield ' }, moment('2026-03-20'));
  it('is kept beside its prescription, and a later word stands beside the earlier', () => {
    const decision = outcome(' healed ');
    expect(decision.kind === 'accepted' && decision.drafts[0]?.payload).toEqual({
      ...{ prescription: ID, words: 'healed', by: 'Dr Sallowfield' },
    });
    const noted = (on: string, words: string): Line => [on, 'outcome-noted', { prescription: ID, words }];
    const animal = rex({}, WEIGHED, paper(), noted('2026-03-20', 'healed'), noted('2026-04-01', 'came back'));
    expect(animal.prescriptions[0]?.outcomes.map(({ day: on, words, by }) => [on, words, by])).toEqual([
      ['2026-03-20', 'healed', 'Ada'],
      ['2026-04-01', 'came back', 'Ada'],
    ]);
  });
  it.each([
    ['no words', ' ', ID, 'refused note-empty'],
    ['of a prescription that nobody wrote', 'healed', eventId(77), 'refused prescription-unknown'],
  ])('%s: refused', (_what, words, id, expected) => {
    expect(said(outcome(words, id))).toBe(expected);
  });
});

describe('the last dose of a course', () => {
  const lastDue = (on: string, ...lines: readonly Line[]) => {
    const { schedule } = treatment(on, WEIGHED, ...lines);
    return schedule.ok && schedule.value.lastDueMs !== null
      ? new Date(schedule.value.lastDueMs).toISOString().slice(0, 13)
      : null;
  };
  it.each<[string, string, readonly Line[], string | null]>([
    ['on time', '2026-03-09', [paper(), dose('2026-03-09', 0.5)], '2026-03-13T08'],
    ['a day late, counted from now', '2026-03-12', [paper(), dose('2026-03-09', 0.5)], '2026-03-14T08'],
    [
      'of a course with an end',
      '2026-03-09',
      [paper({ count: undefined, endsOn: '2026-03-12' }), dose('2026-03-09', 0.5)],
      '2026-03-11T08',
    ],
    ['given', '2026-03-09', [paper({ count: 1 }), dose('2026-03-09', 0.5)], null],
  ])('%s', (_what, on, lines, expected) => {
    expect(lastDue(on, ...lines)).toBe(expected);
  });
});
