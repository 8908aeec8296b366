import type { PlanModel } from '../core/index.ts';
import { Branching, type Closed } from './branching.ts';
import { kernelOf } from './kernel.ts';
import { AGREED, LARGEST, scaleOf, stepOf } from './modelData.ts';
import type { Relaxed } from './relaxation.ts';
import { shadeOf } from './start.ts';

/** What a search in the kernel goes by; all values in the unit of the case. */
export interface KernelSearch {
  readonly model: PlanModel;
  /** How many of the model's columns are pairs; the males come after them. */
  readonly pairs: number;
  readonly relaxed: Relaxed;
  /** The value of the best plan yet. */
  readonly best: number;
  readonly isOver: () => boolean;
  /** Told a better plan's columns; gives its value, or null where they are no plan. */
  take(columns: Float64Array): number | null;
  /** Told what no plan is worth more than. */
  bound(value: number): void;
}

/** The largest tableau that is quick enough, in cells. */
const MOST_CELLS = 1e6;
/** So many parts are looked at for the best plan before it is given up: about ten seconds of a slow machine. */
const MOST_PARTS = 20_000;
/** So many for a good plan. */
const FEW_PARTS = 2_500;
/** The value is proven to this share of itself at least. */
const GAP = 1e-9;

/**
 * Searches among the columns that lose at most `within`: `first` for a good plan, soon; `better` for the best plan with these
 * columns; `best` for the best plan of all, which is found if it is better than the bound less `within`. `given-up` where it would take
 * long or cannot be trusted; then nothing is known but the plans it has told.
 */
export function searchKernel(how: 'first' | 'better' | 'best', within: number, search: KernelSearch): Closed {
  const { model, pairs, relaxed, best } = search;
  const kernel = kernelOf(model, pairs, relaxed, within, MOST_CELLS);
  if (kernel === null) return 'given-up';
  const scale = scaleOf(model);
  const shade = shadeOf(kernel.frame.count);
  // A plan with any other column is not worth more.
  const outside = relaxed.bound - within;
  const branching = new Branching(kernel.frame, {
    top: relaxed.bound * scale,
    floor: how === 'best' ? outside * scale - shade : Number.NEGATIVE_INFINITY,
    step: Math.max(stepOf(model), GAP * Math.abs(relaxed.bound)) * scale - shade,
    best: best * scale,
    parts: how === 'best' ? MOST_PARTS : FEW_PARTS,
    isOver: search.isOver,
    take: (x, value) => agreed(value, search.take(kernel.all(x)), scale),
    bound: (value) => search.bound(Math.max((value + shade) / scale, outside)),
  });
  return how === 'first' ? branching.first(kernel.root) : branching.best(kernel.root);
}

/** The true value of a plan, in the tableau's unit; null where it is none or the tableau is far off it. */
function agreed(found: number, value: number | null, scale: number): number | null {
  if (value === null) return null;
  const truth = value * scale;
  return Math.abs(truth - found) <= AGREED * (LARGEST + Math.abs(truth)) ? truth : null;
}
