export { type DraftPiece, type PlacedSlot, pathAt } from './draft.ts';
export { nearest, nearFirst } from './near.ts';
export { parseTraits, readPieces } from './parse.ts';
export { makeTraits, settleTraits } from './settle.ts';
export { sexOfPiece } from './sexes.ts';
export {
  printPiece,
  printSlot,
  printTraits,
  type Second,
  type Slot,
  symbolIn,
  type TraitPiece,
  type Traits,
  WILD_CODE,
} from './traits.ts';
