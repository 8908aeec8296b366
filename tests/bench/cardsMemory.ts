import { execFileSync } from 'node:child_process';
import type { MemoryRun } from './cardsMemoryChild.ts';
import { sayCount } from './timing.ts';

const RUNS = [10_000, 25_000, 50_000];
const GOAL_MB = 110;

/** Runs of cards each in a process of its own: what memory they take beyond that of the program itself. */
export async function benchCardsMemory(): Promise<string[]> {
  const child = new URL(`./cardsMemoryChild.${import.meta.url.endsWith('.ts') ? 'ts' : 'js'}`, import.meta.url)
    .pathname;
  const runs = RUNS.map((cards): MemoryRun => {
    const said = execFileSync(process.execPath, ['--expose-gc', child, String(cards)], { encoding: 'utf8' });
    return JSON.parse(said) as MemoryRun;
  });
  return runs.map(
    ({ cards, bytes, startMb, peakMb, heldMb }) =>
      `${sayCount(cards)} cards written page by page: ${Math.round(peakMb - startMb)} MB above the ${Math.round(startMb)} MB of the program (goal ${GOAL_MB}), ${Math.round(heldMb)} MB held at the end; a file of ${(bytes / 2 ** 20).toFixed(1)} MB`,
  );
}
