import { type Facility, preyForecast } from '../../src/core/index.ts';
import { largeSite, ON } from './largeSite.ts';

/** What a worker found: its least times in milliseconds, alone and from the page's question to its answer, and the sum of all 90 % figures to compare. */
export interface ForecastFound {
  readonly ms: number;
  readonly wholeMs: number;
  readonly items: number;
}

interface Asked {
  readonly facility: Facility;
  readonly weeks: number;
}

const ROUNDS = 5;

function work({ facility, weeks }: Asked): Omit<ForecastFound, 'wholeMs'> {
  const start = performance.now();
  const { classes } = preyForecast(facility, ON, weeks);
  const ms = performance.now() - start;
  return { ms, items: classes.flatMap((one) => one.weeks).reduce((sum, week) => sum + week.most, 0) };
}

function asked(worker: Worker, ask: Asked): Promise<Omit<ForecastFound, 'wholeMs'>> {
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Omit<ForecastFound, 'wholeMs'>>) => resolve(data);
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.postMessage(ask);
  });
}

/** The same script twice: as a page it starts itself as a worker, as a worker it works. */
if (typeof document === 'undefined') {
  addEventListener('message', ({ data }: MessageEvent<Asked>) => postMessage(work(data)));
} else {
  const forecastInWorker = async (weeks: number): Promise<ForecastFound> => {
    const facility = largeSite(ON);
    let found = { ms: Number.POSITIVE_INFINITY, wholeMs: Number.POSITIVE_INFINITY, items: 0 };
    // A fresh worker each time, as in the app: so its engine is cold.
    for (let round = 0; round < ROUNDS; round++) {
      const start = performance.now();
      const worker = new Worker(import.meta.url, { type: 'module' });
      const { ms, items } = await asked(worker, { facility, weeks });
      worker.terminate();
      found = { ms: Math.min(found.ms, ms), wholeMs: Math.min(found.wholeMs, performance.now() - start), items };
    }
    return found;
  };
  Object.assign(globalThis, { forecastInWorker });
}
