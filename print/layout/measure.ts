import type { Cut } from './marks.ts';

/** One typographic point in mm. */
export const PT_MM = 25.4 / 72;

/** A text as it is printed: composed letters (Unicode NFC), and single spaces for whatever is blank. */
export interface Reading {
  readonly text: string;
  /** The width at 1 pt, in mm. */
  readonly widthAtOnePt: number;
  /** The signs that the cut has no glyph for, each once; they have no width. */
  readonly missing: readonly string[];
}

/** What layout needs to know of the type. */
export interface Measure {
  read(text: string, cut: Cut): Reading;
  /** Height of a capital above the baseline, and of a `p` below it, as parts of the size. */
  readonly capHeight: number;
  readonly descent: number;
}
