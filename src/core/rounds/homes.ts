import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import type { RoundTask } from '../events/index.ts';
import { type Facility, occupants, type PlaceRecord, sayPlace, walkingOrder } from '../facility/index.ts';
import type { Id } from '../ids.ts';

/** A place that somebody lives in, or that has a pool: what a round stops at. */
export interface Home {
  readonly place: PlaceRecord;
  readonly animals: readonly AnimalRecord[];
  /** The rack, exhibit or room under whose name it is walked. */
  readonly group: Id;
}

/** Every home in walking order; within a place only those that stand in it. */
export function homesOf(facility: Facility, within: Id | null = null): readonly Home[] {
  const order = walkingOrder(facility);
  const lives = occupants(facility);
  return [...facility.places.values()]
    .filter((place) => lives.has(place.id) || place.pool !== null)
    .filter((place) => within === null || standsIn(facility, place.id, within))
    .sort((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0))
    .map((place) => ({ place, animals: lives.get(place.id) ?? [], group: groupOf(facility, place.id) }));
}

/** One place as a home, whoever lives there; null for a place that is not known. */
export function homeAt(facility: Facility, id: Id): Home | null {
  const place = facility.places.get(id);
  if (place === undefined) return null;
  const animals = [...facility.animals.values()].filter((animal) => animal.place === id && animal.left === null);
  return { place, animals, group: groupOf(facility, id) };
}

/** True where a task is done at a home at all: at one with a pool, or at one that somebody lives in. */
export function concerns(task: RoundTask, { place, animals }: Pick<Home, 'place' | 'animals'>): boolean {
  return task.startsWith('pool-') ? place.pool !== null : animals.length > 0;
}

/** What a place stands in, if that is known; else the place itself. */
export function groupOf({ places }: Facility, place: Id): Id {
  const parent = places.get(place)?.parent ?? null;
  return parent !== null && places.has(parent) ? parent : place;
}

/** True where something is in a place, or in what stands in it; a ring of places, which only damage can make, ends the search. */
export function standsIn(facility: Facility, at: Id | null, place: Id): boolean {
  return at !== null && wayUp(facility, at).some((one) => one.id === place);
}

/** A place and all that it stands in, from the inside out. */
export function wayUp({ places }: Facility, from: Id): readonly PlaceRecord[] {
  const way: PlaceRecord[] = [];
  let here = places.get(from);
  while (here !== undefined && !way.includes(here)) {
    way.push(here);
    here = here.parent === null ? undefined : places.get(here.parent);
  }
  return way;
}

/** `Moss and Fern`, `3-14` where nobody lives, `Moss, Fern and 2 more` of many. */
export function sayHome({ place, animals }: Pick<Home, 'place' | 'animals'>): string {
  const names = animals.map(sayAnimal);
  if (names.length === 0) return place.name;
  if (names.length > 3) return `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
  const last = names.at(-1) ?? '';
  return names.length === 1 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}

/** `Rack 3`, or what else a group is called. */
export function sayGroup(facility: Facility, group: Id | null): string {
  return group === null ? 'Without a place' : (sayPlace(facility, group) ?? group);
}
