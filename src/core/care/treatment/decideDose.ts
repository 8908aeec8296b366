import { type AnimalRecord, sayAnimal } from '../../animal/index.ts';
import { sayDayShort } from '../../days.ts';
import type { Payload } from '../../events/index.ts';
import type { EventId } from '../../ids.ts';
import { type Problem, problem } from '../../problems.ts';
import { type Decision, dayFault, type EventDraft, type Moment } from '../decide.ts';
import { prescriptionFault } from './prescription.ts';
import { doseTimeFault } from './schedule.ts';
import { type Treatment, treatmentBy } from './standing.ts';
import { sayMl } from './syringe.ts';
import { prescriptionOf } from './underWay.ts';

/** A dose that a keeper confirms: the volume as it was shown, and the second person where there is one. */
export interface ConfirmedDose {
  readonly prescription: EventId;
  readonly ml: number;
  readonly second?: string;
  readonly lot?: string;
  readonly note?: string;
}

/** What a site asks for at a dose. */
export interface DoseRules {
  readonly needsSecond: boolean;
  /** Who gives the dose: nobody checks their own. */
  readonly keeper?: string;
}

/**
 * What a given dose writes. Refused: a prescription that is not open, a volume that nobody can work out, a confirmed volume
 * that is not the one shown, a second person who is missing or the same. Asked about: too early, a course that is done.
 */
export function decideDose(
  animal: AnimalRecord,
  given: ConfirmedDose,
  moment: Moment,
  rules: DoseRules = { needsSecond: false },
): Decision {
  const treatment = treatmentBy(animal, given.prescription, moment.day, moment.nowMs);
  if (treatment === null) return { kind: 'refused', problem: problem('prescription-unknown', {}) };
  const refused = dayFault(animal, moment) ?? volumeFault(treatment, given) ?? secondFault(given, rules);
  if (refused !== null) return { kind: 'refused', problem: refused };
  const payload: Payload<'dose-given'> = {
    prescription: given.prescription,
    ml: given.ml,
    ...(given.second?.trim() && { second: given.second.trim() }),
    ...(given.lot?.trim() && { lot: given.lot.trim() }),
    ...(given.note?.trim() && { note: given.note.trim() }),
  };
  const draft: EventDraft = { kind: 'dose-given', subjects: [animal.id], payload, day: moment.day };
  const said = `dose given: ${sayMl(given.ml)}`;
  const doubt = animal.left === null ? timeDoubt(treatment, moment) : goneDoubt(animal);
  return doubt === null
    ? { kind: 'accepted', drafts: [draft], said }
    : { kind: 'asks', problem: doubt, drafts: [draft], said };
}

/** What a prescription that is entered writes; refused where its figures cannot be. */
export function decidePrescription(
  animal: AnimalRecord,
  written: Payload<'prescription-written'>,
  moment: Moment,
): Decision {
  const fault = dayFault(animal, moment) ?? prescriptionFault(prescriptionOf({ ...BLANK, written }));
  if (fault !== null) return { kind: 'refused', problem: fault };
  const draft: EventDraft = { kind: 'prescription-written', subjects: [animal.id], payload: written, day: moment.day };
  return { kind: 'accepted', drafts: [draft], said: `prescription: ${written.drug}` };
}

/** What the vet’s word that a prescription ends writes. */
export function decideStop(animal: AnimalRecord, id: EventId, by: string, moment: Moment): Decision {
  const record = animal.prescriptions.find((one) => one.id === id);
  if (record === undefined) return { kind: 'refused', problem: problem('prescription-unknown', {}) };
  if (by.trim() === '') return { kind: 'refused', problem: problem('vet-unnamed') };
  const fault = dayFault(animal, moment);
  if (fault !== null) return { kind: 'refused', problem: fault };
  const payload = { prescription: id, by: by.trim() };
  const draft: EventDraft = { kind: 'prescription-stopped', subjects: [animal.id], payload, day: moment.day };
  const said = `prescription stopped by ${by.trim()}`;
  if (record.stopped === null) return { kind: 'accepted', drafts: [draft], said };
  const doubt = problem('prescription-stopped', { day: sayDayShort(record.stopped.day) });
  return { kind: 'asks', problem: doubt, drafts: [draft], said };
}

const BLANK = { id: '' as EventId, writtenOn: '1970-01-01' as never, stopped: null, given: [] };

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

function timeDoubt({ record }: Treatment, { nowMs, day, today }: Moment): Problem | null {
  // A dose that is written down later stands at its own day; whether it came too early nobody can tell by the hour.
  if (day !== today) return null;
  const { everyHours, count } = record.written;
  const startsMs = record.given[0]?.atMs ?? nowMs;
  const course = { everyHours, startsMs, count: count ?? record.given.length + 1 };
  return doseTimeFault(
    course,
    record.given.map((one) => one.atMs),
    nowMs,
  );
}

function goneDoubt(animal: AnimalRecord): Problem {
  const { left } = animal;
  return problem('pairing-gone', {
    animal: sayAnimal(animal),
    how: left?.how ?? '',
    day: left === null ? '' : sayDayShort(left.day),
  });
}
