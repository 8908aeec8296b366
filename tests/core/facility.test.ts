import { describe, expect, it } from 'vitest';
import {
  animalsInWalkingOrder,
  emptyFacility,
  type Facility,
  foldFacility,
  fromSnapshot,
  historiesOf,
  type Id,
  nameOf,
  occupants,
  refold,
  SITE,
  SNAPSHOT_VERSION,
  sayPlace,
  toSnapshot,
  UNNAMED_SITE,
  walkingOrder,
} from '../../src/core/index.ts';
import { added, CLUTCH, DAM, fed, id, type Line, LOT, log, RACK, REX, SIRE, site, TUB, undo, weighed } from './log.ts';

const D = '2026-03-09';
const place = (at: Id, name: string, walk: number, parent?: Id, placeKind: 'room' | 'rack' | 'tub' = 'tub'): Line => [
  D,
  'place-added',
  parent === undefined ? { placeKind, name, walk } : { placeKind, name, walk, parent },
  { subjects: [at] },
];
const moved = (animal: Id, to: Id): Line => [D, 'animal-moved', { to }, { subjects: [animal] }];

describe('a site', () => {
  it('has no name before somebody named it, then that of the later writer', () => {
    const named = (name: string, ms: number): Line => [
      D,
      'site-named',
      { name, timeZone: 'Europe/Berlin', host: 'FERN.EXAMPLE' },
      { subjects: [], clock: [ms, 0] },
    ];
    expect(site().site).toEqual(UNNAMED_SITE);
    expect(site(named('B', 9), named('A', 5)).site).toMatchObject({
      name: 'B',
      host: 'FERN.EXAMPLE',
      safetyLine: null,
    });
  });
  it('of which nothing is known is empty', () => {
    expect(foldFacility([])).toEqual(emptyFacility());
  });
});

describe('places', () => {
  const cleaned = (on: string, how: 'spot' | 'full'): Line => [on, 'place-cleaned', { how }, { subjects: [TUB, REX] }];
  it('know what was done last', () => {
    const facility = site(place(TUB, '3-14', 1), cleaned('2026-03-10', 'full'), cleaned('2026-03-12', 'spot'), [
      '2026-03-13',
      'water-changed',
      {},
      { subjects: [TUB] },
    ]);
    expect(facility.places.get(TUB)).toMatchObject({
      cleanedOn: '2026-03-12',
      cleanedFullyOn: '2026-03-10',
      waterOn: '2026-03-13',
      parent: null,
    });
  });
  it('that nobody added are strangers', () => {
    expect(site(cleaned(D, 'full')).strangers).toEqual(
      new Map([
        [TUB, 1],
        [REX, 1],
      ]),
    );
  });
  it('are said with what they stand in, but a room is not said', () => {
    const facility = site(
      place(id(9), 'Room A', 1, undefined, 'room'),
      place(RACK, 'Rack 3', 1, id(9), 'rack'),
      place(TUB, '3-14', 1, RACK),
    );
    expect([TUB, RACK, id(9), id(77), null].map((one) => sayPlace(facility, one))).toEqual([
      'Rack 3 · 3-14',
      'Rack 3',
      'Room A',
      null,
      null,
    ]);
  });
});

describe('lots, clutches and keepers', () => {
  const laid = (clutch: Id, dam: Id): Line => [
    D,
    'clutch-laid',
    { clutch, eggs: 6, slugs: 1, sire: SIRE },
    { subjects: [dam, clutch] },
  ];
  it('a lot holds what came until somebody counts', () => {
    const got: Line = [
      D,
      'lot-received',
      { prey: 'rat-pup', eachG: [20, 35], count: 100, useBy: '2026-09-09' },
      { subjects: [LOT] },
    ];
    const counted: Line = ['2026-03-12', 'stock-counted', { count: 61 }, { subjects: [LOT] }];
    expect(site(got).lots.get(LOT)).toMatchObject({ left: 100, received: 100, useBy: '2026-09-09' });
    expect(site(got, counted).lots.get(LOT)).toMatchObject({ left: 61, received: 100 });
  });
  it('a clutch knows dam, sire, eggs and what hatched', () => {
    const hatched: Line = ['2026-05-08', 'clutch-hatched', { hatched: 5 }, { subjects: [CLUTCH] }];
    expect(site(laid(CLUTCH, DAM), hatched).clutches.get(CLUTCH)).toMatchObject({
      id: CLUTCH,
      dam: DAM,
      sire: SIRE,
      laidOn: D,
      eggs: 6,
      slugs: 1,
      hatchedOn: '2026-05-08',
      hatched: 5,
    });
  });
  it('a keeper has a name and a role', () => {
    const ada: Line = [D, 'keeper-added', { name: 'Ada', role: 'breeder' }, { subjects: [id(40)] }];
    expect(site(ada).keepers.get(id(40))).toEqual({ id: id(40), name: 'Ada', role: 'breeder' });
    expect(nameOf(site(ada), id(40))).toBe('Ada');
  });
  it('an id that damage made two things is the animal', () => {
    const facility = site(added(), place(REX, 'Tub', 1), laid(REX, DAM));
    expect([facility.animals.has(REX), facility.places.has(REX), facility.clutches.has(REX)]).toEqual([
      true,
      false,
      false,
    ]);
  });
});

