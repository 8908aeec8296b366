import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { decide, type EventDraft, type Meal, type Moment } from '../care/index.ts';
import { animalsInWalkingOrder, type Facility } from '../facility/index.ts';
import type { EventId, Id } from '../ids.ts';
import type { Problem } from '../problems.ts';
import { dueLine, isToFeed } from './dueList.ts';

/** A rack fed as planned in one go: what is written of whom, and who is left out and why. */
export interface RackFeeding {
  readonly drafts: readonly EventDraft[];
  readonly fed: readonly { readonly animal: AnimalRecord; readonly meal: Meal }[];
  /** Due animals that a single touch must not feed. */
  readonly left: readonly { readonly animal: AnimalRecord; readonly problem: Problem }[];
  /** How many live there and are not due, or were offered food on that day already. */
  readonly notDue: number;
}

/**
 * Everybody in a rack, room or tub who is due, fed as planned. Whoever needs a question (a hold, a missing weight, a large
 * meal) is left out and named: all as planned must be nothing but as planned.
 */
export function feedRack(facility: Facility, place: Id, moment: Moment): RackFeeding {
  const drafts: EventDraft[] = [];
  const fed: { animal: AnimalRecord; meal: Meal }[] = [];
  const left: { animal: AnimalRecord; problem: Problem }[] = [];
  let notDue = 0;
  for (const animal of animalsInWalkingOrder(facility).filter((one) => standsIn(facility, one.place, place))) {
    const line = dueLine(facility, animal, moment.day);
    if (!isToFeed(line) || animal.offers.at(-1)?.day === moment.day) {
      notDue += 1;
      continue;
    }
    const decision = decide(animal, { do: 'fed-as-planned' }, moment);
    if (decision.kind === 'accepted' && line.meal !== null) {
      drafts.push(...decision.drafts);
      fed.push({ animal, meal: line.meal });
    } else if (decision.kind !== 'accepted') left.push({ animal, problem: decision.problem });
  }
  return { drafts, fed, left, notDue };
}

/** An offer of the round that turns out otherwise: the offer itself is amended, so that one meal stays one line. */
export function offerAmended(
  animal: AnimalRecord,
  offer: { readonly id: EventId; readonly payload: object },
  outcome: 'taken' | 'refused',
  { day }: Pick<Moment, 'day'>,
): EventDraft {
  const payload = { ...offer.payload, outcome };
  return { kind: 'slip-made', subjects: [animal.id], payload: { corrects: offer.id, how: 'amend', payload }, day };
}

/** What a round used, by prey: every item that was offered, since refused thawed prey is not frozen again. */
export function preyUsed(fed: readonly { readonly meal: Meal }[]): readonly (readonly [prey: string, count: number])[] {
  const used = new Map<string, number>();
  for (const { meal } of fed) used.set(meal.prey, (used.get(meal.prey) ?? 0) + meal.count);
  return [...used].sort(([a], [b]) => (a < b ? -1 : 1));
}

/** `Moss, Fern and 3 more`: a few names of many. */
export function sayFew(animals: readonly AnimalRecord[], few = 3): string {
  const names = animals.slice(0, few).map(sayAnimal);
  return animals.length > few ? `${names.join(', ')} and ${animals.length - few} more` : names.join(', ');
}

function standsIn({ places }: Facility, at: Id | null, place: Id): boolean {
  const seen = new Set<Id>();
  for (let here = at; here !== null && !seen.has(here); here = places.get(here)?.parent ?? null) {
    if (here === place) return true;
    seen.add(here);
  }
  return false;
}
