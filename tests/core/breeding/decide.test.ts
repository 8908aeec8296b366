import { describe, expect, it } from 'vitest';
import {
  type AnimalRecord,
  type ClutchAct,
  type Decision,
  decideClutch,
  decideFemale,
  decidePairing,
  decideStamp,
  type Facility,
  type FemaleAct,
  type Id,
  type PairingAct,
  pairOf,
  type SeasonStamp,
} from '../../../src/core/index.ts';
import { added, CLUTCH, DAM, day, id, type Line, SIRE, site } from '../log.ts';

const OTHER = id(3);
const PLACE = id(40);
const PAIR: readonly Line[] = [
  added({ name: 'Dam', sex: 'female' }, { subjects: [DAM] }),
  added({ name: 'Sire', sex: 'male' }, { subjects: [SIRE] }),
];
const paired = (on: string, male: Id = SIRE): Line => [on, 'pairing-started', {}, { subjects: [DAM, male] }];
const lock = (on: string): Line => [on, 'lock-seen', {}, { subjects: [DAM, SIRE] }];
const left = (who: Id, on: string): Line => [on, 'animal-left', { how: 'died' }, { subjects: [who] }];
const laid = (on: string, eggs = 6): Line => [
  on,
  'clutch-laid',
  { clutch: CLUTCH, eggs, sire: SIRE },
  { subjects: [DAM, CLUTCH] },
];
const candled = (egg: number, state: 'good' | 'slug' | 'lost'): Line => [
  '2026-04-20',
  'egg-candled',
  { egg, state },
  { subjects: [CLUTCH] },
];
const hatched = (on: string, count: number): Line => [on, 'clutch-hatched', { hatched: count }, { subjects: [CLUTCH] }];
const animal = (facility: Facility, who: Id): AnimalRecord => {
  const found = facility.animals.get(who);
  if (found === undefined) throw new Error('no such animal');
  return found;
};
const moment = (on: string, today = on) => ({
  day: day(on),
  today: day(today),
  nowMs: Date.parse(`${today}T12:00:00Z`),
});
const said = (decision: Decision) =>
  decision.kind === 'accepted' ? 'accepted' : `${decision.kind} ${decision.problem.code}`;

describe('a pairing', () => {
  const act = (what: PairingAct, on: string, ...lines: readonly Line[]) => {
    const facility = site(...PAIR, ...lines);
    return decidePairing(what, { male: animal(facility, SIRE), female: animal(facility, DAM) }, moment(on));
  };
  it.each<[PairingAct, string, string, readonly Line[]]>([
    ['paired', 'is written', 'accepted', []],
    ['paired', 'of two that are together is asked about', 'asks pairing-already', [paired('2025-12-01')]],
    ['paired', 'with a dead male is asked about', 'asks pairing-gone', [left(SIRE, '2025-11-01')]],
    ['lock', 'of a pairing is written', 'accepted', [paired('2025-12-01')]],
    ['lock', 'without a pairing is asked about', 'asks lock-unpaired', []],
    ['lock', 'twice on a day is asked about', 'asks lock-twice', [paired('2025-12-01'), lock('2025-12-02')]],
    ['apart', 'of a pairing is written', 'accepted', [paired('2025-12-01')]],
    ['apart', 'of two that were not together is asked about', 'asks pairing-not-together', []],
  ])('%s %s', (what, _title, expected, lines) => {
    expect(said(act(what, '2025-12-02', ...lines))).toBe(expected);
  });
  it('comes with a lock that nobody wrote one for, in one go', () => {
    const decision = act('lock', '2025-12-02');
    expect(decision.kind === 'asks' && decision.drafts.map((one) => one.kind)).toEqual([
      'pairing-started',
      'lock-seen',
    ]);
  });
  it.each<[string, Parameters<typeof added>[0], string]>([
    ['another species', { species: 'Pantherophis guttatus', sex: 'male' }, 'pairing-species'],
    ['a second female', { sex: 'female' }, 'pairing-sexes'],
  ])('with %s is refused', (_what, facts, code) => {
    const facility = site(...PAIR, added(facts, { subjects: [OTHER] }));
    const found = pairOf(animal(facility, DAM), animal(facility, OTHER));
    expect('code' in found && found.code).toBe(code);
  });
  it('knows male and female whichever is scanned first', () => {
    const facility = site(...PAIR);
    const pair = pairOf(animal(facility, SIRE), animal(facility, DAM));
    expect('male' in pair && [pair.male.id, pair.female.id]).toEqual([SIRE, DAM]);
  });
});

