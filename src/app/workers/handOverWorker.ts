import { printHandOver } from '../../../print/index.ts';
import { problem } from '../../core/index.ts';
import type { HandOverAnswer, HandOverOrder } from './handOverMessages.ts';

self.onmessage = (event: MessageEvent<HandOverOrder>) => void make(event.data).then(answer);

async function make(order: HandOverOrder): Promise<HandOverAnswer> {
  try {
    const { pdf, ...rest } = await printHandOver(order);
    return { kind: 'made', pdf: new Uint8Array(pdf), ...rest };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { kind: 'failed', problem: problem('print-failed', { why }) };
  }
}

function answer(said: HandOverAnswer): void {
  self.postMessage(said, said.kind === 'made' ? { transfer: [said.pdf.buffer] } : {});
}
