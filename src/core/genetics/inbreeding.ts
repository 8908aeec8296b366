import type { Parentage } from './kinship.ts';

/** A pedigree as numbers: parents before young, -1 for an unknown parent. */
export interface PedigreeArrays {
  readonly sire: Int32Array;
  readonly dam: Int32Array;
  /** The longest line of ancestors above each animal; founders 0. */
  readonly depth: Int32Array;
}

/** How far a long run has come; throw from it to stop the run. */
export type OnProgress = (done: number, of: number) => void;

/** Numbers a pedigree whose animals stand parents before young. */
export function pedigreeArrays(ordered: readonly Parentage[]): PedigreeArrays {
  const place = new Map(ordered.map((one, at) => [one.id, at]));
  const column = (of: (one: Parentage) => string | null): Int32Array =>
    Int32Array.from(ordered, (one) => place.get(of(one) ?? '') ?? -1);
  const [sire, dam] = [column((one) => one.sire), column((one) => one.dam)];
  const depth = new Int32Array(ordered.length);
  for (let at = 0; at < depth.length; at++) depth[at] = Math.max(above(depth, sire[at]), above(depth, dam[at]));
  return { sire, dam, depth };
}

function above(depth: Int32Array, parent = -1): number {
  return parent < 0 ? 0 : (depth[parent] ?? 0) + 1;
}

/** From this depth on the way by sires is faster; measured in tests/bench. */
export const DEEP_GENERATIONS = 20;

/**
 * Inbreeding coefficients of a whole pedigree as doubles: Meuwissen & Luo 1992 for shallow pedigrees, the indirect way
 * of Colleau 2002 by sires (as Sargolzaei, Iwaisaki & Colleau 2005) for deep ones. `founderF` holds what is known of founders.
 */
export function inbreedingOf(
  pedigree: PedigreeArrays,
  founderF: Float64Array,
  onProgress: OnProgress = () => undefined,
): Float64Array {
  const deepest = pedigree.depth.reduce((most, one) => Math.max(most, one), 0);
  return deepest >= DEEP_GENERATIONS
    ? inbreedingBySires(pedigree, founderF, onProgress)
    : inbreedingByAncestors(pedigree, founderF, onProgress);
}

const REPORT_EVERY = 4096;

/** Meuwissen & Luo 1992, Genet. Sel. Evol. 24:305: one walk up the ancestors of each animal, youngest first, on a heap. */
export function inbreedingByAncestors(
  { sire, dam }: PedigreeArrays,
  founderF: Float64Array,
  onProgress: OnProgress = () => undefined,
): Float64Array {
  const size = sire.length;
  const found = new Float64Array(size);
  const own = new Float64Array(size);
  const share = new Float64Array(size);
  const heap = new AncestorHeap(size);
  const pairs = new Map<number, number>();
  for (let at = 0; at < size; at++) {
    const [s, d] = [sire[at] ?? -1, dam[at] ?? -1];
    own[at] = segregation(found, founderF, at, s, d);
    if (s < 0 || d < 0) found[at] = s < 0 && d < 0 ? (founderF[at] ?? 0) : 0;
    else found[at] = fromPair(pairs, s, d, size, () => walkUp(at, sire, dam, own, share, heap) - 1);
    if (at % REPORT_EVERY === 0) onProgress(at, size);
  }
  return found;
}

function fromPair(pairs: Map<number, number>, s: number, d: number, size: number, work: () => number): number {
  const key = s * size + d;
  const known = pairs.get(key);
  if (known !== undefined) return known;
  const value = work();
  pairs.set(key, value);
  return value;
}

/** The part of an animal's relationship with itself that its parents do not explain. */
function segregation(found: Float64Array, founderF: Float64Array, at: number, s: number, d: number): number {
  if (s < 0 && d < 0) return 1 + (founderF[at] ?? 0);
  const of = (parent: number): number => (parent < 0 ? -1 : (found[parent] ?? 0));
  return 0.5 - 0.25 * (of(s) + of(d));
}

function walkUp(
  start: number,
  sire: Int32Array,
  dam: Int32Array,
  own: Float64Array,
  share: Float64Array,
  heap: AncestorHeap,
): number {
  let sum = 0;
  share[start] = 1;
  heap.push(start);
  for (let at = heap.pop(); at >= 0; at = heap.pop()) {
    const here = share[at] ?? 0;
    share[at] = 0;
    sum += here * here * (own[at] ?? 0);
    for (const parent of [sire[at] ?? -1, dam[at] ?? -1]) {
      if (parent < 0) continue;
      if (share[parent] === 0) heap.push(parent);
      share[parent] = (share[parent] ?? 0) + here / 2;
    }
  }
  return sum;
}

