import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { addDays, type Day, daysBetween, sayDayShort } from '../days.ts';
import { type Problem, problem } from '../problems.ts';

/** Rule CARE-HANDLING: no handling for 48 hours after a meal; a log of days counts them as two days. */
export const NO_HANDLING_DAYS = 2;

/** Rule CARE-HANDLING: who ate too lately to be moved or weighed, and until when; null where nobody did. */
export function handledTooSoon(animals: readonly AnimalRecord[], on: Day): Problem | null {
  for (const animal of animals) {
    const ate = animal.lastTaken?.day;
    if (ate === undefined || ate > on || daysBetween(ate, on) >= NO_HANDLING_DAYS) continue;
    const until = sayDayShort(addDays(ate, NO_HANDLING_DAYS));
    return problem('handled-too-soon', { animal: sayAnimal(animal), day: sayDayShort(ate), until });
  }
  return null;
}
