import { describe, expect, it } from 'vitest';
import {
  cardContent,
  type Decision,
  decideDose,
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
  it('is ended by the vet’s word only, with a name', () => {
    const animal = rex({}, WEIGHED, paper());
    expect(said(decideStop(animal, ID, ' ', moment('2026-03-10')))).toBe('refused vet-unnamed');
    expect(said(decideStop(animal, ID, 'Dr Sallowfield', moment('2026-03-10')))).toBe('accepted');
    expect(said(decideStop(animal, eventId(77), 'Dr Sallowfield', moment('2026-03-10')))).toBe(
      'refused prescription-unknown',
    );
  });
});
