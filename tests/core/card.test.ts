import { describe, expect, it } from 'vitest';
import {
  CARD_SLOTS,
  type CardContent,
  type CardFlag,
  type CardSlot,
  cardContent,
  isCardStale,
  type Payload,
} from '../../src/core/index.ts';
import { added, CLUTCH, DAM, day, fed, type Line, RACK, REX, SIRE, site, TUB, weighed } from './log.ts';

const ON = day('2026-03-20');
const FULL: readonly Line[] = [
  added({ name: 'Rex', number: 'R-104', sex: 'female', hatchedOn: '2022-06-01', acquiredOn: '2023-01-05' }),
  added({ name: 'Otto' }, { subjects: [SIRE] }),
  ['2025-01-01', 'place-added', { placeKind: 'rack', name: 'Rack 3', walk: 3 }, { subjects: [RACK] }],
  ['2025-01-01', 'place-added', { placeKind: 'tub', name: '3-14', walk: 14, parent: RACK }, { subjects: [TUB] }],
  ['2025-01-02', 'animal-moved', { to: TUB }],
  ['2025-01-02', 'traits-set', { code: 'pie/+; [cln 2:3]/+', words: 'het piebald, 66 % possible het clown' }],
  ['2025-12-01', 'pairing-started', {}, { subjects: [REX, SIRE] }],
  weighed('2026-02-10', 1420),
  weighed('2026-03-10', 1480),
  fed('2026-03-01', 80),
];

function card(lines: readonly Line[] = FULL, on = ON): CardContent {
  const facility = site(...lines);
  const animal = facility.animals.get(REX);
  if (animal === undefined) throw new Error('no animal');
  return cardContent(facility, animal, on);
}
const forms = (slot: CardSlot, lines: readonly Line[] = FULL): readonly string[] =>
  card(lines).lines.flatMap((line) => (line.slot === slot ? [line.long, line.medium, line.short] : []));
const flags = (...lines: readonly Line[]): readonly CardFlag['kind'][] =>
  card([...FULL, ...lines]).flags.map((flag) => flag.kind);

describe('the lines of a card', () => {
  const said: readonly [CardSlot, string, string, string][] = [
    ['name', 'Rex · R-104', 'Rex', 'R-104'],
    ['sex', '0.1', '0.1', '0.1'],
    ['species', 'Python regius · ball python', 'Python regius', 'P. regius'],
    ['traitCode', 'pie/+; [cln 2:3]/+', 'pie/+; [cln 2:3]/+', 'pie/+; [cln 2:3]/+'],
    ['traitWords', 'het Piebald, 66 % possible het Clown', 'het Piebald 66 % ph Clown', 'het pie 66 % ph cln'],
    ['dates', 'hatched 1 Jun 2022 · acquired 5 Jan 2023', 'hatched 1 Jun 2022', 'h. 2022-06-01'],
    ['weight', '1,480 g on 10 Mar 2026 (+60 g since 10 Feb 2026)', '1,480 g on 10 Mar 2026', '1,480 g 2026-03-10'],
    ['due', 'Due Sun 15 Mar 2026', 'Due 15 Mar 2026', 'Due 2026-03-15'],
    ['pairings', 'paired Otto 1 Dec', 'paired 1 Dec', 'paired 1 Dec'],
    ['place', 'Rack 3 · 3-14', '3-14', '3-14'],
  ];
  it.each(said)('%s: %s', (slot, ...three) => {
    expect(forms(slot)).toEqual(three);
  });
  it('feed says count, prey, grams and days', () => {
    const own: Line = ['2026-03-02', 'feed-plan-set', { prey: 'rat-pup', count: 2, everyDays: [14, 21] }];
    expect(forms('feed', [...FULL, own])).toEqual([
      '2 × rat pup, 20–35 g each, every 14–21 d',
      '2 × rat pup, every 14–21 d',
      '2 × rat pup',
    ]);
  });
  it('stand in reading order, each at most once, and none is empty', () => {
    const slots = card().lines.map((line) => line.slot);
    expect(slots).toEqual(CARD_SLOTS.filter((slot) => slots.includes(slot)));
    for (const { long, medium, short } of card().lines)
      expect(Math.min(long.length, medium.length, short.length)).toBeGreaterThan(0);
  });
  it('carry the id as people read it', () => {
    expect(card()).toMatchObject({ id: REX, display: `${REX.slice(0, 4)}-${REX.slice(4)}` });
  });
});

describe('the card of an animal of which little is known', () => {
  const bare = [added({ species: 'Morelia' })];
  it('says what is missing', () => {
    expect(forms('weight', bare)).toEqual(['No weight yet: weigh first', 'No weight yet', 'Weigh!']);
    expect(forms('due', bare)[0]).toBe('No feed plan: set one');
    expect(forms('feed', bare)[2]).toBe('no plan');
    expect(forms('species', bare)).toEqual(['Morelia', 'Morelia', 'Morelia']);
    expect(forms('name', bare)[0]).toBe(`${REX.slice(0, 4)}-${REX.slice(4)}`);
  });
  it('leaves out lines of which nothing is known', () => {
    expect(card(bare).lines.map((line) => line.slot)).toEqual(['name', 'sex', 'species', 'weight', 'feed', 'due']);
  });
  it('shortens a species that is not in the list as people do', () => {
    expect(forms('species', [added({ species: 'Lampropeltis getula nigra' })])[2]).toBe('L. getula nigra');
  });
});

