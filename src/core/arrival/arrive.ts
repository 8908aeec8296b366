import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { type EventDraft, HOLD_DAYS, type Moment } from '../care/index.ts';
import { addDays, type Day, daysBetween, sayDayShort } from '../days.ts';
import type { Payload } from '../events/index.ts';
import { type Facility, nameOf, occupants } from '../facility/index.ts';
import { type Id, sayId } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { type Grams, weightInRange } from '../units.ts';
import { type Microchip, readMicrochip } from './microchip.ts';
import { placeDoubt, QUARANTINE_DAYS, type QuarantineStart, quarantineDraft, shortQuarantine } from './quarantine.ts';

/** An animal that comes in, as the keeper has it; texts are trimmed, null is not written. */
export interface Arrival {
  readonly species: string;
  readonly sex: AnimalRecord['sex'];
  readonly name: string | null;
  readonly number: string | null;
  readonly hatchedOn: Day | null;
  readonly acquiredOn: Day;
  readonly source: string | null;
  readonly licence: string | null;
  readonly papers: string | null;
  readonly microchip: string | null;
  readonly traits: Payload<'traits-set'> | null;
  readonly place: Id | null;
  readonly weightG: Grams | null;
  /** The first day on which it may be fed. */
  readonly noFoodUntil: Day | null;
  /** Null where it is not to be kept apart. */
  readonly quarantine: QuarantineStart | null;
}

/**
 * What an arrival comes to. `refused`: all that is wrong, each at its field, and nothing is written. Else `doubts` are asked
 * about together, and `draftsFor` gives everything that one touch writes for the minted id.
 */
export type Arriving =
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | {
      readonly kind: 'ready';
      readonly doubts: readonly Problem[];
      /** What the keeper is told without being asked. */
      readonly notes: readonly string[];
      readonly draftsFor: (id: Id) => readonly EventDraft[];
    };

/** Rule CARE-ARRIVAL: how long no food is given after transport, in days: at least, and for hatchlings up to (S, veterinary web pages). */
export const ARRIVAL_DAYS = [HOLD_DAYS.arrival, 14] as const;

/** The days that an arrival begins with; the keeper changes them. Quarantine takes the longer end of its range. */
export function usualArrival(acquiredOn: Day): { readonly noFoodUntil: Day; readonly quarantineUntil: Day } {
  return {
    noFoodUntil: addDays(acquiredOn, ARRIVAL_DAYS[0]),
    quarantineUntil: addDays(acquiredOn, QUARANTINE_DAYS[1]),
  };
}

/**
 * Brings an animal in: the animal, where it came from, its chip, place and weight, no food after transport and quarantine,
 * all in one. Problems, at the field’s path: `text-missing`, `date-future`, `arrival-order`, `hold-until`, `unknown-id`,
 * `microchip-malformed`, those of a weight. Doubts: `place-taken`, `quarantine-place`, `quarantine-short`,
 * `arrival-not-apart`, `arrival-food-early`, `microchip-known`.
 */
export function arrive(facility: Facility, arrival: Arrival, moment: Moment): Arriving {
  const chip = arrival.microchip === null ? null : readMicrochip(arrival.microchip);
  const problems = [
    ...faultsOf(facility, arrival, moment),
    ...(chip !== null && !chip.ok ? [at('microchip', chip.problem)] : []),
  ];
  if (problems.length > 0) return { kind: 'refused', problems };
  const read = chip?.ok ? chip.value : null;
  return {
    kind: 'ready',
    doubts: doubtsOf(facility, arrival, read),
    notes: read?.note ? [read.note] : [],
    draftsFor: (id) => draftsOf(arrival, read, id, moment.day),
  };
}

function faultsOf(facility: Facility, arrival: Arrival, { today }: Moment): readonly Problem[] {
  const { species, hatchedOn, acquiredOn, place, weightG, noFoodUntil, quarantine } = arrival;
  const faults: Problem[] = [];
  if (species.trim() === '') faults.push(problem('text-missing', { what: 'species' }, 'species'));
  const days = [
    ['hatched', hatchedOn],
    ['acquired', acquiredOn],
  ] as const;
  for (const [path, day] of days)
    if (day !== null && day > today) faults.push(problem('date-future', { day: sayDayShort(day) }, path));
  if (hatchedOn !== null && hatchedOn > acquiredOn) {
    const order = { hatched: sayDayShort(hatchedOn), acquired: sayDayShort(acquiredOn) };
    faults.push(problem('arrival-order', order, 'hatched'));
  }
  if (place !== null && !facility.places.has(place)) faults.push(problem('unknown-id', { id: sayId(place) }, 'place'));
  const weight = weightG === null ? null : weightInRange(weightG);
  if (weight !== null && !weight.ok) faults.push(at('weight', weight.problem));
  const ends = [
    ['no-food', noFoodUntil],
    ['quarantine', quarantine?.until ?? null],
  ] as const;
  for (const [path, until] of ends)
    if (until !== null && until <= acquiredOn)
      faults.push(problem('hold-until', { until: sayDayShort(until), day: sayDayShort(acquiredOn) }, path));
  return faults;
}

