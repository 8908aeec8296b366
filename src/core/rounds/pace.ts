import type { Day } from '../days.ts';
import { standing } from '../events/effective.ts';
import type { LogEvent, RoundTask, SiteEvent } from '../events/index.ts';
import { type Facility, taskOf } from '../facility/index.ts';
import { groupOf } from './homes.ts';

/** Rule CARE-PACE: time between two entries of one keeper counts as walking up to so many minutes; more was a break (ours). */
export const BREAK_MINUTES = 20;
/** Rule CARE-PACE: less walking than this says nothing of a pace (ours). */
export const LEAST_MINUTES = 2;

/** What one day's log says of a task: how many, by whom, and how fast. */
export interface DayWork {
  readonly pieces: number;
  /** Pieces by keeper, the most first. */
  readonly byKeeper: readonly (readonly [keeper: string, pieces: number])[];
  /** Pieces an hour while walking, whole; null where one touch or too short a walk says nothing. */
  readonly perHour: number | null;
  /** The minutes and pieces that the pace was worked out from. */
  readonly minutes: number;
  readonly timed: number;
}

interface Entry {
  readonly keeper: string;
  readonly ms: number;
  readonly pieces: number;
}

/**
 * Rule CARE-PACE: the work of a day by task, from the events of that day in any order; slips count. The pace is what was
 * logged after the first entry of each stretch, by the time of the stretch; a stretch ends with a break. A round that was
 * begun starts the clock, so that one touch for a whole rack has a pace too.
 */
export function dayWork(facility: Facility, events: readonly LogEvent[], on: Day): ReadonlyMap<RoundTask, DayWork> {
  const entries = new Map<RoundTask, Entry[]>();
  for (const event of standing(events)) {
    const task = event.day === on ? workOf(event) : null;
    if (task === null) continue;
    const pieces = event.kind === 'round-started' ? 0 : piecesOf(facility, event);
    const entry = { keeper: event.keeper, ms: event.clock[0], pieces };
    entries.set(task, [...(entries.get(task) ?? []), entry]);
  }
  const work = [...entries].map(([task, own]) => [task, workFrom(own)] as const);
  return new Map(work.filter(([, { pieces }]) => pieces > 0));
}

/** `82 an hour (57 in 42 minutes)`; null where there is no pace. */
export function sayPace({ perHour, timed, minutes }: DayWork): string | null {
  return perHour === null ? null : `${perHour} an hour (${timed} in ${minutes} minutes)`;
}

function workOf(event: SiteEvent): RoundTask | null {
  switch (event.kind) {
    case 'prey-offered':
      return 'feeding';
    case 'animal-weighed':
      return 'weigh';
    case 'dose-given':
      return 'treat';
    case 'round-started':
      return event.payload.task;
    default:
      return taskOf(event);
  }
}

/** A deed at many homes counts them all; the rack around them is no home. */
function piecesOf(facility: Facility, { subjects }: SiteEvent): number {
  const [first] = subjects;
  const homes = subjects.filter((id) => facility.places.has(id));
  const inFirst = homes.filter((id) => id !== first && groupOf(facility, id) === first).length;
  return Math.max(1, inFirst > 0 ? inFirst : homes.length);
}

function workFrom(entries: readonly Entry[]): DayWork {
  const byKeeper = new Map<string, Entry[]>();
  for (const entry of entries) byKeeper.set(entry.keeper, [...(byKeeper.get(entry.keeper) ?? []), entry]);
  const count = (own: readonly Entry[]): number => own.reduce((sum, one) => sum + one.pieces, 0);
  const walked = [...byKeeper.values()].map(walkOf);
  const timed = walked.reduce((sum, one) => sum + one.timed, 0);
  const minutes = walked.reduce((sum, one) => sum + one.ms, 0) / 60_000;
  const counted = [...byKeeper]
    .map(([keeper, own]) => [keeper, count(own)] as const)
    .filter(([, pieces]) => pieces > 0);
  return {
    pieces: count(entries),
    byKeeper: counted.sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1)),
    perHour: minutes < LEAST_MINUTES || timed === 0 ? null : Math.round((60 * timed) / minutes),
    minutes: Math.round(minutes),
    timed,
  };
}

/** The stretches of one keeper: what was logged in them after their first entry, and how long they took. */
function walkOf(entries: readonly Entry[]): { readonly timed: number; readonly ms: number } {
  const sorted = [...entries].sort((a, b) => a.ms - b.ms);
  let [timed, ms] = [0, 0];
  for (const [at, { ms: now, pieces }] of sorted.entries()) {
    const before = sorted[at - 1];
    if (before === undefined || now - before.ms > BREAK_MINUTES * 60_000) continue;
    timed += pieces;
    ms += now - before.ms;
  }
  return { timed, ms };
}
