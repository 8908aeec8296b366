import { describe, expect, it } from 'vitest';
import {
  type Arrival,
  type Arriving,
  arrive,
  decide,
  decideFlags,
  decideLookedWell,
  decideMicrochip,
  decideOrigin,
  decideQuarantine,
  decideQuarantineEnd,
  type Facility,
  grams,
  holdsOn,
  isQuarantinePlace,
  type Moment,
  moveTo,
  nextFeedDue,
  parseEvent,
  QUARANTINE_DAYS,
  quarantineBoard,
  quarantineOf,
  readMicrochip,
  sayMicrochip,
  usualArrival,
} from '../../src/core/index.ts';
import { added, DAM, data, day, fed, id, type Line, RACK, REX, rex, SIRE, site, TUB, weighed } from './log.ts';

const D = day('2026-03-20');
const now: Moment = { day: D, today: D, nowMs: Date.parse(`${D}T09:30:00Z`) };
const Q_RACK = id(60);
const Q_TUB = id(61);
const PLACES: readonly Line[] = [
  ['2026-01-01', 'place-added', { placeKind: 'rack', name: 'Rack 1', walk: 1 }, { subjects: [RACK] }],
  ['2026-01-01', 'place-added', { placeKind: 'tub', name: '1-01', parent: RACK, walk: 1 }, { subjects: [TUB] }],
  ['2026-01-01', 'place-added', { placeKind: 'quarantine', name: 'Quarantine', walk: 9 }, { subjects: [Q_RACK] }],
  ['2026-01-01', 'place-added', { placeKind: 'tub', name: 'Q-1', parent: Q_RACK, walk: 1 }, { subjects: [Q_TUB] }],
];
const HOUSE = site(...PLACES);
const USUAL = usualArrival(D);
const PLAIN: Arrival = {
  species: 'Python regius',
  sex: 'female',
  name: null,
  number: null,
  hatchedOn: null,
  acquiredOn: D,
  source: null,
  licence: null,
  papers: null,
  microchip: null,
  traits: null,
  place: null,
  weightG: null,
  noFoodUntil: USUAL.noFoodUntil,
  quarantine: { until: USUAL.quarantineUntil, words: null },
};

/** The codes of what is wrong at which line, or of what is asked about. */
function outcome(arriving: Arriving): readonly string[] {
  return arriving.kind === 'refused'
    ? arriving.problems.map((one) => `${one.path} ${one.code}`)
    : arriving.doubts.map((one) => one.code);
}

function drafts(arrival: Partial<Arrival>, facility: Facility = HOUSE) {
  const arriving = arrive(facility, { ...PLAIN, ...arrival }, now);
  if (arriving.kind === 'refused') throw new Error(outcome(arriving).join());
  return arriving.draftsFor(REX);
}

/** The house after an arrival. */
function arrived(arrival: Partial<Arrival>, ...more: readonly Line[]): Facility {
  const lines = drafts(arrival).map(
    ({ day: on, kind, payload, subjects }) => [on, kind, payload, { subjects }] as unknown as Line,
  );
  return site(...PLACES, ...lines, ...more);
}

const rexOf = (facility: Facility) => facility.animals.get(REX) ?? expect.fail('no such animal');

