import type { Form, Spot, Tree } from './layout.ts';

/** Pixels of a drawing: where a spot's line runs and where its words begin. */
export interface Measures {
  readonly columnPx: number;
  readonly rowPx: number;
  /** From the top of a row to its line, or to the middle of its shape. */
  readonly linePx: number;
  /** From the left of a column to the middle of the shape. */
  readonly shapePx: number;
}

const MEASURES: Readonly<Record<Form, Measures>> = {
  beside: { columnPx: 166, rowPx: 68, linePx: 30, shapePx: 12 },
  below: { columnPx: 24, rowPx: 58, linePx: 21, shapePx: 12 },
};

export function measuresOf(form: Form): Measures {
  return MEASURES[form];
}

/** Where a spot stands. */
export interface Point {
  /** The left of its column. */
  readonly left: number;
  readonly top: number;
  /** The middle of its shape. */
  readonly x: number;
  readonly y: number;
}

export function pointOf({ column, row }: Spot, { columnPx, rowPx, linePx, shapePx }: Measures): Point {
  const [left, top] = [column * columnPx, row * rowPx];
  return { left, top, x: left + shapePx, y: Math.round(top + linePx) };
}

/** Beside, an end’s words run on to the right: no other line comes there. The last column has so much more room for them. */
export const TAIL_PX = 96;

/** The width that a drawing needs; below, it takes what the screen has. */
export function widthOf({ columns }: Tree, form: Form): number {
  return columns * MEASURES[form].columnPx + TAIL_PX;
}

export function heightOf({ rows }: Tree, form: Form): number {
  return rows * MEASURES[form].rowPx;
}

/** Widths from which there is room for columns side by side. */
export const WIDE = '(min-width: 900px)';
