import type { PlanModel } from '../core/index.ts';
import { scaleOf } from './modelData.ts';
import type { Relaxed } from './relaxation.ts';
import { Tableau } from './tableau.ts';

/** Nothing smaller is divided by, and a gain that misses its side by less does not. */
const SMALL = 1e-7;
/** So little, or up to twice as much, is a column worth more or less when ties are broken. */
const SHADE = 1e-8;
/** Multiples of the golden ratio are spread evenly. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** No plan's value changes by more than this when ties among so many columns are broken. */
export function shadeOf(columns: number): number {
  return 2 * SHADE * columns;
}

/** A row of the model in the kernel's columns, to be ≤ its bound, grown so that its largest coefficient is not below 1. */
export interface KernelRow {
  readonly row: number;
  readonly terms: readonly (readonly [column: number, by: number])[];
  readonly bound: number;
}

/** Which of the model's columns are open, where the others are settled, and the place of each open one in the kernel. */
export interface Openness {
  readonly settled: Int8Array;
  readonly columns: readonly number[];
  readonly place: Int32Array;
}

/** A tableau to begin with, and what its columns and all settled ones are worth in it. */
export interface Start {
  readonly tableau: Tableau;
  readonly gain: Float64Array;
  readonly settled: number;
}

/**
 * The tableau that a search begins with: at the basis of the relaxation, which makes it the best one already, or else before the
 * first step. Ties are broken by a shade, since the dual simplex could go round in them.
 */
export function startTableau(model: PlanModel, relaxed: Relaxed, open: Openness, rows: readonly KernelRow[]): Start {
  const cold = coldTableau(model, open, rows);
  const gain = cold.gain.slice();
  const settled = model.columns.reduce((sum, { value }, at) => (open.settled[at] === 1 ? sum + value : sum), 0);
  const tableau = warmed(cold.copy(), relaxed, open, rows) ?? cold;
  shade(tableau, gain);
  return { tableau, gain, settled: settled * scaleOf(model) };
}

/** Slacks are its rows, and every column stands where its value wants it. */
function coldTableau(model: PlanModel, { columns, settled }: Openness, rows: readonly KernelRow[]): Tableau {
  const scale = scaleOf(model);
  const cold = new Tableau(rows.length, columns.length);
  for (const [at, { value }] of model.columns.entries()) if (settled[at] === 1) cold.value += value * scale;
  for (const [at, column] of columns.entries()) {
    const gain = (model.columns[column]?.value ?? 0) * scale;
    cold.columns.id[at] = at;
    cold.columns.high[at] = 1;
    cold.columns.x[at] = gain > 0 ? 1 : 0;
    cold.gain[at] = gain;
    cold.value += Math.max(0, gain);
  }
  for (const [at, { row, terms, bound }] of rows.entries()) {
    cold.rows.id[at] = columns.length + row;
    cold.rows.high[at] = Number.POSITIVE_INFINITY;
    cold.rows.x[at] = terms.reduce((left, [column, by]) => left - by * (cold.columns.x[column] ?? 0), bound);
    for (const [column, by] of terms) cold.cells[at * columns.length + column] = by;
  }
  return cold;
}

/** Brings the basis in, by Gauss with the largest pivot of each column; null where a gain then points out of the program. */
function warmed(tableau: Tableau, relaxed: Relaxed, open: Openness, rows: readonly KernelRow[]): Tableau | null {
  for (const [at, column] of open.columns.entries()) tableau.move(at, Math.round(relaxed.columns[column] ?? 0));
  const left = new Set([...rows.keys()].filter((at) => relaxed.basis.tight.has(rows[at]?.row ?? -1)));
  for (const column of relaxed.basis.columns) {
    const at = open.place[column] ?? -1;
    const row = at < 0 ? null : largestIn(tableau, at, left);
    if (row === null) continue;
    tableau.pivot(row, at, 0);
    left.delete(row);
  }
  return canStand(tableau) ? tableau : null;
}

function largestIn({ cells, width }: Tableau, column: number, rows: ReadonlySet<number>): number | null {
  let [largest, found]: [number, number | null] = [SMALL, null];
  for (const row of rows) {
    const size = Math.abs(cells[row * width + column] ?? 0);
    if (size > largest) [largest, found] = [size, row];
  }
  return found;
}

/** Moves every column to where its gain wants it; false where one has no end there. */
function canStand(tableau: Tableau): boolean {
  const { low, high } = tableau.columns;
  for (const [at, gain] of tableau.gain.entries()) {
    const to = (gain > 0 ? high[at] : low[at]) ?? 0;
    if (Number.isFinite(to)) {
      if (gain !== 0) tableau.move(at, to);
    } else if (gain > SMALL) return false;
  }
  return true;
}

/** Each column is worth a shade more where it stands, by an amount of its own. */
function shade(tableau: Tableau, gain: Float64Array): void {
  const { id, x, low } = tableau.columns;
  for (const [at, column] of id.entries()) {
    if (column >= gain.length) continue;
    const by = SHADE * (1 + ((column * GOLDEN) % 1)) * (x[at] === low[at] ? -1 : 1);
    tableau.gain[at] = (tableau.gain[at] ?? 0) + by;
    gain[column] = (gain[column] ?? 0) + by;
    tableau.value += by * (x[at] ?? 0);
  }
}
