import { describe, expect, it } from 'vitest';
import {
  breedingOf,
  type ClutchRecord,
  decideClutch,
  eggsOpen,
  eventIdMs,
  type Facility,
  findingsOf,
  foldFacility,
  forecastOf,
  type Hatchlings,
  hatchOut,
  type Id,
  lociFor,
  ownHatchSpans,
  readTraits,
  sayFraction,
  seasonOf,
  spansOf,
  stillLies,
  stillToCome,
  youngOf,
} from '../../../src/core/index.ts';
import { added, CLUTCH, DAM, day, eventId, id, type Line, log, refusal, SIRE, site, undo, value } from '../log.ts';

const traits = (of: Id, code: string): Line => ['2025-01-02', 'traits-set', { code }, { subjects: [of] }];
const PAIR: readonly Line[] = [
  added({ name: 'Dam', number: '24-017', sex: 'female' }, { subjects: [DAM] }),
  added({ name: 'Sire', sex: 'male' }, { subjects: [SIRE] }),
  ['2026-01-10', 'pairing-started', {}, { subjects: [DAM, SIRE] }],
];
const laid = (sire: Id | null = SIRE): Line => [
  '2026-04-03',
  'clutch-laid',
  { clutch: CLUTCH, eggs: 6, ...(sire && { sire }) },
  { subjects: [DAM, CLUTCH] },
];
const HETS: readonly Line[] = [...PAIR, traits(SIRE, 'alb/+; pie/+'), traits(DAM, 'alb/+; pie/+'), laid()];
const clutchIn = (facility: Facility): ClutchRecord => {
  const found = facility.clutches.get(CLUTCH);
  if (found === undefined) throw new Error('no clutch');
  return found;
};
const setting = () => {
  let next = 500;
  return { moment: { day: day('2026-06-05'), today: day('2026-06-05'), nowMs: 0 }, mint: () => id(next++) };
};
/** The facility after a hatch-out was written. */
function hatchedSite(lines: readonly Line[], groups: readonly Hatchlings[]): Facility {
  const out = value(hatchOut(site(...lines), clutchIn(site(...lines)), groups, setting()));
  if (out.decision.kind === 'refused') throw new Error(out.decision.problem.message);
  const drafts = out.decision.drafts.map(
    (one, at) => [one.day, one.kind, one.payload, { subjects: one.subjects, n: 900 + at }] as unknown as Line,
  );
  return foldFacility([...log(...lines), ...log(...drafts)]);
}
const looks = (facility: Facility) => value(forecastOf(facility, clutchIn(facility))).looks;

describe('the forecast of a clutch', () => {
  it('is the looks of its parents’ young: 9 : 3 : 3 : 1 for two double hets (Mendel 1866)', () => {
    expect(looks(site(...HETS)).map((one) => [one.shows, sayFraction(one.p)])).toEqual([
      ['normal', '9/16'],
      ['Albino', '3/16'],
      ['Piebald', '3/16'],
      ['Albino, Piebald', '1/16'],
    ]);
  });
  it('asks for the sire where nobody has said it', () => {
    const facility = site(...PAIR, laid(null));
    expect(refusal(forecastOf(facility, clutchIn(facility)))).toBe('clutch-sire-unknown');
  });
});

