import type { OwnPlan } from '../animal/index.ts';
import { type Day, daysBetween } from '../days.ts';
import { ok, type Problem, problem, type Result, refuse } from '../problems.ts';
import { PREY_CLASSES, preyClass, sayPrey } from '../stock/index.ts';
import { roundTo, sayGramRange, sayGrams, WEIGHT_LIMITS_G, weightInRange } from '../units.ts';
import { type FeedPlan, feedPlan } from './plan.ts';
import { speciesOf, weighEveryDays } from './species.ts';

/** Prey at hand: a class and the weights of its items. */
export interface PreyAtHand {
  readonly prey: string;
  readonly eachG: readonly [number, number];
  /** How many there are; null if nobody counted. */
  readonly count: number | null;
}

/** What {@link chooseMeal} is asked. */
export interface MealQuestion {
  readonly species: string;
  readonly massG: number;
  readonly massDay: Day;
  readonly on: Day;
  readonly plan: OwnPlan | null;
  /** Prey taken lately, newest first: what the animal knows is kept where it still fits. */
  readonly lastPrey: readonly string[];
  /** Only these can be given; null means the whole list. */
  readonly stock: readonly PreyAtHand[] | null;
  /** 1 for a full meal, 0.5 for half of one. */
  readonly share: number;
}

/** What is put before an animal: so many items of one class, with the grams and percent that the plan allows. */
export interface Serving {
  readonly prey: string;
  readonly count: number;
  readonly eachG: readonly [number, number];
  readonly mealG: readonly [number, number];
  readonly percent: readonly [number, number];
}

/** A serving with what is to be said about it. */
export interface Meal extends Serving {
  /** Why it is smaller than the plan; null for a meal as planned. */
  readonly smaller: string | null;
  readonly warnings: readonly string[];
  readonly why: readonly string[];
}

interface Choice extends PreyAtHand {
  readonly items: number;
}

/** Stands under every proposed meal. */
export const FEED_CAUTION =
  'A suggestion from the last weight and your plan. Look at the animal first; skip if opaque, recently moved, unwell or recently regurgitated.';

/** More items than this is not a meal but a lack of larger prey. */
const MOST_ITEMS = 12;
/** Rule CARE-SHARE: above these shares of body mass a meal is warned of or asked about (common practice, no source). */
export const SHARE_LIMITS = { adultPercent: 20, youngPercent: 30, confirmPercent: 40 } as const;

/**
 * Rule CARE-PREY: the fewest items of one class whose middle weight lies in the planned grams; of equals the class the
 * animal knows, then the kind its species usually gets, then the one whose light and heavy items leave the plan least. Errors: `not-positive`, `not-finite`,
 * `weight-impossible`, `species-unknown`, `plan-malformed`, `prey-unknown`.
 */
export function chooseMeal(question: MealQuestion): Result<Meal> {
  const chosen = choose(question);
  if (!chosen.ok) return chosen;
  const { fits, mealG, plan } = chosen.value;
  return ok({
    ...servingOf(chosen.value),
    smaller: null,
    warnings: warningsOf(question, fits, mealG),
    why: reasons(question, fits, mealG, plan.percent, plan.because),
  });
}

/** The same without its words, for whoever asks about thousands of animals at once. Errors as {@link chooseMeal}. */
export function chooseServing(question: MealQuestion): Result<Serving> {
  const chosen = choose(question);
  return chosen.ok ? ok(servingOf(chosen.value)) : chosen;
}

interface Chosen {
  readonly fits: Choice;
  readonly mealG: readonly [number, number];
  readonly plan: FeedPlan;
}

function servingOf({ fits, mealG, plan }: Chosen): Serving {
  return { prey: fits.prey, count: fits.items, eachG: fits.eachG, mealG, percent: plan.percent };
}

