import {
  type DueLine,
  dueList,
  isToFeed,
  type Meal,
  ROUND_TASKS,
  type RoundTask,
  sayAnimal,
  sayGramRange,
  sayId,
  sayPrey,
} from '../../core/index.ts';
import { type Given, noWords } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { type Io, say } from '../io.ts';
import { refusal } from '../refused.ts';
import { openSite } from '../site.ts';
import { alignedRows } from '../table.ts';
import { LINE_STATES, sayRound, taskOf } from './dueRound.ts';

/** What `--state` takes: the states of core, and `no-plan` where nothing can be worked out. */
const STATES = ['due', 'soon', 'overdue', 'hold', 'vet', 'no-plan'] as const;
type State = (typeof STATES)[number];

const HELP = `tubwright due --site FILE|DIR [--on DATE] [--task water|clean|…] [--state due,overdue,…] [--json]

The day's list in walking order: every animal that is here, its place, its state, when it is to be fed next,
what it gets, and why. With another task the day's round of it: every home or animal, when it is due, who did it last.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder
  --on DATE        the day, such as 2026-11-25; later events are not looked at (default: today at the site)
  --task TASK      ${ROUND_TASKS.join(', ')} (default: feeding)
  --state LIST     only these states: ${STATES.join(', ')};
                   of another task: ${LINE_STATES.join(', ')}
  --json           one JSON array; an item is {"id","display","animal","place","species",
                   "state","next","last","hold":{"reason","until"}|null,"holds":[{"reason","until","source"}],
                   "meal":{"prey","count","gramsEach","mealG","percent","warnings","why"}|null,"why":[…],
                   "problem":{"code","message"}|null};
                   of another task {"task","id","display","place","animals":[{"id","animal"}],"state","next","last",
                   "done":{"day","by"}|null,"skipped":{"by","why"}|null,"interval":{"days","from"}|null,"words",
                   "why":[…],"problem":{"code","message"}|null}`;

/** The day's list. */
export const due: Command = {
  help: HELP,
  options: { site: 'text', on: 'text', task: 'text', state: 'text', json: 'bare' },
  run: runDue,
};

async function runDue(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const task = taskOf(given);
  if (task !== 'feeding') return runRound(given, task, io);
  const states = statesOf(given, STATES);
  const { facility, on } = await openSite(given, io);
  const lines = dueList(facility, on).filter((line) => states.includes(stateOf(line)));
  if (given.bare.has('json')) say(io, JSON.stringify(lines.map(asJson)));
  else sayLines(io, lines);
  return 0;
}

async function runRound(given: Given, task: RoundTask, io: Io): Promise<ExitCode> {
  const states = statesOf(given, LINE_STATES);
  const { facility, on } = await openSite(given, io);
  sayRound(facility, { task, on, states }, { ...io, json: given.bare.has('json') });
  return 0;
}

function statesOf<T extends string>(given: Given, known: readonly T[]): readonly T[] {
  const text = given.texts['state'];
  if (text === undefined) return known;
  return text.split(',').map((word) => {
    const state = known.find((one) => one === word.trim());
    if (state !== undefined) return state;
    throw refusal('option-value', { option: '--state', text: word, wanted: `some of ${known.join(',')}` });
  });
}

function stateOf(line: DueLine): State {
  return line.due?.state ?? 'no-plan';
}

function asJson(line: DueLine) {
  const { animal, place, due: found, meal, problem } = line;
  return {
    id: animal.id,
    display: sayId(animal.id),
    animal: sayAnimal(animal),
    place,
    species: animal.species,
    state: stateOf(line),
    next: found?.next ?? null,
    last: found?.last ?? null,
    hold: found?.hold ?? null,
    holds: (found?.holds ?? []).map(({ reason, until, source }) => ({ reason, until, source })),
    meal: meal === null ? null : mealJson(meal),
    why: found?.why ?? [],
    problem: problem === null ? null : { code: problem.code, message: `${problem.message} ${problem.remedy}` },
  };
}

function mealJson({ prey, count, eachG, mealG, percent, warnings, why }: Meal) {
  return { prey, count, gramsEach: eachG, mealG, percent, warnings, why };
}

function sayLines(io: Io, lines: readonly DueLine[]): void {
  const rows = alignedRows(lines.map(cells));
  for (const [at, line] of lines.entries()) {
    say(io, rows[at] ?? '');
    for (const reason of reasonsOf(line)) say(io, `    ${reason}`);
  }
  say(io, `${lines.filter(isToFeed).length} to feed of ${lines.length} listed`);
}

function cells(line: DueLine): readonly string[] {
  const { animal, place, due: found, meal } = line;
  const what = meal === null ? '' : `${meal.count} × ${sayPrey(meal.prey)}, ${sayGramRange(meal.eachG)}`;
  return [place ?? '(no place)', sayId(animal.id), sayAnimal(animal), stateOf(line), found?.next ?? '—', what];
}

function reasonsOf({ due: found, meal, problem }: DueLine): readonly string[] {
  const wrong = problem === null ? [] : [`${problem.message} ${problem.remedy}`];
  return [...(found?.why ?? []), ...(meal?.warnings ?? []), ...wrong];
}
