import { type AnimalRecord, lastWeight, type PlacedHold, sayAnimal } from '../animal/index.ts';
import {
  type Action,
  type Decision,
  dayFault,
  type EventDraft,
  type Moment,
  needsVet,
  speciesOf,
  weighEveryDays,
} from '../care/index.ts';
import { addDays, type Day, daysBetween, sayDayShort } from '../days.ts';
import { animalsInWalkingOrder, type Facility, isQuarantinePlace, nameOf, occupants } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';

/** Rule CARE-QUARANTINE: new animals are kept apart for 60–90 days at least, longer where certain viruses are a risk (S, a veterinary web page). */
export const QUARANTINE_DAYS = [60, 90] as const;

/** The hold of an animal in quarantine; null for one that is not. It lasts until somebody ends it, whatever day was written. */
export function quarantineOf(animal: AnimalRecord): PlacedHold | null {
  return animal.left === null ? (animal.holds.find((hold) => hold.reason === 'quarantine') ?? null) : null;
}

/** An animal in quarantine, and what is due of it. */
export interface QuarantineLine {
  readonly animal: AnimalRecord;
  readonly hold: PlacedHold;
  /** Days since it began. */
  readonly days: number;
  /** True once the written day has come: it can be ended, by word. */
  readonly isOver: boolean;
  /** False where it lives in no quarantine place. */
  readonly isApart: boolean;
  /** The day of the next weighing: by the interval of its species and size (CARE-WEIGH), at once where it was never weighed. */
  readonly weighOn: Day;
  /** Nobody has looked at it or at its place today; looked at daily is common practice, no source. */
  readonly lookDue: boolean;
  /** Why it needs a vet; null where it does not. */
  readonly vet: string | null;
}

/** Who is in quarantine on a day, in walking order. */
export function quarantineBoard(facility: Facility, on: Day): readonly QuarantineLine[] {
  return animalsInWalkingOrder(facility).flatMap((animal) => {
    const hold = quarantineOf(animal);
    return hold === null || hold.since > on ? [] : [lineOf(facility, animal, hold, on)];
  });
}

function lineOf(facility: Facility, animal: AnimalRecord, hold: PlacedHold, on: Day): QuarantineLine {
  const weight = lastWeight(animal);
  const every = weight === null ? 0 : weighEveryDays(speciesOf(animal.species), weight.weightG);
  return {
    animal,
    hold,
    days: daysBetween(hold.since, on),
    isOver: hold.until !== null && on >= hold.until,
    isApart: isQuarantinePlace(facility, animal.place),
    weighOn: weight === null ? on : addDays(weight.day, every),
    lookDue: !lookedOn(facility, animal, on),
    vet: needsVet(animal),
  };
}

function lookedOn({ places }: Facility, { lastLook, place }: AnimalRecord, on: Day): boolean {
  const atPlace = place === null ? undefined : places.get(place)?.deeds.look?.at(-1);
  return [lastLook?.day, atPlace?.day].some((day) => day !== undefined && day >= on);
}

/** A look at an animal of the board that found it well; what is not well is written on its record. Errors: those of a day. */
export function decideLookedWell(animal: AnimalRecord, moment: Moment): Decision {
  const wrongDay = dayFault(animal, moment);
  if (wrongDay !== null) return { kind: 'refused', problem: wrongDay };
  const subjects = animal.place === null ? [animal.id] : [animal.id, animal.place];
  const drafts: readonly EventDraft[] = [{ kind: 'health-looked', subjects, payload: { well: true }, day: moment.day }];
  return { kind: 'accepted', drafts, said: 'looked well' };
}

/** How a quarantine begins: until a day, or open until somebody ends it. */
export interface QuarantineStart {
  readonly until: Day | null;
  readonly words: string | null;
}

/**
 * Puts an animal in quarantine. Refused: `quarantine-already`, `left-already`, a day that is not after the first, those of
 * a day. Asked about: a short one, and an animal whose place is no quarantine place.
 */
export function decideQuarantine(
  facility: Facility,
  animal: AnimalRecord,
  start: QuarantineStart,
  moment: Moment,
): Decision {
  const fault = startFault(animal, start, moment);
  if (fault !== null) return { kind: 'refused', problem: fault };
  const draft = quarantineDraft(animal.id, start, moment.day);
  const said = `quarantine${start.until === null ? '' : ` until ${sayDayShort(start.until)}`}`;
  const doubt = shortQuarantine(start, moment.day) ?? placeDoubt(facility, animal.place);
  return doubt === null
    ? { kind: 'accepted', drafts: [draft], said }
    : { kind: 'asks', problem: doubt, drafts: [draft], said };
}

