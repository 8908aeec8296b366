import { problem, type Result } from '../../core/index.ts';
import type { GeneticAnswers, GeneticAsk, GeneticProgress, GeneticWord } from '../workers/geneticsMessages.ts';

/** An ask on its way: its answer, and the way to stop it. */
export interface Asking<T> {
  /** Never settles once the ask was stopped. */
  readonly answer: Promise<Result<T>>;
  stop(): void;
}

/** Works it out in a worker of its own, so that the screen stays alive and stopping really stops. */
export function startGenetics<A extends GeneticAsk>(
  ask: A,
  onProgress: (progress: GeneticProgress) => void = () => undefined,
): Asking<GeneticAnswers[A['ask']]> {
  const worker = new Worker(new URL('../workers/geneticsWorker.ts', import.meta.url), { type: 'module' });
  let stopped = false;
  function stop(): void {
    stopped = true;
    worker.terminate();
  }
  const answer = new Promise<Result<GeneticAnswers[A['ask']]>>((resolve) => {
    const end = (result: Result<GeneticAnswers[A['ask']]>): void => {
      // A word that was already on its way when the ask was stopped must not come through.
      if (!stopped) resolve(result);
      stop();
    };
    worker.onmessage = ({ data }: MessageEvent<GeneticWord<A>>) => {
      if (data.kind === 'answer') end(data.answer);
      else if (!stopped) onProgress(data.progress);
    };
    worker.onerror = (event) => end(failed(event.message || 'the worker did not start'));
    worker.onmessageerror = () => end(failed('its answer could not be read'));
    worker.postMessage(ask);
  });
  return { answer, stop };
}

function failed(why: string): { readonly ok: false; readonly problem: ReturnType<typeof problem> } {
  return { ok: false, problem: problem('worker-failed', { why }) };
}
