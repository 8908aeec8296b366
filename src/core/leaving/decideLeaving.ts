import { type AnimalRecord, lastWeight, sayAnimal } from '../animal/index.ts';
import { quarantineOf } from '../arrival/index.ts';
import { eggsLeft, stillLies } from '../breeding/index.ts';
import { type Decision, dayFault, type EventDraft, isTreated, type Moment, needsVet } from '../care/index.ts';
import { type Day, laterDay, sayDayShort } from '../days.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';

/** How an animal leaves. Texts are trimmed; null is not written. */
export type Leaving =
  | { readonly how: 'died'; readonly cause: string | null; readonly note: string | null }
  | { readonly how: 'sold' | 'given'; readonly to: string | null; readonly note: string | null }
  | { readonly how: 'lost'; readonly note: string | null };

/**
 * What a leaving writes, in one: that it left, the end of its open pairings, the end of its offer. Refused: one that has
 * left, a day that cannot be, and for a sale or a gift one that is under treatment, waits for the vet or is in quarantine
 * (England, SI 2018/486, Schedule 3). Asked about: one that is not for sale, and entries after that day.
 */
export function decideLeaving(animal: AnimalRecord, leaving: Leaving, moment: Moment): Decision {
  const fault = leftFault(animal) ?? dayFault(animal, moment) ?? keepsBack(animal, leaving, moment);
  if (fault !== null) return { kind: 'refused', problem: fault };
  const drafts = draftsOf(animal, leaving, moment.day);
  const said = sayLeaving(leaving);
  const doubt = notForSale(animal, leaving) ?? laterEntry(animal, moment.day);
  return doubt === null ? { kind: 'accepted', drafts, said } : { kind: 'asks', problem: doubt, drafts, said };
}

/** Rule CARE-SALE: why an animal may not be sold or given away on a day; null where nothing holds it back. */
export function saleFault(animal: AnimalRecord, day: Day): Problem | null {
  const words = { animal: sayAnimal(animal) };
  const held = animal.holds.find(
    ({ reason, since, until }) => reason === 'treatment' && since <= day && (until === null || until > day),
  );
  if (isTreated(animal, day) || held !== undefined) return problem('sale-treated', words);
  const vet = needsVet(animal);
  if (vet !== null) return problem('sale-vet', { ...words, reason: vet });
  const quarantine = quarantineOf(animal);
  if (quarantine === null) return null;
  return problem('sale-quarantine', { ...words, since: sayDayShort(quarantine.since) });
}

/** What follows when an animal leaves, for the keeper to see before it is written. */
export function leavingNotes(
  facility: Facility,
  animal: AnimalRecord,
  how: Leaving['how'],
  on: Day,
): readonly string[] {
  const notes = [...animal.together.map(({ with: mate }) => `Its pairing with ${nameOf(facility, mate)} ends.`)];
  if (animal.offer !== null) notes.push('It is on offer; the offer ends.');
  const open = animal.prescriptions.filter(({ stopped }) => stopped === null);
  if (how !== 'sold' && how !== 'given' && isTreated(animal, on) && open.length > 0)
    notes.push(
      `Doses are still due (${open.map(({ written }) => written.drug).join(', ')}); none are asked for any more.`,
    );
  const young = [...facility.animals.values()].filter((one) => one.sire === animal.id || one.dam === animal.id).length;
  if (young > 0) notes.push(`It stays the parent of ${young} ${young === 1 ? 'animal' : 'animals'} on record.`);
  const lying = [...facility.clutches.values()].filter(
    (one) => stillLies(one, on) && eggsLeft(one) > 0 && (one.dam === animal.id || one.sire === animal.id),
  );
  if (lying.length > 0) notes.push(`${lying.length === 1 ? 'Its clutch stays' : 'Its clutches stay'} where it lies.`);
  if (animal.gravidSince !== null) notes.push(`It has been gravid since ${sayDayShort(animal.gravidSince)}: say so.`);
  return [...notes, ...COMMON_PRACTICE[how]];
}

