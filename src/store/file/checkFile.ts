import { createReadStream } from 'node:fs';
import type { Problem } from '../../core/index.ts';
import { problem } from '../../core/index.ts';
import { logReader } from '../ndjson.ts';
import { nodeSha256 } from './nodeSha256.ts';
import { readSeals, Sealer } from './seals.ts';

/** What a file was found to be. */
export interface Soundness {
  readonly events: number;
  readonly problems: readonly Problem[];
  /**
   * `sealed`: nothing is missing, nothing was changed since it was written. `partly`: that is so for most of it (a
   * hub's file is sealed piece by piece). `unsealed`: each line is sound, but whether lines are missing cannot be told.
   */
  readonly proof: 'sealed' | 'partly' | 'unsealed';
}

/** Reads a log file through without changing it: an export with its seal, or a hub's file with the seals beside it. */
export async function checkFile(path: string): Promise<Soundness> {
  const reader = logReader(nodeSha256());
  const seals = await readSeals(`${path}.seals`);
  const sealer = new Sealer(`${path}.seals`, seals);
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  let events = 0;
  for await (const piece of createReadStream(path, { highWaterMark: 1 << 20 })) {
    const bytes = piece as Buffer;
    sealer.read(bytes);
    events += reader.push(decoder.decode(bytes, { stream: true })).length;
  }
  events += reader.push(decoder.decode()).length;
  const end = reader.end();
  sealer.readAll();
  const edited = sealer.broken ? [problem('file-edited', { why: 'its bytes differ from the seals beside it' })] : [];
  const problems = [...end.problems, ...edited];
  return { events: events + end.events.length, problems, proof: proofOf(end.sealed, seals.length > 0, sealer) };
}

function proofOf(sealed: boolean, seals: boolean, sealer: Sealer): Soundness['proof'] {
  if (sealed || (seals && sealer.complete)) return 'sealed';
  return seals && !sealer.broken ? 'partly' : 'unsealed';
}