describe('a hatch-out', () => {
  const [normal, albino] = looks(site(...HETS));
  if (normal === undefined || albino === undefined) throw new Error('no looks');
  const facility = hatchedSite(HETS, [
    { count: 3, look: normal },
    { count: 2, look: albino },
  ]);
  const young = youngOf(facility, clutchIn(facility));
  it('makes a record for each young with its day, parents, clutch and number', () => {
    expect(young).toHaveLength(5);
    expect(young[0]).toMatchObject({ hatchedOn: '2026-06-05', sire: SIRE, dam: DAM, clutch: CLUTCH, sex: 'unsexed' });
    expect(young.map((one) => one.number)).toEqual(['26-001', '26-002', '26-003', '26-004', '26-005']);
    expect(clutchIn(facility)).toMatchObject({ hatched: 5, hatchedOn: '2026-06-05' });
  });
  it('gives each its conditional chances', () => {
    expect(young[0]?.traits).toEqual({
      code: '[alb 2:3]/+; [pie 2:3]/+',
      words: '66 % possible het Albino, 66 % possible het Piebald',
    });
    expect(young[4]?.traits?.code).toBe('alb/alb; [pie 2:3]/+');
  });
  it('keeps a look that was not predicted, with a note on the young and on the clutch', () => {
    const { loci } = lociFor(facility, 'Python regius');
    const typed = value(readTraits('Pastel', loci, null)).traits;
    const lines = site(...HETS);
    const out = value(hatchOut(lines, clutchIn(lines), [{ count: 1, typed }], setting()));
    const drafts = out.decision.kind === 'refused' ? [] : out.decision.drafts;
    expect(drafts.map((one) => one.kind)).toEqual(['clutch-hatched', 'animal-added', 'traits-set', 'note-made']);
    expect(drafts.at(-1)?.subjects).toEqual([out.young[0], CLUTCH]);
  });
  it('names the sire that was chosen at hatching for the clutch too', () => {
    const lines = [...PAIR, traits(SIRE, 'alb/+; pie/+'), traits(DAM, 'alb/+; pie/+'), laid(null)];
    const facility = site(...lines);
    const chosen = { ...clutchIn(facility), sire: SIRE };
    const out = value(hatchOut(facility, chosen, [{ count: 1, look: normal }], setting()));
    const drafts = out.decision.kind === 'refused' ? [] : out.decision.drafts;
    expect(drafts.map((one) => one.kind)).toEqual(['clutch-hatched', 'clutch-sired', 'animal-added', 'traits-set']);
  });
  it('of more than was laid is refused as a whole', () => {
    const lines = site(...HETS);
    const out = value(hatchOut(lines, clutchIn(lines), [{ count: 7, look: normal }], setting()));
    expect(out.decision.kind === 'refused' && out.decision.problem.code).toBe('hatched-too-many');
    expect(out.young).toEqual([]);
  });
  it('leaves numbers out where the site does not number by year', () => {
    const plain = HETS.map((line) => (line[1] === 'animal-added' ? added({ sex: line[2].sex }, line[3]) : line));
    const born = hatchedSite(plain, [{ count: 1, look: normal }]);
    expect(youngOf(born, clutchIn(born))[0]?.number).toBeNull();
  });
});

