import { describe, expect, it } from 'vitest';
import {
  askedLabels,
  DOSE_CAUTION,
  type EventId,
  type LabelContent,
  type LabelSheet,
  MOST_SIGN_LINES,
  type Payload,
  SIGN_COLUMNS,
  sayId,
  TUBE_CAUTION,
} from '../../src/core/index.ts';
import { added, day, eventId, id, type Line, REX, site, weighed } from './log.ts';

type Written = Payload<'prescription-written'>;
const ID: EventId = eventId(50);
const PAPER: Written = {
  drug: 'as the vet wrote it',
  prescriber: 'Dr Linnet Sallowfield',
  amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
  route: 'by injection',
  everyHours: 48,
  count: 4,
  startsOn: '2026-03-09',
  recheckOn: '2026-03-20',
  withholdFood: true,
  lot: 'B 7',
};
const TUBE: Partial<Written> = {
  amount: { by: 'volume', ml: 10.6 },
  route: 'by stomach tube',
  everyHours: 12,
  count: 30,
};
const paper = (more: Partial<Written> = {}, n = 50): Line => [
  '2026-03-09',
  'prescription-written',
  { ...PAPER, ...more },
  { n },
];
const dose = (on: string, ml = 0.53): Line => [on, 'dose-given', { prescription: ID, ml }];
const HOUSE = [added({ name: 'Moth', number: '21-007', sex: 'male' }), weighed('2026-03-08', 1065)];
const BODY: Line = ['2026-03-01', 'animal-measured', { lengthMm: 950, of: 'snout-vent' }];

function asked(
  what: LabelSheet,
  lines: readonly Line[],
  { only = null, on = '2026-03-12' }: { only?: string | null; on?: string } = {},
) {
  return askedLabels(site(...lines), what, only, day(on));
}
function card(lines: readonly Line[], on = '2026-03-12', what: LabelSheet = 'treatment'): LabelContent {
  const { labels, left } = asked(what, lines, { on });
  const [label] = labels;
  if (label === undefined || left.length > 0) throw new Error(`no card: ${left.map((one) => one.problem.code).join()}`);
  return label;
}
const says = ({ lines }: LabelContent, form: 'long' | 'medium' | 'short' = 'long') => lines.map((line) => line[form]);
const signs = ({ lines }: LabelContent) => lines.filter(({ slot }) => slot === 'sign').map(({ long }) => long);

