import type { PedigreeArrays } from './pedigreeArrays.ts';

/** Meuwissen & Luo 1992, Genet. Sel. Evol. 24:305: one walk up the ancestors of an animal, youngest first, on a heap. */
export class AncestorWalk {
  readonly #pedigree: PedigreeArrays;
  readonly #own: Float64Array;
  readonly #share: Float64Array;
  readonly #heap: AncestorHeap;

  /** `own` holds the own share of every animal that will be walked over by then. */
  constructor(pedigree: PedigreeArrays, own: Float64Array) {
    this.#pedigree = pedigree;
    this.#own = own;
    this.#share = new Float64Array(own.length);
    this.#heap = new AncestorHeap(own.length);
  }

  /** The relationship of an animal with itself: 1 and its inbreeding. */
  withItself(start: number): number {
    const { sire, dam } = this.#pedigree;
    const [own, share, heap] = [this.#own, this.#share, this.#heap];
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