describe('a clutch that hatches over several days (BREED-HATCH)', () => {
  const [normal, albino] = looks(site(...HETS));
  if (normal === undefined || albino === undefined) throw new Error('no looks');
  const on = (text: string, nowMs = 0) => ({ day: day(text), today: day(text), nowMs });
  /** What a keeper wrote on each day: how many of which look, and whether it was the last. */
  const written = (
    days: readonly (readonly [on: string, groups: readonly Hatchlings[], last?: boolean])[],
  ): { readonly facility: Facility; readonly lines: readonly Line[] } => {
    let lines = HETS;
    let next = 500;
    for (const [when, groups, last = false] of days) {
      const facility = site(...lines);
      const setting = { moment: on(when), last, mint: () => id(next++) };
      const { decision } = value(hatchOut(facility, clutchIn(facility), groups, setting));
      if (decision.kind !== 'accepted') throw new Error(decision.problem.message);
      const more = decision.drafts.map(
        (one) => [one.day, one.kind, one.payload, { subjects: one.subjects }] as unknown as Line,
      );
      lines = [...lines, ...more];
    }
    return { facility: site(...lines), lines };
  };
  const twoDays = written([
    ['2026-06-05', [{ count: 3, look: normal }]],
    [
      '2026-06-06',
      [
        { count: 1, look: normal },
        { count: 1, look: albino },
      ],
    ],
  ]);
  const { facility } = twoDays;

  it('adds its days up, and the first of them is the day on which it hatched', () => {
    expect(clutchIn(facility)).toMatchObject({
      hatched: 5,
      hatchedOn: '2026-06-05',
      hatchings: [
        { day: '2026-06-05', count: 3 },
        { day: '2026-06-06', count: 2 },
      ],
      isOver: false,
    });
  });
  it('gives the young of the second day records, numbers and parents like those of the first, and their own day', () => {
    const young = youngOf(facility, clutchIn(facility));
    expect(young.map((one) => [one.number, one.hatchedOn, one.dam, one.sire, one.clutch])).toEqual(
      [1, 2, 3, 4, 5].map((n) => [`26-00${n}`, n < 4 ? '2026-06-05' : '2026-06-06', DAM, SIRE, CLUTCH]),
    );
  });
  it('says how many are still to come, and stops waiting after some days', () => {
    const to = (text: string) => stillToCome(clutchIn(facility), day(text));
    expect(['2026-06-06', '2026-06-20', '2026-06-21'].map(to)).toEqual([1, 1, 0]);
    expect(eggsOpen(clutchIn(facility))).toBe(1);
    expect(stillLies(clutchIn(facility), day('2026-06-07'))).toBe(true);
    expect(stillLies(clutchIn(facility), day('2026-06-21'))).toBe(false);
  });
  it('waits for no more once that is written, with young or without', () => {
    const ended = written([['2026-06-05', [{ count: 3, look: normal }], true]]);
    expect([clutchIn(ended.facility).isOver, stillToCome(clutchIn(ended.facility), day('2026-06-05'))]).toEqual([
      true,
      0,
    ]);
    const none = written([
      ['2026-06-05', [{ count: 3, look: normal }]],
      ['2026-06-07', []],
    ]);
    expect(clutchIn(none.facility)).toMatchObject({ hatched: 3, hatchedOn: '2026-06-05', isOver: true });
    const never = written([['2026-06-05', []]]);
    expect(clutchIn(never.facility)).toMatchObject({
      hatched: 0,
      hatchedOn: '2026-06-05',
      isOver: true,
      hatchings: [],
    });
  });
  it('is the same whichever day arrives first, and a slip takes one day back', () => {
    const events = log(...twoDays.lines);
    expect(foldFacility(events.toReversed()).clutches.get(CLUTCH)).toEqual(clutchIn(facility));
    const first = twoDays.lines.findIndex(([, kind]) => kind === 'clutch-hatched');
    const back = foldFacility(log(...twoDays.lines, undo('2026-06-07', first, { subjects: [CLUTCH] })));
    expect(clutchIn(back)).toMatchObject({ hatched: 2, hatchedOn: '2026-06-06' });
  });
  it('counts every young of it in what the clutch says', () => {
    const POSSIBLE: readonly Line[] = [...PAIR, traits(SIRE, '[cln 2:3]/+'), traits(DAM, 'cln/cln'), laid()];
    const hatched = (young: Id, when: string): readonly Line[] => [
      added({ clutch: CLUTCH, dam: DAM, sire: SIRE, hatchedOn: when }, { subjects: [young] }, when),
      [when, 'traits-set', { code: 'cln/+' }, { subjects: [young] }],
      [when, 'clutch-hatched', { hatched: 1 }, { subjects: [CLUTCH] }],
    ];
    const chance = (...lines: readonly Line[]) => {
      const facility = site(...POSSIBLE, ...lines);
      const after = value(findingsOf(facility, clutchIn(facility))).changed[0]?.chances[0]?.after;
      return after && sayFraction(after);
    };
    // 1/2, then 1/3: own computation, see facts of genetics.
    const [first, second] = [hatched(id(600), '2026-06-05'), hatched(id(601), '2026-06-06')];
    expect([chance(...first), chance(...first, ...second)]).toEqual(['1/2', '1/3']);
  });
  it('counts from its first day in the windows of later ones, and its own days for how long a clutch takes', () => {
    const step = breedingOf('Python regius')?.steps.find((one) => one.to === 'hatched');
    if (step === undefined) throw new Error('no step');
    expect([...spansOf(facility, 'Python regius', step)]).toEqual([[DAM, [63]]]);
    expect(ownHatchSpans(facility, 'Python regius')).toEqual([]);
    const ended = site(...twoDays.lines, [
      '2026-06-09',
      'clutch-hatched',
      { hatched: 0, last: true },
      { subjects: [CLUTCH] },
    ]);
    expect(ownHatchSpans(ended, 'Python regius')).toEqual([1]);
  });
  it('of which none hatched is no date for later windows', () => {
    const step = breedingOf('Python regius')?.steps.find((one) => one.to === 'hatched');
    const never = site(...HETS, ['2026-06-20', 'clutch-hatched', { hatched: 0, last: true }, { subjects: [CLUTCH] }]);
    expect(step && [...spansOf(never, 'Python regius', step)]).toEqual([]);
  });
  it('waits with the first shed until the young of the last day have shed too', () => {
    const shed = (n: number): Line => ['2026-06-15', 'shed-seen', {}, { subjects: [id(500 + n)] }];
    const next = (...lines: readonly Line[]) => {
      const facility = site(...twoDays.lines, ...lines);
      const dam = facility.animals.get(DAM);
      return dam && seasonOf(facility, dam, day('2026-06-16')).next.map((one) => one.step.to);
    };
    expect(next(shed(0), shed(1), shed(2))).toEqual(['first shed']);
    expect(next(shed(0), shed(1), shed(2), shed(3), shed(4))).toEqual([]);
  });
  it('asks about the same count again within minutes', () => {
    const one = site(...HETS, ['2026-06-05', 'clutch-hatched', { hatched: 2 }, { subjects: [CLUTCH] }]);
    const written = (minutes: number) => {
      const clutch = clutchIn(one);
      const nowMs = eventIdMs(eventId(HETS.length)) + minutes * 60_000;
      const decision = decideClutch(one, clutch, { do: 'hatched', hatched: 2 }, on('2026-06-05', nowMs));
      return decision.kind === 'asks' ? decision.problem.code : decision.kind;
    };
    expect([written(3), written(11)]).toEqual(['hatched-again', 'accepted']);
  });
});