function doubtsOf(facility: Facility, arrival: Arrival, chip: Microchip | null): readonly Problem[] {
  const { place, quarantine, noFoodUntil, acquiredOn } = arrival;
  const others = place === null ? [] : (occupants(facility).get(place) ?? []);
  const doubts: (Problem | null)[] = [
    chip === null ? null : knownChip(facility, chip, null),
    others.length === 0 || place === null
      ? null
      : problem('place-taken', { place: nameOf(facility, place), animal: others.map(sayAnimal).join(', ') }),
    quarantine === null ? problem('arrival-not-apart') : shortQuarantine(quarantine, acquiredOn),
    quarantine === null ? null : placeDoubt(facility, place),
    foodDoubt(noFoodUntil, acquiredOn),
  ];
  return doubts.filter((doubt) => doubt !== null);
}

function foodDoubt(until: Day | null, acquiredOn: Day): Problem | null {
  const days = until === null ? 0 : daysBetween(acquiredOn, until);
  return days < ARRIVAL_DAYS[0] ? problem('arrival-food-early', { days, least: ARRIVAL_DAYS[0] }) : null;
}

/** Asks about a chip that another animal has: a slip of typing, or one that comes back. */
export function knownChip({ animals }: Facility, { code }: Microchip, own: Id | null): Problem | null {
  const other = [...animals.values()].find((one) => one.microchip === code && one.id !== own);
  if (other === undefined) return null;
  const left = other.left === null ? '' : `, which left on ${sayDayShort(other.left.day)}`;
  return problem('microchip-known', { code, animal: `${sayAnimal(other)} (${sayId(other.id)})${left}` });
}

function draftsOf(arrival: Arrival, chip: Microchip | null, id: Id, day: Day): readonly EventDraft[] {
  const { acquiredOn, place, traits, weightG, noFoodUntil, quarantine } = arrival;
  const subjects = [id];
  const drafts: EventDraft[] = [{ kind: 'animal-added', subjects, payload: addedOf(arrival), day }];
  const origin = originOf(arrival);
  if (Object.keys(origin).length > 0) drafts.push({ kind: 'origin-set', subjects, payload: origin, day });
  if (chip !== null) drafts.push({ kind: 'microchip-set', subjects, payload: { code: chip.code }, day });
  if (traits !== null) drafts.push({ kind: 'traits-set', subjects, payload: traits, day });
  if (place !== null) drafts.push({ kind: 'animal-moved', subjects: [id, place], payload: { to: place }, day });
  if (weightG !== null) drafts.push({ kind: 'animal-weighed', subjects, payload: { weightG }, day });
  if (noFoodUntil !== null) drafts.push(transportDraft(id, noFoodUntil, acquiredOn));
  // The hold counts from the day it came, which may lie before the day of the writing.
  if (quarantine !== null) drafts.push(quarantineDraft(id, quarantine, acquiredOn));
  return drafts;
}

function transportDraft(id: Id, until: Day, day: Day): EventDraft {
  const payload = { reason: 'transport' as const, words: 'no food after transport', until };
  return { kind: 'hold-placed', subjects: [id], payload, day };
}

function addedOf({ species, sex, name, number, hatchedOn, acquiredOn, source }: Arrival): Payload<'animal-added'> {
  return {
    species: species.trim(),
    sex,
    ...(name !== null && { name }),
    ...(number !== null && { number }),
    ...(hatchedOn !== null && { hatchedOn }),
    acquiredOn,
    ...(source !== null && { source }),
  };
}

function originOf({ source, licence, papers }: Arrival): Payload<'origin-set'> {
  if (licence === null && papers === null) return {};
  return {
    ...(source !== null && { source }),
    ...(licence !== null && { licence }),
    ...(papers !== null && { papers }),
  };
}

function at(path: string, fault: Problem): Problem {
  return { ...fault, path };
}
