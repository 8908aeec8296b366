import { dayFromNumber, sayDayShort } from '../../days.ts';
import { ok, type Problem, problem, type Result } from '../../problems.ts';
import { roundTo } from '../../units.ts';
import { positive } from './amount.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** Intervals and numbers beyond these are slips of typing (common practice, no source). */
const HOURS = { least: 1, most: 8760 } as const;
const MOST_DOSES = 1000;

/** Rule CARE-COURSE: a dose after less than half the interval was doubled; before three quarters of it is too early (common practice, no source). */
export const COURSE_SHARES = { doubled: 0.5, early: 0.75 } as const;

/** What is said of a doubled dose wherever one stands. */
export const DOUBLED_WORDS = 'Two doses stand less than half an interval apart: call the vet now.';

/** A course as the vet wrote it, in milliseconds since 1970: an interval, and how many doses or until when. */
export interface Course {
  readonly everyHours: number;
  readonly startsMs: number;
  readonly count?: number | undefined;
  readonly endsMs?: number | undefined;
}

/** How a course stands. */
export interface DoseSchedule {
  readonly state: 'before' | 'waiting' | 'due' | 'missed' | 'done';
  readonly given: number;
  /** How many doses are left; null where the course has an end and no number. */
  readonly left: number | null;
  /** When the next dose is due: the interval after the last one; null when nothing more is due. */
  readonly nextMs: number | null;
  readonly lastMs: number | null;
  /** When the last dose is due if none is missed. */
  readonly endsMs: number;
  /** When the last dose is due as it stands now, with the next one given on time or else now; null when nothing more is due. */
  readonly lastDueMs: number | null;
  readonly missed: number;
  /** Doses that were given less than half an interval after another, by their time. */
  readonly doubledMs: readonly number[];
  readonly warnings: readonly string[];
}

/**
 * Rule CARE-COURSE: the next dose is due the interval after the last one, never sooner to catch up. `givenMs` in any order.
 * Errors: `not-finite`, `not-positive`, `not-whole`, `course-impossible`, `course-open`, `course-backwards`, `date-future`.
 */
export function doseSchedule(course: Course, givenMs: readonly number[], nowMs: number): Result<DoseSchedule> {
  const wrong = courseFault(course, givenMs, nowMs);
  if (wrong !== null) return { ok: false, problem: wrong };
  const everyMs = course.everyHours * HOUR_MS;
  const given = [...givenMs].sort((a, b) => a - b);
  const lastMs = given.at(-1) ?? null;
  const endsMs = lastDose(course, everyMs);
  const left = course.count === undefined ? null : Math.max(0, course.count - given.length);
  const nextMs = nextDose(course, lastMs, left, everyMs);
  const open = nextMs === null ? 0 : missedUntil(nextMs, nowMs, everyMs, course.endsMs, left);
  const missed = open + missedBetween(given, course.startsMs, everyMs);
  const doubledMs = given.filter((ms, at) => at > 0 && ms - (given[at - 1] ?? ms) < COURSE_SHARES.doubled * everyMs);
  const over = course.count === undefined ? 0 : Math.max(0, given.length - course.count);
  return ok({
    state: stateOf(nextMs, lastMs, open, nowMs),
    given: given.length,
    ...{ left, nextMs, lastMs, endsMs, missed, doubledMs },
    lastDueMs: nextMs === null ? null : lastDue(course, Math.max(nextMs, nowMs), left, everyMs),
    warnings: warningsOf(missed, doubledMs.length, over),
  });
}

/** Whether a dose may be given now: null, or `dose-too-early`, `course-done`, and the errors of {@link doseSchedule}. */
export function doseTimeFault(course: Course, givenMs: readonly number[], nowMs: number): Problem | null {
  const schedule = doseSchedule(course, givenMs, nowMs);
  if (!schedule.ok) return schedule.problem;
  const { nextMs, lastMs, given } = schedule.value;
  if (nextMs === null) return problem('course-done', { given });
  const early = (1 - COURSE_SHARES.early) * course.everyHours * HOUR_MS;
  if (nowMs >= nextMs - early) return null;
  const since = lastMs === null ? 'None was given yet' : `The last one was given ${hours(nowMs - lastMs)} h ago`;
  return problem('dose-too-early', { since, hours: hours(nextMs - nowMs) });
}

/**
 * Whether a dose that was given at an instant stands too near to another one, before it or after it: null, or
 * `dose-close`, and the errors of {@link countFault}.
 */
export function doseCloseFault(everyHours: number, givenMs: readonly number[], atMs: number): Problem | null {
  const wrong = countFault({ everyHours });
  if (wrong !== null) return wrong;
  const nearest = givenMs.reduce((least, ms) => Math.min(least, Math.abs(ms - atMs)), Number.POSITIVE_INFINITY);
  if (nearest >= COURSE_SHARES.early * everyHours * HOUR_MS) return null;
  return problem('dose-close', { hours: hours(nearest), every: everyHours });
}

