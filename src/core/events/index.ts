export { canonicalJson, fingerprint } from './canonical.ts';
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
export {
  ANIMAL_FLAGS,
  type EventKind,
  HOLD_REASONS,
  isEventKind,
  LEAVINGS,
  OFFER_OUTCOMES,
  type Payload,
  PLACE_KINDS,
  SEXES,
  SITE_ROLES,
} from './payloads.ts';
export { upgrade } from './upgrade.ts';
