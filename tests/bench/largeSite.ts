import {
  type AnimalRecord,
  addDays,
  type Day,
  emptyFacility,
  type Facility,
  feedPlan,
  foldFacility,
  KEPT_OFFERS,
  mintId,
  parseDay,
  parseEvent,
  plannedMeal,
  type Result,
  SPECIES,
} from '../../src/core/index.ts';

export const ANIMALS = 10_000;
/** The day of the forecast. */
export const ON: Day = value(parseDay('2026-03-02'));

/** Animals of every species and size, each with its own record of offers; the same in each run. */
export function largeSite(on: Day): Facility {
  const chance = chances();
  const animals = new Map<AnimalRecord['id'], AnimalRecord>();
  const blank = blankAnimal();
  for (let n = 0; n < ANIMALS; n++) {
    const species = SPECIES[n % SPECIES.length];
    const id = value(mintId(7, n));
    const weightG = Math.round(12 * 180 ** chance());
    const animal = { ...blank, id, species: species?.name ?? '', weights: [{ day: addDays(on, -20), weightG }] };
    const meal = value(plannedMeal(animal, on));
    animals.set(id, { ...animal, ...offersOf(animal, meal, on, chance) });
  }
  return { ...emptyFacility(), animals };
}

function offersOf(animal: AnimalRecord, meal: { prey: string; count: number }, on: Day, chance: () => number) {
  const [low, high] = value(feedPlan(animal.species, animal.weights[0]?.weightG ?? null, null)).everyDays;
  const takes = 0.6 + 0.4 * chance();
  let day = -Math.floor(high * chance());
  const offers = Array.from({ length: KEPT_OFFERS }, () => {
    const taken = chance() < takes;
    const offer = { day: addDays(on, day), prey: meal.prey, count: meal.count, totalG: 30, taken };
    day -= taken ? low + Math.floor(chance() * (high - low + 1)) : 4 + Math.floor(chance() * 4);
    return offer;
  }).reverse();
  return { offers, lastTaken: offers.findLast((one) => one.taken) ?? null, mealsTaken: KEPT_OFFERS };
}

function blankAnimal(): AnimalRecord {
  const id = value(mintId(7, ANIMALS));
  const added = value(
    parseEvent({
      id: '019b76da-a800-7000-8000-000000000000',
      kind: 'animal-added',
      at: '2025-01-01T08:00:00Z',
      day: '2025-01-01',
      subjects: [id],
      keeper: 'Ada',
      device: 1,
      seq: 1,
      clock: [1, 0],
      payload: { species: 'Python regius', sex: 'female' },
    }),
  );
  const found = foldFacility([added]).animals.get(id);
  if (found === undefined) throw new Error('no animal was added');
  return found;
}

/** The numbers of a linear congruential generator; the same in each run. */
function chances(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}
