import { problem } from '../../../core/index.ts';
import { fontBytes } from '../../press/printing.ts';
import type { PackAnswer, PackOrder } from '../../workers/packMessages.ts';

/** A pack on its way: its end, and the way to stop it. */
export interface PackRun {
  readonly end: Promise<PackEnd>;
  stop(): void;
}

/** What a run ends with. */
export type PackEnd = Exclude<PackAnswer, { kind: 'at' }>;

/** Makes the pack in a worker of its own, so that the screen stays alive and stopping really stops. */
export function startPack(order: Omit<PackOrder, 'fonts'>, onShare: (share: number) => void): PackRun {
  const worker = new Worker(new URL('../../workers/packWorker.ts', import.meta.url), { type: 'module' });
  const end = ask(worker, order, onShare).catch(failed);
  void end.then(() => worker.terminate());
  return { end, stop: () => worker.terminate() };
}

async function ask(
  worker: Worker,
  order: Omit<PackOrder, 'fonts'>,
  onShare: (share: number) => void,
): Promise<PackEnd> {
  const fonts = await fontBytes();
  return new Promise((resolve) => {
    worker.onmessage = ({ data }: MessageEvent<PackAnswer>) => {
      if (data.kind === 'at') onShare(data.share);
      else resolve(data);
    };
    worker.onerror = (event) => resolve(failed(event.message || 'the worker did not start'));
    worker.postMessage({ ...order, fonts } satisfies PackOrder);
  });
}

function failed(error: unknown): PackEnd {
  const why = error instanceof Error ? error.message : String(error);
  return { kind: 'failed', problem: problem('worker-failed', { why }) };
}
