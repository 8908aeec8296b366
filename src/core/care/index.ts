export { type Action, AGAIN_MINUTES, type Decision, decide, type EventDraft, type Moment } from './decide.ts';
export { AFTER_LAYING_DAYS, AFTER_REFUSAL_DAYS, type Due, type DueState, FAST_DAYS, nextFeedDue } from './due.ts';
export { HOLD_DAYS, type Hold, holdsOn, mealsSinceRegurgitation, needsVet, restEnds } from './holds.ts';
export { chooseMeal, type Meal, type MealQuestion, type PreyAtHand, SHARE_LIMITS } from './meal.ts';
export { type FeedPlan, feedPlan } from './plan.ts';
export { plannedMeal } from './planned.ts';
export { bandFor, type FeedBand, SPECIES, type Species, speciesOf, weighEveryDays } from './species.ts';
export { STAMPS, type Stamp, stampOf } from './stamps.ts';
export {
  checkWeighing,
  ENTRY_MARGIN,
  LOSS_PERCENT,
  type Loss,
  lossPercentPerDay,
  lossSinceReset,
  sayChange,
} from './weight.ts';