describe('CARE-QUARANTINE: an arrival', () => {
  it('writes everything in one go, each event readable', () => {
    const all = drafts({
      name: 'Nora',
      number: '26-9',
      hatchedOn: day('2024-05-05'),
      source: 'Reed Farm',
      licence: 'L 12',
      papers: 'invoice 7',
      microchip: '900 255 700411038',
      traits: { code: 'pie/+' },
      place: Q_TUB,
      weightG: grams(640),
    });
    expect(all.map(({ kind }) => kind)).toEqual([
      'animal-added',
      'origin-set',
      'microchip-set',
      'traits-set',
      'animal-moved',
      'animal-weighed',
      'hold-placed',
      'hold-placed',
    ]);
    for (const { kind, payload, subjects, day: on } of all)
      expect(parseEvent({ ...data(added(), 1), kind, payload, subjects, day: on }).ok, kind).toBe(true);
  });
  it('leaves the record with origin, chip, place, weight, both holds', () => {
    const facility = arrived({ source: 'Reed Farm', licence: 'L 12', microchip: '900255700411038', place: Q_TUB });
    expect(rexOf(facility)).toMatchObject({
      acquiredOn: D,
      source: 'Reed Farm',
      licence: 'L 12',
      microchip: '900255700411038',
      place: Q_TUB,
      holds: [
        { reason: 'transport', since: D, until: '2026-03-27' },
        { reason: 'quarantine', since: D, until: '2026-06-18' },
      ],
    });
  });
  it('writes nothing that nobody gave', () => {
    const all = drafts({ quarantine: null, noFoodUntil: null });
    expect(all).toEqual([
      {
        kind: 'animal-added',
        subjects: [REX],
        day: D,
        payload: { species: 'Python regius', sex: 'female', acquiredOn: D },
      },
    ]);
  });
  it('counts its holds from the day it came', () => {
    const came = day('2026-03-10');
    const facility = arrived({ acquiredOn: came, quarantine: { until: day('2026-06-01'), words: null } });
    expect(rexOf(facility).holds.map(({ since }) => since)).toEqual([came, came]);
    expect(rexOf(facility).addedOn).toBe(D);
  });
  const faults: readonly [string, Partial<Arrival>, readonly string[]][] = [
    ['no species', { species: ' ' }, ['species text-missing']],
    ['a day ahead', { acquiredOn: day('2026-03-21') }, ['acquired date-future']],
    [
      'hatched after it came',
      { hatchedOn: day('2026-03-20'), acquiredOn: day('2026-03-19') },
      ['hatched arrival-order'],
    ],
    ['a place that nobody knows', { place: id(99) }, ['place unknown-id']],
    ['a chip of two letters', { microchip: 'ab' }, ['microchip microchip-malformed']],
    ['a hold that ended before', { noFoodUntil: D }, ['no-food hold-until']],
    ['a quarantine that ended before', { quarantine: { until: D, words: null } }, ['quarantine hold-until']],
    ['a weight that no snake has', { weightG: grams(900_000) }, ['weight weight-impossible']],
    ['two at once', { species: '', microchip: '?' }, ['species text-missing', 'microchip microchip-malformed']],
  ];
  it.each(faults)('with %s is refused at its line', (_, arrival, codes) => {
    expect(outcome(arrive(HOUSE, { ...PLAIN, ...arrival }, now))).toEqual(codes);
  });
  const lodger = site(...PLACES, added({ name: 'Moss' }, { subjects: [SIRE] }), [
    '2026-01-02',
    'animal-moved',
    { to: Q_TUB },
    { subjects: [SIRE] },
  ]);
  const chipped = site(...PLACES, added({ name: 'Moss' }, { subjects: [SIRE] }), [
    '2026-01-02',
    'microchip-set',
    { code: '900255700411038' },
    { subjects: [SIRE] },
  ]);
  const doubts: readonly [string, Facility, Partial<Arrival>, readonly string[]][] = [
    ['nothing odd', HOUSE, { place: Q_TUB }, []],
    ['no quarantine', HOUSE, { quarantine: null }, ['arrival-not-apart']],
    ['59 days', HOUSE, { quarantine: { until: day('2026-05-18'), words: null } }, ['quarantine-short']],
    ['60 days', HOUSE, { quarantine: { until: day('2026-05-19'), words: null } }, []],
    ['no end', HOUSE, { quarantine: { until: null, words: null } }, []],
    ['a tub of the rack', HOUSE, { place: TUB }, ['quarantine-place']],
    ['a taken tub', lodger, { place: Q_TUB }, ['place-taken']],
    ['food after six days', HOUSE, { noFoodUntil: day('2026-03-26') }, ['arrival-food-early']],
    ['a chip of another', chipped, { microchip: '900255700411038' }, ['microchip-known']],
    ['several', lodger, { quarantine: null, place: Q_TUB }, ['place-taken', 'arrival-not-apart']],
  ];
  it.each(doubts)('with %s asks about that and nothing else', (_, facility, arrival, codes) => {
    expect(outcome(arrive(facility, { ...PLAIN, ...arrival }, now))).toEqual(codes);
  });
});

