import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { type Decision, type Hold, holdsOn, isTreated, type Moment, needsVet } from '../care/index.ts';
import { type Day, daysBetween, sayDayShort } from '../days.ts';
import { animalsInWalkingOrder, type Facility, sayPlace } from '../facility/index.ts';
import { cardTraits } from '../lineage/index.ts';
import { type Problem, problem } from '../problems.ts';

/** Rule SHOP-LONG: an animal that has been on offer this long has stood too long (common practice, no source). */
export const LONG_OFFER_DAYS = 90;

/** Reasons not to feed that say nothing against a sale: a healthy animal sheds and is cooled. */
const USUAL_HOLDS: readonly Hold['kind'][] = ['opaque', 'cooling'];

/** Why an animal cannot be offered on a day; null when it can. Rule SHOP-OFFER: never under treatment, on a hold or in quarantine. */
export function offerFault(animal: AnimalRecord, on: Day): Problem | null {
  const name = sayAnimal(animal);
  if (animal.left !== null) return problem('animal-gone', { day: sayDayShort(animal.left.day), how: animal.left.how });
  if (isTreated(animal, on)) return problem('offer-treated', { animal: name });
  if (animal.holds.some((hold) => hold.reason === 'quarantine' && (hold.until === null || on < hold.until)))
    return problem('offer-quarantine', { animal: name });
  if (animal.flags.includes('not-for-sale')) return problem('offer-not-for-sale', { animal: name });
  const vet = needsVet(animal);
  if (vet !== null) return problem('offer-on-hold', { animal: name, reason: vet });
  const hold = holdsOn(animal, on).find(({ kind }) => !USUAL_HOLDS.includes(kind));
  return hold === undefined ? null : problem('offer-on-hold', { animal: name, reason: hold.reason });
}

/** Puts an animal on offer, or gives it a new price. Errors: those of {@link offerFault}; a large or venomous one is asked about. */
export function offerAnimal(
  animal: AnimalRecord,
  { priceMinor, words }: { readonly priceMinor: number; readonly words?: string },
  moment: Moment,
): Decision {
  const fault = offerFault(animal, moment.day);
  if (fault !== null) return { kind: 'refused', problem: fault };
  const payload = { priceMinor, ...(words?.trim() && { words: words.trim() }) };
  const drafts = [{ kind: 'animal-offered', subjects: [animal.id], payload, day: moment.day }] as const;
  const said = animal.offer === null ? 'on offer' : 'new price';
  const danger = animal.flags.find((flag) => flag === 'venomous' || flag === 'two-people');
  if (danger === undefined) return { kind: 'accepted', drafts, said };
  return { kind: 'asks', problem: problem('offer-dangerous', { animal: sayAnimal(animal), danger }), drafts, said };
}

/** Takes an animal off the list. Error: `offer-none`. */
export function endOffer(animal: AnimalRecord, why: string | undefined, moment: Moment): Decision {
  if (animal.offer === null) return { kind: 'refused', problem: problem('offer-none', { animal: sayAnimal(animal) }) };
  const payload = why?.trim() ? { why: why.trim() } : {};
  const draft = { kind: 'offer-ended', subjects: [animal.id], payload, day: moment.day } as const;
  return { kind: 'accepted', drafts: [draft], said: 'no longer on offer' };
}

/** An animal of the sale list. */
export interface Offered {
  readonly animal: AnimalRecord;
  readonly place: string | null;
  readonly priceMinor: number;
  readonly days: number;
  readonly isLong: boolean;
  /** The trait code, and the same in trade words. */
  readonly code: string;
  readonly words: string;
  /** Why it must come off the list today, such as a treatment that began since. */
  readonly fault: Problem | null;
}

/** The animals on offer on a day, by species and trait, then by how long they have stood. */
export function saleList(facility: Facility, on: Day): readonly Offered[] {
  const offered = animalsInWalkingOrder(facility).flatMap((animal) => offeredOf(facility, animal, on) ?? []);
  return [...offered].sort(
    (a, b) =>
      compare(a.animal.species, b.animal.species) ||
      compare(a.code, b.code) ||
      b.days - a.days ||
      compare(a.animal.id, b.animal.id),
  );
}

function offeredOf(facility: Facility, animal: AnimalRecord, on: Day): Offered | null {
  if (animal.offer === null || animal.left !== null) return null;
  const { since, priceMinor } = animal.offer;
  const days = daysBetween(since, on);
  const traits = cardTraits(facility, animal);
  return {
    animal,
    place: sayPlace(facility, animal.place),
    priceMinor,
    days,
    isLong: days >= LONG_OFFER_DAYS,
    code: traits?.code ?? '',
    words: traits?.words?.long ?? '',
    fault: offerFault(animal, on),
  };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
