import { type AnimalRecord, lastWeight, type OwnPlan, type Weighing } from '../animal/index.ts';
import type { Day } from '../days.ts';
import { ok, type Result, refuse } from '../problems.ts';
import { preyClass } from '../stock/index.ts';
import { mealsSinceRegurgitation } from './holds.ts';
import {
  chooseMeal,
  chooseServing,
  FEED_CAUTION,
  type Meal,
  type MealQuestion,
  type PreyAtHand,
  type Serving,
} from './meal.ts';
import { feedPlan } from './plan.ts';

/** Rule CARE-GRAVID: small meals or none while gravid (S, C); rule CARE-REGURGITATION: at most half a meal first. */
const HALF = 0.5;
/** Then two normal small meals: the lower half of the plan's percent. */
const SMALL_MEALS_AFTER = 2;

/** What this animal should be offered next, from its last weight, its plan and what it took before. Errors as {@link chooseMeal}, and `species-unknown` without a weight or fixed prey. */
export function plannedMeal(animal: AnimalRecord, on: Day, stock: readonly PreyAtHand[] | null = null): Result<Meal> {
  const weight = lastWeight(animal);
  const small = shareOf(animal);
  if (weight === null) return withoutWeight(animal, small);
  const meal = planned({ animal, weight, small, on, stock }, chooseMeal);
  if (!meal.ok || small.because === null) return meal;
  return ok({ ...meal.value, smaller: small.because, why: [small.because, ...meal.value.why] });
}

/** The same without its words, for whoever asks about thousands of animals at once. Errors as {@link plannedMeal}. */
export function plannedServing(animal: AnimalRecord, on: Day): Result<Serving> {
  const weight = lastWeight(animal);
  const small = shareOf(animal);
  if (weight === null) return withoutWeight(animal, small);
  return planned({ animal, weight, small, on, stock: null }, chooseServing);
}

interface Asked {
  readonly animal: AnimalRecord;
  readonly weight: Weighing;
  readonly small: Share;
  readonly on: Day;
  readonly stock: readonly PreyAtHand[] | null;
}

function planned<S extends Serving>(
  { animal, weight, small, on, stock }: Asked,
  choose: (question: MealQuestion) => Result<S>,
): Result<S> {
  const taken = animal.offers.findLast((offer) => offer.taken);
  const question = {
    species: animal.species,
    massG: weight.weightG,
    massDay: weight.day,
    on,
    plan: small.lowerHalf ? lowerHalf(animal, weight.weightG) : animal.plan,
    lastPrey: taken === undefined ? [] : [taken.prey],
    stock,
    share: small.share,
  };
  const meal = choose(question);
  if (!meal.ok || small.because === null || !isTooLarge(meal.value)) return meal;
  return choose({ ...question, plan: withoutPrey(question.plan) });
}

/** A plan that names its prey may have no smaller meal than one item; a smaller prey is then looked for. */
function isTooLarge({ count, eachG, mealG }: Serving): boolean {
  return (count * (eachG[0] + eachG[1])) / 2 > mealG[1];
}

function withoutPrey(plan: OwnPlan | null): OwnPlan | null {
  if (plan === null) return null;
  const { prey: _prey, count: _count, ...figures } = plan;
  return figures;
}

interface Share {
  readonly share: number;
  readonly lowerHalf: boolean;
  readonly because: string | null;
}

function shareOf(animal: AnimalRecord): Share {
  const meals = mealsSinceRegurgitation(animal);
  if (meals === 0) return half('half a meal: the first after a regurgitation (C: common practice, no source)');
  if (meals !== null && meals <= SMALL_MEALS_AFTER)
    return { share: 1, lowerHalf: true, because: `a small normal meal: number ${meals + 1} after a regurgitation (C)` };
  if (animal.gravidSince !== null) return half('a small meal: she is gravid, and refusals are to be expected (S, C)');
  const laid = animal.laidOn !== null && (animal.lastTaken === null || animal.lastTaken.day < animal.laidOn);
  return laid ? half('a small meal: the first after laying (D, C)') : { share: 1, lowerHalf: false, because: null };
}

function half(because: string): Share {
  return { share: HALF, lowerHalf: false, because };
}

function lowerHalf(animal: AnimalRecord, massG: number): OwnPlan | null {
  const plan = feedPlan(animal.species, massG, animal.plan);
  if (!plan.ok) return animal.plan;
  const [low, high] = plan.value.percent;
  return { ...animal.plan, percent: [low, (low + high) / 2] };
}

/** Without a weight nothing can be computed; a plan that names prey and count still says what to offer. */
function withoutWeight(animal: AnimalRecord, small: Share): Result<Meal> {
  const set = preyClass(animal.plan?.prey ?? '');
  const whole = animal.plan?.count ?? 1;
  const count = small.because === null ? whole : Math.floor(whole * HALF);
  if (set === undefined || count < 1) return refuse('weight-missing');
  const mealG = [set.eachG[0] * count, set.eachG[1] * count] as const;
  const plan = 'the keeper’s own plan; there is no weight to compare it with';
  const why = [small.because, plan, FEED_CAUTION].filter((one) => one !== null);
  return ok({
    prey: set.id,
    count,
    eachG: set.eachG,
    mealG,
    percent: animal.plan?.percent ?? [0, 0],
    smaller: small.because,
    warnings: ['No weight yet: weigh first.'],
    why,
  });
}
