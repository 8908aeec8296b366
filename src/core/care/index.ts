export { type Action, AGAIN_MINUTES, type Decision, dayFault, decide, type EventDraft, type Moment } from './decide.ts';
export { AFTER_LAYING_DAYS, AFTER_REFUSAL_DAYS, type Due, type DueState, FAST_DAYS, nextFeedDue } from './due.ts';
export {
  ENCLOSURE_CAUTION,
  ENCLOSURE_RULES,
  type Enclosure,
  type EnclosureQuestion,
  type EnclosureRule,
  enclosureFor,
} from './enclosure.ts';
export { HOLD_DAYS, type Hold, holdsOn, mealsSinceRegurgitation, needsVet, restEnds } from './holds.ts';
export { LENGTH_LIMITS_M, lengthInRange } from './length.ts';
export { chooseMeal, type Meal, type MealQuestion, type PreyAtHand, SHARE_LIMITS } from './meal.ts';
export { METABOLISM_CAUTION, type Metabolism, standardMetabolism } from './metabolism.ts';
export { PEOPLE_CAUTION, PEOPLE_RULE, type PeopleRule, peopleNeeded } from './people.ts';
export { type FeedPlan, feedPlan } from './plan.ts';
export { plannedMeal } from './planned.ts';
export { bandFor, type FeedBand, SPECIES, type Species, speciesOf, weighEveryDays } from './species.ts';
export { STAMPS, type Stamp, stampOf } from './stamps.ts';
export {
  type Amount,
  CAP_PERCENT,
  COURSE_SHARES,
  type Course,
  DOSE_CAUTION,
  type Dose,
  type DoseAnswer,
  type DoseQuestion,
  type DoseSchedule,
  type DoseSetting,
  type Drawn,
  doseSchedule,
  doseTimeFault,
  doseVolume,
  drawUp,
  FLUSH_ML,
  fluidsPerDay,
  isYoung,
  type Mass,
  MOST_DIFFERENCE_PERCENT,
  markOf,
  massInG,
  mgPerKgOf,
  mgPerMlOf,
  type Prescription,
  type PrescriptionDays,
  type PrescriptionState,
  prescribedDose,
  prescriptionFault,
  prescriptionState,
  roundToMark,
  STOMACH_SHARE,
  type Strength,
  SYRINGES_ML,
  sayMl,
  TENFOLD_FROM,
  TUBE_CAUTION,
  type TubeQuestion,
  type TubeSheet,
  tenfoldFault,
  tubeSheet,
  type Way,
  WEIGHT_DAYS,
  type Weighed,
  type WeighedFor,
  type WrittenQuestion,
  wayOf,
  weightFault,
  writtenVolume,
} from './treatment/index.ts';
export {
  checkWeighing,
  ENTRY_MARGIN,
  LOSS_PERCENT,
  type Loss,
  lossPercentPerDay,
  lossSinceReset,
  sayChange,
} from './weight.ts';
