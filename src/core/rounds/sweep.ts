import { type AnimalRecord, sayAnimal, sayTask } from '../animal/index.ts';
import { type Decision, decide, type EventDraft, type Moment } from '../care/index.ts';
import { sayDayShort } from '../days.ts';
import type { RoundTask } from '../events/index.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { companyFault, companyFor, namesIn } from './alone.ts';
import { deedDrafts, type PlaceTask } from './deeds.ts';
import { isLeft, type RoundLine } from './line.ts';
import { isAtPlace } from './placeLines.ts';
import { roundPlan } from './plan.ts';

/** A round at a place and whatever stands in it; `without`: homes that are left out, for they need more people. */
export interface RoundAt {
  readonly place: Id;
  readonly task: RoundTask;
  readonly without?: readonly Id[];
}

/** A place done as planned in one go: what is written, for which lines, and which are left out and why. */
export interface Sweep {
  readonly drafts: readonly EventDraft[];
  readonly done: readonly RoundLine[];
  /** Due lines that a single touch must not do. */
  readonly left: readonly { readonly line: RoundLine; readonly problem: Problem }[];
  /** How many stand there and are not due, or are done or skipped already. */
  readonly notDue: number;
}

/** The lines of a round at a place, in walking order; homes that are left out are no part of it. */
export function linesAt(
  facility: Facility,
  { place, task, without = [] }: RoundAt,
  on: Moment['day'],
): readonly RoundLine[] {
  const lines = roundPlan(facility, { task, on, within: place });
  return lines.filter((line) => line.place === null || !without.includes(line.place.id));
}

/** True for a round in which one touch can do all that is planned; a weight is a number, and a dose is confirmed by itself. */
export function goesAtOnce(task: RoundTask): boolean {
  return task !== 'weigh' && task !== 'treat';
}

/**
 * Begins a round. Refused: `unknown-id`, `date-future`, `round-empty`, and without the people it takes `round-alone`,
 * `round-second-few`, `round-second-same` (CARE-ALONE).
 */
export function beginRound(
  facility: Facility,
  { second = '', keeper, ...at }: RoundAt & { readonly second?: string; readonly keeper: string },
  moment: Moment,
): Decision {
  const wrong = beginFault(facility, at, moment) ?? aloneFault(facility, { ...at, second, keeper });
  if (wrong !== null) return { kind: 'refused', problem: wrong };
  const names = namesIn(second).join(', ');
  const payload = { task: at.task, ...(names !== '' && { second: names.slice(0, 80) }) };
  const said = `round begun: ${sayTask(at.task)}${names === '' ? '' : `, with ${names}`}`;
  return {
    kind: 'accepted',
    drafts: [{ kind: 'round-started', subjects: [at.place], payload, day: moment.day }],
    said,
  };
}

/** Rule CARE-ALONE: what keeps a keeper from doing a task at a place with these people, or null. */
export function aloneFault(
  facility: Facility,
  { second, keeper, ...at }: RoundAt & { readonly second: string; readonly keeper: string },
): Problem | null {
  return companyFault(facility, { place: at.place, company: companyFor(facility, at.place, at), second, keeper });
}

function beginFault(facility: Facility, at: RoundAt, { day, today }: Moment): Problem | null {
  if (!facility.places.has(at.place)) return problem('unknown-id', { id: at.place });
  if (day > today) return problem('date-future', { day: sayDayShort(day) });
  const words = { task: sayTask(at.task), place: nameOf(facility, at.place) };
  return linesAt(facility, at, day).length === 0 ? problem('round-empty', words) : null;
}

/**
 * Rule CARE-ROUND: all that is due at a place, done as planned. What needs a question (a hold, a missing weight, an animal to
 * be looked at again, one that has just eaten) is left out and named: all as planned must be nothing but as planned.
 */
export function allAsPlanned(facility: Facility, at: RoundAt, moment: Moment): Sweep {
  const lines = linesAt(facility, at, moment.day);
  const due = lines.filter((line) => isLeft(line) || (line.state === 'held' && line.task === 'clean'));
  const each = due.map((line) => ({ line, ...decideLine(line, moment) }));
  const done = each.filter((one) => one.problem === null);
  const left = each.flatMap(({ line, problem }) => (problem === null ? [] : [{ line, problem }]));
  const { task } = at;
  const drafts = isAtPlace(task)
    ? deedDrafts(
        done.map(({ line }) => line),
        task as PlaceTask,
        moment.day,
      )
    : done.flatMap((one) => one.drafts);
  return { drafts, done: done.map(({ line }) => line), left, notDue: lines.length - due.length };
}

function decideLine(
  line: RoundLine,
  moment: Moment,
): { readonly drafts: readonly EventDraft[]; readonly problem: Problem | null } {
  if (line.problem !== null) return { drafts: [], problem: line.problem };
  if (!goesAtOnce(line.task)) return { drafts: [], problem: problem('round-each', { task: sayTask(line.task) }) };
  if (line.task !== 'feeding') return { drafts: [], problem: null };
  const [animal] = line.animals;
  const decision: Decision | null = animal === undefined ? null : decide(animal, { do: 'fed-as-planned' }, moment);
  if (decision === null || decision.kind === 'accepted') return { drafts: decision?.drafts ?? [], problem: null };
  return { drafts: [], problem: decision.problem };
}

/** `Moss, Fern and 3 more`: a few names of many. */
export function sayFew(animals: readonly AnimalRecord[], few = 3): string {
  const names = animals.slice(0, few).map(sayAnimal);
  return animals.length > few ? `${names.join(', ')} and ${animals.length - few} more` : names.join(', ');
}