describe('a season stamp on one card', () => {
  const put = (stamp: SeasonStamp, who: Id, ...lines: readonly Line[]) => {
    const facility = site(...PAIR, ...lines);
    return decideStamp(facility, animal(facility, who), stamp, moment('2025-12-03'));
  };
  it.each<[SeasonStamp, string, Id, string, readonly Line[]]>([
    ['lock', 'of her is with the male in her tub', DAM, 'accepted', [paired('2025-12-01')]],
    ['lock', 'of him is with the female he is with', SIRE, 'accepted', [paired('2025-12-01')]],
    ['apart', 'ends what is together', DAM, 'accepted', [paired('2025-12-01')]],
    ['lock', 'with nobody known is refused', DAM, 'refused season-alone', []],
    ['ovulation', 'is hers', DAM, 'accepted', []],
    ['ovulation', 'is not his', SIRE, 'refused season-male', []],
    ['pre-lay-shed', 'is hers', DAM, 'accepted', []],
  ])('%s %s', (stamp, _title, who, expected, lines) => {
    expect(said(put(stamp, who, ...lines))).toBe(expected);
  });
  it('is about both animals, the female first', () => {
    const decision = put('lock', SIRE, paired('2025-12-01'));
    expect(decision.kind === 'accepted' && decision.drafts[0]?.subjects).toEqual([DAM, SIRE]);
  });
});

describe('a laying (BREED-AGAIN)', () => {
  const LAID: FemaleAct = { do: 'laid', clutch: CLUTCH, eggs: 6, slugs: 1, sire: null };
  const act = (what: FemaleAct, ...lines: readonly Line[]) => {
    const facility = site(...PAIR, ...lines);
    return decideFemale(facility, animal(facility, DAM), what, moment('2026-04-03'));
  };
  it.each<[string, string, FemaleAct, readonly Line[]]>([
    ['after a pairing is written', 'accepted', LAID, [paired('2026-01-01')]],
    ['without a pairing is asked about', 'asks laid-unpaired', LAID, []],
    ['soon after another is asked about', 'asks laid-again', LAID, [paired('2026-01-01'), laid('2026-03-20')]],
    [
      'with a sire that was never with her is asked about',
      'asks sire-never-with',
      { ...LAID, sire: OTHER },
      [paired('2026-01-01'), added({ sex: 'male' }, { subjects: [OTHER] })],
    ],
    [
      'with a dead sire of last season is asked about',
      'asks sire-gone',
      { ...LAID, sire: SIRE },
      [paired('2025-02-01'), left(SIRE, '2025-10-01')],
    ],
    [
      'of more eggs than the species has is asked about',
      'asks clutch-unusual',
      { ...LAID, eggs: 19 },
      [paired('2026-01-01')],
    ],
    ['of nothing is refused', 'refused clutch-empty', { ...LAID, eggs: 0, slugs: 0 }, []],
    ['of half an egg is refused', 'refused count-whole', { ...LAID, eggs: 0.5 }, []],
    ['with a female as sire is refused', 'refused parent-sex', { ...LAID, sire: DAM }, []],
    [
      'of a python that bears young is refused',
      'refused lays-eggs',
      { do: 'born', clutch: CLUTCH, young: 5, stillborn: 0, slugs: 0, sire: null },
      [],
    ],
  ])('%s', (_title, expected, what, lines) => {
    expect(said(act(what, ...lines))).toBe(expected);
  });
  it('of a boa is a birth', () => {
    const facility = site(added({ species: 'Boa imperator', sex: 'female' }, { subjects: [DAM] }));
    const decision = decideFemale(facility, animal(facility, DAM), LAID, moment('2026-04-03'));
    expect(said(decision)).toBe('refused bears-live');
  });
  it('is not written of a male', () => {
    const facility = site(...PAIR);
    expect(said(decideFemale(facility, animal(facility, SIRE), LAID, moment('2026-04-03')))).toBe(
      'refused season-male',
    );
  });
  it('is about the dam and the clutch, so that both remember it', () => {
    const decision = act({ ...LAID, damG: 1450, sire: SIRE }, paired('2026-01-01'));
    expect(decision.kind === 'accepted' && decision.drafts[0]).toMatchObject({
      kind: 'clutch-laid',
      subjects: [DAM, CLUTCH],
      payload: { clutch: CLUTCH, eggs: 6, slugs: 1, damG: 1450, sire: SIRE },
    });
  });
  it.each<[FemaleAct, string]>([
    [{ do: 'ovulation' }, 'asks seen-again'],
    [{ do: 'follicles', largestMm: 24 }, 'accepted'],
    [{ do: 'follicles', largestMm: 240 }, 'refused follicle-impossible'],
  ])('after an ovulation: %o', (what, expected) => {
    expect(said(act(what, ['2026-03-01', 'ovulation-seen', {}, { subjects: [DAM] }]))).toBe(expected);
  });
});

