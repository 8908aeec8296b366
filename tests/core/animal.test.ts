import { describe, expect, it } from 'vitest';
import { isKnown, lastWeight, ledger, parseEvent, sayAnimal, sayEvent, saySex } from '../../src/core/index.ts';
import {
  added,
  CLUTCH,
  DAM,
  data,
  day,
  fed,
  type Line,
  log,
  REX,
  refused,
  rex,
  SIRE,
  site,
  TUB,
  undo,
  value,
  weighed,
} from './log.ts';

const D = '2026-03-09';

describe('who an animal is', () => {
  it('is what the arrival says', () => {
    const facts = { name: 'Rex', number: 'R-1', sex: 'male', hatchedOn: '2025-06-01', sire: SIRE, dam: DAM } as const;
    expect(rex(facts)).toMatchObject({ ...facts, species: 'Python regius', addedOn: '2025-01-01', acquiredOn: null });
  });
  it('is nobody before an arrival, and the second subject of an arrival is not added', () => {
    expect(site(weighed(D, 5)).animals.size).toBe(0);
    expect(site(added({}, { subjects: [REX, DAM] })).animals.has(DAM)).toBe(false);
  });
  it('has the name, sex, traits, flags and plan of the later writer, whatever order they happened in', () => {
    const [early, late] = [{ clock: [5, 0] as const }, { clock: [9e12, 0] as const }];
    const animal = rex(
      { name: 'Rex' },
      ['2026-03-01', 'animal-named', { name: 'Late' }, late],
      ['2026-03-02', 'animal-named', { name: 'Early' }, early],
      ['2026-03-03', 'animal-sexed', { sex: 'female' }],
      ['2026-03-03', 'traits-set', { code: 'pie/+', words: 'het piebald' }],
      ['2026-03-03', 'animal-flagged', { flags: ['two-people'] }],
      ['2026-03-04', 'animal-flagged', { flags: [] }],
      ['2026-03-04', 'feed-plan-set', { everyDays: [7, 9] }],
    );
    expect(animal).toMatchObject({ name: 'Late', sex: 'female', flags: [], plan: { everyDays: [7, 9] } });
    expect(animal.traits).toEqual({ code: 'pie/+', words: 'het piebald' });
  });
  it('keeps a name that was given later when the arrival is amended', () => {
    const animal = rex({ name: 'Rex' }, ['2026-03-01', 'animal-named', { name: 'Regina' }]);
    expect(animal.name).toBe('Regina');
  });
  it('is called by name, else number, else id', () => {
    expect(sayAnimal(rex({ name: 'Rex', number: '7' }))).toBe('Rex');
    expect(sayAnimal(rex({ number: '7' }))).toBe('7');
    expect(sayAnimal(rex({}))).toBe(`${REX.slice(0, 4)}-${REX.slice(4)}`);
    expect((['male', 'female', 'unsexed'] as const).map(saySex)).toEqual(['1.0', '0.1', '0.0.1']);
  });
});

describe('what an animal ate', () => {
  it('keeps the last sixteen offers and counts all meals', () => {
    const meals = Array.from({ length: 20 }, (_, at): Line => fed(`2026-03-${String(at + 1).padStart(2, '0')}`));
    const animal = rex({}, ...meals);
    expect([animal.offers.length, animal.offers[0]?.day, animal.mealsTaken]).toEqual([16, '2026-03-05', 20]);
  });
  it('a refusal is an offer and no meal', () => {
    const animal = rex({}, fed('2026-03-01'), refused('2026-03-08'));
    expect([animal.lastTaken?.day, animal.mealsTaken, animal.offers.length]).toEqual(['2026-03-01', 1, 2]);
  });
  it('grams that nobody wrote come from the middle of the class, and are unknown for prey outside the list', () => {
    const offer = (prey: string): Line => [D, 'prey-offered', { prey, count: 2, outcome: 'taken' }];
    expect(rex({}, offer('rat-pup')).lastTaken?.totalG).toBe(55);
    expect(rex({}, offer('quail')).lastTaken?.totalG).toBeNull();
  });
  it('a meal that was written down later stands at its own day', () => {
    const late = fed('2026-03-02', 30, { at: '2026-03-11T09:00:00Z' });
    expect(rex({}, fed('2026-03-09'), late).lastTaken?.day).toBe('2026-03-09');
  });
});

