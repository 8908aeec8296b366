import { type FontBytes, printCalibration, printLists, printPieces } from '../../../print/index.ts';
import { ok, problem } from '../../core/index.ts';
import type { ListsAnswer, ListsAsk, PrintAnswer, PrintAsk, PrintOrder } from './printMessages.ts';

self.onmessage = ({ data }: MessageEvent<PrintOrder>) => void work(data).then(answer);

async function work({ ask, fonts }: PrintOrder): Promise<PrintAnswer | ListsAnswer> {
  try {
    return 'lists' in ask ? await list(ask, fonts) : await print(ask, fonts);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { kind: 'failed', problem: problem('print-failed', { why }) };
  }
}

async function print(ask: PrintAsk, fonts: FontBytes): Promise<PrintAnswer> {
  const made =
    'calibrate' in ask ? await printCalibration({ ...ask.calibrate, fonts }) : ok(await printPieces({ ...ask, fonts }));
  if (!made.ok) return { kind: 'failed', problem: made.problem };
  const { pdf, manifest } = made.value;
  return { kind: 'printed', pdf: new Uint8Array(pdf), manifest };
}

async function list({ lists }: ListsAsk, fonts: FontBytes): Promise<ListsAnswer> {
  const { pdf, ...rest } = await printLists({ ...lists, fonts });
  return { kind: 'listed', pdf: new Uint8Array(pdf), ...rest };
}

function answer(said: PrintAnswer | ListsAnswer): void {
  self.postMessage(said, said.kind === 'failed' ? {} : { transfer: [said.pdf.buffer] });
}
