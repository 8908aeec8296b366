import { type AnimalRecord, lastWeight } from '../animal/index.ts';
import { feedPlan, plannedMeal } from '../care/index.ts';
import { addDays, type Day, sayDayShort } from '../days.ts';
import { NO_HANDLING_DAYS } from '../rounds/index.ts';
import { sayPrey } from '../stock/index.ts';
import { sayGramRange, sayGrams } from '../units.ts';

/** What it eats and when, as whoever takes it over needs it. */
export interface FeedingWords {
  readonly eats: string;
  readonly every: string;
  readonly last: string;
  readonly note: string | null;
}

/** What the animal is fed by its plan, and what it took last. */
export function feedingOf(animal: AnimalRecord, on: Day): FeedingWords {
  const meal = plannedMeal(animal, on);
  const plan = feedPlan(animal.species, lastWeight(animal)?.weightG ?? null, animal.plan);
  const { lastTaken } = animal;
  return {
    eats: meal.ok
      ? [
          `${meal.value.count} × ${sayPrey(meal.value.prey)}, ${sayGramRange(meal.value.eachG)}${meal.value.count > 1 ? ' each' : ''}`,
          meal.value.smaller,
        ]
          .filter((part) => part !== null)
          .join('; ')
      : lastTaken === null
        ? 'no plan and no meal on record'
        : `last taken: ${lastTaken.count} × ${sayPrey(lastTaken.prey)}`,
    every: plan.ok
      ? `every ${plan.value.everyDays[0]}–${plan.value.everyDays[1]} days (${plan.value.because})`
      : 'no plan on record: ask the keeper',
    last: lastTaken === null ? 'none on record' : sayLast(lastTaken),
    note: animal.plan?.note ?? null,
  };
}

function sayLast({ day, prey, count, totalG }: NonNullable<AnimalRecord['lastTaken']>): string {
  return `${sayDayShort(day)}: ${count} × ${sayPrey(prey)}${totalG === null ? '' : `, ${sayGrams(totalG)}`}`;
}

/** Until when an animal that ate lately is not to be carried (CARE-HANDLING); null where it may be. */
export function restsUntil({ lastTaken }: AnimalRecord, on: Day): Day | null {
  const until = lastTaken === null ? on : addDays(lastTaken.day, NO_HANDLING_DAYS);
  return until > on ? until : null;
}
