import {
  type AnimalRecord,
  animalsInWalkingOrder,
  type Day,
  daysBetween,
  dueLine,
  type Facility,
  holdsOn,
  type Id,
  lastWeight,
  nextFeedDue,
  occupants,
  type PlaceRecord,
  sayAnimal,
  sayGrams,
  sayPlace,
  speciesOf,
  walkingOrder,
  weighEveryDays,
} from '../../core/index.ts';
import type { DotState } from '../look/StateDot.tsx';

/** Through which lens the room is looked at. */
export type RoomLens = 'due' | 'weight' | 'empty';

/** One tub, exhibit or shelf as it is drawn. */
export interface TubView {
  readonly place: PlaceRecord;
  readonly animals: readonly AnimalRecord[];
  readonly dot: DotState | 'empty';
  /** The last weights as they are said; empty where nobody lives or nobody weighed. */
  readonly weights: readonly string[];
  /** The weight is older than this size is weighed (rule CARE-WEIGH), or there is none. */
  readonly weighNow: boolean;
  readonly held: boolean;
}

/** A rack with its tubs from top to bottom; single places of a room stand in one column of their own. */
export interface RackView {
  readonly id: Id | null;
  readonly name: string;
  readonly tubs: readonly TubView[];
}

/** What holds other places, or food: drawn only if somebody lives in it after all. */
const HOLDERS = new Set(['room', 'rack', 'quarantine', 'freezer']);

/** The room as it stands: racks as columns of tubs, in walking order. */
export function roomView(facility: Facility, on: Day): readonly RackView[] {
  const lives = occupants(facility);
  const order = walkingOrder(facility);
  const parents = new Set([...facility.places.values()].map((place) => place.parent));
  const leaves = [...facility.places.values()]
    .filter((place) => !parents.has(place.id) && (!HOLDERS.has(place.placeKind) || lives.has(place.id)))
    .sort((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0));
  const racks = new Map<Id | null, TubView[]>();
  for (const place of leaves) {
    const parent = place.parent !== null && facility.places.has(place.parent) ? place.parent : null;
    const tubs = racks.get(parent) ?? [];
    tubs.push(tubView(place, lives.get(place.id) ?? [], on));
    racks.set(parent, tubs);
  }
  return [...racks].map(([id, tubs]) => ({ id, name: sayRack(facility, id), tubs }));
}

/** How many tubs each lens marks. */
export function countRoom(racks: readonly RackView[]): Record<RoomLens, number> {
  const tubs = racks.flatMap((rack) => rack.tubs);
  return {
    due: tubs.filter(({ dot }) => dot === 'due' || dot === 'overdue').length,
    weight: tubs.filter(({ weighNow }) => weighNow).length,
    empty: tubs.filter(({ dot }) => dot === 'empty').length,
  };
}

/** The animals that stand in no place: they would be missing from any drawing of the room. */
export function unplaced(facility: Facility): readonly AnimalRecord[] {
  return animalsInWalkingOrder(facility).filter(({ place }) => place === null || !facility.places.has(place));
}

/** A tub in one breath, for those who hear the room instead of seeing it. */
export function sayTub(facility: Facility, tub: TubView, on: Day): string {
  const place = sayPlace(facility, tub.place.id) ?? tub.place.name;
  const first = tub.animals[0];
  if (first === undefined) return `${place}: empty`;
  const { due } = dueLine(facility, first, on);
  const state = tub.dot === 'fed' ? 'fed today' : (due?.state ?? 'no plan');
  return `${place}: ${tub.animals.map(sayAnimal).join(', ')}, ${state}${tub.weights.map((weight) => `, ${weight}`).join('')}`;
}

function sayRack(facility: Facility, id: Id | null): string {
  return (id === null ? undefined : facility.places.get(id)?.name) ?? 'On their own';
}

function tubView(place: PlaceRecord, animals: readonly AnimalRecord[], on: Day): TubView {
  const weights = animals.map(lastWeight).filter((weight) => weight !== null);
  return {
    place,
    animals,
    dot: worstDot(animals, on),
    weights: weights.map(({ weightG }) => sayGrams(weightG)),
    weighNow: animals.some((animal) => isWeighingDue(animal, on)),
    held: animals.some((animal) => holdsOn(animal, on).length > 0),
  };
}

const WORST_FIRST: readonly DotState[] = ['vet', 'overdue', 'due', 'none', 'hold', 'fed', 'soon'];

function worstDot(animals: readonly AnimalRecord[], on: Day): TubView['dot'] {
  const dots = animals.map((animal) => dotOf(animal, on));
  return WORST_FIRST.find((dot) => dots.includes(dot)) ?? 'empty';
}

function dotOf(animal: AnimalRecord, on: Day): DotState {
  if (animal.offers.at(-1)?.day === on) return 'fed';
  const due = nextFeedDue(animal, on);
  return due.ok ? due.value.state : 'none';
}

function isWeighingDue(animal: AnimalRecord, on: Day): boolean {
  const last = lastWeight(animal);
  if (last === null) return true;
  return daysBetween(last.day, on) > weighEveryDays(speciesOf(animal.species), last.weightG);
}
