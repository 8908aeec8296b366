import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { printInto } from '../../print/index.ts';
import { cardAt, jobOf } from './cards.ts';

/** What a run of so many cards took: bytes, and memory in MB at its start, at its peak, and what is held at its end. */
export interface MemoryRun {
  readonly cards: number;
  readonly bytes: number;
  readonly startMb: number;
  readonly peakMb: number;
  readonly heldMb: number;
}

/** Made when it is asked for, as from a database. */
class CardOnDemand {
  readonly #n: number;
  constructor(n: number) {
    this.#n = n;
  }
  get card() {
    return cardAt(this.#n);
  }
}

const SAMPLE = 500;
const MB = 2 ** 20;

/** Prints into two files as a program would, card by card and page by page, and watches its own memory. */
async function run(cards: number): Promise<MemoryRun> {
  const folder = mkdtempSync(join(tmpdir(), 'cards-'));
  const [pdf, table] = [openSync(join(folder, 'x.pdf'), 'w'), openSync(join(folder, 'x.ndjson'), 'w')];
  const job = await jobOf(0);
  const pieces = Array.from({ length: cards }, (_none, n) => new CardOnDemand(n));
  globalThis.gc?.();
  const startMb = process.memoryUsage().rss / MB;
  let [bytes, seen, peakMb] = [0, 0, startMb];
  await printInto(
    { ...job, pieces },
    {
      bytes(chunk) {
        writeSync(pdf, chunk);
        bytes += chunk.length;
      },
      piece(piece) {
        writeSync(table, `${JSON.stringify(piece)}\n`);
        if (++seen % SAMPLE === 0) peakMb = Math.max(peakMb, process.memoryUsage().rss / MB);
      },
    },
  );
  peakMb = Math.max(peakMb, process.memoryUsage().rss / MB);
  globalThis.gc?.();
  const heldMb = process.memoryUsage().heapUsed / MB;
  closeSync(pdf);
  closeSync(table);
  rmSync(folder, { recursive: true });
  return { cards, bytes, startMb, peakMb, heldMb };
}

process.stdout.write(JSON.stringify(await run(Number(process.argv[2]))));
