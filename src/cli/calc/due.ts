import * as z from 'zod/mini';
import {
  type AnimalRecord,
  type Day,
  type Due,
  foldFacility,
  nextFeedDue,
  type OwnPlan,
  ok,
  type Result,
  weightInRange,
} from '../../core/index.ts';
import { dayAt, number, planFields, word } from './fields.ts';
import { historyOf } from './history.ts';
import { type Kind, readCase, wrongCase } from './kind.ts';
import { ownPlan } from './plan.ts';

const HELP = `due: when an animal is to be fed next, and what stands against it
  {"species", "on", "events": [as in the log; only kind and a day are needed, the payload may stand beside them],
   "plan"?: {"percent","everyDays","prey","count"}, "massG"?: its weight on that day}
    -> {"next": date|null, "state": "due"|"soon"|"overdue"|"hold"|"vet", "hold"?: {"reason","until"}, "why":[…]}`;

const caseOf = z.object({
  species: word,
  on: z.string('a day is wanted, such as 2026-03-09'),
  events: z.array(
    z.record(z.string(), z.unknown(), 'an event is wanted, such as {"kind":"shed-seen","day":"2026-03-09"}'),
    'a list of events is wanted',
  ),
  plan: z.nullish(planFields),
  massG: z.nullish(number),
});
type Case = z.infer<typeof caseOf>;

/** Dues from outside. */
export const dueKind: Kind = {
  name: 'due',
  help: HELP,
  answer: (given) => {
    const read = readCase(caseOf, given);
    return read.ok ? answer(read.value) : read;
  },
};

function answer(given: Case): Result<unknown> {
  const on = dayAt(given.on, 'on');
  if (!on.ok) return on;
  const plan = ownPlan(given.plan);
  if (!plan.ok) return plan;
  const animal = animalOf(given, on.value, plan.value);
  if (!animal.ok) return animal;
  const due = nextFeedDue(animal.value, on.value);
  return due.ok ? ok(said(due.value)) : due;
}

function animalOf(given: Case, on: Day, plan: OwnPlan | null): Result<AnimalRecord> {
  const history = historyOf(given.events, given.species, on);
  if (!history.ok) return history;
  const { animal: id, events } = history.value;
  const record = foldFacility(events).animals.get(id);
  // The history always adds its animal, but a slip of the case may take that back.
  if (record === undefined) return wrongCase('a slip takes back that the animal was added', 'events');
  const planned = plan === null ? record : { ...record, plan };
  return given.massG === null || given.massG === undefined ? ok(planned) : weighed(planned, given.massG, on);
}

function weighed(animal: AnimalRecord, massG: number, on: Day): Result<AnimalRecord> {
  const weight = weightInRange(massG);
  if (!weight.ok) return { ok: false, problem: { ...weight.problem, path: 'massG' } };
  return ok({ ...animal, weights: [...animal.weights, { day: on, weightG: weight.value }] });
}

function said({ next, state, hold, why }: Due) {
  return { next, state, ...(hold && { hold: { reason: hold.reason, until: hold.until } }), why };
}
