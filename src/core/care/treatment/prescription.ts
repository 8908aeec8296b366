import { type Day, daysBetween, sayDayShort } from '../../days.ts';
import { type Problem, problem, type Result } from '../../problems.ts';
import { type Dose, type Mass, mgPerKgOf, mgPerMlOf, positive, type Strength } from './amount.ts';
import { type DoseAnswer, doseVolume, writtenVolume } from './dose.ts';
import { countFault } from './schedule.ts';
import { syringesFault } from './syringe.ts';
import { tenfoldFault } from './tenfold.ts';
import type { Weighed } from './weighed.ts';

/** How much the vet wrote: by body mass, or as a volume. */
export type Amount =
  | { readonly by: 'mass'; readonly dose: Dose; readonly strength: Strength }
  | { readonly by: 'volume'; readonly ml: number; readonly strength?: Strength | undefined };

/** The days of a prescription; the last day of each is still good. */
export interface PrescriptionDays {
  readonly startsOn: Day;
  readonly endsOn?: Day | undefined;
  /** Until when the vet's paper is valid. */
  readonly validUntil?: Day | undefined;
  /** Until when the drug may be used. */
  readonly drugExpiresOn?: Day | undefined;
  readonly recheckOn?: Day | undefined;
  /** When the vet stopped it. */
  readonly stoppedOn?: Day | undefined;
}

/** A prescription as the vet wrote it: every figure is the vet's, and none is filled in. */
export interface Prescription extends PrescriptionDays {
  readonly drug: string;
  readonly prescriber: string;
  readonly amount: Amount;
  readonly route: string;
  readonly everyHours: number;
  readonly count?: number | undefined;
  /** Only with the volume that the vet wrote: more than 2 % of body mass into the stomach. */
  readonly capPercent?: number | undefined;
  /** The syringes at hand for it, in mL; left out, the usual sizes are taken. */
  readonly syringesMl?: readonly number[] | undefined;
}

/** Where a prescription stands on a day: only an open one may be given from. */
export interface PrescriptionState {
  readonly state: 'before' | 'open' | 'ended' | 'expired' | 'stopped';
  readonly fault: Problem | null;
  /** When the vet wants to see the animal again, and in how many days (below 0: ago). */
  readonly recheck: { readonly on: Day; readonly inDays: number } | null;
}

/** The animal and the cupboard on the day of a dose. */
export interface DoseSetting {
  readonly on: Day;
  readonly weight: (Mass & Weighed) | null;
  readonly young?: boolean | undefined;
  readonly syringesMl?: readonly number[] | undefined;
  /** What was given before on the same prescription, in mL. */
  readonly earlierMl: readonly number[];
}

/**
 * Rule CARE-PRESCRIPTION: nothing is worked out before a prescription begins, after it ended, when its paper or its drug has
 * expired, or when the vet stopped it. Problems: `prescription-not-begun`, `prescription-ended`, `prescription-expired`,
 * `drug-expired`, `prescription-stopped`.
 */
export function prescriptionState(days: PrescriptionDays, on: Day): PrescriptionState {
  const { startsOn, endsOn, validUntil, drugExpiresOn, stoppedOn, recheckOn } = days;
  const recheck = recheckOn === undefined ? null : { on: recheckOn, inDays: daysBetween(on, recheckOn) };
  const is = (state: PrescriptionState['state'], fault: Problem | null) => ({ state, fault, recheck });
  const says = (day: Day) => ({ day: sayDayShort(day) });
  if (stoppedOn !== undefined && on >= stoppedOn)
    return is('stopped', problem('prescription-stopped', says(stoppedOn)));
  if (validUntil !== undefined && on > validUntil)
    return is('expired', problem('prescription-expired', says(validUntil)));
  if (drugExpiresOn !== undefined && on > drugExpiresOn)
    return is('expired', problem('drug-expired', says(drugExpiresOn)));
  if (endsOn !== undefined && on > endsOn) return is('ended', problem('prescription-ended', says(endsOn)));
  return on < startsOn ? is('before', problem('prescription-not-begun', says(startsOn))) : is('open', null);
}

/**
 * What is wrong with a prescription as it was written down, or null: `text-missing`, `unit-missing`, `one-unit-only`,
 * `not-finite`, `not-positive`, `not-whole`, `course-impossible`, `strength-impossible`, `syringe-missing`, `syringe-unknown`,
 * `course-open`, `course-backwards`.
 */
export function prescriptionFault(prescription: Prescription): Problem | null {
  const { drug, prescriber, route, everyHours, count, capPercent, startsOn, endsOn, syringesMl } = prescription;
  const blank = Object.entries({ drug, prescriber, route }).find(([, text]) => text.trim() === '');
  if (blank !== undefined) return problem('text-missing', { what: blank[0] }, blank[0]);
  const figures = [
    ...amountFigures(prescription.amount),
    ...(capPercent === undefined ? [] : [positive(capPercent, 'cap', 'capPercent')]),
  ];
  const wrong = figures.find((one) => !one.ok);
  if (wrong !== undefined && !wrong.ok) return wrong.problem;
  const syringes = syringesMl === undefined ? null : syringesFault(syringesMl);
  if (syringes !== null) return syringes;
  const course = countFault({ everyHours, count });
  if (course !== null) return course;
  if (count === undefined && endsOn === undefined) return problem('course-open');
  const backwards = endsOn !== undefined && endsOn < startsOn;
  return backwards ? problem('course-backwards', { end: sayDayShort(endsOn), start: sayDayShort(startsOn) }) : null;
}

function amountFigures(amount: Amount): readonly Result<number>[] {
  switch (amount.by) {
    case 'mass':
      return [mgPerKgOf(amount.dose), mgPerMlOf(amount.strength)];
    case 'volume':
      return [
        positive(amount.ml, 'volume', 'ml'),
        ...(amount.strength === undefined ? [] : [mgPerMlOf(amount.strength)]),
      ];
    default:
      return amount satisfies never;
  }
}

/**
 * The volume of a prescription for an animal on a day. Errors: those of {@link prescriptionFault},
 * {@link prescriptionState}, {@link doseVolume} or {@link writtenVolume}, and `dose-tenfold`; `weight-none` without a weight.
 */
export function prescribedDose(prescription: Prescription, setting: DoseSetting): Result<DoseAnswer> {
  const fault = prescriptionFault(prescription) ?? prescriptionState(prescription, setting.on).fault;
  if (fault !== null) return { ok: false, problem: fault };
  const answer = volumeOf(prescription, setting);
  if (!answer.ok) return answer;
  const odd = tenfoldFault(answer.value.ml, setting.earlierMl);
  return odd === null ? answer : { ok: false, problem: odd };
}

function volumeOf({ amount, route, capPercent }: Prescription, setting: DoseSetting): Result<DoseAnswer> {
  if (amount.by === 'volume') return writtenVolume({ ...setting, ml: amount.ml, route });
  const { weight, ...rest } = setting;
  if (weight === null) return { ok: false, problem: problem('weight-none') };
  return doseVolume({ ...weight, ...rest, dose: amount.dose, strength: amount.strength, capPercent, route });
}