/**
 * Ends a quarantine by the vet’s or the keeper’s word. Refused: `quarantine-none`, `quarantine-by`, those of a day. Asked
 * about before the written day, and before the least that is usual.
 */
export function decideQuarantineEnd(animal: AnimalRecord, by: string, moment: Moment): Decision {
  const hold = quarantineOf(animal);
  const fault = endFault(animal, hold, by, moment);
  if (hold === null || fault !== null)
    return { kind: 'refused', problem: fault ?? problem('quarantine-none', { animal: sayAnimal(animal) }) };
  const payload = { reason: 'quarantine' as const, by: by.trim() };
  const drafts: readonly EventDraft[] = [{ kind: 'hold-lifted', subjects: [animal.id], payload, day: moment.day }];
  const said = `quarantine ended by ${by.trim()}`;
  const least = hold.until ?? addDays(hold.since, QUARANTINE_DAYS[0]);
  if (moment.day >= least) return { kind: 'accepted', drafts, said };
  const early = { days: daysBetween(hold.since, moment.day), until: sayDayShort(least) };
  return { kind: 'asks', problem: problem('quarantine-early', early), drafts, said };
}

/** The event that begins a quarantine. */
export function quarantineDraft(id: Id, { until, words }: QuarantineStart, day: Day): EventDraft {
  const payload = {
    reason: 'quarantine' as const,
    ...(until && { until }),
    words: words ?? 'own tools, last in the walk',
  };
  return { kind: 'hold-placed', subjects: [id], payload, day };
}

/** Asks about a quarantine that is shorter than usual; null where it is long enough or open. */
export function shortQuarantine({ until }: QuarantineStart, since: Day): Problem | null {
  const days = until === null ? QUARANTINE_DAYS[0] : daysBetween(since, until);
  return days < QUARANTINE_DAYS[0] ? problem('quarantine-short', { days, least: QUARANTINE_DAYS[0] }) : null;
}

/** Asks about a quarantine outside of the quarantine places; null where the place is one, or none is known. */
export function placeDoubt(facility: Facility, place: Id | null): Problem | null {
  if (place === null || isQuarantinePlace(facility, place)) return null;
  return problem('quarantine-place', { place: nameOf(facility, place) });
}

/** What moving an animal to a place does, with all that is to be asked about it: who lives there, and the quarantine. */
export function moveTo(facility: Facility, animal: AnimalRecord, to: Id): Action {
  const others = (occupants(facility).get(to) ?? []).filter(({ id }) => id !== animal.id);
  const livesThere = others.map(sayAnimal).join(', ') || null;
  const quarantine = quarantineDoubt(facility, animal, to);
  return { do: 'moved', to, toName: nameOf(facility, to), livesThere, ...(quarantine !== null && { quarantine }) };
}

function quarantineDoubt(facility: Facility, animal: AnimalRecord, to: Id): Problem | null {
  const hold = quarantineOf(animal);
  const isInto = isQuarantinePlace(facility, to);
  const words = { animal: sayAnimal(animal), place: nameOf(facility, to) };
  if (hold !== null && !isInto) {
    const until = hold.until === null ? '' : ` until ${sayDayShort(hold.until)}`;
    return problem('quarantine-leaves', { ...words, until });
  }
  return hold === null && isInto ? problem('quarantine-enters', words) : null;
}

function startFault(animal: AnimalRecord, { until }: QuarantineStart, moment: Moment): Problem | null {
  if (animal.left !== null) return problem('left-already', { ...leftWords(animal) });
  const hold = quarantineOf(animal);
  if (hold !== null) return problem('quarantine-already', { since: sayDayShort(hold.since) });
  const wrongDay = dayFault(animal, moment);
  if (wrongDay !== null) return wrongDay;
  return until !== null && until <= moment.day
    ? problem('hold-until', { until: sayDayShort(until), day: sayDayShort(moment.day) })
    : null;
}

function endFault(animal: AnimalRecord, hold: PlacedHold | null, by: string, moment: Moment): Problem | null {
  if (hold === null) return problem('quarantine-none', { animal: sayAnimal(animal) });
  return by.trim() === '' ? problem('quarantine-by') : dayFault(animal, moment);
}

function leftWords(animal: AnimalRecord): Readonly<Record<string, string>> {
  const { left } = animal;
  return { animal: sayAnimal(animal), day: left === null ? '' : sayDayShort(left.day), how: left?.how ?? '' };
}
