import { type Day, emptyFacility, type Facility, type OrderQuestion, problem, type Result } from '../../core/index.ts';
import type { ForecastAnswer, ForecastAsk, ForecastProgress, ForecastWord } from '../workers/forecastMessages.ts';

/** A forecast on its way: its answer, and the way to stop it. */
export interface Forecasting {
  /** Never settles once it was stopped. */
  readonly answer: Promise<Result<ForecastAnswer>>;
  stop(): void;
}

/** Works it out in a worker of its own, so that the screen stays alive and stopping really stops. Errors: `order-malformed`, `worker-failed`. */
export function startForecast(
  facility: Facility,
  question: OrderQuestion,
  on: Day,
  onProgress: (progress: ForecastProgress) => void,
): Forecasting {
  const worker = new Worker(new URL('../workers/forecastWorker.ts', import.meta.url), { type: 'module' });
  const stop = (): void => worker.terminate();
  const answer = new Promise<Result<ForecastAnswer>>((resolve) => {
    const end = (result: Result<ForecastAnswer>): void => {
      stop();
      resolve(result);
    };
    worker.onmessage = ({ data }: MessageEvent<ForecastWord>) =>
      data.kind === 'answer' ? end(data.answer) : onProgress(data.progress);
    worker.onerror = (event) => end(failed(event.message || 'it did not start'));
    worker.onmessageerror = () => end(failed('its answer could not be read'));
    worker.postMessage({ facility: eaters(facility), question, on } satisfies ForecastAsk);
  });
  return { answer, stop };
}

/** What is copied to the worker: of a site only those that are here eat, and only lots lie in the freezer. */
function eaters({ animals, lots }: Facility): Facility {
  const here = new Map([...animals].filter(([, animal]) => animal.left === null));
  return { ...emptyFacility(), animals: here, lots };
}

function failed(why: string): Result<never> {
  return { ok: false, problem: problem('worker-failed', { why }) };
}
