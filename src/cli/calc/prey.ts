import * as z from 'zod/mini';
import {
  chooseMeal,
  type Meal,
  type OwnPlan,
  ok,
  PREY_CLASSES,
  type PreyAtHand,
  preyClass,
  type Result,
  refuse,
  speciesOf,
  weightInRange,
} from '../../core/index.ts';
import { dayAt, number, planFields, range, word } from './fields.ts';
import { type Kind, readCase, wrongCase } from './kind.ts';
import { ownPlan } from './plan.ts';

const HELP = `prey: which prey and how many for an animal of that mass
  {"species", "massG", "massDate", "on", "lastMeals"?: ["rat-small" | {"prey","day"?,"outcome"?}, … newest first],
   "stock"?: [{"prey","grams"?:[low,high],"count"?}], "plan"?: {"percent","everyDays","prey","count"}}
    -> {"prey","count","gramsEach":[low,high],"mealG":[low,high],"percent":[low,high],"warnings":[…],"why":[…]}`;

const mealFields = z.object({
  prey: word,
  outcome: z.optional(z.enum(['taken', 'refused'], 'taken or refused is wanted')),
  taken: z.optional(z.boolean('true or false is wanted')),
  day: z.optional(z.string()),
  date: z.optional(z.string()),
  on: z.optional(z.string()),
});
const stockFields = z.object({
  prey: word,
  grams: z.optional(range),
  count: z.nullish(z.int('a whole number is wanted').check(z.gte(0, 'at least 0 is wanted'))),
});
const caseOf = z.object({
  species: word,
  massG: number,
  massDate: z.string('a day is wanted, such as 2026-03-09'),
  on: z.string('a day is wanted, such as 2026-03-09'),
  lastMeals: z.nullish(z.array(z.union([word, mealFields], 'a prey, or {"prey", …}, is wanted'))),
  stock: z.nullish(z.array(stockFields)),
  plan: z.nullish(planFields),
});
type Case = z.infer<typeof caseOf>;

/** Prey from outside. */
export const preyKind: Kind = {
  name: 'prey',
  help: HELP,
  answer: (given) => {
    const read = readCase(caseOf, given);
    return read.ok ? answer(read.value) : read;
  },
};

function answer(given: Case): Result<unknown> {
  const massDay = dayAt(given.massDate, 'massDate');
  if (!massDay.ok) return massDay;
  const on = dayAt(given.on, 'on');
  if (!on.ok) return on;
  const possible = weightInRange(given.massG);
  if (!possible.ok) return { ok: false, problem: { ...possible.problem, path: 'massG' } };
  const plan = ownPlan(given.plan);
  if (!plan.ok) return plan;
  const stock = stockOf(given.stock);
  if (!stock.ok) return stock;
  const lastPrey = preyTaken(given.lastMeals ?? []);
  if (!lastPrey.ok) return lastPrey;
  const { species, massG } = given;
  const asked = { species, massG, massDay: massDay.value, on: on.value, share: 1, plan: withDays(species, plan.value) };
  const meal = chooseMeal({ ...asked, lastPrey: lastPrey.value, stock: stock.value });
  return meal.ok ? ok(said(meal.value, asked.plan !== plan.value)) : meal;
}

/** `daysFilledIn`: the keeper gave no days, so the reasons must not say that they are the keeper's. */
function said({ prey, count, eachG, mealG, percent, warnings, why }: Meal, daysFilledIn: boolean) {
  const reasons = daysFilledIn ? why.map((one) => one.replace(/ and days$/, '')) : why;
  return { prey, count, gramsEach: eachG, mealG, percent, warnings, why: reasons };
}

function stockOf(given: Case['stock']): Result<readonly PreyAtHand[] | null> {
  if (!given) return ok(null);
  const stock: PreyAtHand[] = [];
  for (const [at, { prey, grams, count }] of given.entries()) {
    const eachG = grams ?? preyClass(prey)?.eachG;
    const known = PREY_CLASSES.map((one) => one.id).join(', ');
    if (eachG === undefined) return refuse('prey-unknown', { prey, known }, `stock.${at}.prey`);
    if (!(eachG[0] > 0 && eachG[1] >= eachG[0] && Number.isFinite(eachG[1])))
      return wrongCase('low and high grams are wanted, low first', `stock.${at}.grams`);
    stock.push({ prey, eachG, count: count ?? null });
  }
  return ok(stock);
}

/** What it took, newest first; where every meal has its day the days say the order, and what was refused was not taken. */
function preyTaken(given: NonNullable<Case['lastMeals']>): Result<readonly string[]> {
  const meals = given.map((one) => (typeof one === 'string' ? { prey: one } : one));
  const dated: { prey: string; day: string; taken: boolean }[] = [];
  for (const [at, meal] of meals.entries()) {
    const text = 'day' in meal || 'date' in meal || 'on' in meal ? (meal.day ?? meal.date ?? meal.on) : undefined;
    const day = text === undefined ? null : dayAt(text, `lastMeals.${at}`);
    if (day !== null && !day.ok) return day;
    const taken = !('outcome' in meal && meal.outcome === 'refused') && !('taken' in meal && meal.taken === false);
    dated.push({ prey: meal.prey, day: day?.value ?? '', taken });
  }
  if (dated.every(({ day }) => day !== '')) dated.sort((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));
  return ok(dated.filter(({ taken }) => taken).map(({ prey }) => prey));
}

/** How often a meal comes does not change what it is, so a keeper's percent is enough for a species without a plan. */
function withDays(species: string, plan: OwnPlan | null): OwnPlan | null {
  const lacks = plan?.percent !== undefined && plan.everyDays === undefined && speciesOf(species) === undefined;
  return lacks ? { ...plan, everyDays: [1, 400] } : plan;
}