const COMMON_PRACTICE: Readonly<Record<Leaving['how'], readonly string[]>> = {
  died: [
    'Where the cause is not clear, speak to the vet about a necropsy at once: cool, not frozen, until then (common practice, no source). Wear gloves and wash your hands.',
  ],
  sold: [],
  given: [],
  lost: [
    'Close the room, stop the gaps under doors, look behind and under the rack first, and warn everybody who works here (common practice, no source).',
  ],
};

/** What is to be done at once when one is lost that can hurt somebody; null for others. */
export function lostCaution(animal: AnimalRecord, people: number): string | null {
  if (animal.flags.includes('venomous'))
    return 'VENOMOUS: keep everybody out, do not look for it alone, follow the site’s protocol, and call whom your licence and local code name, at once.';
  return people > 1 || animal.flags.includes('two-people')
    ? 'LARGE: never look for it or lift it alone, keep children and animals away, and call whom your licence and local code name.'
    : null;
}

/** `sold to …`, `died of …`. */
export function sayLeaving(leaving: Leaving): string {
  switch (leaving.how) {
    case 'died':
      return leaving.cause === null ? 'died, cause not known' : `died: ${leaving.cause}`;
    case 'sold':
      return leaving.to === null ? 'sold' : `sold to ${leaving.to}`;
    case 'given':
      return leaving.to === null ? 'given away' : `given to ${leaving.to}`;
    case 'lost':
      return 'lost';
    default:
      return leaving satisfies never;
  }
}

function leftFault(animal: AnimalRecord): Problem | null {
  const { left } = animal;
  if (left === null) return null;
  return problem('left-already', { animal: sayAnimal(animal), day: sayDayShort(left.day), how: left.how });
}

function keepsBack(animal: AnimalRecord, { how }: Leaving, { day }: Moment): Problem | null {
  return how === 'sold' || how === 'given' ? saleFault(animal, day) : null;
}

function notForSale(animal: AnimalRecord, { how }: Leaving): Problem | null {
  if ((how !== 'sold' && how !== 'given') || !animal.flags.includes('not-for-sale')) return null;
  return problem('sale-kept', { animal: sayAnimal(animal) });
}

function laterEntry(animal: AnimalRecord, day: Day): Problem | null {
  const days = [animal.offers.at(-1)?.day, lastWeight(animal)?.day, animal.movedOn, animal.lastShedOn];
  const last = days.filter((one) => one !== undefined && one !== null).reduce(laterDay, day);
  return last > day ? problem('left-before', { day: sayDayShort(day), last: sayDayShort(last) }) : null;
}

function draftsOf(animal: AnimalRecord, leaving: Leaving, day: Day): readonly EventDraft[] {
  const apart = animal.together.map(({ with: mate }): EventDraft => {
    return { kind: 'pairing-ended', subjects: pairOf(animal, mate), payload: {}, day };
  });
  const offer: readonly EventDraft[] =
    animal.offer === null
      ? []
      : [{ kind: 'offer-ended', subjects: [animal.id], payload: { why: sayLeaving(leaving).slice(0, 200) }, day }];
  return [...apart, ...offer, { kind: 'animal-left', subjects: [animal.id], payload: payloadOf(leaving), day }];
}

/** The female first, as pairings are written. */
function pairOf({ id, sex }: AnimalRecord, mate: Id): readonly Id[] {
  return sex === 'male' ? [mate, id] : [id, mate];
}

function payloadOf(leaving: Leaving) {
  const note = leaving.note === null ? {} : { note: leaving.note };
  switch (leaving.how) {
    case 'died':
      return { how: leaving.how, ...(leaving.cause !== null && { cause: leaving.cause }), ...note };
    case 'sold':
    case 'given':
      return { how: leaving.how, ...(leaving.to !== null && { to: leaving.to }), ...note };
    case 'lost':
      return { how: leaving.how, ...note };
    default:
      return leaving satisfies never;
  }
}
