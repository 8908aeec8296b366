import type { Result, SeasonPlanCase } from '../../core/index.ts';
import type { PlanAnswer, PlanProgress } from '../../solver/index.ts';

/** What the page asks of the plan worker; everything in it can be copied to another thread. */
export interface PlanAsk {
  readonly plan: SeasonPlanCase;
  /** Where the solver's WebAssembly file lies on our own host. */
  readonly wasmUrl: string;
}

/** What the worker says: where it stands, any number of times, and once its answer. */
export type PlanWord =
  | { readonly kind: 'progress'; readonly progress: PlanProgress }
  | { readonly kind: 'answer'; readonly answer: Result<PlanAnswer> };
