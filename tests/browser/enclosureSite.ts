import type { Id, LogEvent } from '../../src/core/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { ago, type Tame } from './smallSite.ts';

const [ROOM, RACK, EXHIBIT] = [idOf(1), idOf(2), idOf(3)];
const TUBS = [4, 5, 6].map(idOf);
const [FIRST_TUB, SECOND_TUB] = [idOf(4), idOf(5)];
const named = (n: number, name: string): Tame => ({ id: idOf(n), name, display: idOf(n) });

export { EXHIBIT, FIRST_TUB, RACK, SECOND_TUB };
/** A ball python of 1.30 m in the first tub, and one that nobody measured in the second. */
export const AMBER = named(11, 'Amber');
export const FLINT = named(12, 'Flint');
/** A boa and a carpet python share an exhibit. */
export const LOAM = named(13, 'Loam');
export const REED = named(14, 'Reed');

type Rows = Parameters<typeof eventsOf>[0];

/** A rack of three tubs and an exhibit; the first tub and the exhibit are measured. */
export function enclosureLog(): LogEvent[] {
  const lives = (animal: Tame, species: string, to: Id): Rows[number][] => [
    [ago(80), 'animal-added', [animal.id], { species, name: animal.name, sex: 'female' }],
    [ago(79), 'animal-moved', [animal.id], { to }],
  ];
  const rows: Rows[number][] = [
    [ago(90), 'site-named', [], { name: 'Space House', timeZone: 'Etc/UTC' }],
    [ago(90), 'place-added', [ROOM], { placeKind: 'room', name: 'Room 1', walk: 1 }],
    [ago(90), 'place-added', [RACK], { placeKind: 'rack', name: 'Rack 1', parent: ROOM, walk: 1 }],
    [ago(90), 'place-added', [EXHIBIT], { placeKind: 'exhibit', name: 'Exhibit Fen', parent: ROOM, walk: 2 }],
    ...TUBS.map((tub, at): Rows[number] => [
      ago(90),
      'place-added',
      [tub],
      { placeKind: 'tub', name: `1-0${at + 1}`, parent: RACK, walk: at + 1 },
    ]),
    [
      ago(85),
      'place-set',
      [FIRST_TUB],
      { name: '1-01', parent: RACK, walk: 1, sizeMm: { length: 900, width: 450, height: 300 } },
    ],
    [
      ago(85),
      'place-set',
      [EXHIBIT],
      { name: 'Exhibit Fen', parent: ROOM, walk: 2, sizeMm: { length: 2000, width: 1000, height: 900 } },
    ],
    ...lives(AMBER, 'Python regius', FIRST_TUB),
    ...lives(FLINT, 'Python regius', SECOND_TUB),
    ...lives(LOAM, 'Boa imperator', EXHIBIT),
    ...lives(REED, 'Morelia spilota', EXHIBIT),
    [ago(30), 'animal-measured', [AMBER.id], { lengthMm: 1300, of: 'total' }],
    [ago(30), 'animal-measured', [LOAM.id], { lengthMm: 1600, of: 'total', guessed: true }],
    [ago(30), 'animal-measured', [REED.id], { lengthMm: 1200, of: 'snout-vent' }],
  ];
  return eventsOf([...rows].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}
