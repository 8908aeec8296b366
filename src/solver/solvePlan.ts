import type { Highs } from 'highs';
import {
  type ChosenPlan,
  checkPlan,
  ok,
  type PlanModel,
  planModel,
  type Result,
  readPlan,
  refuse,
  type SeasonPlanCase,
  unreachableGoals,
} from '../core/index.ts';
import { gapOf, PLAN_SECONDS, type PlanAnswer, type PlanOptions, type PlanStatus } from './answer.ts';
import { type Clock, startClock } from './clock.ts';
import { type Relaxed, relax } from './relaxation.ts';
import { forgetSolver, loadSolver } from './runtime.ts';
import { type Hear, type Searched, searchAmong } from './search.ts';

/** So many columns, those that lose least, are looked at first. */
const FIRST_COLUMNS = 600;
/** Where no plan is possible with them, so many times as many are looked at. */
const WIDER = 3;
/** A share of the bound that rounding may eat; columns so near to being excluded stay in. */
const ROUNDING = 1e-9;

/**
 * The best season plan, proven, by HiGHS as WebAssembly, which is loaded on first use. Whatever the solver says, core checks the
 * plan against every bound and values it anew. It blocks its thread while it searches, so a page runs it in a worker.
 * Errors: those of `checkPlan`, `plan-unsound`, `plan-solver`.
 */
export async function solvePlan(plan: SeasonPlanCase, options: PlanOptions = {}): Promise<Result<PlanAnswer>> {
  const checked = checkPlan(plan);
  if (!checked.ok) return checked;
  try {
    const highs = await loadSolver(options.locate);
    return new Planning(highs, plan, options).run();
  } catch (error) {
    forgetSolver();
    return refuse('plan-solver', { why: error instanceof Error ? error.message : String(error) });
  }
}

/** One search: first the relaxation, then the few columns near it, then all that could still better what was found. */
class Planning {
  readonly #highs: Highs;
  readonly #plan: SeasonPlanCase;
  readonly #options: PlanOptions;
  readonly #clock: Clock;
  readonly #model: PlanModel;
  #best: ChosenPlan | null = null;
  #bound: number | null = null;

  constructor(highs: Highs, plan: SeasonPlanCase, options: PlanOptions) {
    this.#highs = highs;
    this.#plan = plan;
    this.#options = options;
    this.#clock = startClock(options.timeLimitSeconds ?? PLAN_SECONDS);
    this.#model = planModel(plan);
  }

  run(): Result<PlanAnswer> {
    if (this.#model.columns.length === 0) return this.#empty();
    const relaxed = relax(this.#highs, this.#model, this.#clock);
    if (relaxed.kind !== 'relaxed') return ok(this.#answer(relaxed.kind));
    this.#bound = relaxed.bound;
    this.#tell();
    return this.#search(relaxed);
  }

  /** Without pairs every goal is unreachable and left out, so that nobody is paired. */
  #empty(): Result<PlanAnswer> {
    const none = readPlan(this.#plan, []);
    if (!none.ok) return none;
    this.#best = none.value;
    this.#bound = none.value.value;
    return ok(this.#answer('optimal'));
  }

  #search(relaxed: Relaxed): Result<PlanAnswer> {
    let count = FIRST_COLUMNS;
    let within = lossAt(relaxed, count);
    let start: Float64Array | null = null;
    for (;;) {
      const isWhole = within === Number.POSITIVE_INFINITY;
      const hear: Hear = (columns, bound) => {
        if (columns !== null) this.#take(columns);
        // What bounds the looked-at columns bounds all of them only where no other could still better the best.
        this.#tell(isWhole ? bound : null);
      };
      const found = searchAmong(this.#highs, this.#model, relaxed, within, { clock: this.#clock, start, hear });
      start = found.columns ?? start;
      const fault = found.columns === null ? null : this.#take(found.columns);
      if (fault !== null && !fault.ok) return fault;
      if (found.kind === 'stopped') return ok(this.#stopped(relaxed, within, found));
      if (this.#best === null) {
        if (isWhole) return ok(this.#answer('infeasible'));
        count *= WIDER;
        within = lossAt(relaxed, count);
        continue;
      }
      const needed = this.#needed(relaxed);
      if (needed <= within) {
        this.#bound = this.#best.value;
        return ok(this.#answer('optimal'));
      }
      within = needed;
    }
  }

  /** A column that loses more than this is in no plan better than the best one. */
  #needed({ bound }: Relaxed): number {
    return bound - (this.#best?.value ?? Number.NEGATIVE_INFINITY) + ROUNDING * Math.max(1, Math.abs(bound));
  }

  #stopped(relaxed: Relaxed, within: number, { bound }: Searched): PlanAnswer {
    const best = this.#best;
    const holds = best === null ? within === Number.POSITIVE_INFINITY : this.#needed(relaxed) <= within;
    if (holds && bound !== null) this.#bound = Math.min(relaxed.bound, Math.max(bound, best?.value ?? bound));
    return this.#answer('stopped');
  }

  /** Keeps a plan if it is the best yet. Errors: those of `readPlan`. */
  #take(columns: Float64Array): Result<ChosenPlan> {
    const read = readPlan(this.#plan, columns);
    if (read.ok && (this.#best === null || read.value.value > this.#best.value)) this.#best = read.value;
    return read;
  }

  #tell(bound: number | null = null): void {
    const known = bound === null ? this.#bound : Math.min(bound, this.#bound ?? bound);
    const [seconds, best] = [this.#clock.spent(), this.#best];
    this.#options.onProgress?.({ seconds, best, bound: known, gap: gapOf(best, known) });
  }

  #answer(status: PlanStatus): PlanAnswer {
    const [plan, bound] = status === 'infeasible' ? [null, null] : [this.#best, this.#bound];
    return { status, plan, bound, gap: gapOf(plan, bound), unreachableGoals: unreachableGoals(this.#plan) };
  }
}

/** What the so-many-th column loses, in the order of losses; infinite beyond the last. */
function lossAt({ loss }: Relaxed, count: number): number {
  return Float64Array.from(loss).sort()[count] ?? Number.POSITIVE_INFINITY;
}
