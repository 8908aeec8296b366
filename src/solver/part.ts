import type { Tableau } from './tableau.ts';

/** Figures so near to a whole number are whole. */
export const WHOLE = 1e-6;
/** Rows that a fraction breaks by less are kept well enough. */
const BROKEN = 1e-6;

/** What all parts of a search share. Variables below `count` are columns that are 0 or 1; then come the slacks of the rows. */
export interface Frame {
  readonly count: number;
  /** The columns from here on, the males, are decided first, since the others hang on them. */
  readonly malesFrom: number;
  /** Whether a row's slack can only be whole. */
  readonly isWhole: readonly boolean[];
  /** Rows pair ≤ male, which come in where a fraction breaks them. */
  readonly spare: readonly SpareRow[];
  /** What each column is worth, and what all settled columns together are, in the tableau's unit. */
  readonly gain: Float64Array;
  readonly settled: number;
}

/** A row that says pair ≤ male, by its place and its two columns. */
export interface SpareRow {
  readonly row: number;
  readonly pair: number;
  readonly male: number;
}

/** A part of the search: the columns that are decided (-1 for the others), and the tableau of all others. */
export interface Part {
  readonly tableau: Tableau;
  readonly decided: Int8Array;
}

/** A part whose tableau is at its best, with where every column stands there. */
export interface Solved extends Part {
  readonly x: Float64Array;
}

/** Where every column stands. */
export function standing({ count }: Frame, { tableau, decided }: Part): Float64Array {
  const x = Float64Array.from(decided);
  for (const { id, x: at } of [tableau.columns, tableau.rows]) {
    for (let k = 0; k < id.length; k++) {
      const column = id[k] ?? 0;
      if (column < count) x[column] = at[k] ?? 0;
    }
  }
  return x;
}

/**
 * How far the tableau's value has drifted from what its columns are worth where they stand: the value is summed up step by step and
 * the columns move on their own, so that rounding which has grown over thousands of steps shows here.
 */
export function drift({ gain, settled }: Frame, { value }: Tableau, x: Float64Array): number {
  return Math.abs(x.reduce((sum, at, column) => sum + at * (gain[column] ?? 0), settled) - value);
}

/** The tableau with the spare rows that it breaks; null where it breaks none. */
export function withBroken({ count, spare }: Frame, tableau: Tableau, x: Float64Array): Tableau | null {
  const broken = spare.filter(({ pair, male }) => (x[pair] ?? 0) > (x[male] ?? 0) + BROKEN);
  if (broken.length === 0) return null;
  const wider = tableau.copy(broken.length);
  for (const [nth, { row, pair, male }] of broken.entries()) {
    const at = tableau.height + nth;
    addTimes(wider, at, tableau, pair, 1);
    addTimes(wider, at, tableau, male, -1);
    wider.rows.id[at] = count + row;
    wider.rows.x[at] = (x[male] ?? 0) - (x[pair] ?? 0);
    wider.rows.high[at] = Number.POSITIVE_INFINITY;
  }
  return wider;
}

/** Adds so many times a variable to a row, in terms of the columns; one that is decided is a constant and adds nothing. */
function addTimes(
  wider: Tableau,
  at: number,
  { cells, width, rows, columns }: Tableau,
  id: number,
  times: number,
): void {
  const row = rows.id.indexOf(id);
  const column = columns.id.indexOf(id);
  for (let j = 0; j < width; j++) {
    const cell = row >= 0 ? -(cells[row * width + j] ?? 0) : j === column ? 1 : 0;
    wider.cells[at * width + j] = (wider.cells[at * width + j] ?? 0) + times * cell;
  }
}

/** The column that is split most evenly, of the males if one is; null where all are whole. */
export function splitColumn({ count, malesFrom }: Frame, { rows }: Tableau): number | null {
  let [most, found]: [number, number | null] = [0, null];
  for (let i = 0; i < rows.id.length; i++) {
    const id = rows.id[i] ?? 0;
    if (id >= count) continue;
    const x = rows.x[i] ?? 0;
    const split = Math.min(x, 1 - x);
    const weight = id >= malesFrom ? 1 + split : split;
    if (split < WHOLE || weight <= most) continue;
    [most, found] = [weight, id];
  }
  return found;
}

/** Decides columns where they stand, or those of rows elsewhere. */
export function decideAt({ rows, columns }: Tableau, isMeant: (id: number) => boolean, to?: number): void {
  for (const { id, x, low, high } of [rows, columns]) {
    for (let k = 0; k < id.length; k++) {
      if (!isMeant(id[k] ?? 0)) continue;
      const value = to ?? Math.round(x[k] ?? 0);
      low[k] = value;
      high[k] = value;
    }
  }
}
