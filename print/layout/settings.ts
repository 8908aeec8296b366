import type { CardSlot } from '../../src/core/index.ts';

/** Sizes of one card in points; every step is legible at the distance its lines are read from. */
export interface Setting {
  /** The id, bold, beside the code: read at arm's length. */
  readonly idPt: number;
  readonly namePt: number;
  /** Sex and species. */
  readonly speciesPt: number;
  /** The feed: 12 to 13.6 pt is 19' to 22' of capital height at half a metre (ISO 9241 asks for 16', better 20'). */
  readonly feedPt: number;
  readonly traitPt: number;
  readonly duePt: number;
  /** What is read with the card in hand; never below 7 pt. */
  readonly minorPt: number;
  readonly holdPt: number;
  readonly flagPt: number;
  readonly footPt: number;
  readonly gapMm: number;
  /** Line height in parts of the size. */
  readonly leading: number;
}

/** The smallest sizes: a line that is too wide for its setting may shrink to these and no further. */
export const TIGHTEST: Setting = step([18, 12, 9.5, 10, 8, 12], [7.5, 10.5, 8, 7], 0.15, 1.08);

/** The sizes at which a line too wide for any form is broken into rows: small enough to save rows, and not the smallest. */
export const BROKEN: Setting = step([18, 13, 11.5, 12, 9, 13.6], [8, 12, 8.5, 7], 0.3, 1.12);

/** From roomy to tight; a card takes the first that holds it, so a sparse card prints large. */
export const SETTINGS: readonly Setting[] = [
  step([19, 21, 16, 16, 14, 25], [12.5, 18, 11.5, 7.5], 1.4, 1.22),
  step([19, 18, 14.5, 14.5, 13, 20], [11.5, 15, 10.5, 7.5], 1.2, 1.2),
  step([19, 16, 13.6, 13.6, 12, 18], [10.5, 14, 10, 7.5], 1, 1.2),
  step([19, 15, 13, 13, 11, 16.5], [9.5, 13.6, 9.5, 7], 0.8, 1.18),
  step([18.5, 14, 12.4, 12.8, 10, 15], [9, 13, 9, 7], 0.6, 1.16),
  step([18, 13.6, 12, 12.4, 9.5, 14], [8.5, 12.6, 8.5, 7], 0.4, 1.14),
  BROKEN,
  step([18, 12.6, 11, 12, 8.5, 13], [7.5, 12, 8, 7], 0.2, 1.1),
  step([18, 12, 10, 11, 8.5, 12.6], [7.5, 11.5, 8, 7], 0.2, 1.1),
  TIGHTEST,
];

type Large = readonly [idPt: number, namePt: number, speciesPt: number, feedPt: number, traitPt: number, duePt: number];
type Small = readonly [minorPt: number, holdPt: number, flagPt: number, footPt: number];

function step(large: Large, small: Small, gapMm: number, leading: number): Setting {
  const [idPt, namePt, speciesPt, feedPt, traitPt, duePt] = large;
  const [minorPt, holdPt, flagPt, footPt] = small;
  return { idPt, namePt, speciesPt, feedPt, traitPt, duePt, minorPt, holdPt, flagPt, footPt, gapMm, leading };
}

/** The size that a slot's lines have in a setting. */
export function sizeIn(setting: Setting, slot: CardSlot): number {
  switch (slot) {
    case 'name':
      return setting.namePt;
    case 'sex':
    case 'species':
      return setting.speciesPt;
    case 'traitCode':
      return setting.traitPt;
    case 'due':
      return setting.duePt;
    case 'feed':
      return setting.feedPt;
    case 'traitWords':
    case 'dates':
    case 'weight':
    case 'pairings':
    case 'place':
      return setting.minorPt;
    default:
      return slot satisfies never;
  }
}
