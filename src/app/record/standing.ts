import {
  type AnimalRecord,
  type CardContent,
  cardContent,
  type Day,
  type Due,
  daysBetween,
  type Facility,
  isCardStale,
  type Loss,
  lastWeight,
  lossSinceReset,
  type Meal,
  nextFeedDue,
  type Problem,
  plannedMeal,
  sayDistance,
  speciesOf,
  weighEveryDays,
} from '../../core/index.ts';

/** What core says of one animal on one day, gathered for its record. */
export interface Standing {
  readonly animal: AnimalRecord;
  readonly content: CardContent;
  readonly stale: 'no' | 'never-printed' | 'says-other';
  readonly due: Due | null;
  readonly dueProblem: Problem | null;
  readonly meal: Meal | null;
  readonly mealProblem: Problem | null;
  readonly loss: Loss;
  readonly weightAge: WeightAge | null;
  /** `in 6 days`: how far off the next meal is; null where nobody can say. */
  readonly dueIn: string | null;
}

/** How old the last weight is, against how often this species and size is weighed. */
export interface WeightAge {
  readonly days: number;
  readonly everyDays: number;
}

export function standingOf(facility: Facility, animal: AnimalRecord, today: Day): Standing {
  const content = cardContent(facility, animal, today);
  const due = nextFeedDue(animal, today);
  const meal = plannedMeal(animal, today);
  const weight = lastWeight(animal);
  return {
    animal,
    content,
    stale: isCardStale(animal, content) ? (animal.printed === null ? 'never-printed' : 'says-other') : 'no',
    due: due.ok ? due.value : null,
    dueProblem: due.ok ? null : due.problem,
    meal: meal.ok ? meal.value : null,
    mealProblem: meal.ok ? null : meal.problem,
    loss: lossSinceReset(animal),
    dueIn: due.ok && due.value.next !== null ? sayDistance(today, due.value.next) : null,
    weightAge: weight && {
      days: daysBetween(weight.day, today),
      everyDays: weighEveryDays(speciesOf(animal.species), weight.weightG),
    },
  };
}

/** The one thing to do now. */
export type Now = 'feed' | 'soon' | 'weigh-first' | 'shed' | 'vet' | 'wait' | 'gone';

export function whatNow({ animal, due, meal, weightAge }: Standing): Now {
  if (animal.left !== null) return 'gone';
  if (due?.state === 'vet') return 'vet';
  if (due?.state === 'hold') return due.holds.some((hold) => hold.kind === 'opaque') ? 'shed' : 'wait';
  const stale = weightAge === null || weightAge.days > weightAge.everyDays;
  if (stale || meal === null) return 'weigh-first';
  return due?.state === 'soon' ? 'soon' : 'feed';
}