/**
 * What is wrong with the interval and the number of a course, or null: `not-finite`, `not-positive`, `not-whole`,
 * `course-impossible`.
 */
export function countFault({ everyHours, count }: Pick<Course, 'everyHours' | 'count'>): Problem | null {
  const interval = positive(everyHours, 'hours between doses', 'everyHours');
  if (!interval.ok) return interval.problem;
  const number = positive(count ?? 1, 'number of doses', 'count');
  if (!number.ok) return number.problem;
  if (!Number.isInteger(number.value)) return problem('not-whole', { what: 'number of doses' }, 'count');
  const possible = everyHours >= HOURS.least && everyHours <= HOURS.most && number.value <= MOST_DOSES;
  return possible ? null : problem('course-impossible', { hours: everyHours, doses: number.value });
}

function courseFault(course: Course, givenMs: readonly number[], nowMs: number): Problem | null {
  const { startsMs, count, endsMs } = course;
  const figures = countFault(course);
  if (figures !== null) return figures;
  const times = [startsMs, nowMs, ...givenMs, ...(endsMs === undefined ? [] : [endsMs])];
  if (!times.every((ms) => Math.abs(ms) < MOST_MS)) return problem('not-finite', { what: 'time of a dose' });
  if (count === undefined && endsMs === undefined) return problem('course-open');
  if (endsMs !== undefined && endsMs < startsMs)
    return problem('course-backwards', { end: sayMs(endsMs), start: sayMs(startsMs) });
  const ahead = givenMs.find((ms) => ms > nowMs);
  return ahead === undefined ? null : problem('date-future', { day: sayMs(ahead) });
}

/** Times beyond the year 9999 are no times of this world. */
const MOST_MS = 253_402_300_800_000;

function lastDose({ startsMs, count, endsMs }: Course, everyMs: number): number {
  const byCount = count === undefined ? Number.POSITIVE_INFINITY : startsMs + (count - 1) * everyMs;
  const byEnd =
    endsMs === undefined ? Number.POSITIVE_INFINITY : startsMs + Math.floor((endsMs - startsMs) / everyMs) * everyMs;
  return Math.min(byCount, byEnd);
}

function lastDue({ endsMs }: Course, fromMs: number, left: number | null, everyMs: number): number {
  const byCount = left === null ? Number.POSITIVE_INFINITY : fromMs + (left - 1) * everyMs;
  if (endsMs === undefined) return byCount;
  // A dose that is late may be given after the written end, and then it is the last one.
  const byEnd = fromMs + Math.max(0, Math.floor((endsMs - fromMs) / everyMs)) * everyMs;
  return Math.min(byCount, byEnd);
}

function nextDose({ startsMs, endsMs }: Course, lastMs: number | null, left: number | null, everyMs: number) {
  if (left === 0) return null;
  const next = lastMs === null ? startsMs : lastMs + everyMs;
  return endsMs !== undefined && next > endsMs ? null : next;
}

/** Doses due since `nextMs` that are half an interval late or more: by then the one after is nearer. */
function missedUntil(nextMs: number, nowMs: number, everyMs: number, endsMs: number | undefined, left: number | null) {
  const late = Math.floor((nowMs - nextMs) / everyMs + 0.5);
  const byEnd = endsMs === undefined ? late : Math.floor((endsMs - nextMs) / everyMs) + 1;
  return Math.max(0, Math.min(late, byEnd, left ?? late));
}

function missedBetween(given: readonly number[], startsMs: number, everyMs: number): number {
  return given.reduce((sum, ms, at) => {
    const before = given[at - 1] ?? startsMs - everyMs;
    return sum + Math.max(0, Math.floor((ms - before) / everyMs + 0.5) - 1);
  }, 0);
}

function stateOf(nextMs: number | null, lastMs: number | null, open: number, nowMs: number): DoseSchedule['state'] {
  if (nextMs === null) return 'done';
  if (open > 0) return 'missed';
  if (nowMs >= nextMs) return 'due';
  return lastMs === null ? 'before' : 'waiting';
}

function warningsOf(missed: number, doubled: number, over: number): readonly string[] {
  const warnings: string[] = [];
  if (missed > 0)
    warnings.push(
      `${missed} ${missed === 1 ? 'dose was' : 'doses were'} missed. Never give two at once to catch up; ask the vet how to go on.`,
    );
  if (doubled > 0) warnings.push(DOUBLED_WORDS);
  if (over > 0)
    warnings.push(`${over} more than the vet wrote ${over === 1 ? 'was' : 'were'} given: call the vet now.`);
  return warnings;
}

function hours(ms: number): number {
  return roundTo(ms / HOUR_MS, 1);
}

function sayMs(ms: number): string {
  return sayDayShort(dayFromNumber(Math.floor(ms / DAY_MS)));
}
