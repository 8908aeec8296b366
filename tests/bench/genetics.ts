import {
  type Cross,
  chanceOf,
  compareFractions,
  outcomesOf,
  type PhenotypeTable,
  phenotypeTable,
  topPhenotypes,
  ZERO,
} from '../../src/core/index.ts';
import { hetCross, sexedHetCross, unevenCross } from './crosses.ts';
import { naiveLooks } from './naiveCross.ts';
import { benchPedigree } from './pedigree.ts';
import { leastMs, sayCount, sayMs, sayRatio } from './timing.ts';

const LOCI = 12;
const FEW_LOCI = 8;
const ROUNDS = 5;
/** Runs in a round of work that takes less than a millisecond or so. */
const SMALL = 200;
const TABLE_GOAL_MS = 250;
const WANTED_GOAL_MS = 1;
const TOP = 50;
const TOP_GOAL_MS = 5;
const NAIVE_GOAL = 1000;

/** Crosses against brute force and against bare loops over as many numbers, pedigrees against bare passes; processor time in Node. */
export async function benchGenetics(): Promise<string[]> {
  const first = leastMs(1, () => wanted(hetCross(LOCI)));
  return [...wantedLines(first), ...tableLines(), ...naiveLines(), ...(await benchPedigree())];
}

/** From the parents to the chance of the rarest look. */
function wanted(cross: Cross) {
  return chanceOf(outcomesOf(cross), new Map([...cross.loci.keys()].map((locus) => [locus, 'two'])));
}

function wantedLines(first: number): readonly string[] {
  const cross = hetCross(LOCI);
  const one = leastMs(ROUNDS, () => wanted(cross), SMALL);
  const top = leastMs(ROUNDS, () => topPhenotypes(outcomesOf(cross), TOP), SMALL);
  const whole = leastMs(ROUNDS, () => sorted(cross));
  return [
    `one wanted look of ${LOCI} loci, from the parents on: ${sayMs(one)} (goal ${sayMs(WANTED_GOAL_MS)}); the first of all, on a cold engine: ${sayMs(first)}`,
    `the ${TOP} likeliest looks of ${LOCI} loci: ${sayMs(top)} (goal ${sayMs(TOP_GOAL_MS)})`,
    `against the full table in order (${sayMs(whole)}): ${sayShare(one, whole)} and ${sayShare(top, whole)}`,
  ];
}

function sayShare(part: number, whole: number): string {
  return `${((100 * part) / whole).toFixed(1)} %`;
}

function tableOf(cross: Cross): PhenotypeTable {
  const table = phenotypeTable(outcomesOf(cross));
  if (!table.ok) throw new Error(table.problem.message);
  return table.value;
}

function sorted(cross: Cross): Uint32Array {
  return tableOf(cross).order();
}

function tableLines(): readonly string[] {
  const cross = hetCross(LOCI);
  const { chances, size } = tableOf(cross);
  const whole = leastMs(ROUNDS, () => sorted(cross));
  const bare = leastMs(ROUNDS, () => bareLoop(size));
  const engine = leastMs(ROUNDS, () => chances.slice().sort());
  const [sexed, uneven] = [sexedHetCross(LOCI), unevenCross(LOCI)];
  const [sexedMs, unevenMs] = [leastMs(ROUNDS, () => sorted(sexed)), leastMs(ROUNDS, () => sorted(uneven))];
  return [
    `the full table of ${sayCount(size)} looks (${LOCI} loci, three looks each), most probable first: ${sayMs(whole)} (goal ${sayMs(TABLE_GOAL_MS)})`,
    `against a bare loop that writes as many chances and places (${sayMs(bare)}): ${sayRatio(whole, bare)}`,
    `against the engine’s own sort of those chances, without their places (${sayMs(engine)}): ${sayRatio(whole, engine)}`,
    `the same by sex, ${sayCount(tableOf(sexed).size)} looks: ${sayMs(sexedMs)}; of possible hets, hardly two looks as likely: ${sayMs(unevenMs)}`,
  ];
}

/** The least that a table in order can be: a multiplication and a place for each row. */
function bareLoop(size: number): readonly [Float64Array, Uint32Array] {
  const [chances, order] = [new Float64Array(size), new Uint32Array(size)];
  for (let row = 0; row < size; row++) {
    chances[row] = row * 0.25;
    order[row] = row;
  }
  return [chances, order];
}

function naiveLines(): readonly string[] {
  const cross = hetCross(FEW_LOCI);
  checkAgainstNaive(cross);
  const naive = leastMs(ROUNDS, () => naiveLooks(cross));
  const ours = leastMs(ROUNDS, () => wanted(cross), SMALL);
  const listed = leastMs(ROUNDS, () => sorted(cross), 20);
  const boxes = sayCount(4 ** FEW_LOCI);
  return [
    `${FEW_LOCI} loci worked out, one wanted look included: ${sayMs(ours)}; all ${sayCount(3 ** FEW_LOCI)} looks in order: ${sayMs(listed)}`,
    `against the ${boxes} boxes of the naive walk (${sayMs(naive)}): ${sayCount(Math.round(naive / ours))} times as fast (goal ${sayCount(NAIVE_GOAL)}); all looks in order: ${sayCount(Math.round(naive / listed))} times`,
  ];
}

/** A wrong answer is not worth timing. */
function checkAgainstNaive(cross: Cross): void {
  const naive = naiveLooks(cross);
  const table = tableOf(cross);
  if (naive.size !== table.size) throw new Error(`The naive walk has ${naive.size} looks, the core ${table.size}.`);
  for (let row = 0; row < table.size; row++) {
    const look = table.labelsAt(row).join(', ');
    if (compareFractions(naive.get(look) ?? ZERO, table.chanceAt(row)) !== 0)
      throw new Error(`The naive walk and the core differ about ${look}.`);
  }
}
