export {
  emptyFacility,
  type Facility,
  foldFacility,
  fromSnapshot,
  historiesOf,
  refold,
  SITE,
  SNAPSHOT_VERSION,
  toSnapshot,
} from './facility.ts';
export type { Hatched, Hatching } from './hatchings.ts';
export type { ItemRecord } from './items.ts';
export { keptPlace, keptRules } from './kept.ts';
export { KEPT_SESSIONS, type LotRecord, type LotSession } from './lots.ts';
export {
  type ClutchRecord,
  type EggState,
  type Incubation,
  type IncubationReading,
  type KeeperRecord,
  type SiteRecord,
  type SiteRules,
  UNNAMED_SITE,
} from './others.ts';
export { type CalibrationRecord, NO_PAPER, type PaperRecord } from './paper.ts';
export { type Deed, KEPT_DEEDS, type PlaceRecord, type RoundRecord, taskOf } from './places.ts';
export { type PlannedPair, type PlanTerms, SAME_SEASON_DAYS, type SeasonPlan } from './plans.ts';
export { KEPT_RUNS, type LaidRun, partsOfRun, type RunRecord } from './printRuns.ts';
export { animalsInWalkingOrder, isQuarantinePlace, nameOf, occupants, sayPlace, walkingOrder } from './walk.ts';
