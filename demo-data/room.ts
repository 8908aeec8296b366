import type { Id, Payload } from '../src/core/index.ts';
import type { Log } from './log.ts';
import { ORLA } from './staff.ts';

/** What a home is made for. */
export type HomeSize = 'nursery' | 'middle' | 'large' | 'exhibit' | 'quarantine';

/** A place where an animal can live, in walking order. */
export interface Home {
  readonly id: Id;
  readonly size: HomeSize;
  /** The number of its rack in the walk; keepers feed rack by rack. */
  readonly rack: number;
  readonly walk: number;
  /** Who lives in it. */
  readonly lodgers: Set<Id>;
}

/** A rack, or the row of exhibits, with its homes. */
export interface Rack {
  readonly id: Id;
  readonly number: number;
  readonly homes: readonly Home[];
}

/** The whole house. */
export interface Room {
  readonly racks: readonly Rack[];
  readonly homes: readonly Home[];
  readonly shelves: readonly Id[];
}

interface RackPlan {
  readonly room: string;
  readonly racks: number;
  readonly rows: number;
  readonly columns: number;
  readonly size: HomeSize;
  readonly lengthMm: number;
}

const PLAN: readonly RackPlan[] = [
  { room: 'Long Room', racks: 5, rows: 10, columns: 3, size: 'large', lengthMm: 900 },
  { room: 'Mill Room', racks: 5, rows: 10, columns: 5, size: 'middle', lengthMm: 600 },
  { room: 'Nursery', racks: 4, rows: 12, columns: 5, size: 'nursery', lengthMm: 350 },
];
const EXHIBITS = ['Heron', 'Bittern', 'Teal', 'Snipe', 'Curlew', 'Lapwing'];
const QUARANTINE_TUBS = 14;
const SHELVES = 4;

/** Adds every place, in the order of the walk: the sick and the new come last. */
export function build(log: Log): Room {
  log.round(8, 30, ORLA);
  const racks: Rack[] = [buildExhibits(log, 0)];
  for (const [at, plan] of PLAN.entries()) racks.push(...buildRacks(log, plan, at + 2, racks.length));
  const shelves = buildHatchery(log);
  racks.push(buildQuarantine(log, racks.length));
  return { racks, homes: racks.flatMap((rack) => rack.homes), shelves };
}

/** The first empty home of the wanted sizes, tried in that order; null if the house is full. */
export function freeHome(room: Room, sizes: readonly HomeSize[]): Home | null {
  for (const size of sizes) {
    const free = room.homes.find((home) => home.size === size && home.lodgers.size === 0);
    if (free !== undefined) return free;
  }
  return null;
}

function buildExhibits(log: Log, number: number): Rack {
  const id = addPlace(log, { placeKind: 'room', name: 'Front Hall', walk: 1 });
  const homes = EXHIBITS.map((name, at) => {
    const walk = at + 1;
    const home = addPlace(log, { placeKind: 'exhibit', name: `Exhibit ${name}`, parent: id, walk, lengthMm: 1800 });
    return aHome(home, 'exhibit', number, walk);
  });
  return { id, number, homes };
}

function buildRacks(log: Log, plan: RackPlan, walk: number, first: number): Rack[] {
  const room = addPlace(log, { placeKind: 'room', name: plan.room, walk });
  return Array.from({ length: plan.racks }, (_, at) => {
    const number = first + at;
    const name = `Rack ${number}`;
    const id = addPlace(log, { placeKind: 'rack', name, parent: room, walk: at + 1 });
    return { id, number, homes: buildTubs(log, plan, id, number) };
  });
}

function buildTubs(log: Log, plan: RackPlan, rack: Id, number: number): Home[] {
  return Array.from({ length: plan.rows * plan.columns }, (_, at) => {
    const name = `${number}-${String(at + 1).padStart(2, '0')}`;
    const tub = { placeKind: 'tub', name, parent: rack, walk: at + 1, lengthMm: plan.lengthMm } as const;
    return aHome(addPlace(log, tub), plan.size, number, at + 1);
  });
}

function buildHatchery(log: Log): Id[] {
  const room = addPlace(log, { placeKind: 'room', name: 'Hatchery', walk: 5 });
  const incubator = addPlace(log, { placeKind: 'incubator', name: 'Incubator A', parent: room, walk: 1 });
  addPlace(log, { placeKind: 'freezer', name: 'Feeder freezer', parent: room, walk: 2 });
  return Array.from({ length: SHELVES }, (_, at) =>
    addPlace(log, { placeKind: 'shelf', name: `Shelf ${at + 1}`, parent: incubator, walk: at + 1 }),
  );
}

function buildQuarantine(log: Log, number: number): Rack {
  const room = addPlace(log, { placeKind: 'room', name: 'Back Room', walk: 6 });
  const id = addPlace(log, { placeKind: 'quarantine', name: 'Quarantine rack', parent: room, walk: 1 });
  const homes = Array.from({ length: QUARANTINE_TUBS }, (_, at) => {
    const name = `Q-${String(at + 1).padStart(2, '0')}`;
    const tub = addPlace(log, { placeKind: 'tub', name, parent: id, walk: at + 1, lengthMm: 700 });
    return aHome(tub, 'quarantine', number, at + 1);
  });
  return { id, number, homes };
}

function aHome(id: Id, size: HomeSize, rack: number, walk: number): Home {
  return { id, size, rack, walk: rack * 1000 + walk, lodgers: new Set() };
}

function addPlace(log: Log, place: Payload<'place-added'>): Id {
  const id = log.mint();
  log.write('place-added', [id], place);
  return id;
}
