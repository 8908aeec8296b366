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
      const { colValue, colDual } = lp.getSolution();
      if (addBroken(lp, spare, colValue, highs.infinity) === 0) return relaxed(lp, colValue, colDual, scaleOf(model));
    }
  });
}

function addBroken(lp: Model, spare: Set<PlanRow>, columns: ArrayLike<number>, infinity: number): number {
  let added = 0;
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
    added += 1;
  }
  return added;
}

/** A column at 0 loses by what its dual says if it is raised, one at 1 if it is lowered, and one between them nothing. */
function relaxed(lp: Model, columns: ArrayLike<number>, duals: ArrayLike<number>, scale: number): Relaxed {
  const loss = Float64Array.from(columns, (value, at) => {
    const dual = (duals[at] ?? 0) / scale;
    return value < BROKEN ? Math.max(0, -dual) : value > 1 - BROKEN ? Math.max(0, dual) : 0;
  });
  return { kind: 'relaxed', bound: lp.getObjectiveValue() / scale, columns: Float64Array.from(columns), loss };
}