describe('how an animal does', () => {
  it('keeps the last 24 weighings, the peak since the reset and the day of the reset', () => {
    const many = Array.from(
      { length: 30 },
      (_, at): Line => weighed(`2026-03-${String(at + 1).padStart(2, '0')}`, 500 - at),
    );
    const animal = rex({}, ...many);
    expect([animal.weights.length, lastWeight(animal)?.weightG]).toEqual([24, 471]);
    expect([animal.peak?.weightG, animal.resetOn]).toEqual([500, '2026-03-01']);
    expect(lastWeight(rex({}))).toBeNull();
  });
  it('of two equal peaks the later one counts', () => {
    expect(rex({}, weighed('2026-03-01', 500), weighed('2026-03-08', 500)).peak?.day).toBe('2026-03-08');
  });
  it('sheds end an opaque spell; a shed without one ends none', () => {
    const animal = rex({}, ['2026-03-01', 'opaque-seen', {}], ['2026-03-09', 'shed-seen', { whole: true }]);
    expect(animal).toMatchObject({ opaqueOn: null, opaqueEndedOn: D, lastShedOn: D, sheds: 1 });
    expect(rex({}, [D, 'shed-seen', {}]).opaqueEndedOn).toBeNull();
  });
  it('cooling ends only where it started', () => {
    expect(rex({}, [D, 'cooling-ended', {}]).cooling).toBeNull();
    expect(rex({}, ['2026-03-01', 'cooling-started', {}], [D, 'cooling-ended', {}]).cooling).toEqual({
      from: '2026-03-01',
      to: D,
    });
  });
  it('laying resets what weights are compared with, and her weight after it is the first of the new ones', () => {
    const laid: Line = [
      D,
      'clutch-laid',
      { clutch: CLUTCH, eggs: 6, damG: 1227, sire: SIRE },
      { subjects: [REX, CLUTCH] },
    ];
    const dam = rex({ sex: 'female' }, weighed('2026-03-01', 1735), ['2026-02-01', 'ovulation-seen', {}], laid);
    expect(dam).toMatchObject({ resetOn: D, laidOn: D, gravidSince: null, peak: { day: D, weightG: 1227 } });
    expect(dam.season.at(-1)).toEqual({ kind: 'laid', day: D, with: SIRE });
  });
  it('a pre-lay shed alone makes her gravid, an ovulation before it counts as the beginning', () => {
    expect(rex({}, [D, 'pre-lay-shed-seen', {}]).gravidSince).toBe(D);
    expect(rex({}, ['2026-02-01', 'ovulation-seen', {}], [D, 'pre-lay-shed-seen', {}]).gravidSince).toBe('2026-02-01');
  });
  it('a pairing is marked on both animals', () => {
    const pair: Line = [D, 'pairing-started', {}, { subjects: [DAM, SIRE] }];
    const { animals } = site(added({}, { subjects: [DAM] }), added({}, { subjects: [SIRE] }), pair);
    expect(animals.get(DAM)?.season).toEqual([{ kind: 'paired', day: D, with: SIRE }]);
    expect(animals.get(SIRE)?.season).toEqual([{ kind: 'paired', day: D, with: DAM }]);
  });
  it('what happens to the first subject does not happen to the others', () => {
    const line: Line = [D, 'animal-weighed', { weightG: 500 }, { subjects: [DAM, REX] }];
    expect(rex({}, line).weights).toEqual([]);
  });
});

