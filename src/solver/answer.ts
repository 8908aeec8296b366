import type { ChosenPlan } from '../core/index.ts';

/** `optimal` is proven; `infeasible` is too; `stopped` has the best plan that was found until then, if any. */
export type PlanStatus = 'optimal' | 'infeasible' | 'stopped';

/** What came of a season plan. */
export interface PlanAnswer {
  readonly status: PlanStatus;
  /** Checked and valued by core; null where there is none, or none was found yet. */
  readonly plan: ChosenPlan | null;
  /** No plan is worth more; null where nothing is known or nothing is possible. */
  readonly bound: number | null;
  /** How far the bound lies above the plan, as a share of the plan's value: 0 when proven, null without both. */
  readonly gap: number | null;
  /** The goals that no listed pair contributes to; they were left out. */
  readonly unreachableGoals: readonly number[];
}

/** Where a search stands. */
export interface PlanProgress {
  readonly seconds: number;
  readonly best: ChosenPlan | null;
  readonly bound: number | null;
  readonly gap: number | null;
}

export interface PlanOptions {
  /** Where the solver's WebAssembly file lies; without it beside the package. */
  readonly locate?: (file: string) => string;
  /** After so many seconds the best plan until then is given; default {@link PLAN_SECONDS}. */
  readonly timeLimitSeconds?: number;
  readonly onProgress?: (progress: PlanProgress) => void;
}

/** A search that takes longer is stopped, unless another limit is given. */
export const PLAN_SECONDS = 120;

/** The share by which a bound lies above a value. */
export function gapOf(plan: ChosenPlan | null, bound: number | null): number | null {
  if (plan === null || bound === null) return null;
  const over = Math.max(0, bound - plan.value);
  return over === 0 ? 0 : over / Math.max(Math.abs(plan.value), Number.MIN_VALUE);
}
