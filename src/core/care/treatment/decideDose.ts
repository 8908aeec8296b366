import { type AnimalRecord, sayAnimal } from '../../animal/index.ts';
import { sayDayShort } from '../../days.ts';
import type { Payload } from '../../events/index.ts';
import type { EventId } from '../../ids.ts';
import { instantOf, noonOf } from '../../instants.ts';
import { type Problem, problem } from '../../problems.ts';
import { type Decision, dayFault, type EventDraft, type Moment } from '../decide.ts';
import { doseCloseFault, doseTimeFault } from './schedule.ts';
import { givenTimes, type Treatment, treatmentBy } from './standing.ts';
import { sayMl } from './syringe.ts';

/** A dose that a keeper confirms: the volume as it was shown, and the second person where there is one. */
export interface ConfirmedDose {
  readonly prescription: EventId;
  readonly ml: number;
  readonly second?: string;
  readonly lot?: string;
  readonly note?: string;
  /** When it was given, in milliseconds since 1970; left out, it is now, or noon of another day. */
  readonly atMs?: number;
}

/** What a site asks for at a dose. */
export interface DoseRules {
  readonly needsSecond: boolean;
  /** Who gives the dose: nobody checks their own. */
  readonly keeper?: string;
}

/**
 * What a given dose writes. Refused: a prescription that is not open, a volume that nobody can work out, a confirmed volume
 * that is not the one shown, a time that has not come, a second person who is missing or the same. Asked about: too early,
 * too near to another dose, a course that is done, an animal that has left.
 */
export function decideDose(
  animal: AnimalRecord,
  given: ConfirmedDose,
  moment: Moment,
  rules: DoseRules = { needsSecond: false },
): Decision {
  const treatment = treatmentBy(animal, given.prescription, moment.day, moment.nowMs);
  if (treatment === null) return { kind: 'refused', problem: problem('prescription-unknown', {}) };
  const refused =
    dayFault(animal, moment) ?? timeFault(given, moment) ?? volumeFault(treatment, given) ?? secondFault(given, rules);
  if (refused !== null) return { kind: 'refused', problem: refused };
  const draft = doseDraft(animal, given, moment);
  const said = `dose given: ${sayMl(given.ml)}`;
  const doubt = animal.left === null ? timeDoubt(treatment, instantGiven(given, moment), moment) : goneDoubt(animal);
  return doubt === null
    ? { kind: 'accepted', drafts: [draft], said }
    : { kind: 'asks', problem: doubt, drafts: [draft], said };
}

function doseDraft(animal: AnimalRecord, given: ConfirmedDose, { day }: Moment): EventDraft {
  const payload: Payload<'dose-given'> = {
    prescription: given.prescription,
    ml: given.ml,
    ...(given.second?.trim() && { second: given.second.trim() }),
    ...(given.lot?.trim() && { lot: given.lot.trim() }),
    ...(given.note?.trim() && { note: given.note.trim() }),
  };
  const at = given.atMs === undefined ? {} : { at: instantOf(given.atMs) };
  return { kind: 'dose-given', subjects: [animal.id], payload, day, ...at };
}

/** When a dose was given; one that is written down later without its hour stands at noon, as the log has it. */
function instantGiven({ atMs }: ConfirmedDose, { day, today, nowMs }: Moment): number {
  return atMs ?? (day === today ? nowMs : noonOf(day));
}

function timeFault({ atMs }: ConfirmedDose, { nowMs }: Moment): Problem | null {
  if (atMs === undefined) return null;
  if (!Number.isFinite(atMs)) return problem('not-finite', { what: 'time of a dose' });
  return atMs > nowMs ? problem('dose-ahead', {}) : null;
}

function volumeFault({ dose }: Treatment, { ml }: ConfirmedDose): Problem | null {
  if (!dose.ok) return dose.problem;
  return dose.value.ml === ml ? null : problem('dose-not-shown', { shown: sayMl(dose.value.ml), given: sayMl(ml) });
}

function secondFault({ second = '' }: ConfirmedDose, { needsSecond, keeper = '' }: DoseRules): Problem | null {
  const name = second.trim();
  if (name === '') return needsSecond ? problem('dose-second-person', {}) : null;
  const isSame = name.toLowerCase() === keeper.trim().toLowerCase();
  return isSame ? problem('dose-second-same', { name }) : null;
}

function timeDoubt({ record }: Treatment, atMs: number, { nowMs }: Moment): Problem | null {
  const { everyHours, count } = record.written;
  const times = givenTimes(record.given, nowMs);
  const isLast = times.every((ms) => ms <= atMs);
  const startsMs = times[0] ?? atMs;
  const course = { everyHours, startsMs, count: count ?? times.length + 1 };
  if (isLast) return doseTimeFault(course, times, atMs);
  // One that is written down between others, or before them, cannot be too early; it can only stand too near.
  const isDone = count !== undefined && times.length >= count;
  return isDone ? problem('course-done', { given: times.length }) : doseCloseFault(everyHours, times, atMs);
}

function goneDoubt(animal: AnimalRecord): Problem {
  const { left } = animal;
  return problem('pairing-gone', {
    animal: sayAnimal(animal),
    how: left?.how ?? '',
    day: left === null ? '' : sayDayShort(left.day),
  });
}