describe('holds that people place', () => {
  const hold = (reason: 'vet' | 'keeper' | 'quarantine', until?: string): Line => [
    D,
    'hold-placed',
    until === undefined ? { reason } : { reason, until },
  ];
  it('stand one for each reason, the last one said', () => {
    expect(rex({}, hold('keeper', '2026-04-01'), hold('keeper', '2026-05-01')).holds).toEqual([
      { reason: 'keeper', since: D, until: '2026-05-01', words: null },
    ]);
  });
  it('are lifted by reason; a vet’s word lifts those for the vet only', () => {
    expect(rex({}, hold('keeper'), hold('vet'), [D, 'hold-lifted', { reason: 'keeper' }]).holds[0]?.reason).toBe('vet');
    expect(rex({}, hold('quarantine'), hold('vet'), [D, 'vet-cleared', { by: 'Dr Ash' }]).holds[0]?.reason).toBe(
      'quarantine',
    );
  });
});

describe('where an animal is', () => {
  it('is the last place it was moved to; leaving keeps the record', () => {
    const animal = rex({}, [D, 'animal-moved', { to: TUB }], ['2026-03-10', 'animal-left', { how: 'died' }]);
    expect(animal).toMatchObject({ place: TUB, movedOn: D, left: { day: '2026-03-10', how: 'died' } });
  });
  it('keeps when each kind was last written, but not of what was undone', () => {
    const animal = rex({}, weighed(D, 500), ['2026-03-10', 'opaque-seen', {}], undo('2026-03-10', 2));
    expect(Object.keys(animal.lastWritten).sort()).toEqual(['animal-added', 'animal-weighed', 'slip-made']);
  });
});