describe('a treatment card', () => {
  it('says who, what the vet wrote, the volume as it is drawn up, the course, and the next doses to sign', () => {
    expect(says(card([...HOUSE, paper(), dose('2026-03-09'), dose('2026-03-11')]))).toEqual([
      sayId(REX),
      'Moth · 21-007',
      '1.0 Python regius · ball python',
      'Under treatment, not for sale',
      'as the vet wrote it',
      '5 mg per kg, at 10 mg per mL',
      '0.53 mL',
      'exact 0.5325 mL, 0.47 % less than exact',
      '1 mL syringe, one mark is 0.01 mL',
      'for 1,065 g, weighed 8 Mar 2026; good until 7 Apr 2026, then weigh and print anew',
      'by injection, every 48 hours (2 days)',
      '4 doses, from Mon 9 Mar 2026',
      'given before: 2, last on 11 Mar 2026',
      'No food while it lasts',
      'written by Dr Linnet Sallowfield',
      'recheck Fri 20 Mar 2026',
      'lot B 7',
      DOSE_CAUTION,
      '3 of 4 · Fri 13 Mar 2026',
      '4 of 4 · Sun 15 Mar 2026',
    ]);
  });
  it('opens the animal’s record by its code, and has columns for date, time, mL, who gave it and who checked', () => {
    expect(card([...HOUSE, paper()]).code).toEqual({ says: 'id', id: REX });
    expect(SIGN_COLUMNS.whole).toEqual(['dose', 'date', 'time', 'mL', 'given by', 'second']);
  });
  it.each(['long', 'medium', 'short'] as const)('has the caution and the flag in its %s form too', (form) => {
    const words = says(card([...HOUSE, paper({ route: 'by stomach tube' })]), form).join(' ');
    expect(words).toMatch(/Arithmetic only.*if anything differs, stop and call the vet/);
    expect(words).toMatch(/nly people whom the vet has trained.*struggles, gapes or coughs, stop and call the vet/);
    expect(words).toMatch(/not for sale/i);
    expect(words).toContain('0.53 mL');
  });
  // CARE-RECENT: 30 days for an adult.
  it('has the reason in place of a volume where none can be worked out, and nothing to sign', () => {
    const stale = card([added({ name: 'Moth' }), weighed('2026-01-08', 1065), paper()]);
    expect(says(stale)).toContain(
      'No volume. The weight is 63 days old; for an adult a dose needs one of at most 30 days. Weigh again, then work the dose out anew.',
    );
    expect(stale.lines.filter(({ slot }) => slot === 'sign' || slot === 'figure')).toEqual([]);
    expect(says(stale)).toContain(DOSE_CAUTION);
  });
  it.each<[string, readonly Line[], RegExp]>([
    ['no weight', [added({ name: 'Moth' }), paper()], /^No volume\. There is no weight yet/],
    [
      'a day before it begins',
      [...HOUSE, paper({ startsOn: '2026-03-20' })],
      /^No volume\. This prescription begins on 20 Mar/,
    ],
    [
      'too much for the stomach',
      [...HOUSE, paper({ route: 'gavage', amount: { by: 'mass', dose: { mgPerKg: 300 }, strength: { mgPerMl: 10 } } })],
      /^No volume\. .*over the cap of 2 %/,
    ],
    [
      'ten times the earlier doses',
      [...HOUSE, paper(), dose('2026-03-09', 0.05)],
      /^No volume\. 0\.53 mL is 10\.6 times/,
    ],
  ])('says so of %s', (_what, lines, words) => {
    expect(says(card(lines)).some((one) => words.test(one))).toBe(true);
  });
  it('marks the doses that come after its weight has become too old, and one that is late', () => {
    const late = card([added({ name: 'Moth' }), weighed('2026-03-07', 900), paper({ everyHours: 24, count: 4 })]);
    expect(signs(late)).toEqual([
      '1 of 4 · was due 9 Mar 2026',
      '2 of 4 · Fri 13 Mar 2026',
      '3 of 4 · Sat 14 Mar 2026',
      '4 of 4 · Sun 15 Mar 2026, weigh first',
    ]);
  });
  it('numbers doses whose interval is hours, and says how many of a long course it has room for', () => {
    const long = card([...HOUSE, paper({ everyHours: 12, count: 30 }), dose('2026-03-11')]);
    expect(signs(long)).toHaveLength(MOST_SIGN_LINES);
    expect(signs(long).slice(0, 2)).toEqual(['2 of 30', '3 of 30']);
    expect(says(long)).toContain('the next 12 of 29 doses; print anew then');
  });
  it('ends its lines with the last day of the course', () => {
    const until = card([...HOUSE, paper({ everyHours: 24, count: undefined, endsOn: '2026-03-14' })]);
    expect(signs(until)).toEqual(['1 · was due 9 Mar 2026', '2 · Fri 13 Mar 2026', '3 · Sat 14 Mar 2026']);
    const hours = card([...HOUSE, paper({ everyHours: 8, count: undefined, endsOn: '2026-03-13' })]);
    expect(signs(hours)).toHaveLength(6);
  });
  it('says that two doses stood too near to each other', () => {
    const doubled = card([...HOUSE, paper(), dose('2026-03-09'), dose('2026-03-09')]);
    expect(says(doubled)).toContain('Two doses stand less than half an interval apart: call the vet now.');
  });
  it('keeps its revision while nothing on it changes, and gets another with the next dose', () => {
    const lines = [...HOUSE, paper(), dose('2026-03-09')];
    expect(card(lines).revision).toBe(card(lines).revision);
    expect(card([...lines, dose('2026-03-11')]).revision).not.toBe(card(lines).revision);
  });
});

