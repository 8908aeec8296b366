import { describe, expect, it } from 'vitest';
import { readPayload } from '../../scanner/index.ts';
import {
  askedLabels,
  clutchTag,
  eggMark,
  type Facility,
  type LabelContent,
  type LabelSheet,
  layoutTest,
  lotLabel,
  type Payload,
  placeLabel,
  STAMPS,
  stampSheet,
} from '../../src/core/index.ts';
import { added, CLUTCH, DAM, day, id, type Line, LOT, RACK, refusal, SIRE, site, TUB, value } from './log.ts';

const [ROOM, LITTER, BOA] = [id(9), id(31), id(4)];
const ON = day('2026-05-10');
const candled = (egg: number, state: 'good' | 'slug' | 'lost'): Line => [
  '2026-05-09',
  'egg-candled',
  { egg, state },
  { subjects: [CLUTCH] },
];
const HOUSE: readonly Line[] = [
  ['2025-01-01', 'place-added', { placeKind: 'room', name: 'Room 1', walk: 1 }, { subjects: [ROOM] }],
  ['2025-01-01', 'place-added', { placeKind: 'rack', name: 'Rack 3', walk: 3, parent: ROOM }, { subjects: [RACK] }],
  ['2025-01-01', 'place-added', { placeKind: 'tub', name: '3-14', walk: 14, parent: RACK }, { subjects: [TUB] }],
  added({ name: 'Moth', sex: 'female' }, { subjects: [DAM] }),
  added({ name: 'Kestrel', sex: 'male' }, { subjects: [SIRE] }),
  added({ species: 'Boa imperator', name: 'Sedge', sex: 'female' }, { subjects: [BOA] }),
  ['2025-02-01', 'traits-set', { code: 'cln/cln' }, { subjects: [DAM] }],
  ['2025-02-01', 'traits-set', { code: 'cln/+' }, { subjects: [SIRE] }],
  ['2026-05-01', 'clutch-laid', { clutch: CLUTCH, eggs: 6, slugs: 1, sire: SIRE }, { subjects: [DAM, CLUTCH] }],
  ['2026-05-02', 'young-born', { clutch: LITTER, young: 11, stillborn: 2 }, { subjects: [BOA, LITTER] }],
];
const INCUBATED: Line = ['2026-05-01', 'clutch-incubated', { place: TUB, setC: 31.5 }, { subjects: [CLUTCH, TUB] }];

function tag(...lines: readonly Line[]): LabelContent {
  return tagOf(site(...HOUSE, ...lines), CLUTCH);
}
function tagOf(facility: Facility, clutch = CLUTCH): LabelContent {
  const found = facility.clutches.get(clutch);
  if (found === undefined) throw new Error('no such clutch');
  return clutchTag(facility, found, ON);
}
const said = ({ lines }: LabelContent, form: 'long' | 'medium' | 'short' = 'long') => lines.map((line) => line[form]);

describe('a clutch tag', () => {
  // Laid to hatched 58–70 d: rule BREED-CALENDAR, Ellis & Chappell 1987 (figures seen).
  it('says id, parents, species, laid, eggs, an open line for the temperature, the window and what it can hold', () => {
    const id = `${CLUTCH.slice(0, 4)}-${CLUTCH.slice(4)}`;
    expect(said(tag())).toEqual([
      id,
      '0.1 Moth × 1.0 Kestrel',
      'Python regius · ball python',
      'laid 1 May 2026',
      '6 eggs, 1 slug',
      'incubator set at _____ °C',
      'hatch 28 Jun – 10 Jul 2026',
      'usually 58–70 d: taken as 58–70 d',
      'can hold: 50 % Clown; 50 % normal het Clown',
    ]);
    expect(said(tag(), 'short')).toEqual([
      id,
      'Moth × Kestrel',
      'P. regius',
      'laid 1 May',
      '6 eggs, 1 slug',
      '_____ °C',
      'hatch 28 Jun – 10 Jul',
      'usually 58–70 d',
      '2 looks',
    ]);
  });

  it('says where it lies, at what it is kept, and how many eggs are left', () => {
    const lines = said(tag(INCUBATED, candled(2, 'lost'), candled(3, 'good')));
    expect(lines).toEqual(
      expect.arrayContaining(['Rack 3 · 3-14', 'incubator set at 31.5 °C', '6 eggs, 1 slug, 5 left']),
    );
  });

  it('says what hatched instead of the window once it has hatched', () => {
    const lines = said(tag(INCUBATED, ['2026-07-01', 'clutch-hatched', { hatched: 5 }, { subjects: [CLUTCH] }]));
    expect(lines).toContain('hatched 1 Jul 2026: 5 of 6 eggs');
    expect(lines.join()).not.toMatch(/usually|set at/);
  });

  it('says from when to when it hatched where it took several days', () => {
    const hatched = (on: string, count: number): Line => [
      on,
      'clutch-hatched',
      { hatched: count },
      { subjects: [CLUTCH] },
    ];
    const two = tag(INCUBATED, hatched('2026-07-01', 4), hatched('2026-07-02', 1));
    expect(said(two)).toContain('hatched 1 Jul 2026 to 2 Jul 2026: 5 of 6 eggs');
    expect(said(two, 'short')).toContain('hatched 1 Jul to 2 Jul: 5 of 6 eggs');
  });

  it('of a litter says young instead of eggs, and that nobody knows the sire', () => {
    const lines = said(tagOf(site(...HOUSE), LITTER));
    expect(lines).toEqual(
      expect.arrayContaining([
        '0.1 Sedge × sire not known',
        'born 2 May 2026',
        '11 young, 2 stillborn',
        'can hold: sire not known',
      ]),
    );
    expect(lines.join()).not.toMatch(/egg|°C|usually/);
  });

  it('keeps its revision while nothing on it changes, and gets another when something does', () => {
    expect(tag().revision).toBe(tag().revision);
    expect(tag(INCUBATED).revision).not.toBe(tag().revision);
  });
});

