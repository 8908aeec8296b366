import type { AnimalRecord, Skip } from '../animal/index.ts';
import type { Meal } from '../care/index.ts';
import { addDays, type Day } from '../days.ts';
import type { RoundTask } from '../events/index.ts';
import type { PlaceRecord } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { Problem } from '../problems.ts';
import type { Days, Interval } from './intervals.ts';

/** How a line stands on the day: `soon` is not yet due, `held` is due but not now, `skipped` was passed over on purpose. */
export type LineState = 'soon' | 'due' | 'overdue' | 'done' | 'skipped' | 'held';

/** One stop of a round: a home, or one animal where each is fed, weighed or treated by itself. */
export interface RoundLine {
  readonly task: RoundTask;
  /** What is scanned for it: the home, or the animal. */
  readonly of: Id;
  readonly place: PlaceRecord | null;
  /** The rack, exhibit or room under whose name it is walked; null without a place. */
  readonly group: Id | null;
  readonly animals: readonly AnimalRecord[];
  readonly state: LineState;
  /** The first day on which it is due, and the last one; the day after is overdue. Null where nobody can say. */
  readonly next: Day | null;
  readonly last: Day | null;
  /** When it was done last; `by` is null where the record does not keep who did it. */
  readonly lastDone: { readonly day: Day; readonly by: string | null } | null;
  /** That it was passed over on that day. */
  readonly skip: Skip | null;
  /** What else stands on the line: refused, to be looked at again, ill and weighed weekly. */
  readonly words: string | null;
  /** Why one touch for all leaves it out; null where it does not. */
  readonly problem: Problem | null;
  readonly interval: Interval | null;
  /** What it is fed. */
  readonly meal: Meal | null;
  /** Why it is due when it is, as far as the interval does not say. */
  readonly why: readonly string[];
}

/** What of a line depends on its task. */
export type LineFacts = Partial<Omit<RoundLine, 'task' | 'of' | 'animals' | 'place' | 'group'>> &
  Pick<RoundLine, 'state'>;

/** A line of which only what is told is known. */
export function lineOf(
  on: Pick<RoundLine, 'task' | 'of' | 'animals' | 'place' | 'group'>,
  facts: LineFacts,
): RoundLine {
  return { ...BARE, ...on, ...facts };
}

const BARE = {
  ...{ next: null, last: null, lastDone: null, skip: null, words: null, problem: null, interval: null, meal: null },
  why: [],
} as const;

/** Rule CARE-ROUND: due from the first day after the last deed on, overdue after the last one; what was never logged is due. */
export function windowAfter(
  lastDone: Day | null,
  [low, high]: Days,
  on: Day,
): Pick<RoundLine, 'state' | 'next' | 'last'> {
  if (lastDone === null) return { state: 'due', next: on, last: on };
  const [next, last] = [addDays(lastDone, low), addDays(lastDone, high)];
  return { state: on < next ? 'soon' : on > last ? 'overdue' : 'due', next, last };
}

/** True for a line that the round still has to do. */
export function isLeft({ state }: Pick<RoundLine, 'state'>): boolean {
  return state === 'due' || state === 'overdue';
}
