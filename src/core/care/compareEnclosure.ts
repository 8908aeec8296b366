import type { AnimalRecord, Measured } from '../animal/index.ts';
import { type Day, daysBetween } from '../days.ts';
import { type Facility, occupants, type PlaceRecord, walkingOrder } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { EnclosureRule } from './enclosure.ts';
import type { SizeMm } from './enclosureSize.ts';
import { type EnclosureVerdict, enclosureRuleOf, enclosureVerdicts } from './enclosureVerdict.ts';

/** A length older than this is said to be old, since animals grow (common practice, no source). */
export const OLD_LENGTH_DAYS = 365;

/** The longest animal of a kind in a place, by the length that the rules count. */
export interface LongestAnimal {
  readonly animal: Id;
  readonly measured: Measured;
  /** Only snout to vent is known: the whole animal is longer, and so is what the rules ask for. */
  readonly isLeast: boolean;
  readonly isOld: boolean;
}

/** The animals of one species in a place. */
export interface EnclosureGroup {
  readonly species: string;
  readonly animals: readonly Id[];
  /** Null where nobody measured any of them. */
  readonly longest: LongestAnimal | null;
  readonly unmeasured: readonly Id[];
  /** What each rule set says; empty where no length is known. */
  readonly verdicts: readonly EnclosureVerdict[];
}

/** A place beside the published rules, for comparison only. */
export interface EnclosureComparison {
  readonly place: Id;
  readonly sizeMm: SizeMm | null;
  /** How many animals live there, of whatever species. */
  readonly animals: number;
  readonly groups: readonly EnclosureGroup[];
}

/** How a place stands by one rule set: what is missing first. */
export type EnclosureState = 'short' | 'no length' | 'no size' | 'no figures' | 'enough';

/**
 * Rule CARE-ENCLOSURE for a place: each species in it by its longest animal and by all that live there. Null where
 * nobody lives. Of several species together each is compared as if all were of its kind, since no rule here speaks of them.
 */
export function compareEnclosure(facility: Facility, place: PlaceRecord, on: Day): EnclosureComparison | null {
  return compared(facility, place, occupants(facility).get(place.id) ?? [], on);
}

/** The same for every place that somebody lives in, in walking order. */
export function compareEnclosures(facility: Facility, on: Day): readonly EnclosureComparison[] {
  const [lives, order] = [occupants(facility), walkingOrder(facility)];
  return [...facility.places.values()]
    .sort((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0))
    .flatMap((place) => compared(facility, place, lives.get(place.id) ?? [], on) ?? []);
}

/** How a place stands by a rule set; where none was picked, by all of them together. */
export function enclosureState({ groups }: EnclosureComparison, rule: EnclosureRule | null): EnclosureState {
  if (groups.some(({ longest }) => longest === null)) return 'no length';
  const states = groups.map(({ verdicts }) => groupState(verdicts, rule));
  return WORST_FIRST.find((state) => states.includes(state)) ?? 'enough';
}

const WORST_FIRST = ['no size', 'short', 'no figures', 'enough'] as const;

function groupState(verdicts: readonly EnclosureVerdict[], rule: EnclosureRule | null): (typeof WORST_FIRST)[number] {
  const asked = verdicts.filter((one) => rule === null || one.rule === rule).map(({ has }) => has);
  if (asked.includes('unmeasured')) return 'no size';
  if (asked.includes('short')) return 'short';
  return asked.includes('enough') ? 'enough' : 'no figures';
}

function compared(
  { site }: Facility,
  place: PlaceRecord,
  here: readonly AnimalRecord[],
  on: Day,
): EnclosureComparison | null {
  if (here.length === 0) return null;
  const first = enclosureRuleOf(site.rules.enclosureRule);
  const species = [...new Set(here.map((animal) => animal.species))].sort();
  const groups = species.map((one) => {
    // By id, since the order in which records came to a device means nothing.
    const own = here.filter((animal) => animal.species === one).sort((a, b) => (a.id < b.id ? -1 : 1));
    return groupOf(own, { species: one, animals: here.length }, { sizeMm: place.sizeMm, first, on });
  });
  return { place: place.id, sizeMm: place.sizeMm, animals: here.length, groups };
}

interface GroupSetting {
  readonly sizeMm: SizeMm | null;
  readonly first: EnclosureRule | null;
  readonly on: Day;
}

function groupOf(
  own: readonly AnimalRecord[],
  question: { readonly species: string; readonly animals: number },
  { sizeMm, first, on }: GroupSetting,
): EnclosureGroup {
  const lengths = own.map((animal) => lengthOf(animal, on));
  const known = lengths.filter((one) => one !== null).sort((a, b) => b.measured.lengthMm - a.measured.lengthMm);
  const [longest = null] = known;
  const verdicts =
    longest === null
      ? []
      : enclosureVerdicts({ ...question, lengthM: longest.measured.lengthMm / 1000 }, sizeMm, first);
  return {
    species: question.species,
    animals: own.map(({ id }) => id),
    longest,
    unmeasured: own.flatMap(({ id }, at) => (lengths[at] === null ? [id] : [])),
    verdicts,
  };
}

/** The whole length counts, and the one from snout to vent only where no other is known. */
function lengthOf({ id, lengths }: AnimalRecord, on: Day): LongestAnimal | null {
  const measured = lengths.find(({ of }) => of === 'total') ?? lengths[0];
  if (measured === undefined) return null;
  const isOld = daysBetween(measured.day, on) > OLD_LENGTH_DAYS;
  return { animal: id, measured, isLeast: measured.of !== 'total', isOld };
}
