import {
  type AnimalRecord,
  animalsInWalkingOrder,
  type CardContent,
  cardContent,
  type Day,
  type Facility,
  type Id,
  isCardStale,
  type Problem,
  parseId,
  problem,
  sayId,
  walkingOrder,
} from '../../core/index.ts';

/** Which cards are to be printed. */
export type Choice = 'stale' | 'all' | 'rack' | 'only';

/** One card that could be printed. */
export interface PressCard {
  readonly animal: AnimalRecord;
  readonly content: CardContent;
  readonly stale: boolean;
  readonly rack: Id | null;
}

/** A rack or exhibit with how many cards hang there. */
export interface PressRack {
  readonly id: Id;
  readonly name: string;
  readonly count: number;
}

/** The cards that an address asked for, and those of them that cannot be. */
export interface Asked {
  readonly ids: ReadonlySet<Id>;
  readonly problems: readonly Problem[];
}

/** Every animal's card as it would be printed today, in walking order. */
export function pressCards(facility: Facility, today: Day): readonly PressCard[] {
  return animalsInWalkingOrder(facility).map((animal) => {
    const content = cardContent(facility, animal, today);
    return { animal, content, stale: isCardStale(animal, content), rack: rackOf(facility, animal) };
  });
}

/** The racks that cards hang on, in walking order. */
export function pressRacks(facility: Facility, cards: readonly PressCard[]): readonly PressRack[] {
  const counts = new Map<Id, number>();
  for (const { rack } of cards) if (rack !== null) counts.set(rack, (counts.get(rack) ?? 0) + 1);
  const order = walkingOrder(facility);
  return [...counts]
    .sort(([a], [b]) => (order.get(a) ?? 0) - (order.get(b) ?? 0))
    .map(([id, count]) => ({ id, name: facility.places.get(id)?.name ?? sayId(id), count }));
}

/** The cards of a choice, in walking order. */
export function chosenCards(
  cards: readonly PressCard[],
  choice: Choice,
  { rack, asked }: { readonly rack: Id | null; readonly asked: Asked },
): readonly PressCard[] {
  switch (choice) {
    case 'stale':
      return cards.filter((card) => card.stale);
    case 'all':
      return cards;
    case 'rack':
      return cards.filter((card) => card.rack === rack && rack !== null);
    case 'only':
      return cards.filter((card) => asked.ids.has(card.animal.id));
    default:
      return choice satisfies never;
  }
}

/** Reads `?only=ID,ID` of the address. Problems: `not-an-id`, `check-failed`, `unknown-id`, `animal-gone`. */
export function askedFor(facility: Facility, only: string | undefined): Asked {
  const ids = new Set<Id>();
  const problems: Problem[] = [];
  for (const text of (only ?? '').split(',').filter((part) => part.trim() !== '')) {
    const read = parseId(text);
    if (!read.ok) {
      problems.push(read.problem);
      continue;
    }
    const animal = facility.animals.get(read.value.id);
    if (animal === undefined) problems.push(problem('unknown-id', { id: sayId(read.value.id) }));
    else if (animal.left !== null)
      problems.push(problem('animal-gone', { day: animal.left.day, how: animal.left.how }));
    else ids.add(animal.id);
  }
  return { ids, problems };
}

function rackOf(facility: Facility, animal: AnimalRecord): Id | null {
  const place = animal.place === null ? undefined : facility.places.get(animal.place);
  if (place === undefined) return null;
  return place.parent !== null && facility.places.has(place.parent) ? place.parent : place.id;
}
