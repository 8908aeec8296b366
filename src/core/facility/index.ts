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
export {
  type ClutchRecord,
  type EggState,
  type Incubation,
  type IncubationReading,
  type KeeperRecord,
  type LotRecord,
  type PlaceRecord,
  type SiteRecord,
  type SiteRules,
  UNNAMED_SITE,
} from './others.ts';
export { animalsInWalkingOrder, nameOf, occupants, sayPlace, walkingOrder } from './walk.ts';
