import type { AnimalRecord } from '../animal/index.ts';
import { type Due, type Meal, nextFeedDue, type PreyAtHand, plannedMeal } from '../care/index.ts';
import type { Day } from '../days.ts';
import { animalsInWalkingOrder, type Facility, sayPlace } from '../facility/index.ts';
import type { Problem } from '../problems.ts';
import { lastDayOf } from '../stock/lots.ts';
import { skipOn } from './placeLines.ts';

/** One animal of the day's list. */
export interface DueLine {
  readonly animal: AnimalRecord;
  readonly place: string | null;
  readonly due: Due | null;
  /** What it gets; null while it is not fed, or where nothing can be worked out. */
  readonly meal: Meal | null;
  readonly problem: Problem | null;
}

/** Every animal that is here, in walking order, with what is due and what it gets on that day. */
export function dueList(facility: Facility, on: Day): readonly DueLine[] {
  return animalsInWalkingOrder(facility).map((animal) => dueLine(facility, animal, on));
}

/** True for an animal that is to be fed on that day. */
export function isToFeed(line: DueLine): boolean {
  return line.due?.state === 'due' || line.due?.state === 'overdue';
}

/** One animal's line. */
export function dueLine(facility: Facility, animal: AnimalRecord, on: Day): DueLine {
  const place = sayPlace(facility, animal.place);
  const due = nextFeedDue(animal, on);
  if (!due.ok) return { animal, place, due: null, meal: null, problem: due.problem };
  if (due.value.state === 'vet') return { animal, place, due: due.value, meal: null, problem: null };
  const meal = plannedMeal(animal, on);
  return { animal, place, due: due.value, meal: meal.ok ? meal.value : null, problem: meal.ok ? null : meal.problem };
}

/** One line of the thaw list. */
export interface ThawLine {
  readonly prey: string;
  readonly needed: number;
  /** Needed and the spare, rounded up. */
  readonly thaw: number;
  /** In the freezer by the last count and not past its day; null if no lot of it is known. */
  readonly inFreezer: number | null;
  readonly animals: number;
}

/** Rule CARE-THAW: 5 % more than is due, rounded up (common practice, no source). */
export const SPARE_SHARE = 0.05;

/** What to take out tonight for the animals to be fed on that day; held and skipped ones are left out. */
export function thawList(facility: Facility, on: Day): readonly ThawLine[] {
  const needs = new Map<string, { items: number; animals: number }>();
  for (const line of dueList(facility, on)) {
    if (!isToFeed(line) || line.meal === null || isSkipped(line, on)) continue;
    const need = needs.get(line.meal.prey) ?? { items: 0, animals: 0 };
    needs.set(line.meal.prey, { items: need.items + line.meal.count, animals: need.animals + 1 });
  }
  return [...needs].sort(([a], [b]) => (a < b ? -1 : 1)).map(([prey, need]) => thawLine(facility, prey, need, on));
}

/** Nothing is thawed for one that was passed over on purpose that day. */
function isSkipped({ animal }: DueLine, on: Day): boolean {
  return skipOn(animal.skipped['feeding'], on) !== null;
}

function thawLine(facility: Facility, prey: string, need: { items: number; animals: number }, on: Day): ThawLine {
  const lots = [...facility.lots.values()].filter((lot) => lot.prey === prey);
  const good = lots.filter((lot) => on <= lastDayOf(lot));
  const inFreezer = lots.length === 0 ? null : good.reduce((sum, lot) => sum + lot.left, 0);
  return {
    prey,
    needed: need.items,
    thaw: Math.ceil(need.items * (1 + SPARE_SHARE)),
    inFreezer,
    animals: need.animals,
  };
}

/** What is at hand in the freezer on a day: lots with something left that are not past their day, oldest first. */
export function preyAtHand(facility: Facility, on: Day): readonly PreyAtHand[] {
  const good = [...facility.lots.values()].filter((lot) => lot.left > 0 && on <= lastDayOf(lot));
  return good
    .sort((a, b) => (`${a.receivedOn} ${a.id}` < `${b.receivedOn} ${b.id}` ? -1 : 1))
    .map((lot) => ({ prey: lot.prey, eachG: lot.eachG, count: lot.left }));
}
