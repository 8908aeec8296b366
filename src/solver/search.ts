import type { CallbackData, Highs, HighsCallbackMap, Model } from 'highs';
import type { PlanModel, PlanRow } from '../core/index.ts';
import type { Clock } from './clock.ts';
import { type Bounds, modelData, openBounds, scaleOf } from './modelData.ts';
import type { Relaxed } from './relaxation.ts';

/** What a search among some columns came to; `bound` holds among them only. */
export interface Searched {
  readonly kind: 'optimal' | 'infeasible' | 'stopped';
  readonly columns: Float64Array | null;
  readonly bound: number | null;
}

/** What is heard during a search: a better plan's columns, or only how far it is. */
export type Hear = (columns: Float64Array | null, bound: number | null) => void;

/** How a search is run; `start` is a plan's columns that it begins with. */
export interface Search {
  readonly clock: Clock;
  readonly start: Float64Array | null;
  readonly hear: Hear;
}

/** The value is proven to this share of itself. */
const GAP = 1e-9;
/** Sums that must meet a bound may miss it by this, which core takes as met. */
const FEASIBLE = 1e-9;
const WHOLE = 1e-6;
const SOLUTION_FOUND = 2;

/**
 * The best plan in which only columns move that lose at most `within` by it; all others stay where the relaxation has them.
 * With `within` infinite it is the whole program.
 */
export function searchAmong(
  highs: Highs,
  model: PlanModel,
  relaxed: Relaxed,
  within: number,
  { clock, start, hear }: Search,
): Searched {
  const bounds = narrowed(model, relaxed, within);
  const rows = model.rows.filter((row) => !row.spare || canBreak(row, bounds));
  const data = modelData(highs, model, rows, bounds);
  const integrality = new Int32Array(model.columns.length).fill(highs.constants.variableType.integer);
  return highs.withModel({ ...data, integrality }, (mip) => {
    mip.options.set({
      output_flag: false,
      time_limit: clock.left(),
      mip_rel_gap: GAP,
      mip_abs_gap: 0,
      mip_feasibility_tolerance: WHOLE,
      primal_feasibility_tolerance: FEASIBLE,
      // Measured on seasons of 200 × 40: here a fresh start, cuts below the root and long trials of branches cost more than they save.
      mip_allow_restart: false,
      mip_allow_cut_separation_at_nodes: false,
      mip_pscost_minreliable: 1,
    });
    if (start !== null) mip.setSolution({ colValue: start });
    mip.run(callbacks(highs, scaleOf(model), hear));
    return ended(highs, mip, scaleOf(model));
  });
}

function narrowed(model: PlanModel, { columns, loss }: Relaxed, within: number): Bounds {
  const bounds = openBounds(model);
  for (const [at, lost] of loss.entries()) {
    if (lost <= within) continue;
    const stays = Math.round(columns[at] ?? 0);
    bounds.lower[at] = stays;
    bounds.upper[at] = stays;
  }
  return bounds;
}

/** Whether columns within their bounds can break a row at all. */
function canBreak({ terms, sign, bound }: PlanRow, { lower, upper }: Bounds): boolean {
  const side = sign === '<=' ? 1 : -1;
  const worst = terms.reduce((sum, [at, by]) => sum + side * by * ((side * by > 0 ? upper[at] : lower[at]) ?? 0), 0);
  return worst > side * bound;
}

function callbacks(highs: Highs, scale: number, hear: Hear): HighsCallbackMap {
  const { mipImprovingSolution, mipLogging } = highs.constants.callbackType;
  const boundIn = ({ mip_dual_bound: bound }: CallbackData): number | null =>
    bound === undefined || !Number.isFinite(bound) ? null : bound / scale;
  return {
    [mipImprovingSolution]: ({ data }) => {
      hear(data.mip_solution ?? null, boundIn(data));
      return undefined;
    },
    [mipLogging]: ({ data }) => {
      hear(null, boundIn(data));
      return undefined;
    },
  };
}

function ended(highs: Highs, mip: Model, scale: number): Searched {
  const found = mip.getModelStatus();
  const status = highs.constants.modelStatus;
  const dual = Number(mip.info.get('mip_dual_bound'));
  const hasSolution = mip.info.get('primal_solution_status') === SOLUTION_FOUND;
  const columns = hasSolution ? Float64Array.from(mip.getSolution().colValue) : null;
  const bound = Number.isFinite(dual) ? dual / scale : null;
  if (found === status.optimal) return { kind: 'optimal', columns, bound };
  if (found === status.infeasible || found === status.unboundedOrInfeasible)
    return { kind: 'infeasible', columns: null, bound: null };
  if (found === status.timeLimit || found === status.interrupted) return { kind: 'stopped', columns, bound };
  throw new RangeError(`the search ended with status ${found}`);
}
