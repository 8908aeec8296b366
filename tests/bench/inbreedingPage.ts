import { inbreedingOf } from '../../src/core/index.ts';
import { inventedPedigree, type PedigreeShape } from './pedigrees.ts';

/** What a worker found: its least time in milliseconds, and the sum of all inbreeding to compare. */
export interface Found {
  readonly ms: number;
  readonly sum: number;
}

const ROUNDS = 3;

function work(shape: PedigreeShape): Found {
  const pedigree = inventedPedigree(shape);
  const founderF = new Float64Array(shape.animals);
  let [ms, sum] = [Number.POSITIVE_INFINITY, 0];
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    const found = inbreedingOf(pedigree, founderF);
    ms = Math.min(ms, performance.now() - start);
    sum = found.reduce((all, one) => all + one, 0);
  }
  return { ms, sum };
}

/** The same script twice: as a page it starts itself as a worker, as a worker it works. */
if (typeof document === 'undefined') {
  addEventListener('message', ({ data }: MessageEvent<PedigreeShape>) => postMessage(work(data)));
} else {
  const inWorker = (shape: PedigreeShape) =>
    new Promise<Found>((resolve, reject) => {
      const worker = new Worker(import.meta.url, { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<Found>) => {
        worker.terminate();
        resolve(data);
      };
      worker.onerror = ({ message }) => reject(new Error(message));
      worker.postMessage(shape);
    });
  Object.assign(globalThis, { inWorker });
}