describe('CARE-ARRIVAL: food after an arrival', () => {
  it('is due from the keeper’s own day on, which takes the place of the usual seven', () => {
    const facility = arrived({ noFoodUntil: day('2026-03-30'), weightG: grams(640) });
    const held = holdsOn(rexOf(facility), day('2026-03-29'));
    expect(held.map(({ kind, until }) => [kind, until])).toEqual([['transport', '2026-03-30']]);
    const due = nextFeedDue(rexOf(facility), day('2026-03-31'));
    expect(due).toMatchObject({ ok: true, value: { state: 'due', next: '2026-03-30' } });
  });
  it('is held for seven days where no keeper wrote a day', () => {
    const came = rex({ acquiredOn: D }, weighed(D, 640));
    expect(holdsOn(came, D).map(({ kind, until }) => [kind, until])).toEqual([['arrival', '2026-03-27']]);
  });
});

describe('quarantine', () => {
  const inside = arrived({ place: Q_TUB, weightG: grams(640) });
  it('has a place where it or what it stands in is one', () => {
    expect([Q_RACK, Q_TUB, TUB, RACK, null].map((one) => isQuarantinePlace(HOUSE, one))).toEqual([
      ...[true, true, false, false, false],
    ]);
  });
  it('lists who is in it, since when, until when and what is due', () => {
    const [line] = quarantineBoard(inside, day('2026-06-18'));
    expect(line).toMatchObject({
      days: 90,
      isOver: true,
      isApart: true,
      weighOn: '2026-04-19',
      lookDue: true,
      vet: null,
    });
    expect(quarantineBoard(inside, day('2026-06-17'))[0]?.isOver).toBe(false);
    expect(quarantineBoard(HOUSE, D)).toEqual([]);
  });
  it('is looked at for the day once the animal or its place was', () => {
    const looked = decideLookedWell(rexOf(inside), now);
    expect(looked).toMatchObject({ kind: 'accepted', drafts: [{ subjects: [REX, Q_TUB], payload: { well: true } }] });
    const line: Line = [D, 'health-looked', { well: true }, { subjects: [Q_TUB] }];
    expect(quarantineBoard(arrived({ place: Q_TUB }, line), D)[0]?.lookDue).toBe(false);
  });
  it('is no longer listed once the animal has left', () => {
    expect(quarantineBoard(arrived({}, [D, 'animal-left', { how: 'died' }]), D)).toEqual([]);
  });
  const ends: readonly [string, string, string, string][] = [
    ['on its day', '2026-06-18', 'Dr Ash', 'accepted'],
    ['before its day', '2026-06-17', 'Dr Ash', 'asks quarantine-early'],
    ['by nobody', '2026-06-18', '  ', 'refused quarantine-by'],
  ];
  const said = (decision: ReturnType<typeof decideQuarantineEnd>): string =>
    decision.kind === 'accepted' ? 'accepted' : `${decision.kind} ${decision.problem.code}`;
  it.each(ends)('ends by word %s', (_, on, by, expected) => {
    const moment = { ...now, day: day(on), today: day(on) };
    expect(said(decideQuarantineEnd(rexOf(inside), by, moment))).toBe(expected);
  });
  it('without a day is asked about before the least that is usual', () => {
    const open = rexOf(arrived({ quarantine: { until: null, words: null } }));
    const at = (days: number) => ({
      ...now,
      day: day(days < 60 ? '2026-05-18' : '2026-05-19'),
      today: day('2026-07-01'),
    });
    expect([59, QUARANTINE_DAYS[0]].map((days) => said(decideQuarantineEnd(open, 'Dr Ash', at(days))))).toEqual([
      'asks quarantine-early',
      'accepted',
    ]);
  });
  it('that ended is none', () => {
    const free = rexOf(arrived({}, [D, 'hold-lifted', { reason: 'quarantine', by: 'Dr Ash' }]));
    expect(quarantineOf(free)).toBeNull();
    expect(said(decideQuarantineEnd(free, 'Dr Ash', now))).toBe('refused quarantine-none');
  });
  it('begins for an animal that is here, and only once', () => {
    const here = rexOf(site(...PLACES, added(), ['2026-01-02', 'animal-moved', { to: Q_TUB }]));
    const start = { until: day('2026-06-18'), words: null };
    expect(decideQuarantine(HOUSE, here, start, now)).toMatchObject({
      kind: 'accepted',
      said: 'quarantine until 18 Jun 2026',
    });
    expect(decideQuarantine(HOUSE, here, { ...start, until: day('2026-03-30') }, now)).toMatchObject({
      kind: 'asks',
      problem: { code: 'quarantine-short' },
    });
    expect(decideQuarantine(HOUSE, here, { ...start, until: D }, now)).toMatchObject({
      problem: { code: 'hold-until' },
    });
    expect(decideQuarantine(HOUSE, rexOf(inside), start, now)).toMatchObject({
      problem: { code: 'quarantine-already' },
    });
  });
  const moves: readonly [string, Facility, typeof TUB, string][] = [
    ['out of it', inside, TUB, 'asks quarantine-leaves'],
    ['within it', arrived({ place: Q_RACK }), Q_TUB, 'accepted'],
    ['into it', site(...PLACES, added(), ['2026-01-02', 'animal-moved', { to: TUB }]), Q_TUB, 'asks quarantine-enters'],
    ['beside it', site(...PLACES, added()), TUB, 'accepted'],
  ];
  it.each(moves)('a move %s', (_, facility, to, expected) => {
    const animal = rexOf(facility);
    expect(said(decide(animal, moveTo(facility, animal, to), now))).toBe(expected);
  });
  it('a move into a taken tub asks about both in one question', () => {
    const lodger = arrived({ place: Q_TUB }, added({ name: 'Moss' }, { subjects: [DAM] }), [
      D,
      'animal-moved',
      { to: TUB },
      { subjects: [DAM] },
    ]);
    const decision = decide(rexOf(lodger), moveTo(lodger, rexOf(lodger), TUB), now);
    expect(decision).toMatchObject({ kind: 'asks', problem: { code: 'quarantine-leaves' } });
    expect(decision.kind === 'asks' && decision.problem.message).toContain('Moss lives in Rack 1 · 1-01 already.');
  });
});

