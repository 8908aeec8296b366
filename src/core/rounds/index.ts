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
export { feedRack, offerAmended, preyUsed, type RackFeeding, sayFew } from './rackFeeding.ts';