describe('a tube feeding sheet', () => {
  // CARE-TUBE: stomach at 26–50 % (S), flush 2–3 mL (C); CARE-CAP: 2 % (S: WikiVet); fluids 10–30 mL/kg/day (S: LafeberVet).
  it('says the volume, the cap, the flush, the depth mark, the range of fluids, and the cautions', () => {
    const sheet = card([...HOUSE, BODY, paper(TUBE)], '2026-03-12', 'tube');
    const words = says(sheet);
    expect(words.slice(5, 16)).toEqual([
      '11 mL',
      'exact 10.6 mL, 3.77 % more than exact',
      '20 mL syringe, one mark is 1 mL',
      '1,065 g, weighed 8 Mar 2026',
      'at most 21.3 mL at once by the cap, the flush counted in',
      'flush after a slurry: 2–3 mL of water (common practice, no source)',
      'depth mark, the vet’s: ______ cm from the snout',
      'the stomach lies about 24.7–47.5 cm from the snout, for orientation only (snout to vent 95 cm, measured 1 Mar 2026); never past 47.5 cm, half the body',
      'Fluids, to compare with: 10.65–31.95 mL a day for 1,065 g (10–30 mL per kg and day, S: LafeberVet). A range to compare with, not an order: the vet says whether, what and how much. As written: 22 mL a day.',
      'by stomach tube, every 12 hours',
      '30 doses, from Mon 9 Mar 2026',
    ]);
    expect(words).toEqual(expect.arrayContaining([TUBE_CAUTION, DOSE_CAUTION, 'Under treatment, not for sale']));
  });
  it('says nothing about depth where nobody measured, or somebody guessed', () => {
    const guessed: Line = ['2026-03-01', 'animal-measured', { lengthMm: 950, of: 'snout-vent', guessed: true }];
    for (const lines of [[], [guessed]])
      expect(says(card([...HOUSE, ...lines, paper(TUBE)], '2026-03-12', 'tube')).join(' ')).toMatch(
        /snout to vent was not measured, so nothing is said/,
      );
  });
  it('has the reason in place of a volume without a recent weight', () => {
    const sheet = card([added({ name: 'Moth' }), weighed('2026-01-08', 1065), paper(TUBE)], '2026-03-12', 'tube');
    expect(says(sheet).join(' ')).toContain('No volume. The weight is 63 days old');
    expect(sheet.lines.some(({ slot }) => slot === 'figure' || slot === 'sign')).toBe(false);
  });
});

describe('papers of treatments that are asked for', () => {
  const both = [...HOUSE, paper(), paper({ ...TUBE, drug: 'the other' }, 51)];
  const stopped: Line = [
    '2026-03-11',
    'prescription-stopped',
    { prescription: ID, by: 'Dr Sallowfield', why: 'healed' },
  ];
  it.each<[string, LabelSheet, string | null, readonly Line[], readonly string[], readonly string[]]>([
    ['all under way', 'treatment', null, both, ['as the vet wrote it', 'the other'], []],
    ['the tube feedings', 'tube', null, both, ['the other'], []],
    ['all of one animal', 'treatment', REX, both, ['as the vet wrote it', 'the other'], []],
    ['the second of one animal', 'treatment', `${REX}/2`, both, ['the other'], []],
    ['a third that nobody wrote', 'treatment', `${REX}/3`, both, [], ['prescription-unknown']],
    ['what is no number', 'treatment', `${REX}/x`, both, [], ['prescription-unknown']],
    ['an injection by tube', 'tube', `${REX}/1`, both, [], ['tube-not-stomach']],
    ['one that was stopped', 'treatment', `${REX}/1`, [...both, stopped], [], ['prescription-stopped']],
    ['only what goes on', 'treatment', null, [...both, stopped], ['the other'], []],
    [
      'one whose course is done',
      'treatment',
      `${REX}/1`,
      [...HOUSE, paper({ count: 1 }), dose('2026-03-09')],
      [],
      ['course-done'],
    ],
    ['an animal without any', 'treatment', REX, HOUSE, [], ['treatment-none']],
    ['a stranger and nonsense', 'treatment', `${id(77)},zz`, both, [], ['unknown-id', 'not-an-id']],
  ])('%s', (_what, what, only, lines, drugs, codes) => {
    const { labels, left } = asked(what, lines, { only });
    expect(labels.map((one) => one.lines.find(({ slot, strong }) => slot === 'body' && strong)?.long)).toEqual(drugs);
    expect(left.map((one) => one.problem.code)).toEqual(codes);
  });
});
