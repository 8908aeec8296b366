import type { AnimalRecord, PrescriptionRecord } from '../../animal/index.ts';
import type { Day } from '../../days.ts';
import { type Prescription, prescriptionState } from './prescription.ts';

/** The prescription of a record as the arithmetic takes it. */
export function prescriptionOf({ written, stopped }: PrescriptionRecord): Prescription {
  return { ...(written as Prescription), ...(stopped !== null && { stoppedOn: stopped.day }) };
}

/** Whether an animal is under treatment on a day: a prescription is open or about to begin, and its course is not done. */
export function isTreated(animal: AnimalRecord, on: Day): boolean {
  return animal.prescriptions.some((one) => isUnderWay(one, on));
}

/** Whether a prescription that is under way says that no food is to be given. */
export function withholdsFood(animal: AnimalRecord, on: Day): PrescriptionRecord | null {
  return animal.prescriptions.find((one) => one.written.withholdFood === true && isUnderWay(one, on)) ?? null;
}

/** Whether doses of a prescription may go on or are about to begin: it is not over, and its course is not done. */
export function isUnderWay(record: PrescriptionRecord, on: Day): boolean {
  const { state } = prescriptionState(prescriptionOf(record), on);
  const { count } = record.written;
  const isDone = count !== undefined && record.given.length >= count;
  return (state === 'open' || state === 'before') && !isDone;
}
