export {
  type FollowedPair,
  followPlan,
  type PairState,
  PLAN_DAYS,
  plannedFor,
  plannedPair,
  seasonBegan,
  standingPlan,
  standingPlans,
} from './acceptedPlan.ts';
export { acceptPlan, type NewPlan, withdrawPlan } from './acceptPlan.ts';
export {
  BREEDING,
  type BreedingSpecies,
  breedingOf,
  type Figure,
  LARGE_FOLLICLE_MM,
  type Milestone,
  type Step,
} from './calendar.ts';
export { type ClutchAct, decideClutch } from './decideClutch.ts';
export { type Birth, decideFemale, type FemaleAct, LAYING_GAP_DAYS, type Laying } from './decideFemale.ts';
export { decidePairing, type PairingAct, pairOf } from './decidePairing.ts';
export { decideStamp, isSeasonStamp, type SeasonStamp } from './decideStamp.ts';
export { type ChangedChance, type ClutchFindings, findingsOf } from './findings.ts';
export {
  type ClutchForecast,
  forecastOf,
  type Hatchlings,
  type HatchOut,
  type HatchSetting,
  hatchOut,
  MOST_LOOKS,
} from './hatch.ts';
export { eggsLeft, eggsOpen, HATCH_SPAN, ownHatchSpans, stillLies, stillToCome } from './hatchSpan.ts';
export { type CalendarEntry, icsText } from './ics.ts';
export { marksOfSeason, SEASON_DAYS, SEASON_OVER_DAYS } from './marks.ts';
export { observedOf, youngOf } from './observed.ts';
export {
  checkPlan,
  MOST_PLAN_PAIRS,
  type PlanPair,
  type SeasonPlanCase,
  unreachableGoals,
} from './plan.ts';
export { type PlanColumn, type PlanModel, type PlanRow, planModel, planText } from './planModel.ts';
export { type ChosenPlan, PLAN_TOLERANCE, readPlan, weighPlan } from './planReading.ts';
export {
  type Maturity,
  maturityOf,
  type ProjectCase,
  type ProjectRoute,
  type ProjectSheet,
  projectSheet,
} from './project.ts';
export { clutchesUntil, type ProjectKeeps } from './projectCross.ts';
export { MOST_PROJECT_GENES, type ProjectAnimal, type WantedGene } from './projectGenes.ts';
export type { ProjectStep } from './projectSteps.ts';
export { sayEggs, sayFigure, sayKinship, sayPlanned } from './sayPlanned.ts';
export {
  type FemaleSeason,
  type SeasonTask,
  type SpansFor,
  type Stage,
  seasonBoard,
  seasonOf,
  seasonTasks,
  siteSpans,
} from './season.ts';
export {
  type CandidateSire,
  candidateSires,
  type MaleTurn,
  maleRota,
  type NextPairing,
  nextPairings,
  REST_DAYS,
  STORAGE_DAYS,
} from './sires.ts';
export { type Spans, spansOf } from './spans.ts';
export { narrowed, PRIOR_DATES, SITE_DATES, sayWindow, type Window, windowOf } from './windows.ts';
