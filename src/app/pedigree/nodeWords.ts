import { type AnimalRecord, cardTraits, type Facility, type Id, sayAnimal, sayId } from '../../core/index.ts';
import type { Spot } from './layout.ts';
import { sayWay } from './walk.ts';

/** What the drawing says of one animal. */
export interface NodeWords {
  readonly animal: AnimalRecord;
  readonly name: string;
  readonly id: string;
  /** Trait words that fit a narrow line, and in full; empty where nobody wrote any. */
  readonly traits: string;
  readonly traitsLong: string;
  /** `2021`, `hatching day unknown` is left out here. */
  readonly year: string | null;
  /** How it left, if it did. */
  readonly gone: string | null;
}

export function nodeWords(facility: Facility, id: string | null): NodeWords | null {
  const animal = id === null ? undefined : facility.animals.get(id as Id);
  if (animal === undefined) return null;
  const traits = cardTraits(facility, animal);
  return {
    animal,
    name: sayAnimal(animal),
    id: sayId(animal.id),
    traits: traits?.words?.medium ?? traits?.code ?? '',
    traitsLong: traits?.words?.long ?? traits?.code ?? '',
    year: animal.hatchedOn?.slice(0, 4) ?? null,
    gone: animal.left?.how ?? null,
  };
}

/** Everything a spot shows, in words: for readers of the page, and the list form. */
export function saySpot(spot: Spot, words: NodeWords | null): string {
  const who = sayWay(spot.way);
  if (words === null) return `${who}: unknown`;
  const { animal, name, year, gone, traitsLong } = words;
  const facts = [
    animal.sex,
    year === null ? null : `hatched ${year}`,
    traitsLong || null,
    gone,
    sayAgain(spot),
    sayAbove(spot),
  ];
  return `${who}: ${[name, ...facts].filter((one) => one !== null).join(', ')}`;
}

/** That an animal stands here a second time; null where it does not. */
export function sayAgain({ is, mark }: Spot): string | null {
  if (is === 'ring') return `again ${mark}: its own ancestor, the ring closes here`;
  return is === 'again' ? `again ${mark}` : null;
}

/** Where the line above ends, in words; null where the parents are drawn. */
export function sayAbove({ is, above }: Spot): string | null {
  if (is === 'unknown' || above === 'drawn' || above === 'elsewhere') return null;
  return above === 'unknown' ? 'parents unknown' : 'more above';
}
