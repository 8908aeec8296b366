/** Sizes of one paper of a treatment; `bare` ones have no rules between the small lines. */
export interface SheetSetting {
  readonly idPt: number;
  readonly mainPt: number;
  /** The volume: it is read at an arm’s length, with a syringe in the other hand. */
  readonly figurePt: number;
  readonly bodyPt: number;
  readonly cautionPt: number;
  readonly flagPt: number;
  readonly footPt: number;
  readonly signPt: number;
  /** The height of a line that is written on by hand. */
  readonly signMm: number;
  readonly gapMm: number;
  readonly leading: number;
  readonly bare: boolean;
}

/** From roomy to what is still read without a glass. */
export const COMFORTABLE: readonly SheetSetting[] = [
  step([28, 22, 46, 14], [10.5, 14, 9], [12, 10], 2, 1.24),
  step([25, 19, 40, 12.5], [10, 13, 8.5], [11, 9.5], 1.6, 1.22),
  step([22, 17, 34, 11.5], [9.5, 12, 8], [10.5, 9], 1.3, 1.2),
  step([20, 15.5, 30, 10.5], [9, 11, 8], [10, 8.5], 1, 1.18),
  step([18, 14, 26, 9.5], [8.5, 10, 7.5], [9.5, 8], 0.8, 1.16),
  step([17, 13, 23, 9], [8, 9.5, 7.5], [9, 7.5], 0.6, 1.15),
];

/** Tighter, down to what is legible with the card in hand; 7 pt is the least that a thermal printer prints well. */
export const TIGHT: readonly SheetSetting[] = [
  ...COMFORTABLE,
  step([16, 12, 20, 8.5], [7.5, 9, 7], [8.5, 7], 0.5, 1.13),
  { ...step([14.5, 11.5, 18, 8.5], [7.5, 8.5, 7], [8.5, 6.8], 0.4, 1.12), bare: true },
  { ...step([13, 11, 17, 8], [7, 8, 7], [8, 6.5], 0.3, 1.1), bare: true },
  { ...step([12, 10.5, 16, 7.5], [7, 8, 7], [7.5, 6.5], 0.25, 1.08), bare: true },
];

type Large = readonly [idPt: number, mainPt: number, figurePt: number, bodyPt: number];
type Small = readonly [cautionPt: number, flagPt: number, footPt: number];
type Sign = readonly [signPt: number, signMm: number];

function step(large: Large, small: Small, sign: Sign, gapMm: number, leading: number): SheetSetting {
  const [idPt, mainPt, figurePt, bodyPt] = large;
  const [cautionPt, flagPt, footPt] = small;
  const [signPt, signMm] = sign;
  return { idPt, mainPt, figurePt, bodyPt, cautionPt, flagPt, footPt, signPt, signMm, gapMm, leading, bare: false };
}