function choose(question: MealQuestion): Result<Chosen> {
  const wrong = whatIsWrongWith(question);
  if (wrong !== null) return { ok: false, problem: wrong };
  const plan = feedPlan(question.species, question.massG, question.plan);
  if (!plan.ok) return plan;
  const gramsOf = (share: number): number => roundTo((question.massG * share * question.share) / 100, 3);
  const mealG = [gramsOf(plan.value.percent[0]), gramsOf(plan.value.percent[1])] as const;
  const set = plan.value.prey === null ? null : fixedPrey(plan.value.prey, plan.value.count, question, mealG);
  if (set !== null && !set.ok) return set;
  const fits = set?.value ?? bestFit(question, mealG);
  if (fits === null) return refuse('freezer-empty', {}, 'stock');
  return ok({ fits, mealG, plan: plan.value });
}

function whatIsWrongWith({ massG, share }: MealQuestion): Problem | null {
  const mass = weightInRange(massG);
  if (!mass.ok) return { ...mass.problem, path: 'massG' };
  if (!Number.isFinite(share)) return problem('not-finite', { what: 'share of a meal' }, 'share');
  if (share <= 0) return problem('not-positive', { what: 'share of a meal' }, 'share');
  return share > 1 ? problem('plan-malformed', { why: `${share} is more than one meal` }, 'share') : null;
}

function fixedPrey(
  prey: string,
  count: number | null,
  question: MealQuestion,
  mealG: readonly [number, number],
): Result<Choice> {
  const atHand = question.stock?.find((one) => one.prey === prey && hasWeight(one));
  const eachG = atHand?.eachG ?? preyClass(prey)?.eachG;
  if (eachG === undefined)
    return refuse('prey-unknown', { prey, known: PREY_CLASSES.map((one) => one.id).join(', ') }, 'plan.prey');
  const wanted = count === null ? middle(mealG) / middle(eachG) : count * question.share;
  // Less than a whole meal is rounded down: half of three is one.
  const whole = question.share < 1 ? Math.floor(wanted) : Math.round(wanted);
  const items = Math.min(Math.max(whole, 1), MOST_ITEMS);
  return ok({ prey, eachG, count: atHand?.count ?? null, items });
}

function bestFit(question: MealQuestion, mealG: readonly [number, number]): Choice | null {
  const prey = preyToChooseFrom(question);
  // The fewest items come first, so most meals are found among a dozen choices instead of all of them.
  for (let items = 1; items <= MOST_ITEMS; items++) {
    const inside = servings(prey, items, mealG);
    const [only] = inside;
    if (only !== undefined) return inside.length === 1 ? only : first(inside, ranking(question, mealG));
  }
  // Nothing lies inside: stay below rather than above, and only for the smallest animals go above.
  const choices = Array.from({ length: MOST_ITEMS }, (_, at) => servings(prey, at + 1, ANY_G)).flat();
  const below = choices.filter((one) => one.items * middle(one.eachG) <= mealG[1]);
  return first(below.length > 0 ? below : choices, byDistance(mealG));
}

const LISTED: readonly PreyAtHand[] = PREY_CLASSES.map(({ id, eachG }) => ({ prey: id, eachG, count: null }));

function preyToChooseFrom(question: MealQuestion): readonly PreyAtHand[] {
  return question.stock?.filter((one) => hasWeight(one) && (one.count === null || one.count > 0)) ?? LISTED;
}

const ANY_G = [0, Number.POSITIVE_INFINITY] as const;

/** Those of which there are so many items, and so many of which lie in these grams. */
function servings(all: readonly PreyAtHand[], items: number, grams: readonly [number, number]): readonly Choice[] {
  const enough: Choice[] = [];
  for (const { prey, eachG, count } of all)
    if (between(items * middle(eachG), grams) && (count === null || count >= items))
      enough.push({ prey, eachG, count, items });
  return enough;
}

function first(all: readonly Choice[], rank: (a: Choice, b: Choice) => number): Choice | null {
  return all.reduce<Choice | null>((best, one) => (best !== null && rank(one, best) >= 0 ? best : one), null);
}

