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

/** The number of sheets in the file, in the regular cut: it is known when the last one is drawn. */
export interface TotalMark {
  readonly kind: 'total';
  readonly sizePt: number;
  readonly xMm: number;
  readonly yMm: number;
}

/** A ruled line, as a filled bar from its top left corner; a faint one guides the eye and says nothing. */
export interface RuleMark {
  readonly kind: 'rule';
  readonly faint?: true;
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
  /** What every code of this kind has; drawn first, so that a file holds it once. The rest may lie over it. */
  readonly base?: readonly ModuleRect[];
  /** What it says and of whom, on pages that are no labels: nobody else keeps it there. */
  readonly opens?: { readonly id: string; readonly payload: string };
}

/**
 * The bars of an EAN-13 from its top left bar, quiet zones not counted; guard bars are `guardMm` high, the others
 * `heightMm`. Its place must be whole dots of the printer; `insetMm` is taken off both sides of each bar.
 */
export interface BarMark {
  readonly kind: 'bar';
  readonly digits: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly moduleMm: number;
  readonly heightMm: number;
  readonly guardMm: number;
  readonly insetMm: number;
}

/** A run of straight lines, or the field within them; points are given from the mark’s own place. */
export interface PathMark {
  readonly kind: 'path';
  readonly xMm: number;
  readonly yMm: number;
  readonly points: readonly (readonly [xMm: number, yMm: number])[];
  /** `line` is open; `ink` and `paper` are closed and filled, and `paper` has an edge of ink. */
  readonly fill: 'line' | 'ink' | 'paper';
  readonly strokeMm: number;
  /** Length of a dash and of the space behind it; 0 for a whole line. */
  readonly dashMm: number;
}

/** A round dot about its place: filled, or an edge only. */
export interface DotMark {
  readonly kind: 'dot';
  readonly xMm: number;
  readonly yMm: number;
  readonly radiusMm: number;
  readonly fill: 'ink' | 'paper';
  readonly strokeMm: number;
}

/** Something that is put on paper, in mm from the top left corner of the face it belongs to; y grows downwards. */
export type Mark = TextMark | RuleMark | NotchMark | HatchMark | CodeMark | BarMark | TotalMark | PathMark | DotMark;
