import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { type Id, sayId } from '../ids.ts';
import { sayPrey } from '../stock/index.ts';
import type { Facility } from './facility.ts';
import type { PlaceRecord } from './places.ts';

/** Deeper than any room, rack and tub; it also ends the walk up a ring of places, which only damage can make. */
const DEEPEST = 8;

/** Every place's number in walking order: parents before what stands in them, neighbours by their walk. */
export function walkingOrder(facility: Facility): ReadonlyMap<Id, number> {
  const keyed = [...facility.places.values()].map((place) => ({ id: place.id, key: walkKey(facility, place) }));
  keyed.sort((a, b) => compareKeys(a.key, b.key));
  return new Map(keyed.map((one, at) => [one.id, at]));
}

/** The animals that are here, in walking order; those without a place come last, by id. */
export function animalsInWalkingOrder(facility: Facility): readonly AnimalRecord[] {
  const order = walkingOrder(facility);
  const at = (animal: AnimalRecord): number =>
    animal.place === null ? order.size : (order.get(animal.place) ?? order.size);
  const here = [...facility.animals.values()].filter((animal) => animal.left === null);
  const keyed = here.map((animal) => ({ animal, at: at(animal) }));
  return keyed.sort((a, b) => a.at - b.at || (a.animal.id < b.animal.id ? -1 : 1)).map((one) => one.animal);
}

/** `Rack 3 · 3-14`, or the bare name for a place that stands in nothing; null for no or an unknown place. */
export function sayPlace(facility: Facility, id: Id | null): string | null {
  const place = id === null ? undefined : facility.places.get(id);
  if (place === undefined) return null;
  const parent = place.parent === null ? undefined : facility.places.get(place.parent);
  return parent === undefined || parent.placeKind === 'room' ? place.name : `${parent.name} · ${place.name}`;
}

/** What any id of this site is called. */
export function nameOf(facility: Facility, id: Id): string {
  const animal = facility.animals.get(id);
  if (animal !== undefined) return sayAnimal(animal);
  const item = facility.items.get(id);
  if (item !== undefined) return item.kind === 'shed' ? `shed of ${item.name}` : item.name;
  const lot = facility.lots.get(id);
  if (lot !== undefined) return `${sayPrey(lot.prey)} lot ${sayId(id)}`;
  return sayPlace(facility, id) ?? facility.keepers.get(id)?.name ?? `${id.slice(0, 4)}-${id.slice(4)}`;
}

/** Whether a place is kept apart for quarantine: it, or anything that it stands in, is a quarantine place. */
export function isQuarantinePlace({ places }: Pick<Facility, 'places'>, id: Id | null): boolean {
  let above = id;
  for (let deep = 0; above !== null && deep < DEEPEST; deep++) {
    const place: PlaceRecord | undefined = places.get(above);
    if (place?.placeKind === 'quarantine') return true;
    above = place?.parent ?? null;
  }
  return false;
}

/** Who lives in each place, by place. */
export function occupants(facility: Facility): ReadonlyMap<Id, readonly AnimalRecord[]> {
  const by = new Map<Id, AnimalRecord[]>();
  for (const animal of facility.animals.values()) {
    if (animal.place === null || animal.left !== null) continue;
    const list = by.get(animal.place);
    if (list === undefined) by.set(animal.place, [animal]);
    else list.push(animal);
  }
  return by;
}

/** A place from the outside in, each step by its walk and then its id: two racks of one number do not mix their tubs. */
type WalkKey = readonly (readonly [walk: number, id: Id])[];

function walkKey(facility: Facility, place: PlaceRecord): WalkKey {
  const key: [number, Id][] = [[place.walk, place.id]];
  let above = place.parent;
  while (above !== null && key.length < DEEPEST) {
    const parent = facility.places.get(above);
    if (parent === undefined) break;
    key.unshift([parent.walk, parent.id]);
    above = parent.parent;
  }
  return key;
}

function compareKeys(a: WalkKey, b: WalkKey): number {
  for (let at = 0; at < Math.min(a.length, b.length); at++) {
    const [mine, other] = [a[at], b[at]];
    if (mine === undefined || other === undefined) break;
    if (mine[0] !== other[0]) return mine[0] - other[0];
    if (mine[1] !== other[1]) return mine[1] < other[1] ? -1 : 1;
  }
  return a.length - b.length;
}
