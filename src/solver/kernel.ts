import type { PlanModel, PlanRow } from '../core/index.ts';
import type { Frame, Part, SpareRow } from './part.ts';
import type { Relaxed } from './relaxation.ts';
import { type KernelRow, type Openness, startTableau } from './start.ts';

/** The columns that may still matter, as the whole of a search; all others are settled. */
export interface Kernel {
  readonly frame: Frame;
  readonly root: Part;
  /** The values of all the model's columns for those of a part. */
  all(x: Float64Array): Float64Array;
}

const OPEN = -1;

/**
 * The model among those columns that lose at most `within` by leaving where the relaxation has them; its first `pairs` columns are
 * pairs, the others males. Null where its tableau has more than `most` cells.
 */
export function kernelOf(
  model: PlanModel,
  pairs: number,
  relaxed: Relaxed,
  within: number,
  most: number,
): Kernel | null {
  const open = opennessOf(model, relaxed, within);
  const { tight } = relaxed.basis;
  const isKept = (row: PlanRow, at: number): boolean => !row.spare || tight.has(at);
  if (open.columns.length * model.rows.filter(isKept).length > most) return null;
  const isWhole = model.rows.map(({ terms }) => terms.every(([, by]) => Number.isInteger(by)));
  const rows = model.rows.flatMap((row, at) =>
    isKept(row, at) && (tight.has(at) || canBreak(row, open)) ? [kernelRow(row, at, open, isWhole[at] === true)] : [],
  );
  const spare = model.rows.flatMap((row, at) => (isKept(row, at) ? [] : spareRows(row, at, open)));
  const malesFrom = open.columns.filter((at) => at < pairs).length;
  const { settled, place, columns } = open;
  const start = startTableau(model, relaxed, open, rows);
  return {
    frame: { count: columns.length, malesFrom, isWhole, spare, gain: start.gain, settled: start.settled },
    root: { tableau: start.tableau, decided: new Int8Array(columns.length).fill(OPEN) },
    all: (x) => Float64Array.from(settled, (value, at) => (value === OPEN ? (x[place[at] ?? 0] ?? 0) : value)),
  };
}

/** A male who has a settled pair is used. */
function opennessOf({ rows }: PlanModel, { columns: relaxed, loss }: Relaxed, within: number): Openness {
  const settled = Int8Array.from(loss, (lost, at) => (lost > within ? Math.round(relaxed[at] ?? 0) : OPEN));
  for (const { spare, terms } of rows) {
    const [pair, male] = terms;
    if (spare && pair !== undefined && male !== undefined && settled[pair[0]] === 1) settled[male[0]] = 1;
  }
  const columns = [...settled.keys()].filter((at) => settled[at] === OPEN);
  const place = new Int32Array(settled.length).fill(OPEN);
  for (const [nth, at] of columns.entries()) place[at] = nth;
  return { settled, columns, place };
}

/** The settled columns' part of a row. */
function takenBy({ terms }: PlanRow, { settled }: Openness): number {
  return terms.reduce((sum, [column, by]) => (settled[column] === 1 ? sum + by : sum), 0);
}

/** Whether the open columns can break a row. */
function canBreak(row: PlanRow, open: Openness): boolean {
  const side = sideOf(row);
  const worst = row.terms.reduce(
    (sum, [column, by]) => (open.settled[column] === OPEN ? sum + Math.max(0, side * by) : sum),
    side * takenBy(row, open),
  );
  return worst > side * row.bound;
}

function kernelRow(row: PlanRow, at: number, open: Openness, isWhole: boolean): KernelRow {
  const terms = row.terms.filter(([column]) => open.settled[column] === OPEN);
  const largest = terms.reduce((most, [, by]) => Math.max(most, Math.abs(by)), 0);
  const grown = isWhole || largest === 0 ? 1 : Math.max(1, 2 ** -Math.floor(Math.log2(largest)));
  const times = sideOf(row) * grown;
  return {
    row: at,
    terms: terms.map(([column, by]) => [open.place[column] ?? 0, by * times]),
    bound: (row.bound - takenBy(row, open)) * times,
  };
}

/** A spare row with a settled column says nothing more. */
function spareRows({ terms }: PlanRow, row: number, { place }: Openness): readonly SpareRow[] {
  const [pair = OPEN, male = OPEN] = terms.map(([column]) => place[column] ?? OPEN);
  return pair >= 0 && male >= 0 ? [{ row, pair, male }] : [];
}

function sideOf({ sign }: PlanRow): number {
  return sign === '<=' ? 1 : -1;
}
