import { type AnimalRecord, lastWeight } from '../animal/index.ts';
import { AFTER_REFUSAL_DAYS, type Due, type FeedPlan, feedPlan, nextFeedDue, plannedMeal } from '../care/index.ts';
import { addDays, type Day, daysBetween } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { Result } from '../problems.ts';
import { acceptanceOf } from './acceptance.ts';
import type { Gaps, Rhythm, Start } from './renewal.ts';
import { type Planned, rhythmOf, type Timing, timingOf } from './rhythm.ts';

/** An animal that will be offered prey: what, when for the first time, and how it goes on. */
export interface Eater {
  readonly prey: string;
  readonly items: number;
  readonly start: Start;
  readonly rhythm: Rhythm;
}

/** An animal whose need nobody can tell, and why. */
export interface Uncounted {
  readonly animal: Id;
  readonly why: string;
}

/** The animals that are here, counted and not. */
export interface Eaters {
  readonly counted: readonly Eater[];
  readonly uncounted: readonly Uncounted[];
}

/** Every animal that is here with what it will be offered from a day on; held ones from the end of their hold, where it is known. */
export function eatersOf(facility: Facility, on: Day): Eaters {
  const here = [...facility.animals.values()].filter((animal) => animal.left === null);
  const read = here.map((animal) => ({ animal, plan: planOf(animal) }));
  const planned = read.flatMap(({ animal, plan }) => (plan.ok ? [{ animal, everyDays: plan.value.everyDays }] : []));
  const book = { timing: timingOf(planned), rhythms: new Map(), starts: new Map() };
  const counted: Eater[] = [];
  const uncounted: Uncounted[] = [];
  for (const { animal, plan } of read) {
    const found = plan.ok ? eaterOf({ animal, everyDays: plan.value.everyDays }, on, book) : sayProblem(plan.problem);
    if (typeof found === 'string') uncounted.push({ animal: animal.id, why: found });
    else counted.push(found);
  }
  return { counted, uncounted };
}

/** Animals that are alike share their rhythm and their start, and so what is worked out from them. */
interface Book {
  readonly timing: Timing;
  readonly rhythms: Map<string, Rhythm>;
  readonly starts: Map<string, Start>;
}

function planOf(animal: AnimalRecord): Result<FeedPlan> {
  return feedPlan(animal.species, lastWeight(animal)?.weightG ?? null, animal.plan);
}

function eaterOf(planned: Planned, on: Day, book: Book): Eater | string {
  const { animal, everyDays } = planned;
  const due = nextFeedDue(animal, on);
  if (!due.ok) return sayProblem(due.problem);
  const { next, hold } = due.value;
  if (next === null) return `not fed until somebody says so: ${hold?.reason ?? 'a hold'}`;
  const meal = plannedMeal(animal, on);
  if (!meal.ok) return sayProblem(meal.problem);
  const { yes, no } = acceptanceOf(animal, on);
  const { timing } = book;
  const key = `${everyDays.join('-')} ${yes} ${no}`;
  const rhythm = kept(book.rhythms, key, () => rhythmOf({ yes, no }, timing.afterMeal(everyDays), timing.afterRefusal));
  const first = firstOffer(planned, due.value, on);
  const start = kept(book.starts, `${key} ${Object.values(first).join(' ')}`, () => startOf(first, rhythm));
  return { prey: meal.value.prey, items: meal.value.count, start, rhythm };
}

function kept<T>(known: Map<string, T>, key: string, make: () => T): T {
  const found = known.get(key) ?? make();
  known.set(key, found);
  return found;
}

function sayProblem({ message, remedy }: { readonly message: string; readonly remedy: string }): string {
  return `${message} ${remedy}`;
}

/** The first offer: so many days from now with all days alike, and so many days after the last one if that alone decides. */
interface FirstOffer {
  readonly from: number;
  readonly to: number;
  readonly since: number | null;
  readonly taken: boolean;
}

function firstOffer({ animal, everyDays }: Planned, due: Due, on: Day): FirstOffer {
  const last = animal.offers.at(-1);
  const taken = last?.taken ?? false;
  const waits = taken ? everyDays[0] : AFTER_REFUSAL_DAYS[0];
  // Only where nothing else moved the meal does the last offer say when the next one comes.
  const decides = last !== undefined && due.hold === null && due.next === addDays(last.day, waits);
  return {
    from: daysBetween(on, due.next ?? on),
    to: daysBetween(on, due.last ?? on),
    since: decides ? daysBetween(last.day, on) : null,
    taken,
  };
}

/** Given that it has not been made yet; what is overdue is offered today. */
function startOf({ from, to, since, taken }: FirstOffer, { afterTaken, afterRefused }: Rhythm): Start {
  const start = since === null ? null : laterThan(taken ? afterTaken : afterRefused, since);
  return start ?? alike(from, to);
}

/** The days until the next offer when so many have gone by; null when none is left. */
function laterThan({ first, chances }: Gaps, days: number): Start | null {
  const start = new Float64Array(Math.max(0, first + chances.length - days));
  let all = 0;
  for (const [at, chance] of chances.entries()) {
    const day = first + at - days;
    if (day < 0) continue;
    start[day] = chance;
    all += chance;
  }
  return all > 0 ? start.map((chance) => chance / all) : null;
}

function alike(from: number, to: number): Start {
  const [first, last] = [Math.max(0, from), Math.max(0, from, to)];
  return new Float64Array(last + 1).fill(1 / (last - first + 1), first);
}
