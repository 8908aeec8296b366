import { type Day, sayDayShort } from '../days.ts';
import { ROUND_TASKS, type RoundTask } from '../events/index.ts';
import { animalsInWalkingOrder, type Facility, nameOf } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { roundTo } from '../units.ts';
import { type AnimalTask, animalLine, sayRange } from './animalLines.ts';
import { homeAt, homesOf, sayGroup, standsIn } from './homes.ts';
import { DEFAULT_GAPS, type DefaultInterval, type Interval } from './intervals.ts';
import { isLeft, type RoundLine } from './line.ts';
import { isAtPlace, placeLine } from './placeLines.ts';

/** Which round is asked for; `within`: only what stands in that place; `aheadMs`: how far the site’s clock is ahead of UTC, for the day of a dose. */
export interface RoundQuestion {
  readonly task: RoundTask;
  readonly on: Day;
  readonly within?: Id;
  readonly aheadMs?: number;
}

/** The lines that are walked under one name: a rack, an exhibit, a room. */
export interface RoundGroup {
  readonly id: Id | null;
  readonly name: string;
  readonly lines: readonly RoundLine[];
}

/** How many lines stand in each state. */
export interface RoundCounts {
  readonly all: number;
  /** Due and overdue together. */
  readonly left: number;
  readonly overdue: number;
  readonly done: number;
  readonly skipped: number;
  readonly held: number;
}

/** Rule CARE-ROUND: every line of a task on a day in walking order, whatever its state; homes or animals as the task has it. */
export function roundPlan(facility: Facility, question: RoundQuestion): readonly RoundLine[] {
  const { task, on, within } = question;
  if (isAtPlace(task)) return homesOf(facility, within).flatMap((home) => placeLine(facility, home, task, on) ?? []);
  return animalsInWalkingOrder(facility)
    .filter((animal) => within === undefined || standsIn(facility, animal.place, within))
    .flatMap((animal) => animalLine(facility, animal, ofAnimals(question)) ?? []);
}

/** The line that a scanned card or label is about: of its home, or of the animal or the only one in that home; null where there is none. */
export function lineFor(facility: Facility, scanned: Id, question: RoundQuestion): RoundLine | null {
  const { task, on } = question;
  const animal = facility.animals.get(scanned);
  const home = homeAt(facility, animal?.place ?? scanned);
  if (isAtPlace(task)) return home === null ? null : placeLine(facility, home, task, on);
  const meant = animal ?? (home?.animals.length === 1 ? home.animals[0] : undefined);
  return meant === undefined || meant.left !== null ? null : animalLine(facility, meant, ofAnimals(question));
}

function ofAnimals({ task, on, aheadMs = 0 }: RoundQuestion) {
  return { task: task as AnimalTask, on, aheadMs };
}

/** The lines under the names of their racks, exhibits and rooms, in walking order. */
export function groupsOf(facility: Facility, lines: readonly RoundLine[]): readonly RoundGroup[] {
  const groups = new Map<Id | null, RoundLine[]>();
  for (const line of lines) {
    const group = groups.get(line.group);
    if (group === undefined) groups.set(line.group, [line]);
    else group.push(line);
  }
  return [...groups].map(([id, own]) => ({ id, name: sayGroup(facility, id), lines: own }));
}

/** The figures of a round. */
export function countsOfRound(lines: readonly RoundLine[]): RoundCounts {
  const count = (is: (line: RoundLine) => boolean): number => lines.filter(is).length;
  return {
    all: lines.length,
    left: count(isLeft),
    overdue: count(({ state }) => state === 'overdue'),
    done: count(({ state }) => state === 'done'),
    skipped: count(({ state }) => state === 'skipped'),
    held: count(({ state }) => state === 'held'),
  };
}

/** One round of the day. */
export interface DayRound {
  readonly task: RoundTask;
  readonly lines: readonly RoundLine[];
  readonly counts: RoundCounts;
}

/** Every round of a day of which the site has any line, in the order of the tasks. */
export function roundsOfDay(facility: Facility, on: Day, aheadMs = 0): readonly DayRound[] {
  return ROUND_TASKS.map((task) => {
    const lines = roundPlan(facility, { task, on, aheadMs });
    return { task, lines, counts: countsOfRound(lines) };
  }).filter(({ lines }) => lines.length > 0);
}

/** Why a line stands as it does: the interval and where it comes from, or what its rule says. */
export function sayWhy(facility: Facility, line: RoundLine): readonly string[] {
  const { lastDone, interval, why, problem } = line;
  const by = lastDone?.by ? ` by ${lastDone.by}` : '';
  const last = lastDone === null ? 'never logged here' : `last on ${sayDayShort(lastDone.day)}${by}`;
  const days = interval === null ? [] : sayInterval(facility, interval);
  const doubt = problem === null ? [] : [`${problem.message} ${problem.remedy}`];
  return [...(line.task === 'feeding' ? [] : [last]), ...days, ...why, ...doubt];
}

/** An interval in words, what holds first: own days, what was learned and how, the default and its mark. */
export function sayInterval(facility: Facility, { from, own, learned, usual }: Interval): readonly string[] {
  const owned = own === null ? [] : [`every ${sayRange(own.everyDays)}, set at ${nameOf(facility, own.at)} (own)`];
  const found = sayLearned({ learned, usual });
  const first = usual === null ? [] : [sayDefault(usual)];
  return from === 'own' ? [...owned, ...found, ...first] : [...found, ...first];
}

/** `default 14–28 days, tub (C: common practice, no source)`. */
export function sayDefault({ everyDays, where, mark, source }: DefaultInterval): string {
  return `default ${sayRange(everyDays)}, ${where} (${mark}: ${source})`;
}

function sayLearned({ learned, usual }: Pick<Interval, 'learned' | 'usual'>): readonly string[] {
  if (learned === null) return [];
  const { everyDays, gaps, grown } = learned;
  const many = `${gaps} ${gaps === 1 ? 'gap' : 'gaps'} here`;
  const how = usual === null ? many : `${many}, the default counted in as ${DEFAULT_GAPS}`;
  const size = grown === null ? '' : `; shortened, for the weight is ${roundTo(grown.times, 2)} times what it was (D)`;
  return [`every ${sayRange(everyDays)}, learned from ${how} (C: ours)${size}`];
}
