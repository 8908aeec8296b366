import wasmUrl from 'zxing-wasm/reader/zxing_reader.wasm?url';
import { problem } from '../../core/index.ts';
import type { ReadBackAnswer, ReadBackOrder } from '../workers/readBackMessages.ts';

/** What is read back: the file as it was made, and what should stand in it. */
export interface Checking extends Omit<ReadBackOrder, 'pdf' | 'wasmUrl'> {
  readonly pdf: Blob;
}

/** Reads a file back in a worker of its own; the last answer is `read` or `failed`. Gives the way to stop. */
export function startReadingBack({ pdf, ...order }: Checking, hear: (answer: ReadBackAnswer) => void): () => void {
  const worker = new Worker(new URL('../workers/readBackWorker.ts', import.meta.url), { type: 'module' });
  const failed = (why: string) => hear({ kind: 'failed', problem: problem('read-back-failed', { why }) });
  worker.onmessage = ({ data }: MessageEvent<ReadBackAnswer>) => {
    if (data.kind !== 'at') worker.terminate();
    hear(data);
  };
  worker.onerror = (event) => {
    worker.terminate();
    failed(event.message || 'the worker did not start');
  };
  void pdf.arrayBuffer().then(
    (bytes) => {
      const whole = { ...order, pdf: new Uint8Array(bytes), wasmUrl: new URL(wasmUrl, document.baseURI).href };
      worker.postMessage(whole satisfies ReadBackOrder, [bytes]);
    },
    (error: unknown) => failed(String(error)),
  );
  return () => worker.terminate();
}
