import type { PedigreeArrays } from '../../src/core/index.ts';

/** What an invented pedigree is made of. */
export interface PedigreeShape {
  readonly animals: number;
  readonly generations: number;
  /** So many males of each generation sire the next; its dams are drawn from all the rest. */
  readonly sires: number;
}

/** A pedigree that is the same every time: each animal's parents are drawn from the generation before. */
export function inventedPedigree({ animals, generations, sires }: PedigreeShape): PedigreeArrays {
  const draw = drawer(7);
  const each = Math.floor(animals / generations);
  const [sire, dam] = [new Int32Array(animals).fill(-1), new Int32Array(animals).fill(-1)];
  const depth = new Int32Array(animals);
  for (let at = each; at < animals; at++) {
    const generation = Math.min(generations - 1, Math.floor(at / each));
    const first = (generation - 1) * each;
    sire[at] = first + draw(sires);
    dam[at] = first + sires + draw(each - sires);
    depth[at] = generation;
  }
  return { sire, dam, depth };
}

/** Whole numbers from 0 to below a bound, the same row of them for a seed: the multiplier of MINSTD, from memory. */
export function drawer(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return Math.floor((state / 2_147_483_647) * below);
  };
}
