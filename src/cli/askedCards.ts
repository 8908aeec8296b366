import type { LeftOut } from '../../print/index.ts';
import {
  type AnimalRecord,
  animalsInWalkingOrder,
  type CardContent,
  cardContent,
  type Facility,
  type Id,
  isCardStale,
  nameOf,
  type Problem,
  parseId,
  problem,
  sayDayShort,
  sayId,
} from '../core/index.ts';
import { inWords } from './refused.ts';
import type { Site } from './site.ts';

/** The cards that were asked for, in walking order, and what of it cannot be printed. */
export interface AskedCards {
  readonly cards: readonly CardContent[];
  readonly left: readonly LeftOut[];
}

/** Finds the cards of `--only`: `stale`, `all`, or ids with commas between them. */
export function askedCards({ facility, on }: Site, only: string): AskedCards {
  const here = animalsInWalkingOrder(facility);
  const content = (animal: AnimalRecord) => cardContent(facility, animal, on);
  if (only === 'all') return { cards: here.map(content), left: [] };
  if (only === 'stale') {
    const all = here.map((animal) => ({ animal, says: content(animal) }));
    return { cards: all.filter(({ animal, says }) => isCardStale(animal, says)).map(({ says }) => says), left: [] };
  }
  const { ids, left } = askedIds(facility, only);
  return { cards: here.filter((animal) => ids.has(animal.id)).map(content), left };
}

function askedIds(facility: Facility, only: string): { ids: ReadonlySet<Id>; left: readonly LeftOut[] } {
  const ids = new Set<Id>();
  const left: LeftOut[] = [];
  for (const text of only.split(',').map((word) => word.trim())) {
    const read = parseId(text);
    const wrong = read.ok ? whatStops(facility, read.value.id) : read.problem;
    if (wrong !== null) left.push({ id: read.ok ? read.value.id : text, why: inWords(wrong) });
    else if (read.ok) ids.add(read.value.id);
  }
  return { ids, left };
}

function whatStops(facility: Facility, id: Id): Problem | null {
  const animal = facility.animals.get(id);
  if (animal !== undefined && animal.left === null) return null;
  if (animal?.left) return problem('animal-gone', { day: sayDayShort(animal.left.day), how: animal.left.how });
  const isOther =
    facility.places.has(id) || facility.keepers.has(id) || facility.lots.has(id) || facility.clutches.has(id);
  return isOther
    ? problem('id-no-animal', { id: sayId(id), what: nameOf(facility, id) })
    : problem('unknown-id', { id: sayId(id) });
}