describe('the young of a litter', () => {
  const born: Line = [
    '2026-04-03',
    'young-born',
    { clutch: CLUTCH, young: 3, stillborn: 1 },
    { subjects: [DAM, CLUTCH] },
  ];
  const facility = site(...PAIR, born);
  const typed = value(readTraits('wt', lociFor(facility, 'Python regius').loci, null)).traits;
  const enter = (count: number, on = '2026-04-03', within = facility) =>
    value(
      hatchOut(within, { ...clutchIn(within), sire: SIRE }, [{ count, typed }], {
        ...setting(),
        moment: { ...setting().moment, day: day(on) },
      }),
    ).decision;
  it('get records of the day of birth, and the birth is not written again', () => {
    const decision = enter(2);
    expect(decision.kind).toBe('accepted');
    const kinds = decision.kind === 'accepted' ? decision.drafts.map(({ kind }) => kind) : [];
    const young = ['animal-added', 'traits-set', 'note-made'];
    expect(kinds).toEqual(['clutch-sired', ...young, ...young]);
    expect(decision.kind === 'accepted' && decision.drafts[0]?.day).toBe('2026-04-03');
  });
  it.each([
    ['more than were born alive', 4, '2026-04-03', 'litter-too-many'],
    ['a day before the birth', 1, '2026-04-02', 'before-laying'],
    ['a day to come', 1, '2026-06-06', 'date-future'],
    ['a count that is none', -1, '2026-04-03', 'count-whole'],
  ])('are refused for %s', (_case, count, on, code) => {
    const decision = enter(count, on);
    expect(decision.kind === 'refused' && decision.problem.code).toBe(code);
  });
  it('are counted with those that have a record already', () => {
    const one = added({ clutch: CLUTCH, dam: DAM }, { subjects: [id(700)] }, '2026-04-04');
    const decision = enter(3, '2026-04-03', site(...PAIR, born, one));
    expect(decision.kind === 'refused' && decision.problem.message).toContain('1 have a record');
  });
});

describe('what a clutch says', () => {
  const POSSIBLE: readonly Line[] = [...PAIR, traits(SIRE, '[cln 2:3]/+'), traits(DAM, 'cln/cln'), laid()];
  const find = (lines: readonly Line[], shows: readonly (readonly [string, number])[]) => {
    const all = looks(site(...lines));
    const groups = shows.flatMap(([what, count]) => {
      const look = all.find((one) => one.shows === what);
      return look === undefined ? [] : [{ count, look }];
    });
    const facility = hatchedSite(lines, groups);
    return value(findingsOf(facility, clutchIn(facility)));
  };
  it('updates a possible het by its normal young: 1/2, 1/3, 1/5 (own computation, see facts of genetics)', () => {
    const chance = (normals: number) => find(POSSIBLE, [['normal', normals]]).changed[0]?.chances[0]?.after;
    expect([1, 2, 3].map((n) => chance(n) && sayFraction(chance(n) ?? { top: 0n, bottom: 1n }))).toEqual([
      '1/2',
      '1/3',
      '1/5',
    ]);
  });
  it('proves it by one visual', () => {
    const [sire] = find(POSSIBLE, [
      ['normal', 1],
      ['Clown', 1],
    ]).changed;
    expect([sire?.id, sire?.chances.map((one) => [one.allele, sayFraction(one.after)])]).toEqual([
      SIRE,
      [['het Clown', '1']],
    ]);
  });
  it('tests the numbers exactly where the parents are certain: none of 6 where 1/2 is expected is 1/32 (two-sided)', () => {
    const sure: readonly Line[] = [...PAIR, traits(SIRE, 'cln/+'), traits(DAM, 'cln/cln'), laid()];
    const { test } = find(sure, [['normal', 6]]);
    expect(test && sayFraction(test.pValue)).toBe('1/32');
    expect(find(POSSIBLE, [['normal', 6]]).test).toBeNull();
  });
  it('flags a young that the parents cannot have', () => {
    const plain: readonly Line[] = [...PAIR, traits(SIRE, 'wt'), traits(DAM, 'cln/cln'), laid()];
    const facility = site(
      ...plain,
      added({ clutch: CLUTCH, dam: DAM, sire: SIRE }, { subjects: [id(600)] }, '2026-06-05'),
      traits(id(600), 'cln/cln'),
    );
    const found = value(findingsOf(facility, clutchIn(facility)));
    expect(found.paternity?.paternity).toBe('none of these');
  });
  it('is nothing while no young has traits', () => {
    expect(value(findingsOf(site(...HETS), clutchIn(site(...HETS)))).observed).toEqual([]);
  });
});
