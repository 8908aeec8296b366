import { printCalibration, printPieces } from '../../../print/index.ts';
import { ok, problem } from '../../core/index.ts';
import type { PrintAnswer, PrintOrder } from './printMessages.ts';

self.onmessage = (event: MessageEvent<PrintOrder>) => void print(event.data).then(answer);

async function print({ ask, fonts }: PrintOrder): Promise<PrintAnswer> {
  try {
    const made =
      'calibrate' in ask
        ? await printCalibration({ ...ask.calibrate, fonts })
        : ok(await printPieces({ ...ask, fonts }));
    if (!made.ok) return { kind: 'failed', problem: made.problem };
    const { pdf, manifest } = made.value;
    return { kind: 'printed', pdf: new Uint8Array(pdf), manifest };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { kind: 'failed', problem: problem('print-failed', { why }) };
  }
}

function answer(said: PrintAnswer): void {
  self.postMessage(said, said.kind === 'printed' ? { transfer: [said.pdf.buffer] } : {});
}