describe('a place label', () => {
  it('says its name, what it stands in from the outside in, its id and what it is', () => {
    const facility = site(...HOUSE);
    const label = [...facility.places.values()]
      .filter(({ id }) => id === TUB)
      .map((one) => placeLabel(facility, one))[0];
    expect(label && said(label)).toEqual(['3-14', 'Room 1 · Rack 3', `${TUB.slice(0, 4)}-${TUB.slice(4)}`, 'tub']);
    expect(label && said(label, 'short')[1]).toBe('Rack 3');
  });
});

describe('a lot label', () => {
  const lot = (more: Partial<Payload<'lot-received'>> = {}): LabelContent => {
    const payload = { prey: 'rat-pup', eachG: [20, 35] as [number, number], count: 1250, ...more };
    const found = site(['2026-02-01', 'lot-received', payload, { subjects: [LOT] }]).lots.get(LOT);
    if (found === undefined) throw new Error('no such lot');
    return lotLabel(found);
  };
  const written = lot({ useBy: '2026-11-30', source: 'Saltpan', topical: 'dusted with calcium' });
  it('says id, prey, last day, how much came and when, the treatment, the source and the hygiene', () => {
    expect(said(written)).toEqual([
      `${LOT.slice(0, 4)}-${LOT.slice(4)}`,
      'rat pup',
      'use by 30 Nov 2026',
      '1,250 items of 20–35 g, came 1 Feb 2026',
      'treated on the outside: dusted with calcium',
      'from Saltpan',
      'Freezing kills no germs: keep out of kitchens, wash your hands. Thawed prey is never refrozen.',
    ]);
  });
  it('keeps the hygiene and the treatment in its shortest words', () => {
    expect(said(written, 'short')).toEqual([
      `${LOT.slice(0, 4)}-${LOT.slice(4)}`,
      'rat pup',
      'use by 2026-11-30',
      '1,250 × 20–35 g, 2026-02-01',
      'dusted with calcium',
      '',
      'Wash hands. Never refreeze.',
    ]);
  });
  it('says that a last day is assumed where nobody wrote one (rule CARE-LOT: 365 days)', () => {
    expect(said(lot())).toContain('use by 1 Feb 2027 (assumed)');
    expect(said(lot(), 'short')).toContain('use by 2027-02-01 (?)');
  });
  it('opens the lot', () => {
    expect(written.code).toEqual({ says: 'id', id: LOT });
    expect(written.called).toMatch(/^label of the rat pup lot /);
  });
  it('stays the same while the lot is used up', () => {
    const used: Line = ['2026-02-05', 'lot-used', { count: 12 }, { subjects: [LOT] }];
    const got: Line = [
      '2026-02-01',
      'lot-received',
      { prey: 'rat-pup', eachG: [20, 35], count: 1250 },
      { subjects: [LOT] },
    ];
    const after = site(got, used).lots.get(LOT);
    expect(after && lotLabel(after).revision).toBe(lot().revision);
  });
});

