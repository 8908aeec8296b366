import type { AnimalRecord, GivenDose, PrescriptionRecord, Weighing } from '../../animal/index.ts';
import { addDays, type Day, dayNumber } from '../../days.ts';
import type { Payload } from '../../events/index.ts';
import type { EventId } from '../../ids.ts';
import type { Result } from '../../problems.ts';
import type { DoseAnswer } from './dose.ts';
import {
  type DoseSetting,
  type Prescription,
  type PrescriptionState,
  prescribedDose,
  prescriptionState,
} from './prescription.ts';
import { type Course, type DoseSchedule, doseSchedule } from './schedule.ts';
import { prescriptionOf } from './underWay.ts';
import { isYoung } from './weighed.ts';

/** How a prescription stands for an animal at a moment: its days, its course, and the volume of the next dose or why there is none. */
export interface Treatment {
  readonly record: PrescriptionRecord;
  readonly prescription: Prescription;
  readonly state: PrescriptionState;
  readonly schedule: Result<DoseSchedule>;
  readonly dose: Result<DoseAnswer>;
}

const DAY_MS = 86_400_000;

/** Every prescription of an animal as it stands on a day, open ones first; `aheadMs`: how far the site’s clock is ahead of UTC. */
export function treatmentsOn(animal: AnimalRecord, on: Day, nowMs: number, aheadMs = 0): readonly Treatment[] {
  const all = animal.prescriptions.map((record) => treatmentOf(animal, record, { on, nowMs, aheadMs }));
  const isOpen = (one: Treatment): number => (one.state.state === 'open' || one.state.state === 'before' ? 0 : 1);
  return all.sort((a, b) => isOpen(a) - isOpen(b) || (a.record.writtenOn < b.record.writtenOn ? 1 : -1));
}

/** One of them by its id. */
export function treatmentBy(animal: AnimalRecord, id: EventId, on: Day, nowMs: number): Treatment | null {
  const record = animal.prescriptions.find((one) => one.id === id);
  return record === undefined ? null : treatmentOf(animal, record, { on, nowMs, aheadMs: 0 });
}

/** What a prescription that is being entered comes to for the animal’s last weight, as if it began on that day. */
export function enteredDose(
  animal: AnimalRecord,
  written: Payload<'prescription-written'>,
  on: Day,
): Result<DoseAnswer> {
  const begun = written.startsOn > on ? { ...written, startsOn: on } : written;
  return prescribedDose(begun as Prescription, settingOf(animal, begun, [], on));
}

interface Now {
  readonly on: Day;
  readonly nowMs: number;
  readonly aheadMs: number;
}

function treatmentOf(animal: AnimalRecord, record: PrescriptionRecord, now: Now): Treatment {
  const prescription = prescriptionOf(record);
  const earlierMl = record.given.map((one) => one.ml);
  return {
    record,
    prescription,
    state: prescriptionState(prescription, now.on),
    schedule: doseSchedule(courseOf(record, now), givenTimes(record.given, now.nowMs), now.nowMs),
    dose: prescribedDose(prescription, settingOf(animal, record.written, earlierMl, now.on)),
  };
}

/**
 * When doses were given; one that stands a little ahead was written by a device whose clock runs ahead of this one, and
 * counts as given now. One that stands a day ahead or more is left for the schedule to refuse.
 */
export function givenTimes(given: readonly GivenDose[], nowMs: number): readonly number[] {
  return given.map(({ atMs }) => (atMs - nowMs < DAY_MS ? Math.min(atMs, nowMs) : atMs));
}

/** The weight that counts for a dose of a day: the last one until then, also where the dose is written down later. */
export function weightFor(animal: AnimalRecord, on: Day): Weighing | null {
  return animal.weights.filter(({ day }) => day <= on).at(-1) ?? null;
}

function settingOf(
  animal: AnimalRecord,
  { syringesMl }: Payload<'prescription-written'>,
  earlierMl: readonly number[],
  on: Day,
): DoseSetting {
  const weight = weightFor(animal, on);
  return {
    on,
    weight: weight === null ? null : { massG: weight.weightG, massDate: weight.day, flagged: weight.doubted === true },
    earlierMl,
    young: weight === null ? undefined : isYoung(animal.species, weight.weightG),
    ...(syringesMl !== undefined && { syringesMl }),
  };
}

/** A course begins with the first dose that was given, else with the first day; its last day is whole. */
function courseOf({ written, given }: PrescriptionRecord, now: Now): Course {
  const endsOn = written.endsOn as Day | undefined;
  return {
    everyHours: written.everyHours,
    startsMs: given[0]?.atMs ?? firstDoseMs(written.startsOn as Day, now),
    count: written.count,
    endsMs: endsOn === undefined ? undefined : dayEndMs(endsOn, now),
  };
}

/** The paper gives the first day and no hour: the first dose is due all that day long, and late only when the day is over. */
function firstDoseMs(startsOn: Day, now: Now): number {
  if (now.on === startsOn) return Math.min(now.nowMs, dayEndMs(startsOn, now));
  return now.on < startsOn ? dayEndMs(addDays(startsOn, -1), now) + 1 : dayEndMs(startsOn, now);
}

function dayEndMs(day: Day, { aheadMs }: Now): number {
  return dayNumber(addDays(day, 1)) * DAY_MS - 1 - aheadMs;
}
