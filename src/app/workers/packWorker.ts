import { printPack } from '../../../print/index.ts';
import { packFiles, packOf, problem, profileById } from '../../core/index.ts';
import type { PackAnswer, PackOrder } from './packMessages.ts';

/** Said no more often than this part of the whole: a page has no use for more. */
const STEP = 0.01;

self.onmessage = (event: MessageEvent<PackOrder>) => void make(event.data).then(answer);

async function make({ events, choice, profile: id, on, paper, fonts }: PackOrder): Promise<PackAnswer> {
  const profile = profileById(id);
  if (!profile.ok) return { kind: 'failed', problem: profile.problem };
  try {
    const pack = packOf(events, { choice, on, profile: profile.value });
    if (!pack.ok) return { kind: 'failed', problem: pack.problem };
    const { pdf, ...rest } = await printPack({ pack: pack.value, paper, fonts, onProgress: teller() });
    const files = packFiles(pack.value);
    return { kind: 'made', pdf: new Uint8Array(pdf), files, animals: pack.value.animals.length, ...rest };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { kind: 'failed', problem: problem('worker-failed', { why }) };
  }
}

function teller(): (share: number) => void {
  let told = 0;
  return (share) => {
    if (share - told < STEP) return;
    told = share;
    answer({ kind: 'at', share });
  };
}

function answer(said: PackAnswer): void {
  self.postMessage(said, said.kind === 'made' ? { transfer: [said.pdf.buffer] } : {});
}
