// Not by print's face: that would bring the PDF maker into this worker, which only reads.
import { readBack } from '../../../print/readBack/readBack.ts';
import { openDecoder } from '../../../scanner/decode/index.ts';
import { problem } from '../../core/index.ts';
import type { ReadBackAnswer, ReadBackOrder } from './readBackMessages.ts';

/** Said no more often than this. */
const STEP_MS = 100;
/** More than one code in the room of one is a fault, so a look goes on after the first. */
const MOST = 4;

self.onmessage = (event: MessageEvent<ReadBackOrder>) => void read(event.data).then(answer);

async function read({ pdf, pieces, pages, printer, wasmUrl }: ReadBackOrder): Promise<ReadBackAnswer> {
  try {
    const decoder = await openDecoder({ url: wasmUrl });
    // The first look at a film is the plain one: a code that reads only after its picture was mended is not good enough.
    const look = async (picture: Parameters<typeof decoder.frame>[0]) =>
      (await decoder.frame(picture, 0, MOST)).map(({ text }) => text);
    const read = await readBack(pdf, { pieces, pages }, printer, { look, onProgress: teller() });
    return { kind: 'read', ...read };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { kind: 'failed', problem: problem('read-back-failed', { why }) };
  }
}

function teller(): (done: number) => void {
  let toldMs = 0;
  return (done) => {
    const nowMs = performance.now();
    if (nowMs - toldMs < STEP_MS) return;
    toldMs = nowMs;
    answer({ kind: 'at', done });
  };
}

function answer(said: ReadBackAnswer): void {
  self.postMessage(said);
}