describe('walking order', () => {
  const [rackA, rackB, room] = [id(50), id(51), id(52)];
  const walk = (facility: Facility): string[] =>
    [...walkingOrder(facility)].sort((a, b) => a[1] - b[1]).map(([one]) => facility.places.get(one)?.name ?? '');

  it('goes rack by rack and tub by tub, parents first', () => {
    const lines = [place(id(3), 'B1', 1, rackB), place(id(4), 'A2', 2, rackA), place(rackB, 'B', 2, room, 'rack')];
    const more = [
      place(rackA, 'A', 1, room, 'rack'),
      place(id(5), 'A1', 1, rackA),
      place(room, 'Room', 1, undefined, 'room'),
    ];
    expect(walk(site(...lines, ...more))).toEqual(['Room', 'A', 'A1', 'A2', 'B', 'B1']);
  });
  it('does not jump between two racks of the same number', () => {
    const tubs = [1, 2, 3].flatMap((n) => [place(id(60 + n), `A${n}`, n, rackA), place(id(70 + n), `B${n}`, n, rackB)]);
    const order = walk(site(place(rackA, 'A', 1, undefined, 'rack'), place(rackB, 'B', 1, undefined, 'rack'), ...tubs));
    const racks = order.map((name) => name[0]).join('');
    expect(['AAAABBBB', 'BBBBAAAA']).toContain(racks);
  });
  it('ends in a ring of places, which only damage can make', () => {
    expect(walk(site(place(rackA, 'A', 1, rackB), place(rackB, 'B', 2, rackA)))).toHaveLength(2);
  });
  it('puts animals without a place last and leaves out those that left', () => {
    const facility = site(
      place(TUB, 'T', 1),
      added({}, { subjects: [DAM] }),
      added({}, { subjects: [REX] }),
      added({}, { subjects: [SIRE] }),
      moved(REX, TUB),
      [D, 'animal-left', { how: 'sold' }, { subjects: [SIRE] }],
    );
    expect(animalsInWalkingOrder(facility).map((one) => one.id)).toEqual([REX, DAM]);
    expect(
      occupants(facility)
        .get(TUB)
        ?.map((one) => one.id),
    ).toEqual([REX]);
    expect(occupants(facility).size).toBe(1);
  });
});

describe('folding one subject again', () => {
  const lines = [added(), added({}, { subjects: [DAM] }), place(TUB, 'T', 1), weighed(D, 500), fed(D)];
  it('gives what folding the whole log gives', () => {
    const before = log(...lines);
    const after = log(...lines, weighed('2026-03-10', 520), undo('2026-03-11', 3));
    expect(refold(foldFacility(before), REX, historiesOf(after).get(REX) ?? [])).toEqual(foldFacility(after));
  });
  it('does so for the site, and for a subject that an undo makes a stranger', () => {
    const named: Line = [D, 'site-named', { name: 'Fernhill', timeZone: 'UTC' }, { subjects: [] }];
    const after = log(...lines, named, undo(D, 0, { subjects: [] }));
    const histories = historiesOf(after);
    const once = refold(foldFacility(log(...lines)), SITE, histories.get(SITE) ?? []);
    expect(once.site.name).toBe('Fernhill');
    expect(refold(once, REX, histories.get(REX) ?? [])).toEqual(foldFacility(after));
  });
  it('files a slip with what it corrects, and a slip of that slip as well', () => {
    const events = log(added(), weighed(D, 500), undo(D, 1, { subjects: [] }), undo(D, 2, { subjects: [TUB] }));
    expect(historiesOf(events).get(REX)).toHaveLength(4);
  });
});

describe('a snapshot', () => {
  const facility = site(
    [D, 'site-named', { name: 'Fernhill', timeZone: 'UTC' }, { subjects: [] }],
    added({ name: 'Rex' }),
    place(TUB, 'T', 1),
    moved(REX, TUB),
    weighed(D, 500),
    fed(D),
    [D, 'clutch-laid', { clutch: CLUTCH, eggs: 6 }, { subjects: [DAM, CLUTCH] }],
    [D, 'lot-received', { prey: 'rat-pup', eachG: [20, 35], count: 9 }, { subjects: [LOT] }],
    [D, 'keeper-added', { name: 'Ada', role: 'keeper' }, { subjects: [id(40)] }],
  );
  it('comes back as it was', () => {
    expect(fromSnapshot(toSnapshot(facility))).toEqual(facility);
    expect(facility.strangers.get(DAM)).toBe(1);
  });
  it('of another version, or other text, is left: the log is folded again', () => {
    const other = toSnapshot(facility).replace(`"version":${SNAPSHOT_VERSION}`, '"version":0');
    for (const text of [
      other,
      '',
      'null',
      '5',
      '{}',
      '[]',
      `{"version":${SNAPSHOT_VERSION}}`,
      toSnapshot(facility).slice(0, -9),
    ])
      expect(fromSnapshot(text), text.slice(0, 20)).toBeNull();
  });
});
