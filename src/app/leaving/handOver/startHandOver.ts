import { problem } from '../../../core/index.ts';
import { fontBytes } from '../../press/printing.ts';
import type { HandOverAnswer, HandOverOrder } from '../../workers/handOverMessages.ts';

/** Makes the sheet in a worker of its own, which ends with it; it needs no network. */
export async function startHandOver(order: Omit<HandOverOrder, 'fonts'>): Promise<HandOverAnswer> {
  const worker = new Worker(new URL('../../workers/handOverWorker.ts', import.meta.url), { type: 'module' });
  try {
    return await ask(worker, order);
  } catch (error) {
    return failed(error instanceof Error ? error.message : String(error));
  } finally {
    worker.terminate();
  }
}

async function ask(worker: Worker, order: Omit<HandOverOrder, 'fonts'>): Promise<HandOverAnswer> {
  const fonts = await fontBytes();
  return new Promise((resolve) => {
    worker.onmessage = (event: MessageEvent<HandOverAnswer>) => resolve(event.data);
    worker.onerror = (event) => resolve(failed(event.message || 'the worker did not start'));
    worker.postMessage({ ...order, fonts } satisfies HandOverOrder);
  });
}

function failed(why: string): HandOverAnswer {
  return { kind: 'failed', problem: problem('print-failed', { why }) };
}
