import { printPieces, stockById } from '../../../print/index.ts';
import { problem } from '../../core/index.ts';
import type { PrintAnswer, PrintOrder } from './printMessages.ts';

self.onmessage = (event: MessageEvent<PrintOrder>) => void print(event.data).then(answer);

async function print({ stockId, ...job }: PrintOrder): Promise<PrintAnswer> {
  const stock = stockById(stockId);
  if (!stock.ok) return { kind: 'failed', problem: stock.problem };
  try {
    const { pdf, manifest } = await printPieces({ ...job, stock: stock.value });
    return { kind: 'printed', pdf: new Uint8Array(pdf), manifest };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { kind: 'failed', problem: problem('print-failed', { why }) };
  }
}

function answer(said: PrintAnswer): void {
  self.postMessage(said, said.kind === 'printed' ? { transfer: [said.pdf.buffer] } : {});
}