describe('the ledger', () => {
  const names = (): string => 'Nora';
  it('has the newest line first', () => {
    const lines = ledger(log(added(), fed('2026-03-01'), weighed(D, 500)), names, REX);
    expect(lines.map((one) => [one.words, one.chip])).toEqual([
      ['Weighed 500 g', 'weights'],
      ['Fed 1 × rat pup, 30 g', 'feeds'],
      ['Added: Python regius', 'moves'],
    ]);
  });
  it('shows what this program does not know as unknown', () => {
    const newer = { ...data(weighed(D, 5), 1), kind: 'tail-measured' };
    const [line] = ledger([value(parseEvent(newer))], names, REX);
    expect(line?.words).toBe('Unknown event “tail-measured” (kept; this program is older than it)');
    expect(line?.chip).toBe('notes');
  });

  const lines: readonly [string, string, Line][] = [
    ['Site named Fernhill', 'notes', [D, 'site-named', { name: 'Fernhill', timeZone: 'UTC' }]],
    ['Keeper Ada added as vet', 'notes', [D, 'keeper-added', { name: 'Ada', role: 'vet' }]],
    ['tub 3-14 added', 'moves', [D, 'place-added', { placeKind: 'tub', name: '3-14', walk: 1 }]],
    ['Named Rex', 'notes', [D, 'animal-named', { name: 'Rex' }]],
    ['Sexed: male', 'notes', [D, 'animal-sexed', { sex: 'male' }]],
    ['Traits set to pie/+', 'notes', [D, 'traits-set', { code: 'pie/+' }]],
    ['Flags: venomous, two-people', 'notes', [D, 'animal-flagged', { flags: ['venomous', 'two-people'] }]],
    ['Flags taken off', 'notes', [D, 'animal-flagged', { flags: [] }]],
    ['Moved to Nora', 'moves', [D, 'animal-moved', { to: TUB }]],
    ['Left the site: sold', 'moves', [D, 'animal-left', { how: 'sold' }]],
    [
      'Feed plan set: small rat every 7–9 days',
      'feeds',
      [D, 'feed-plan-set', { prey: 'rat-small', everyDays: [7, 9] }],
    ],
    ['Feed plan set', 'feeds', [D, 'feed-plan-set', { percent: [5, 8] }]],
    ['Refused 1 × rat pup, 30 g', 'feeds', refused(D)],
    [
      'Fed as planned: 2 × quail',
      'feeds',
      [D, 'prey-offered', { prey: 'quail', count: 2, outcome: 'taken', asPlanned: true }],
    ],
    ['Regurgitated', 'feeds', [D, 'regurgitation-seen', {}]],
    [
      'Hold: sore mouth until 1 Apr 2026',
      'holds',
      [D, 'hold-placed', { reason: 'vet', words: 'sore mouth', until: '2026-04-01' }],
    ],
    ['Hold: quarantine', 'holds', [D, 'hold-placed', { reason: 'quarantine' }]],
    ['Hold lifted: quarantine', 'holds', [D, 'hold-lifted', { reason: 'quarantine' }]],
    ['Vet cleared: Dr Ash — half meals', 'holds', [D, 'vet-cleared', { by: 'Dr Ash', words: 'half meals' }]],
    ['Weighed 12.5 g (confirmed)', 'weights', [D, 'animal-weighed', { weightG: 12.5, confirmed: true }]],
    ['Opaque', 'sheds', [D, 'opaque-seen', {}]],
    ['Shed, in pieces', 'sheds', [D, 'shed-seen', { whole: false }]],
    ['Shed', 'sheds', [D, 'shed-seen', {}]],
    ['Cleaned in full', 'moves', [D, 'place-cleaned', { how: 'full' }]],
    ['Spot cleaned', 'moves', [D, 'place-cleaned', { how: 'spot' }]],
    ['Water changed', 'moves', [D, 'water-changed', {}]],
    ['Cooling started', 'season', [D, 'cooling-started', {}]],
    ['Cooling ended', 'season', [D, 'cooling-ended', {}]],
    ['ate in the dark', 'notes', [D, 'note-made', { words: 'ate in the dark' }]],
    ['Paired with Nora', 'season', [D, 'pairing-started', {}, { subjects: [REX, DAM] }]],
    ['Pairing ended with Nora', 'season', [D, 'pairing-ended', {}, { subjects: [DAM, REX] }]],
    ['Lock seen', 'season', [D, 'lock-seen', {}]],
    ['Ovulation seen', 'season', [D, 'ovulation-seen', {}]],
    ['Pre-lay shed', 'season', [D, 'pre-lay-shed-seen', {}]],
    ['Laid 6 eggs and 1 slug', 'season', [D, 'clutch-laid', { clutch: CLUTCH, eggs: 6, slugs: 1 }]],
    ['Laid 1 egg', 'season', [D, 'clutch-laid', { clutch: CLUTCH, eggs: 1 }]],
    ['Egg 3 candled: good', 'season', [D, 'egg-candled', { egg: 3, state: 'good' }]],
    ['Hatched 5', 'season', [D, 'clutch-hatched', { hatched: 5 }]],
    ['Lot received: 100 × rat pup', 'notes', [D, 'lot-received', { prey: 'rat-pup', eachG: [20, 35], count: 100 }]],
    ['Thawed: 12', 'notes', [D, 'lot-used', { count: 12 }]],
    ['Thrown away: 3 (burst bag)', 'notes', [D, 'lot-wasted', { count: 3, why: 'burst bag' }]],
    ['Counted: 4 left', 'notes', [D, 'stock-counted', { count: 4 }]],
    ['Card printed, revision abcd', 'papers', [D, 'card-printed', { revision: 'abcdefgh', stock: 'a4' }]],
    ['Taken back', 'notes', undo(D, 1)],
  ];
  it.each(lines)('says “%s” (%s)', (words, chip, line) => {
    const [event] = log(line);
    expect(event && isKnown(event) && sayEvent(event, names, REX)).toBe(words);
    if (line[1] !== 'slip-made') expect(ledger(log(line), names, REX)[0]?.chip).toBe(chip);
  });
  it('carries day, instant and keeper of each line', () => {
    expect(ledger(log(weighed(D, 5)), names, REX)[0]).toMatchObject({
      day: day(D),
      at: '2026-03-09T08:00:00.000Z',
      keeper: 'Ada',
    });
  });
});
