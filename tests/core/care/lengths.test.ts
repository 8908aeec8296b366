import { describe, expect, it } from 'vitest';
import {
  cardContent,
  checkLength,
  type Decision,
  decideMeasured,
  LENGTH_DOUBT,
  listingOf,
  type Moment,
  PEOPLE_CAUTION,
  parseEvent,
  parseLength,
  peopleFor,
  sayLength,
  sayPeople,
} from '../../../src/core/index.ts';
import { added, data, day, type Line, REX, rex, site } from '../log.ts';

const D = day('2026-03-20');
const now: Moment = { day: D, today: D, nowMs: Date.parse(`${D}T09:30:00Z`) };
const measured = (lengthMm: number, of: 'total' | 'snout-vent' = 'total', on = '2026-01-10'): Line => [
  on,
  'animal-measured',
  { lengthMm, of },
];

describe('a length as typed', () => {
  const read: readonly [string, number][] = [
    ['152.5', 1525],
    ['152,5 cm', 1525],
    ['1.52 m', 1520],
    ['1520mm', 1520],
    ['60 in', 1524],
    ['5 ft', 1524],
  ];
  it.each(read)('%s is %i mm', (text, mm) => {
    expect(parseLength(text)).toEqual({ ok: true, value: mm });
  });
  const refused: readonly [string, string][] = [
    ['', 'not-a-number'],
    ['long', 'not-a-number'],
    ['12 furlongs', 'unit-missing'],
    ['1.52', 'length-impossible'],
    ['15 m', 'length-impossible'],
    ['0', 'not-positive'],
  ];
  it.each(refused)('“%s” is refused: %s', (text, code) => {
    expect(parseLength(text)).toMatchObject({ ok: false, problem: { code } });
  });
  it('is said in cm, and from two metres on in m', () => {
    expect([855, 1999, 2000, 4213].map(sayLength)).toEqual(['85.5 cm', '199.9 cm', '2 m', '4.21 m']);
  });
});

describe('CARE-LENGTH: a measured length', () => {
  const said = (decision: Decision): string =>
    decision.kind === 'accepted' ? decision.said : `${decision.kind} ${decision.problem.code}`;
  const put = (animal: ReturnType<typeof rex>, lengthMm: number, of: 'total' | 'snout-vent' = 'total') =>
    said(decideMeasured(animal, { lengthMm, of, guessed: false }, now));
  it('is written with its kind, and guesses as guesses', () => {
    const guess = decideMeasured(rex({}), { lengthMm: 1500, of: 'total', guessed: true }, now);
    expect(guess).toEqual({
      kind: 'accepted',
      said: 'guessed 150 cm, total length',
      drafts: [
        { kind: 'animal-measured', subjects: [REX], payload: { lengthMm: 1500, of: 'total', guessed: true }, day: D },
      ],
    });
    const payload = guess.kind === 'accepted' ? guess.drafts[0]?.payload : {};
    expect(parseEvent({ ...data(added(), 1), kind: 'animal-measured', payload }).ok).toBe(true);
  });
  const known = rex({}, measured(1500), measured(1300, 'snout-vent'));
  it.each([
    [1500 * (1 - LENGTH_DOUBT.shorterPercent / 100), 'total', 'measured 142.5 cm, total length'],
    [1424, 'total', 'asks length-unlikely'],
    [2250, 'total', 'measured 2.25 m, total length'],
    [2251, 'total', 'asks length-unlikely'],
    [1499, 'snout-vent', 'measured 149.9 cm, snout to vent'],
    [1500, 'snout-vent', 'asks length-order'],
    [1, 'total', 'refused length-impossible'],
    [12_000, 'total', 'refused length-impossible'],
  ] as const)('of %d mm, %s: %s', (mm, of, expected) => {
    expect(put(known, mm, of)).toBe(expected);
  });
  it('is not compared with a later one', () => {
    const later = rex({}, measured(1500, 'total', '2026-03-25'));
    expect(checkLength(later, { lengthMm: 900, of: 'total', guessed: false }, D)).toBeNull();
  });
  it('of one that has left is asked about', () => {
    expect(put(rex({}, ['2026-03-01', 'animal-left', { how: 'died' }]), 1500)).toBe('asks animal-gone');
  });
});

describe('CARE-PEOPLE: by the length of an animal', () => {
  const flag = (lines: readonly Line[], fromM: number | null = null) => {
    const rules: readonly Line[] =
      fromM === null ? [] : [['2025-01-01', 'site-rules-set', { twoPeopleFromM: fromM }, { subjects: [] }]];
    const facility = site(added(), ...rules, ...lines);
    const animal = facility.animals.get(REX) ?? expect.fail();
    return cardContent(facility, animal, D).flags.find(({ kind }) => kind === 'two-people')?.long ?? null;
  };
  const flagged: Line = ['2026-01-01', 'animal-flagged', { flags: ['two-people'] }];
  it.each([
    ['never measured', [], null, null],
    ['below the rule', [measured(2399)], null, null],
    ['at the rule', [measured(2400)], null, 'Two people: do not open alone'],
    ['a step further', [measured(3600)], null, 'Three people: do not open alone'],
    ['by the site’s own figure', [measured(2000)], 2, 'Two people: do not open alone'],
    ['by a higher one', [measured(2400)], 3, null],
    ['never fewer than its flag', [measured(900), flagged], null, 'Two people: do not open alone'],
    [
      'by the longer of two lengths',
      [measured(2600, 'snout-vent'), measured(2300)],
      null,
      'Two people: do not open alone',
    ],
  ] as const)('%s', (_, lines, fromM, words) => {
    expect(flag(lines, fromM)).toBe(words);
  });
  it('says why, with the day, whose rule it is and its caution', () => {
    const people = peopleFor(rex({}, measured(4210)), null);
    expect(people).toMatchObject({ people: 3, caution: PEOPLE_CAUTION });
    expect(people?.because).toBe(
      '4.21 m total length on 10 Jan 2026; two people from 2.4 m, one more for each further 1.2 m (common practice, no source)',
    );
    expect(peopleFor(rex({}, measured(4210)), 3)?.because).toContain('the site’s own rule');
  });
  it('counts in words', () => {
    expect([1, 2, 4, 9].map(sayPeople)).toEqual(['One person', 'Two people', 'Four people', '9 people']);
  });
});

describe('CARE-LISTED: what is said of a species that changes hands', () => {
  const lists = (species: string) => listingOf(species).map(({ list }) => list);
  // 50 CFR 16.15(a) as amended by 80 FR 12702 (10 March 2015); the families of CITES Appendix II as cited in docs/sources.md.
  it.each([
    ['Malayopython reticulatus', ['CITES', 'Lacey Act']],
    ['Python reticulatus', ['CITES', 'Lacey Act']],
    ['Python bivittatus', ['CITES', 'Lacey Act']],
    ['Eunectes murinus', ['CITES', 'Lacey Act']],
    ['Python regius', ['CITES']],
    ['Boa imperator', ['CITES']],
    ['Morelia spilota', ['CITES']],
    ['Pantherophis guttatus', []],
    ['Heterodon nasicus', []],
    ['', []],
  ])('%s: %j', (species, expected) => {
    expect(lists(species)).toEqual(expected);
  });
  it('always asks to check the current list', () => {
    for (const { words } of listingOf('Malayopython reticulatus')) expect(words).toContain('check the current list');
  });
});