describe('an egg mark', () => {
  const facility = site(...HOUSE);
  const mark = (egg: number, clutch = CLUTCH) => {
    const found = facility.clutches.get(clutch);
    if (found === undefined) throw new Error('no such clutch');
    return eggMark(facility, found, egg);
  };
  it('has the number and the clutch’s id, and its code opens the clutch', () => {
    const { lines, code } = value(mark(4));
    expect(lines.map(({ slot, long }) => [slot, long])).toEqual([
      ['main', '4'],
      ['id', `${CLUTCH.slice(0, 4)}-${CLUTCH.slice(4)}`],
    ]);
    expect(code).toEqual({ says: 'id', id: CLUTCH });
  });
  it.each([0, 7, 1.5, Number.NaN])('of an egg %s that was not laid is refused', (egg) => {
    expect(refusal(mark(egg))).toBe('egg-beyond');
  });
  it('of live young is refused', () => {
    expect(refusal(mark(1, LITTER))).toBe('litter-no-eggs');
  });
});

describe('codes for the wall', () => {
  it('are one for each stamp, and each reads as that stamp', () => {
    const read = stampSheet().map(({ code }) => (code.says === 'text' ? readPayload(code.text) : null));
    expect(read).toEqual(STAMPS.map(({ id }) => ({ ok: true, value: { kind: 'stamp', stamp: id.toUpperCase() } })));
  });
  it('say what is scanned next, by what the stamp needs', () => {
    const next = (id: string) => stampSheet().find((one) => one.id === id)?.lines[1]?.short;
    expect(['refused', 'weighed', 'moved', 'paired'].map(next)).toEqual([
      'then cards',
      'then card, weight',
      'then card, place',
      'then both cards',
    ]);
  });
  it('test the keyboard of a typing scanner', () => {
    const { code } = layoutTest();
    expect(code.says === 'text' && readPayload(code.text)).toEqual({ ok: true, value: { kind: 'layout-test' } });
  });
});

describe('labels that are asked for', () => {
  const lots: readonly Line[] = [
    [21, 3],
    [22, 1],
    [23, 2],
  ].map(([n = 0, month = 1]) => [
    `2026-0${month}-01`,
    'lot-received',
    { prey: 'rat-pup', eachG: [20, 35], count: 5 },
    { subjects: [id(n)] },
  ]);
  const empty: Line = ['2026-04-01', 'lot-used', { count: 5 }, { subjects: [id(23)] }];
  const facility = site(...HOUSE, candled(2, 'slug'), ...lots, empty);
  const asked = (sheet: LabelSheet, only: string | null) => {
    const { labels, left } = askedLabels(facility, sheet, only, ON);
    return [labels.map((one) => `${one.id} ${one.lines[0]?.long}`), left.map((one) => `${one.id} ${one.problem.code}`)];
  };
  const shownId = (one: string): string => `${one.slice(0, 4)}-${one.slice(4)}`;
  const shown = shownId(CLUTCH);

  it.each<[LabelSheet, string | null, readonly string[], readonly string[]]>([
    ['place', null, [`${ROOM} Room 1`, `${RACK} Rack 3`, `${TUB} 3-14`], []],
    ['place', `${TUB}, ${ROOM}`, [`${ROOM} Room 1`, `${TUB} 3-14`], []],
    ['place', `${DAM},${id(77)},x`, [], ['x not-an-id', `${DAM} id-no-place`, `${id(77)} unknown-id`]],
    ['clutch', null, [`${CLUTCH} ${shown}`], []],
    ['clutch', `${LITTER},${TUB}`, [`${LITTER} ${LITTER.slice(0, 4)}-${LITTER.slice(4)}`], [`${TUB} clutch-unknown`]],
    ['egg', null, ['1', '3', '4', '5', '6'].map((n) => `${CLUTCH} ${n}`), []],
    ['egg', `${CLUTCH}/2,${CLUTCH}/9`, [`${CLUTCH} 2`], [`${CLUTCH}/9 egg-beyond`]],
    ['egg', LITTER, [], [`${LITTER} litter-no-eggs`]],
    ['lot', null, [id(22), id(21)].map((one) => `${one} ${shownId(one)}`), []],
    ['lot', `${id(23)},${TUB}`, [`${id(23)} ${shownId(id(23))}`], [`${shownId(TUB)} lot-unknown`]],
    ['stamps', 'Refused,shed,danced', ['refused refused', 'shed shed'], ['danced stamp-unknown']],
    ['layout-test', null, ['layout-test Scanner test'], []],
  ])('%s, only %s', (sheet, only, labels, left) => {
    expect(asked(sheet, only)).toEqual([labels, left]);
  });
});
