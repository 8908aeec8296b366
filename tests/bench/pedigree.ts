import { fileURLToPath } from 'node:url';
import { inbreedingByAncestors, inbreedingOf, kinshipOfMany, type PedigreeArrays } from '../../src/core/index.ts';
import { launchChromium } from '../tools/browser.ts';
import { serveEntry } from '../tools/serve.ts';
import type { Found } from './inbreedingPage.ts';
import { inventedPedigree, type PedigreeShape } from './pedigrees.ts';
import { leastMs, sayCount, sayMs, sayRatio } from './timing.ts';

const ANIMALS = 100_000;
const SHALLOW: PedigreeShape = { animals: ANIMALS, generations: 10, sires: 400 };
const DEEP: PedigreeShape = { animals: ANIMALS, generations: 86, sires: 100 };
const GOAL_MS = 4000;
const MALES = 40;
const KINSHIP_GOAL_MS = 400;
const ROUNDS = 3;

/** Inbreeding and kinship of 100,000 animals, in Node and in a worker of Chromium, against bare passes over the pedigree. */
export async function benchPedigree(): Promise<string[]> {
  const lines: string[] = [];
  for (const shape of [SHALLOW, DEEP]) lines.push(...(await inbreedingLines(shape)));
  const pedigree = inventedPedigree(SHALLOW);
  const founderF = new Float64Array(ANIMALS);
  const byAncestors = leastMs(1, () => inbreedingByAncestors(pedigree, founderF));
  lines.push(`the ${SHALLOW.generations} generations by each pair’s ancestors alone: ${sayMs(byAncestors)}`);
  return [...lines, ...kinshipLines(inventedPedigree(DEEP))];
}

async function inbreedingLines(shape: PedigreeShape): Promise<readonly string[]> {
  const pedigree = inventedPedigree(shape);
  const founderF = new Float64Array(ANIMALS);
  const inNode = leastMs(ROUNDS, () => inbreedingOf(pedigree, founderF));
  const passes = 2 * shape.sires * (shape.generations - 1);
  const bare = barePassMs(pedigree) * passes;
  const { ms, sum } = await inChromium(shape);
  const own = inbreedingOf(pedigree, founderF).reduce((all, one) => all + one, 0);
  if (own !== sum) throw new Error(`Node and Chromium differ: ${own} and ${sum}.`);
  const what = `inbreeding of ${sayCount(ANIMALS)} animals in ${shape.generations} generations of ${shape.sires} sires`;
  return [
    `${what}: ${sayMs(inNode)} in Node, ${sayMs(ms)} in a worker of Chromium (goal ${sayMs(GOAL_MS)})`,
    `against a bare pass up and down the pedigree for each sire (${sayMs(bare)}): ${sayRatio(inNode, bare)}`,
  ];
}

function kinshipLines(pedigree: PedigreeArrays): readonly string[] {
  const founderF = new Float64Array(ANIMALS);
  const inbreeding = inbreedingOf(pedigree, founderF);
  const males = Array.from({ length: MALES }, (_, at) => ANIMALS - 1 - 25 * at);
  const time = leastMs(ROUNDS, () => kinshipOfMany(pedigree, males, inbreeding, founderF));
  const bare = barePassMs(pedigree) * 2 * MALES;
  return [
    `kinship of ${MALES} males with each of ${sayCount(ANIMALS)}: ${sayMs(time)} (goal ${sayMs(KINSHIP_GOAL_MS)})`,
    `against as many bare passes up and down the pedigree (${sayMs(bare)}): ${sayRatio(time, bare)}`,
  ];
}

function barePassMs(pedigree: PedigreeArrays): number {
  const into = new Float64Array(ANIMALS);
  return leastMs(ROUNDS, () => barePass(pedigree, into), 100);
}

/** The least that a walk over a pedigree can be: for each animal one number of either parent is fetched and one written. */
function barePass({ sire, dam }: PedigreeArrays, into: Float64Array): Float64Array {
  for (let at = 0; at < into.length; at++) {
    const [s, d] = [sire[at] ?? -1, dam[at] ?? -1];
    into[at] = s < 0 || d < 0 ? 1 : ((into[s] ?? 0) + (into[d] ?? 0)) / 2;
  }
  return into;
}

async function inChromium(shape: PedigreeShape): Promise<Found> {
  // Beside this file lies the page, as TypeScript or as what became of it.
  const entry = fileURLToPath(new URL(`./inbreedingPage${import.meta.url.slice(-3)}`, import.meta.url));
  const served = await serveEntry(entry);
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    await page.goto(served.url);
    await page.waitForFunction(() => 'inWorker' in globalThis);
    return await page.evaluate(
      (asked) => (globalThis as unknown as { inWorker(shape: PedigreeShape): Promise<Found> }).inWorker(asked),
      shape,
    );
  } finally {
    await browser.close();
    await served.close();
  }
}
