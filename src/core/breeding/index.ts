export {
  BREEDING,
  type BreedingSpecies,
  breedingOf,
  type Figure,
  LARGE_FOLLICLE_MM,
  type Milestone,
  type Step,
} from './calendar.ts';
export { type ClutchAct, decideClutch, eggsLeft } from './decideClutch.ts';
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
export { type CalendarEntry, icsText } from './ics.ts';
export { marksOfSeason, SEASON_DAYS, SEASON_OVER_DAYS } from './marks.ts';
export { observedOf, youngOf } from './observed.ts';
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