describe('CARE-CHIP: the number of a chip', () => {
  const read: readonly [string, string, string, string | null][] = [
    ['276 0981 0123 4567', '276098101234567', 'iso', 'country'],
    ['900-255700411038', '900255700411038', 'iso', 'manufacturer'],
    ['999000000000001', '999000000000001', 'iso', 'test'],
    ['000123456789012', '000123456789012', 'other', null],
    ['900999999999999', '900999999999999', 'other', null],
    ['0a1b2c3d4e', '0A1B2C3D4E', 'other', null],
    ['123456789', '123456789', 'other', null],
  ];
  it.each(read)('%s is taken', (text, code, form, issuer) => {
    expect(readMicrochip(text)).toMatchObject({ ok: true, value: { code, form, issuer } });
  });
  it('has a note wherever it does not have the form, and for tests', () => {
    const noted = read.map(([text]) => {
      const one = readMicrochip(text);
      return one.ok && one.value.note !== null;
    });
    expect(noted).toEqual([false, false, true, true, true, true, true]);
  });
  it.each(['', '12', 'a chip', '12345678901234567890123456789012', '276/0981'])('“%s” is refused', (text) => {
    expect(readMicrochip(text)).toMatchObject({ ok: false, problem: { code: 'microchip-malformed' } });
  });
  it('is said in groups', () => {
    expect([sayMicrochip('276098101234567'), sayMicrochip('0A1B2C3D4E')]).toEqual(['276 0981 0123 4567', '0A1B2C3D4E']);
  });
  const facility = site(added(), added({ name: 'Moss' }, { subjects: [SIRE] }), [
    D,
    'microchip-set',
    { code: '276098101234567' },
    { subjects: [SIRE] },
  ]);
  it('is written later, and asked about in another form or where another animal has it', () => {
    const set = (text: string) => decideMicrochip(facility, rexOf(facility), text, now);
    expect(set('276098101234568')).toMatchObject({ kind: 'accepted', said: 'microchip 276 0981 0123 4568' });
    expect(set('ABCDE12345')).toMatchObject({ kind: 'asks', problem: { code: 'microchip-form' } });
    expect(set('276098101234567')).toMatchObject({ kind: 'asks', problem: { code: 'microchip-known' } });
    expect(set('!')).toMatchObject({ kind: 'refused' });
  });
  it('may be its own again', () => {
    const moss = facility.animals.get(SIRE) ?? expect.fail();
    expect(decideMicrochip(facility, moss, '276098101234567', now).kind).toBe('accepted');
  });
});

