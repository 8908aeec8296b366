import {
  countsOfRound,
  type Day,
  type Facility,
  type LineState,
  ROUND_TASKS,
  type RoundLine,
  type RoundTask,
  roundPlan,
  sayAnimal,
  sayHome,
  sayId,
  sayPlace,
  sayTask,
  sayWhy,
} from '../../core/index.ts';
import type { Given } from '../args.ts';
import { type Io, say } from '../io.ts';
import { refusal } from '../refused.ts';
import { alignedRows } from '../table.ts';

/** What `--state` takes beside a task other than feeding. */
export const LINE_STATES: readonly LineState[] = ['soon', 'due', 'overdue', 'done', 'skipped', 'held'];

/** The task of `--task`; feeding without it. Refusals: `option-value`. */
export function taskOf(given: Given): RoundTask {
  const text = given.texts['task'] ?? 'feeding';
  const task = ROUND_TASKS.find((one) => one === text);
  if (task !== undefined) return task;
  throw refusal('option-value', { option: '--task', text, wanted: `one of ${ROUND_TASKS.join(', ')}` });
}

/** The round that is asked for: a task on a day, and only lines in these states. */
export interface AskedRound {
  readonly task: RoundTask;
  readonly on: Day;
  readonly states: readonly string[];
}

/** Prints the lines of a round in walking order, as JSON or as a list with the reasons. */
export function sayRound(
  facility: Facility,
  { task, on, states }: AskedRound,
  io: Io & { readonly json: boolean },
): void {
  const lines = roundPlan(facility, { task, on }).filter((line) => states.includes(line.state));
  if (io.json) {
    say(io, JSON.stringify(lines.map((line) => asJson(facility, line))));
    return;
  }
  const rows = alignedRows(lines.map((line) => cells(facility, line)));
  for (const [at, line] of lines.entries()) {
    say(io, rows[at] ?? '');
    for (const reason of sayWhy(facility, line)) say(io, `    ${reason}`);
  }
  const { left, overdue } = countsOfRound(lines);
  say(io, `${sayTask(task)}: ${left} left, ${overdue} of them overdue, of ${lines.length} listed`);
}

function cells(facility: Facility, line: RoundLine): readonly string[] {
  const where = line.place === null ? '(no place)' : (sayPlace(facility, line.place.id) ?? line.place.name);
  return [where, sayId(line.of), whoOf(line), line.state, line.next ?? '—'];
}

function whoOf({ place, animals }: RoundLine): string {
  return place === null ? animals.map(sayAnimal).join(', ') : sayHome({ place, animals });
}

function asJson(facility: Facility, line: RoundLine) {
  const { task, of, place, animals, state, next, last, lastDone, skip, interval, problem, words } = line;
  return {
    ...{ task, id: of, display: sayId(of) },
    place: place === null ? null : sayPlace(facility, place.id),
    animals: animals.map((animal) => ({ id: animal.id, animal: sayAnimal(animal) })),
    ...{ state, next, last },
    done: lastDone === null ? null : { day: lastDone.day, by: lastDone.by },
    skipped: skip === null ? null : { by: skip.keeper, why: skip.why },
    interval: interval === null ? null : { days: interval.everyDays, from: interval.from },
    words,
    why: sayWhy(facility, line),
    problem: problem === null ? null : { code: problem.code, message: `${problem.message} ${problem.remedy}` },
  };
}