describe('the flags of a card', () => {
  const cases: readonly [string, Line, CardFlag['kind'][]][] = [
    ['regurgitation', ['2026-03-15', 'regurgitation-seen', {}], ['hold']],
    ['opaque', ['2026-03-15', 'opaque-seen', {}], ['hold']],
    ['treatment', ['2026-03-15', 'hold-placed', { reason: 'treatment' }], ['hold', 'treatment']],
    ['quarantine', ['2026-03-15', 'hold-placed', { reason: 'quarantine' }], ['quarantine']],
    ['the vet’s hold', ['2026-03-15', 'hold-placed', { reason: 'vet' }], ['vet']],
    [
      'two people',
      ['2026-03-15', 'animal-flagged', { flags: ['two-people', 'venomous', 'not-for-sale'] }],
      ['two-people', 'venomous', 'not-for-sale'],
    ],
    ['a loss of 10 %', weighed('2026-03-15', 1332), ['weight']],
    ['a loss of 9 %', weighed('2026-03-15', 1347), []],
  ];
  it.each(cases)('%s', (_, line, kinds) => {
    expect(flags(line)).toEqual(kinds);
  });
  it('a hold without an end says so on the due line', () => {
    const treated: Line = ['2026-03-15', 'hold-placed', { reason: 'treatment' }];
    expect(forms('due', [...FULL, treated])).toEqual(['Not to be fed until further word', 'Do not feed', 'HOLD']);
    const vet: Line = ['2026-03-15', 'hold-placed', { reason: 'vet' }];
    expect(forms('due', [...FULL, vet])[2]).toBe('VET');
  });
  it('a venomous animal carries the site’s own safety line', () => {
    const named: Payload<'site-named'> = { name: 'Fernhill', timeZone: 'UTC', safetyLine: 'Call 2 keepers' };
    const lines: readonly Line[] = [
      ['2025-01-01', 'site-named', named, { subjects: [] }],
      ['2026-03-15', 'animal-flagged', { flags: ['venomous'] }],
    ];
    expect(card([...FULL, ...lines]).flags[0]?.long).toBe('Call 2 keepers');
  });
  it('a hold is said with its day once', () => {
    const [flag] = card([...FULL, ['2026-03-15', 'regurgitation-seen', {}]]).flags;
    expect(flag?.long).toBe('Hold: rest after regurgitating on 15 Mar 2026 until 25 Mar 2026');
    expect(flag?.medium).toBe('Hold until 25 Mar 2026');
  });
});

describe('the season on a card', () => {
  it('is the last six marks', () => {
    const locks = Array.from(
      { length: 8 },
      (_, n): Line => [`2026-02-0${n + 1}`, 'lock-seen', {}, { subjects: [REX, SIRE] }],
    );
    expect(forms('pairings', [...FULL, ...locks])[1]).toBe([3, 4, 5, 6, 7, 8].map((n) => `lock ${n} Feb`).join(' · '));
  });
  it('of the year before is history', () => {
    const facility = site(...FULL);
    const animal = facility.animals.get(REX);
    const slots = animal && cardContent(facility, animal, day('2026-12-01')).lines.map((line) => line.slot);
    expect(slots).not.toContain('pairings');
  });
  it('names an unknown mate by its id', () => {
    const laid: Line = [
      '2026-03-02',
      'clutch-laid',
      { clutch: CLUTCH, eggs: 6, sire: DAM },
      { subjects: [REX, CLUTCH] },
    ];
    expect(forms('pairings', [...FULL, laid])[0]).toContain(`laid ${DAM.slice(0, 4)}-${DAM.slice(4)} 2 Mar`);
  });
});

describe('the revision of a card', () => {
  const printed = (revision: string): Line => ['2026-03-18', 'card-printed', { revision, stock: 'a4' }];
  const stale = (lines: readonly Line[], on = ON): boolean => {
    const facility = site(...lines);
    const animal = facility.animals.get(REX);
    if (animal === undefined) throw new Error('no animal');
    return isCardStale(animal, cardContent(facility, animal, on));
  };
  it('does not change by printing, nor by the days that pass', () => {
    expect(card([...FULL, printed('x')]).revision).toBe(card().revision);
    expect(card(FULL, day('2026-03-16')).revision).toBe(card().revision);
  });
  it('changes after a feed, a weighing, a move and a name', () => {
    const changes: readonly Line[] = [
      fed('2026-03-19', 80),
      weighed('2026-03-19', 1490),
      ['2026-03-19', 'animal-moved', { to: RACK }],
      ['2026-03-19', 'animal-named', { name: 'Regina' }],
    ];
    const revisions = changes.map((line) => card([...FULL, line]).revision);
    expect(new Set([card().revision, ...revisions]).size).toBe(5);
  });
  it('does not change by water, notes and another animal’s meal', () => {
    const others: readonly Line[] = [
      ['2026-03-19', 'water-changed', {}, { subjects: [TUB, REX] }],
      ['2026-03-19', 'note-made', { words: 'calm' }],
      fed('2026-03-19', 80, { subjects: [SIRE] }),
    ];
    expect(card([...FULL, ...others]).revision).toBe(card().revision);
  });
  it('that was printed is fresh; none or another one is stale', () => {
    const now = printed(card().revision);
    expect([stale(FULL), stale([...FULL, printed('other')]), stale([...FULL, now])]).toEqual([true, true, false]);
    expect(stale([...FULL, now, fed('2026-03-19', 80)])).toBe(true);
  });
});