describe('origin', () => {
  const NONE = { source: null, licence: null, papers: null };
  const known = rex({ source: 'Reed Farm' });
  it('is written whole: what is left out goes', () => {
    const decision = decideOrigin(known, { ...NONE, licence: 'L 12' }, now);
    expect(decision).toMatchObject({
      kind: 'accepted',
      drafts: [{ kind: 'origin-set', payload: { licence: 'L 12' } }],
    });
  });
  it('that says the same is refused', () => {
    expect(decideOrigin(known, { ...NONE, source: 'Reed Farm' }, now)).toMatchObject({
      problem: { code: 'origin-same' },
    });
  });
  it('does not touch a meal that was taken before', () => {
    const facility = arrived({ source: 'Reed Farm', licence: 'L 1' }, fed('2026-03-28'));
    expect(rexOf(facility).mealsTaken).toBe(1);
  });
});

describe('marks for handling', () => {
  const flagged = (...flags: Parameters<typeof decideFlags>[1]) =>
    rex({}, ['2025-02-01', 'animal-flagged', { flags: [...flags] }]);
  const rows: readonly [string, ReturnType<typeof rex>, Parameters<typeof decideFlags>[1], object][] = [
    [
      'are set whole, in one order',
      flagged(),
      ['venomous', 'two-people'],
      { kind: 'accepted', said: 'two people, venomous' },
    ],
    ['that say the same are refused', flagged('venomous'), ['venomous'], { problem: { code: 'flags-same' } }],
    [
      'that keep people safe are asked about before they go',
      flagged('venomous'),
      [],
      { kind: 'asks', problem: { code: 'flags-off' } },
    ],
    ['of the shop go at once', flagged('not-for-sale'), [], { kind: 'accepted', said: 'no longer not for sale' }],
  ];
  it.each(rows)('%s', (_what, animal, wanted, said) => {
    expect(decideFlags(animal, wanted, now)).toMatchObject(said);
  });
  it('are asked about on an animal that is on offer', () => {
    const offered = rex({}, ['2025-02-01', 'animal-offered', { priceMinor: 100 }]);
    expect(decideFlags(offered, ['not-for-sale'], now)).toMatchObject({
      kind: 'asks',
      problem: { code: 'flags-offer' },
    });
  });
});
