import type { ModuleRect } from '../qr/rectangles.ts';

/** The two cuts of the one type family. */
export type Cut = 'regular' | 'bold';

/** A run of text; `y` is its baseline, `widthMm` its measured width. `paper` text stands on ink. */
export interface TextMark {
  readonly kind: 'text';
  readonly text: string;
  readonly cut: Cut;
  readonly sizePt: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly tone: 'ink' | 'paper';
}

/** A ruled line, as a filled bar from its top left corner. */
export interface RuleMark {
  readonly kind: 'rule';
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A filled tab with its upper right corner cut off at 45°: a flag. */
export interface NotchMark {
  readonly kind: 'notch';
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cutMm: number;
}

/** A field of slanted strokes: a hold. */
export interface HatchMark {
  readonly kind: 'hatch';
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pitchMm: number;
  readonly strokeMm: number;
}

/** A QR symbol from its top left dark corner, quiet zone not counted; `insetModules` is taken off each rectangle's edges. */
export interface CodeMark {
  readonly kind: 'code';
  readonly xMm: number;
  readonly yMm: number;
  readonly moduleMm: number;
  readonly size: number;
  readonly insetModules: number;
  readonly rectangles: readonly ModuleRect[];
}

/** Something that is put on paper, in mm from the top left corner of the face it belongs to; y grows downwards. */
export type Mark = TextMark | RuleMark | NotchMark | HatchMark | CodeMark;
