import { type AnimalRecord, KEPT_OFFERS, lastWeight } from '../animal/index.ts';
import { AFTER_REFUSAL_DAYS, type FeedDays, type FeedPlan, feedDays, feedPlan, plannedServing } from '../care/index.ts';
import { type Day, daysBetween } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { Result } from '../problems.ts';
import { type Acceptance, acceptanceOf, type EaterKind } from './acceptance.ts';
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
  const read: { readonly animal: AnimalRecord; readonly plan: Result<FeedPlan> }[] = [];
  for (const animal of facility.animals.values()) if (animal.left === null) read.push({ animal, plan: planOf(animal) });
  const planned = read.flatMap(({ animal, plan }) => (plan.ok ? [{ animal, everyDays: plan.value.everyDays }] : []));
  const book: Book = { timing: timingOf(planned), rhythms: new Map(), starts: new Map() };
  const counted: Eater[] = [];
  const uncounted: Uncounted[] = [];
  for (const { animal, plan } of read) {
    const found = plan.ok ? eaterOf(animal, plan.value, on, book) : sayProblem(plan.problem);
    if (typeof found === 'string') uncounted.push({ animal: animal.id, why: found });
    else counted.push(found);
  }
  return { counted, uncounted };
}

/** Animals that are alike share their rhythm and their start, and so what is worked out from them. */
interface Book {
  readonly timing: Timing;
  /** Each rhythm by its {@link rhythmKey}. */
  readonly rhythms: Map<number, Rhythm>;
  /** The starts of a rhythm, each by its {@link startKey}. */
  readonly starts: Map<Rhythm, Map<number, Start>>;
}

function planOf(animal: AnimalRecord): Result<FeedPlan> {
  return feedPlan(animal.species, lastWeight(animal)?.weightG ?? null, animal.plan);
}

function eaterOf(animal: AnimalRecord, plan: FeedPlan, on: Day, book: Book): Eater | string {
  const { everyDays } = plan;
  const due = feedDays(animal, on, plan);
  if (due.next === null) return `not fed until somebody says so: ${due.hold?.reason ?? 'a hold'}`;
  const meal = plannedServing(animal, on);
  if (!meal.ok) return sayProblem(meal.problem);
  const acceptance = acceptanceOf(animal, on);
  const { timing, rhythms } = book;
  const rhythm = kept(rhythms, rhythmKey(everyDays, acceptance), () =>
    rhythmOf(acceptance, timing.afterMeal(everyDays), timing.afterRefusal),
  );
  const starts = kept(book.starts, rhythm, () => new Map<number, Start>());
  const first = firstOffer({ animal, everyDays }, due, on, rhythm);
  const start = kept(starts, startKey(first), () => startOf(first, rhythm));
  return { prey: meal.value.prey, items: meal.value.count, start, rhythm };
}

/** What a map keeps under a key, made where nothing is kept yet. */
export function kept<K, T>(known: Map<K, T>, key: K, make: () => T): T {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}

function sayProblem({ message, remedy }: { readonly message: string; readonly remedy: string }): string {
  return `${message} ${remedy}`;
}

/** The first offer: so many days from now with all days alike, and so many days after the last one if that alone decides. */
interface FirstOffer {
  /** Never before today: what is overdue is offered today. */
  readonly from: number;
  readonly to: number;
  readonly since: number | null;
  readonly taken: boolean;
}

function firstOffer({ animal, everyDays }: Planned, due: FeedDays, on: Day, rhythm: Rhythm): FirstOffer {
  const last = animal.offers.at(-1);
  const taken = last?.taken ?? false;
  const waits = taken ? everyDays[0] : AFTER_REFUSAL_DAYS[0];
  const next = due.next === null ? 0 : daysBetween(on, due.next);
  const from = Math.max(0, next);
  const to = Math.max(from, due.last === null ? 0 : daysBetween(on, due.last));
  if (last === undefined || due.hold !== null) return { from, to, since: null, taken };
  // Only where nothing else moved the meal does the last offer say when the next one comes.
  const since = daysBetween(last.day, on);
  const { first, chances } = taken ? rhythm.afterTaken : rhythm.afterRefused;
  const decides = since >= 0 && next + since === waits && since < first + chances.length;
  return { from, to, since: decides ? since : null, taken };
}

/** Days ahead end with the calendar, the days of a plan and the offers of a record before these; so one number holds them all. */
const MOST_GAP_DAYS = 512;
const MOST_OFFERS = KEPT_OFFERS + 1;
const KINDS: readonly EaterKind[] = ['grower', 'adult', 'breeding male'];

/** Two animals of one plan, one kind and as many offers taken and refused go on in the same way. */
function rhythmKey([low, high]: readonly [number, number], { kind, offers, taken }: Acceptance): number {
  const eats = (low * MOST_GAP_DAYS + high) * KINDS.length + KINDS.indexOf(kind);
  return (eats * MOST_OFFERS + offers) * MOST_OFFERS + taken;
}

function startKey({ from, to, since, taken }: FirstOffer): number {
  const days = (from * MOST_GAP_DAYS + (to - from)) * MOST_GAP_DAYS;
  return (days + (since === null ? MOST_GAP_DAYS - 1 : since)) * 2 + (taken ? 1 : 0);
}

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
  return new Float64Array(to + 1).fill(1 / (to - from + 1), from);
}
