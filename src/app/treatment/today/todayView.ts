import {
  type AnimalRecord,
  addDays,
  animalsInWalkingOrder,
  type Day,
  type Facility,
  sayPlace,
  type Treatment,
} from '../../../core/index.ts';
import type { DotState } from '../../look/StateDot.tsx';
import { type Now, siteTime } from '../siteTime.ts';
import { dueDay, goesOn, lastDoseDay, nextDose, treatmentsNow } from '../standings.ts';

/** One dose of the day’s walk. */
export interface DoseLine {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  readonly place: string | null;
  readonly state: 'left' | 'overdue' | 'done';
  readonly dot: DotState;
  readonly words: string;
  /** How many doses of it were given today. */
  readonly givenToday: number;
}

/** A recheck that the vet wants to see, or a course that cannot go on: somebody has to call. */
export interface CallLine {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  readonly on: Day;
  /** `ends`: the last dose is due; `over`: the course is done, and nobody wrote how it went. */
  readonly why: 'recheck' | 'expired' | 'ends' | 'over';
}

const LOOK_AHEAD_DAYS = 14;

/** Everybody’s doses of today in walking order: those to give, and those that were given. */
export function doseLines(facility: Facility, now: Now): readonly DoseLine[] {
  return treated(facility).flatMap((animal) =>
    treatmentsNow(animal, now).flatMap((treatment) => {
      const line = lineOf(facility, { animal, treatment }, now);
      return line === null ? [] : [line];
    }),
  );
}

interface Of {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
}

function lineOf(facility: Facility, { animal, treatment }: Of, now: Now): DoseLine | null {
  const givenToday = treatment.record.given.filter((one) => siteTime(one.atMs, now.timeZone).day === now.today).length;
  const due = goesOn(treatment, now) ? dueDay(treatment, now) : null;
  const isLeft = due !== null && due <= now.today;
  if (!isLeft && givenToday === 0) return null;
  const { dot, words } = nextDose(treatment, now);
  const isLate = isLeft && (due < now.today || dot === 'overdue');
  return {
    ...{ animal, treatment, words, givenToday },
    place: sayPlace(facility, animal.place),
    state: isLeft ? (isLate ? 'overdue' : 'left') : 'done',
    dot: isLeft ? (isLate ? 'overdue' : dot) : 'fed',
  };
}

/**
 * Course ends and rechecks from a fortnight ago to a fortnight ahead, courses that are over without a word about how they
 * went, and courses whose paper or drug expired before they were done.
 */
export function callLines(facility: Facility, now: Now): readonly CallLine[] {
  const [from, to] = [addDays(now.today, -LOOK_AHEAD_DAYS), addDays(now.today, LOOK_AHEAD_DAYS)];
  const lines = treated(facility).flatMap((animal) =>
    treatmentsNow(animal, now).flatMap((treatment): CallLine[] => {
      const { state, record } = treatment;
      const recheck = state.recheck?.on;
      const [expired = null] = [record.written.validUntil, record.written.drugExpiresOn].filter(isText).sort();
      const isCutShort = state.state === 'expired' && !isDone(treatment) && expired !== null && expired >= from;
      return [
        ...(isCutShort ? [{ animal, treatment, on: expired as Day, why: 'expired' } as const] : []),
        ...(recheck !== undefined && recheck >= from && recheck <= to
          ? [{ animal, treatment, on: recheck, why: 'recheck' } as const]
          : []),
        ...endLines({ animal, treatment }, { from, to }, now),
      ];
    }),
  );
  return lines.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

function endLines(
  { animal, treatment }: Of,
  { from, to }: { readonly from: Day; readonly to: Day },
  now: Now,
): readonly CallLine[] {
  const { record } = treatment;
  if (goesOn(treatment, now)) {
    const last = lastDoseDay(treatment, now);
    return last === null || last > to ? [] : [{ animal, treatment, on: last, why: 'ends' }];
  }
  const over = record.given.at(-1)?.day;
  const isSilent = record.stopped === null && record.outcomes.length === 0 && isDone(treatment);
  return isSilent && over !== undefined && over >= from ? [{ animal, treatment, on: over, why: 'over' }] : [];
}

/** The doses that a scanned card is about: those that are due, else all that go on. */
export function dosesOf(animal: AnimalRecord, now: Now): readonly Treatment[] {
  const going = treatmentsNow(animal, now).filter((one) => goesOn(one, now));
  const due = going.filter((one) => {
    const day = dueDay(one, now);
    return day !== null && day <= now.today;
  });
  return due.length > 0 ? due : going;
}

function treated(facility: Facility): readonly AnimalRecord[] {
  return animalsInWalkingOrder(facility).filter((animal) => animal.prescriptions.length > 0);
}

function isDone({ schedule }: Treatment): boolean {
  return schedule.ok && schedule.value.state === 'done';
}

function isText(text: string | undefined): text is string {
  return text !== undefined;
}
