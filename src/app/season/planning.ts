import wasmUrl from 'highs/runtime?url';
import { ok, type Result, refuse, type SeasonPlanCase, unreachableGoals } from '../../core/index.ts';
import type { PlanAnswer, PlanProgress } from '../../solver/index.ts';
import type { PlanAsk, PlanWord } from '../workers/planMessages.ts';

/** A search on its way: its answer, and the way to stop it. */
export interface PlanSearch {
  readonly answer: Promise<Result<PlanAnswer>>;
  /** Ends it at once: the answer is then the best plan so far, if there is one, with its gap. */
  stop(): void;
}

/** Searches in a worker of its own, which brings the solver with it, so that the screen stays alive and stopping really stops. */
export function startPlan(
  plan: SeasonPlanCase,
  onProgress: (progress: PlanProgress) => void = () => undefined,
): PlanSearch {
  const worker = new Worker(new URL('../workers/planWorker.ts', import.meta.url), { type: 'module' });
  let last: PlanProgress | null = null;
  let isOver = false;
  let settle: (result: Result<PlanAnswer>) => void = () => undefined;
  const answer = new Promise<Result<PlanAnswer>>((resolve) => {
    settle = resolve;
  });
  function end(result: Result<PlanAnswer>): void {
    isOver = true;
    worker.terminate();
    settle(result);
  }
  worker.onmessage = ({ data }: MessageEvent<PlanWord>) => {
    // A word that was already on its way when the search was stopped must not come through.
    if (isOver) return;
    if (data.kind === 'answer') return end(data.answer);
    last = data.progress;
    onProgress(data.progress);
  };
  worker.onerror = (event) => end(refuse('plan-solver', { why: event.message || 'the worker did not start' }));
  worker.onmessageerror = () => end(refuse('plan-solver', { why: 'its answer could not be read' }));
  worker.postMessage({ plan, wasmUrl } satisfies PlanAsk);
  return { answer, stop: () => end(ok(stopped(plan, last))) };
}

function stopped(plan: SeasonPlanCase, last: PlanProgress | null): PlanAnswer {
  const { best, bound, gap } = last ?? { best: null, bound: null, gap: null };
  return { status: 'stopped', plan: best, bound, gap, unreachableGoals: unreachableGoals(plan) };
}