function hasWeight({ eachG }: PreyAtHand): boolean {
  return eachG.every((weightG) => weightG > 0 && weightG <= WEIGHT_LIMITS_G.most);
}

function ranking(question: MealQuestion, mealG: readonly [number, number]): (a: Choice, b: Choice) => number {
  const kind = question.lastPrey[0]?.split('-')[0] ?? speciesOf(question.species)?.preyKind;
  const known = (one: Choice): number => (one.prey === question.lastPrey[0] ? 0 : 1);
  const usual = (one: Choice): number => (one.prey.split('-')[0] === kind ? 0 : 1);
  return (a, b) =>
    known(a) - known(b) || usual(a) - usual(b) || spill(a, mealG) - spill(b, mealG) || byDistance(mealG)(a, b);
}

/** How many grams the lightest and the heaviest such meal lie outside the plan. */
function spill(one: Choice, mealG: readonly [number, number]): number {
  return Math.max(0, mealG[0] - one.items * one.eachG[0]) + Math.max(0, one.items * one.eachG[1] - mealG[1]);
}

function byDistance(mealG: readonly [number, number]): (a: Choice, b: Choice) => number {
  const distance = (one: Choice): number => Math.abs(one.items * middle(one.eachG) - middle(mealG));
  return (a, b) => distance(a) - distance(b) || a.items - b.items || (a.prey < b.prey ? -1 : 1);
}

function warningsOf(question: MealQuestion, choice: Choice, mealG: readonly [number, number]): readonly string[] {
  const species = speciesOf(question.species);
  const warnings: string[] = [];
  const say = (one: Problem): number => warnings.push(`${one.message} ${one.remedy}`);
  const age = daysBetween(question.massDay, question.on);
  const every = weighEveryDays(species, question.massG);
  if (age > every) say(problem('mass-stale', { days: age, every }));
  if (age < 0) warnings.push(`The weight is dated ${-age} days after ${question.on}. Look at both dates.`);
  const share = roundTo((100 * choice.items * choice.eachG[1]) / question.massG, 1);
  const young = species !== undefined && question.massG < species.adultFromG;
  const limit = young ? SHARE_LIMITS.youngPercent : SHARE_LIMITS.adultPercent;
  if (share > SHARE_LIMITS.confirmPercent)
    warnings.push(`Up to ${share} % of its mass, over ${SHARE_LIMITS.confirmPercent} %: confirm before feeding.`);
  else if (share > limit) warnings.push(`Up to ${share} % of its mass, over ${limit} %: a large meal.`);
  const total = choice.items * middle(choice.eachG);
  if (!between(total, mealG)) warnings.push(outside(choice, total, mealG));
  return warnings;
}

function outside(choice: Choice, total: number, mealG: readonly [number, number]): string {
  const side = total < mealG[0] ? 'less' : 'more';
  return `${choice.items} × ${sayPrey(choice.prey)} is about ${sayGrams(total)}, ${side} than the planned ${sayGramRange(mealG)}; nothing nearer is at hand.`;
}

function reasons(
  question: MealQuestion,
  choice: Choice,
  mealG: readonly [number, number],
  percent: readonly [number, number],
  because: string,
): readonly string[] {
  const share = question.share === 1 ? '' : `, times ${question.share}`;
  const each = `${sayPrey(choice.prey)} ${sayGramRange(choice.eachG)} each`;
  return [
    `${percent[0]}–${percent[1]} % of ${sayGrams(question.massG)}${share} is ${sayGramRange(mealG)}: ${because}`,
    `${choice.items} × ${each}${choice.prey === question.lastPrey[0] ? ', as it took last' : ''}`,
    FEED_CAUTION,
  ];
}

function middle(range: readonly [number, number]): number {
  return (range[0] + range[1]) / 2;
}

function between(value: number, range: readonly [number, number]): boolean {
  return value >= range[0] && value <= range[1];
}
