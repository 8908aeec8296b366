import { printLists, printPieces, stockById } from '../../../print/index.ts';
import { type Problem, problem } from '../../core/index.ts';
import type { ListsAnswer, ListsOrder, PrintAnswer, PrintOrder } from './printMessages.ts';

self.onmessage = ({ data }: MessageEvent<PrintOrder | ListsOrder>) =>
  void ('sheets' in data ? list(data) : print(data)).then(answer);

async function print({ stockId, ...job }: PrintOrder): Promise<PrintAnswer> {
  const stock = stockById(stockId);
  if (!stock.ok) return { kind: 'failed', problem: stock.problem };
  try {
    const { pdf, manifest } = await printPieces({ ...job, stock: stock.value });
    return { kind: 'printed', pdf: new Uint8Array(pdf), manifest };
  } catch (error) {
    return { kind: 'failed', problem: failure(error) };
  }
}

async function list(order: ListsOrder): Promise<ListsAnswer> {
  try {
    const { pdf, pages } = await printLists(order);
    return { kind: 'listed', pdf: new Uint8Array(pdf), pages };
  } catch (error) {
    return { kind: 'failed', problem: failure(error) };
  }
}

function failure(error: unknown): Problem {
  return problem('print-failed', { why: error instanceof Error ? error.message : String(error) });
}

function answer(said: PrintAnswer | ListsAnswer): void {
  self.postMessage(said, said.kind === 'failed' ? {} : { transfer: [said.pdf.buffer] });
}
