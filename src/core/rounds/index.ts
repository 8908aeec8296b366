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