/** A heap of ancestor numbers, largest first: the youngest ancestor must be finished before its parents. */
class AncestorHeap {
  readonly #items: Int32Array;
  #size = 0;

  constructor(most: number) {
    this.#items = new Int32Array(most + 1);
  }

  push(value: number): void {
    const items = this.#items;
    let at = this.#size++;
    while (at > 0) {
      const up = (at - 1) >> 1;
      const parent = items[up] ?? 0;
      if (parent >= value) break;
      items[at] = parent;
      at = up;
    }
    items[at] = value;
  }

  pop(): number {
    if (this.#size === 0) return -1;
    const items = this.#items;
    const top = items[0] ?? -1;
    const last = items[--this.#size] ?? -1;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.#size) break;
      if (child + 1 < this.#size && (items[child + 1] ?? 0) > (items[child] ?? 0)) child++;
      if ((items[child] ?? 0) <= last) break;
      items[at] = items[child] ?? 0;
      at = child;
    }
    items[at] = last;
    return top;
  }
}

/** Colleau 2002 by sires: all mates of a sire in one generation from a single walk up and down the pedigree. */
export function inbreedingBySires(
  pedigree: PedigreeArrays,
  founderF: Float64Array,
  onProgress: OnProgress = () => undefined,
): Float64Array {
  const { sire, dam, depth } = pedigree;
  const size = sire.length;
  const found = new Float64Array(size);
  const own = new Float64Array(size);
  const work = new Float64Array(size);
  let done = 0;
  for (const level of levelsOf(depth)) {
    for (const at of level) {
      own[at] = segregation(found, founderF, at, sire[at] ?? -1, dam[at] ?? -1);
      if ((sire[at] ?? -1) < 0 && (dam[at] ?? -1) < 0) found[at] = founderF[at] ?? 0;
    }
    for (const [s, young] of bySire(level, sire, dam)) {
      relationshipsWith(s, pedigree, own, work, Math.max(s, ...young.map((at) => dam[at] ?? 0)));
      for (const at of young) found[at] = (work[dam[at] ?? 0] ?? 0) / 2;
    }
    done += level.length;
    onProgress(done, size);
  }
  return found;
}

function levelsOf(depth: Int32Array): readonly (readonly number[])[] {
  const levels: number[][] = [];
  depth.forEach((level, at) => {
    levels[level] ??= [];
    levels[level]?.push(at);
  });
  return levels;
}

function bySire(level: readonly number[], sire: Int32Array, dam: Int32Array): ReadonlyMap<number, number[]> {
  const groups = new Map<number, number[]>();
  for (const at of level) {
    const s = sire[at] ?? -1;
    if (s < 0 || (dam[at] ?? -1) < 0) continue;
    const list = groups.get(s);
    if (list === undefined) groups.set(s, [at]);
    else list.push(at);
  }
  return groups;
}

/**
 * The relationship of one animal with everyone up to `last`, into `into` (Colleau 2002, Genet. Sel. Evol. 34:409):
 * its shares go up to the ancestors, are weighted by what each ancestor brings of its own, and come down again.
 */
export function relationshipsWith(
  one: number,
  { sire, dam }: PedigreeArrays,
  own: Float64Array,
  into: Float64Array,
  last = sire.length - 1,
): void {
  into.fill(0, 0, last + 1);
  into[one] = 1;
  for (let at = one; at >= 0; at--) {
    const here = into[at] ?? 0;
    if (here === 0) continue;
    const [s, d] = [sire[at] ?? -1, dam[at] ?? -1];
    if (s >= 0) into[s] = (into[s] ?? 0) + here / 2;
    if (d >= 0) into[d] = (into[d] ?? 0) + here / 2;
  }
  for (let at = 0; at <= last; at++) {
    const [s, d] = [sire[at] ?? -1, dam[at] ?? -1];
    const fromParents = (s < 0 ? 0 : (into[s] ?? 0)) + (d < 0 ? 0 : (into[d] ?? 0));
    into[at] = (into[at] ?? 0) * (own[at] ?? 0) + fromParents / 2;
  }
}

/** What each animal brings of its own, for {@link relationshipsWith}, once its inbreeding is known. */
export function ownShares(
  { sire, dam }: PedigreeArrays,
  inbreeding: Float64Array,
  founderF: Float64Array,
): Float64Array {
  return Float64Array.from(sire, (s, at) => segregation(inbreeding, founderF, at, s, dam[at] ?? -1));
}
