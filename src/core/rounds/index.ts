export {
  type AloneReason,
  aloneReasons,
  type Company,
  companyFault,
  companyFor,
  namesIn,
} from './alone.ts';
export { sayRange, WEIGH_DAYS, weighingOf } from './animalLines.ts';
export { deedDraft } from './deeds.ts';
export {
  type DueLine,
  dueLine,
  dueList,
  isToFeed,
  preyAtHand,
  SPARE_SHARE,
  type ThawLine,
  thawList,
} from './dueList.ts';
export { endRound, type RoundSummary, summaryOf } from './ending.ts';
export {
  doneAfterAll,
  type LinePast,
  lookedAt,
  notDone,
  offerAmended,
  type Seen,
  skipLine,
  skipTakenBack,
} from './exceptions.ts';
export { handledTooSoon, NO_HANDLING_DAYS } from './handling.ts';
export { groupOf, type Home, homeAt, homesOf, sayGroup, sayHome, standsIn } from './homes.ts';
export {
  DEFAULT_GAPS,
  DEFAULT_INTERVALS,
  type DefaultInterval,
  type Grown,
  type Interval,
  intervalOf,
  LATE_TIMES,
  LEARNED_GAPS,
  LEAST_GAPS,
  learnedDays,
  shortened,
  WASTE_POWER,
} from './intervals.ts';
export { isLeft, type LineState, type RoundLine } from './line.ts';
export { BREAK_MINUTES, type DayWork, dayWork, LEAST_MINUTES, sayPace } from './pace.ts';
export { isAtPlace, looksAgain } from './placeLines.ts';
export {
  effectOf,
  type IntervalEffect,
  intervalAt,
  type PlaceFacts,
  parseDays,
  partLitres,
  servePool,
  setInterval,
  setPlaceFacts,
  tasksAt,
} from './places.ts';
export {
  countsOfRound,
  type DayRound,
  groupsOf,
  lineFor,
  type RoundCounts,
  type RoundGroup,
  type RoundQuestion,
  roundPlan,
  roundsOfDay,
  sayDefault,
  sayInterval,
  sayWhy,
} from './plan.ts';
export {
  allAsPlanned,
  aloneFault,
  beginRound,
  goesAtOnce,
  linesAt,
  type RoundAt,
  type Sweep,
  sayFew,
} from './sweep.ts';
