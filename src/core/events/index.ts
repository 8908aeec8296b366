export { canonicalJson, fingerprint } from './canonical.ts';
export { LENGTHS_OF, PAPER_LETTERS, POOL_WORK, ROUND_TASKS } from './careSchemas.ts';
export { standing as standingEvents } from './effective.ts';
export {
  type Clock,
  clash,
  EVENT_VERSION,
  type EventOf,
  hear,
  inOrder,
  isKnown,
  type LogEvent,
  laterWriter,
  parseEvent,
  type SiteEvent,
  tick,
  type UnknownEvent,
} from './event.ts';
export { type LastWritten, lastWritten, minutesSince } from './lastWritten.ts';
export { MOST_RUN_PAGES, RUN_PART_IDS } from './paperSchemas.ts';
export {
  ANIMAL_FLAGS,
  type EventKind,
  HOLD_REASONS,
  isEventKind,
  LEAVINGS,
  OFFER_OUTCOMES,
  type Payload,
  PLACE_KINDS,
  type RoundTask,
  SEXES,
  SITE_ROLES,
} from './payloads.ts';
export { MOST_PAIRS_OF_PART } from './planSchema.ts';
export { upgrade } from './upgrade.ts';
