import {
  type AnimalRecord,
  addDays,
  type Day,
  type DoseSchedule,
  sayDayShort,
  type Treatment,
  treatmentsOn,
} from '../../core/index.ts';
import type { DotState } from '../look/StateDot.tsx';
import { type Now, sayAway, sayMoment, sayNear, siteTime } from './siteTime.ts';

/** What is to be said of the next dose, with its dot. */
export interface NextDose {
  readonly dot: DotState;
  readonly words: string;
}

/** A treatment that is over stays in sight so many days: the recheck, the last dose and what went wrong are still fresh. */
const STAYS_DAYS = 14;

/** Every prescription of an animal as it stands now, those under way first. */
export function treatmentsNow(animal: AnimalRecord, now: Now): readonly Treatment[] {
  return treatmentsOn(animal, now.today, now.nowMs, now.aheadMs);
}

/** Whether a treatment still stands in sight: it goes on, ended lately, or its recheck is to come. */
export function isCurrent(treatment: Treatment, now: Now): boolean {
  const { record, state } = treatment;
  if (record.stopped !== null) return false;
  const since = addDays(now.today, -STAYS_DAYS);
  const over = overOn(treatment, now);
  return over === null || over >= since || (state.recheck !== null && state.recheck.on >= since);
}

/** Whether doses may go on: it is open or about to begin, and its course is not done. */
export function goesOn(treatment: Treatment, now: Now): boolean {
  return treatment.record.stopped === null && overOn(treatment, now) === null;
}

/** The day on which a treatment was over; null while it goes on. */
function overOn({ record, state, schedule }: Treatment, now: Now): Day | null {
  const { written, given } = record;
  switch (state.state) {
    case 'stopped':
      return record.stopped?.day ?? now.today;
    case 'expired':
      return [written.validUntil, written.drugExpiresOn].filter((day) => day !== undefined).sort()[0] as Day;
    case 'ended':
      return written.endsOn as Day;
    case 'before':
      return null;
    case 'open':
      return schedule.ok && schedule.value.state === 'done' ? (given.at(-1)?.day ?? now.today) : null;
    default:
      return state.state satisfies never;
  }
}

/** The next dose in words: when it is due, how far off that is, and what was missed. */
export function nextDose(treatment: Treatment, now: Now): NextDose {
  const { record, state, schedule } = treatment;
  if (record.stopped !== null) return { dot: 'none', words: sayStopped(record.stopped) };
  if (state.state === 'expired' || state.state === 'ended')
    return { dot: state.state === 'ended' ? 'fed' : 'vet', words: state.fault?.message ?? '' };
  if (!schedule.ok) return { dot: 'vet', words: `${schedule.problem.message} ${schedule.problem.remedy}` };
  return saySchedule(record.written.startsOn as Day, schedule.value, now);
}

function sayStopped({ by, day, why }: { readonly by: string; readonly day: Day; readonly why: string | null }): string {
  return `Stopped by ${by} on ${sayDayShort(day)}${why === null ? '' : `: ${why}`}`;
}

function saySchedule(startsOn: Day, schedule: DoseSchedule, now: Now): NextDose {
  const { state, nextMs, lastMs, given } = schedule;
  if (nextMs === null || state === 'done') return { dot: 'fed', words: `Course done, ${sayCount(given)} given` };
  // The paper gives the first day and no hour.
  const due = lastMs === null ? sayNear(startsOn, now.today) : sayMoment(nextMs, now);
  const which = lastMs === null ? 'First dose' : 'Next dose';
  const away = lastMs === null ? '' : `, ${sayAway(nextMs, now)}`;
  switch (state) {
    case 'missed':
      return { dot: 'overdue', words: `${which} was due ${due}${away}` };
    case 'due':
      return lastMs === null && startsOn !== now.today
        ? { dot: 'overdue', words: `${which} was due ${due}` }
        : { dot: 'due', words: `${which} due ${due}${away}` };
    case 'waiting':
    case 'before':
      return { dot: 'soon', words: `${which} ${due}${away}` };
    default:
      return state satisfies never;
  }
}

/** `1 dose`, `3 doses`. */
export function sayCount(doses: number): string {
  return `${doses} ${doses === 1 ? 'dose' : 'doses'}`;
}

/** `2 of 3 given, 1 left`; without a number on the paper only what was given. */
export function sayProgress({ record, schedule }: Treatment): string {
  const { count } = record.written;
  const { length } = record.given;
  if (count === undefined) return `${sayCount(length)} given`;
  const left = schedule.ok ? (schedule.value.left ?? 0) : count - length;
  return `${length} of ${count} given, ${left} left`;
}

/** The day on which the last dose is due as it stands now; null where nothing more is due. */
export function lastDoseDay({ schedule }: Treatment, now: Now): Day | null {
  if (!schedule.ok || schedule.value.lastDueMs === null) return null;
  return siteTime(schedule.value.lastDueMs, now.timeZone).day;
}

/** The day on which the next dose is due on the site’s clock; null where none is. */
export function dueDay({ record, schedule }: Treatment, now: Now): Day | null {
  if (!schedule.ok || schedule.value.nextMs === null) return null;
  if (schedule.value.lastMs === null) return record.written.startsOn as Day;
  return siteTime(schedule.value.nextMs, now.timeZone).day;
}