describe('a clutch', () => {
  const act = (what: ClutchAct, on = '2026-06-05', ...lines: readonly Line[]) => {
    const facility = site(...PAIR, laid('2026-04-03'), ...lines);
    const clutch = facility.clutches.get(CLUTCH);
    if (clutch === undefined) throw new Error('no clutch');
    return decideClutch(facility, clutch, what, moment(on, '2026-06-06'));
  };
  it.each<[string, string, ClutchAct, string, readonly Line[]]>([
    ['hatches', 'accepted', { do: 'hatched', hatched: 6 }, '2026-06-05', []],
    ['cannot hatch more than was laid', 'refused hatched-too-many', { do: 'hatched', hatched: 7 }, '2026-06-05', []],
    ['cannot hatch before it was laid', 'refused before-laying', { do: 'hatched', hatched: 6 }, '2026-04-01', []],
    ['cannot hatch tomorrow', 'refused date-future', { do: 'hatched', hatched: 6 }, '2026-06-07', []],
    [
      'asks about eggs that were candled as lost',
      'asks hatched-failed-eggs',
      { do: 'hatched', hatched: 6 },
      '2026-06-05',
      [candled(2, 'lost')],
    ],
    [
      'hatches on over a second day',
      'accepted',
      { do: 'hatched', hatched: 1 },
      '2026-06-05',
      [hatched('2026-06-04', 5)],
    ],
    [
      'cannot hatch more on two days than was laid',
      'refused hatched-too-many-more',
      { do: 'hatched', hatched: 2 },
      '2026-06-05',
      [hatched('2026-06-04', 5)],
    ],
    [
      'asks about more after somebody wrote that no more will come',
      'asks hatched-over',
      { do: 'hatched', hatched: 1 },
      '2026-06-06',
      [['2026-06-04', 'clutch-hatched', { hatched: 5, last: true }, { subjects: [CLUTCH] }]],
    ],
    [
      'asks about more than the lost eggs leave, counted over both days',
      'asks hatched-failed-eggs',
      { do: 'hatched', hatched: 1 },
      '2026-06-05',
      [candled(2, 'lost'), hatched('2026-06-04', 5)],
    ],
    [
      'may have its first day written later',
      'accepted',
      { do: 'hatched', hatched: 1 },
      '2026-06-03',
      [hatched('2026-06-04', 5)],
    ],
    ['ends with what is out', 'accepted', { do: 'hatched', hatched: 0 }, '2026-06-06', [hatched('2026-06-04', 5)]],
    ['is candled egg by egg', 'accepted', { do: 'candled', egg: 6, state: 'good' }, '2026-04-20', []],
    ['has no seventh egg', 'refused egg-beyond', { do: 'candled', egg: 7, state: 'good' }, '2026-04-20', []],
    ['pips', 'accepted', { do: 'pip', count: 2 }, '2026-06-03', []],
    ['lies at a temperature', 'accepted', { do: 'read', tempC: 31.5, humidityPercent: 95 }, '2026-04-20', []],
    [
      'does not lie at 88 degrees',
      'refused incubator-impossible',
      { do: 'read', tempC: 88, humidityPercent: null },
      '2026-04-20',
      [],
    ],
    [
      'does not lie where nobody knows',
      'refused unknown-id',
      { do: 'incubated', place: PLACE, setC: 31.5 },
      '2026-04-04',
      [],
    ],
  ])('%s', (_title, expected, what, on, lines) => {
    expect(said(act(what, on, ...lines))).toBe(expected);
  });
  it('remembers where it lies, what was read and candled, and when it pipped', () => {
    const facility = site(
      ...PAIR,
      laid('2026-04-03'),
      ['2026-04-03', 'clutch-incubated', { setC: 31.8 }, { subjects: [CLUTCH] }],
      ['2026-04-10', 'incubation-read', { tempC: 31.6 }, { subjects: [CLUTCH] }],
      candled(1, 'good'),
      candled(1, 'lost'),
      ['2026-06-01', 'pip-seen', {}, { subjects: [CLUTCH] }],
    );
    expect(facility.clutches.get(CLUTCH)).toMatchObject({
      bears: 'eggs',
      incubation: { setC: 31.8, since: '2026-04-03' },
      readings: [{ day: '2026-04-10', tempC: 31.6 }],
      eggStates: { 1: { state: 'lost' } },
      pippedOn: '2026-06-01',
    });
  });
  it('has the sire that was named last, or none again', () => {
    const named = (sire?: Id): Line => [
      '2026-04-05',
      'clutch-sired',
      sire === undefined ? {} : { sire },
      { subjects: [CLUTCH] },
    ];
    const sireOf = (...lines: readonly Line[]) =>
      site(...PAIR, laid('2026-04-03'), ...lines).clutches.get(CLUTCH)?.sire;
    expect([sireOf(), sireOf(named(OTHER)), sireOf(named(OTHER), named())]).toEqual([SIRE, OTHER, null]);
  });
  it('of live young has no eggs to candle', () => {
    const born: Line = [
      '2026-06-01',
      'young-born',
      { clutch: CLUTCH, young: 12, stillborn: 1 },
      { subjects: [DAM, CLUTCH] },
    ];
    const facility = site(added({ species: 'Boa imperator', sex: 'female' }, { subjects: [DAM] }), born);
    const litter = facility.clutches.get(CLUTCH);
    expect(litter).toMatchObject({ bears: 'live young', eggs: 13, hatched: 12, hatchedOn: '2026-06-01' });
    const decision =
      litter && decideClutch(facility, litter, { do: 'candled', egg: 1, state: 'good' }, moment('2026-06-02'));
    expect(decision && said(decision)).toBe('refused litter-no-eggs');
    expect(animal(facility, DAM)).toMatchObject({ laidOn: '2026-06-01', gravidSince: null, resetOn: '2026-06-01' });
  });
});
