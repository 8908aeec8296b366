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
import { type KernelSearch, searchKernel } from './kernelSearch.ts';
import { type Relaxed, relax } from './relaxation.ts';
import { forgetSolver, loadSolver } from './runtime.ts';
import { searchAmong } from './search.ts';

/** So many columns, those that lose least, are looked at first. */
const FIRST_COLUMNS = 500;
/** Where no plan is possible with them, so many times as many are looked at. */
const WIDER = 3;
/** So many times as many at each further look for a better plan. */
const MORE = 1.6;
/** A share of the bound that rounding may eat; columns so near to being excluded stay in. */
const ROUNDING = 1e-9;
/** The seconds between two words of progress, where nothing else is to be told. */
const BEAT_SECONDS = 0.5;

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

/**
 * One search: the relaxation, a good plan near it, then all columns that could still better that plan. They are few, and mostly proven
 * by branch and bound of our own on their small tableau; HiGHS has what that gives up.
 */
class Planning {
  readonly #highs: Highs;
  readonly #plan: SeasonPlanCase;
  readonly #options: PlanOptions;
  readonly #clock: Clock;
  readonly #model: PlanModel;
  #best: ChosenPlan | null = null;
  #columns: Float64Array | null = null;
  #bound: number | null = null;
  #toldAt = 0;

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
    for (let count = FIRST_COLUMNS; ; count *= WIDER) {
      const near = lossAt(relaxed, count);
      if (this.#best === null) searchKernel('first', near, this.#kernelSearch(relaxed));
      if (this.#best !== null) this.#improve(relaxed);
      const within = this.#best === null ? near : this.#needed(relaxed);
      const ended = this.#among(relaxed, within);
      if (!ended.ok) return ended;
      if (ended.value === 'stopped') return ok(this.#answer('stopped'));
      if (this.#best === null && within === Number.POSITIVE_INFINITY) return ok(this.#answer('infeasible'));
      if (this.#best === null || this.#needed(relaxed) > within) continue;
      this.#bound = this.#best.value;
      return ok(this.#answer('optimal'));
    }
  }

  /** A better plan before the proof, as long as the proof would have to look at far more columns. */
  #improve(relaxed: Relaxed): void {
    for (let count = FIRST_COLUMNS; ; count *= MORE) {
      const needed = this.#needed(relaxed);
      if (relaxed.loss.filter((loss) => loss <= needed).length < 2 * count || this.#clock.left() === 0) return;
      searchKernel('better', lossAt(relaxed, count), this.#kernelSearch(relaxed));
    }
  }

  /** The best plan among the columns that lose at most `within`. Errors: `plan-unsound`. */
  #among(relaxed: Relaxed, within: number): Result<'done' | 'stopped'> {
    const closed = searchKernel('best', within, this.#kernelSearch(relaxed));
    if (closed !== 'given-up') return ok(closed);
    const found = searchAmong(this.#highs, this.#model, relaxed, within, {
      clock: this.#clock,
      start: this.#columns,
      hear: (columns, bound) => {
        if (columns !== null) this.#take(columns);
        // No plan with other columns is worth more than the second of the two.
        this.#tell(bound === null ? null : Math.max(bound, relaxed.bound - within));
      },
    });
    const fault = found.columns === null ? null : this.#take(found.columns);
    if (fault !== null && !fault.ok) return fault;
    if (found.bound !== null) this.#tell(Math.max(found.bound, relaxed.bound - within));
    return ok(found.kind === 'stopped' ? 'stopped' : 'done');
  }

  #kernelSearch(relaxed: Relaxed): KernelSearch {
    return {
      model: this.#model,
      pairs: this.#plan.pairs.length,
      relaxed,
      best: this.#best?.value ?? Number.NEGATIVE_INFINITY,
      isOver: () => {
        if (this.#clock.spent() > this.#toldAt + BEAT_SECONDS) this.#tell();
        return this.#clock.left() === 0;
      },
      take: (columns) => {
        const read = this.#take(columns);
        this.#tell();
        return read.ok ? read.value.value : null;
      },
      bound: (value) => this.#tell(value),
    };
  }

  /** A column that loses more than this is in no plan better than the best one. */
  #needed({ bound }: Relaxed): number {
    return bound - (this.#best?.value ?? Number.NEGATIVE_INFINITY) + ROUNDING * Math.max(1, Math.abs(bound));
  }

  /** Keeps a plan if it is the best yet. Errors: those of `readPlan`. */
  #take(columns: Float64Array): Result<ChosenPlan> {
    const read = readPlan(this.#plan, columns);
    if (!read.ok || (this.#best !== null && read.value.value <= this.#best.value)) return read;
    this.#best = read.value;
    this.#columns = columns;
    return read;
  }

  /** Tells where the search stands, with a bound on all plans if there is a new one. */
  #tell(bound: number | null = null): void {
    const best = this.#best;
    if (bound !== null) this.#bound = Math.min(this.#bound ?? bound, Math.max(bound, best?.value ?? bound));
    this.#toldAt = this.#clock.spent();
    this.#options.onProgress?.({ seconds: this.#toldAt, best, bound: this.#bound, gap: gapOf(best, this.#bound) });
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
