import type { Highs, Model } from 'highs';
import type { PlanModel, PlanRow } from '../core/index.ts';
import type { Clock } from './clock.ts';
import { modelData, openBounds, scaleOf } from './modelData.ts';

/** The best value if pairs could be split, and what it costs at least to take a column away from where it stands there. */
export interface Relaxed {
  readonly kind: 'relaxed';
  readonly bound: number;
  readonly columns: Float64Array;
  readonly loss: Float64Array;
  /** The basis it stands at: the columns in it, and the places of the rows that are tight for them. */
  readonly basis: { readonly columns: readonly number[]; readonly tight: ReadonlySet<number> };
}

/** No plan is possible at all, or the time was over before anything was known. */
export interface Unrelaxed {
  readonly kind: 'infeasible' | 'stopped';
}

/** Rows that a fraction breaks by less are kept well enough. */
const BROKEN = 1e-6;

/**
 * The relaxation with its spare rows, of which only those come in that a fraction would break: a few hundred of thousands,
 * which makes it ten times as fast.
 */
export function relax(highs: Highs, model: PlanModel, clock: Clock): Relaxed | Unrelaxed {
  const rows = model.rows.filter((row) => !row.spare);
  const present = [...rows];
  const spare = new Set(model.rows.filter((row) => row.spare));
  const status = highs.constants.modelStatus;
  return highs.withModel(modelData(highs, model, rows, openBounds(model)), (lp): Relaxed | Unrelaxed => {
    for (;;) {
      lp.options.set({ output_flag: false, time_limit: lp.getRunTime() + clock.left() });
      lp.run();
      const found = lp.getModelStatus();
      if (found === status.infeasible || found === status.unboundedOrInfeasible) return { kind: 'infeasible' };
      if (found === status.timeLimit || clock.left() === 0) return { kind: 'stopped' };
      if (found !== status.optimal) throw new RangeError(`the relaxation ended with status ${found}`);
      const { colValue } = lp.getSolution();
      const added = addBroken(lp, spare, colValue, highs.infinity);
      if (added.length === 0) return relaxed(highs, lp, model, present);
      present.push(...added);
    }
  });
}

function addBroken(lp: Model, spare: Set<PlanRow>, columns: ArrayLike<number>, infinity: number): PlanRow[] {
  const added: PlanRow[] = [];
  for (const row of spare) {
    const sum = row.terms.reduce((all, [column, by]) => all + by * (columns[column] ?? 0), 0);
    const over = row.sign === '<=' ? sum - row.bound : row.bound - sum;
    if (over <= BROKEN) continue;
    const [lower, upper] = row.sign === '<=' ? [-infinity, row.bound] : [row.bound, infinity];
    lp.addRow(lower, upper, {
      indices: Int32Array.from(row.terms, ([column]) => column),
      values: Float64Array.from(row.terms, ([, by]) => by),
    });
    spare.delete(row);
    added.push(row);
  }
  return added;
}

/** A column at 0 loses by what its dual says if it is raised, one at 1 if it is lowered, and one between them nothing. */
function relaxed(highs: Highs, lp: Model, model: PlanModel, rows: readonly PlanRow[]): Relaxed {
  const scale = scaleOf(model);
  const { colValue, colDual } = lp.getSolution();
  const loss = Float64Array.from(colValue, (value, at) => {
    const dual = (colDual[at] ?? 0) / scale;
    return value < BROKEN ? Math.max(0, -dual) : value > 1 - BROKEN ? Math.max(0, dual) : 0;
  });
  const { colStatus, rowStatus } = lp.getBasis();
  const { basic } = highs.constants.basisStatus;
  const tight = new Set(rows.filter((_row, at) => rowStatus[at] !== basic));
  return {
    kind: 'relaxed',
    bound: lp.getObjectiveValue() / scale,
    columns: Float64Array.from(colValue),
    loss,
    basis: {
      columns: [...colStatus.keys()].filter((at) => colStatus[at] === basic),
      tight: new Set([...model.rows.entries()].flatMap(([at, row]) => (tight.has(row) ? [at] : []))),
    },
  };
}
