import type { PedigreeArrays } from './pedigreeArrays.ts';

/** So many sires are walked at once: their numbers stand side by side, so that each step fetches them together. */
export const LANES = 4;

/** A sire with its young of one generation. */
export interface SireFamily {
  readonly sire: number;
  readonly young: readonly number[];
}

/**
 * Colleau 2002, Genet. Sel. Evol. 34:409, by sires (as Sargolzaei, Iwaisaki & Colleau 2005): the relationships of a sire
 * with all its mates from a single walk up and down. Only the ancestors of one generation are walked, numbered closely.
 */
export class SireWalk {
  readonly #pedigree: PedigreeArrays;
  readonly #own: Float64Array;
  /** Where an animal stands among the ancestors, -1 for one that is none. */
  readonly #place: Int32Array;
  /** Lane starts of the parents of each ancestor, and what it brings of its own. */
  readonly #sire: Int32Array;
  readonly #dam: Int32Array;
  readonly #closeOwn: Float64Array;
  #lanes = new Float64Array(0);
  #count = 0;

  /** `own` holds the own share of every animal that will be walked over by then. */
  constructor(pedigree: PedigreeArrays, own: Float64Array) {
    const size = own.length;
    this.#pedigree = pedigree;
    this.#own = own;
    this.#place = new Int32Array(size);
    this.#sire = new Int32Array(size);
    this.#dam = new Int32Array(size);
    this.#closeOwn = new Float64Array(size);
  }

  /** Takes the parents of these animals and all their ancestors as those to walk; gives how many. */
  enter(young: readonly number[]): number {
    const { sire, dam } = this.#pedigree;
    const place = this.#place;
    place.fill(-1);
    let last = -1;
    for (const at of young) last = Math.max(last, this.#mark(sire[at] ?? -1), this.#mark(dam[at] ?? -1));
    for (let at = last; at >= 0; at--) {
      if (place[at] !== 0) continue;
      this.#mark(sire[at] ?? -1);
      this.#mark(dam[at] ?? -1);
    }
    this.#count = 0;
    for (let at = 0; at <= last; at++) if (place[at] === 0) this.#number(at);
    return this.#count;
  }

  #mark(at: number): number {
    if (at >= 0) this.#place[at] = 0;
    return at;
  }

  #number(at: number): void {
    const { sire, dam } = this.#pedigree;
    const lanesOf = (parent: number): number => (parent < 0 ? -1 : (this.#place[parent] ?? 0) * LANES);
    const here = this.#count++;
    this.#sire[here] = lanesOf(sire[at] ?? -1);
    this.#dam[here] = lanesOf(dam[at] ?? -1);
    this.#closeOwn[here] = this.#own[at] ?? 0;
    this.#place[at] = here;
  }

  /** The inbreeding of the young of up to {@link LANES} sires, into `found`. */
  families(families: readonly SireFamily[], found: Float64Array): void {
    const size = this.#count * LANES;
    if (this.#lanes.length < size) this.#lanes = new Float64Array(size);
    const lanes = this.#lanes;
    lanes.fill(0, 0, size);
    let youngest = 0;
    families.forEach(({ sire }, lane) => {
      const place = this.#place[sire] ?? 0;
      lanes[place * LANES + lane] = 1;
      youngest = Math.max(youngest, place);
    });
    up(youngest, this.#sire, this.#dam, lanes);
    down(this.#count, this.#sire, this.#dam, this.#closeOwn, lanes);
    families.forEach(({ young }, lane) => {
      for (const at of young) {
        const dam = this.#place[this.#pedigree.dam[at] ?? 0] ?? 0;
        found[at] = (lanes[dam * LANES + lane] ?? 0) / 2;
      }
    });
  }
}

// The lanes are written out: a loop of four costs more than what it does.
function up(youngest: number, sire: Int32Array, dam: Int32Array, lanes: Float64Array): void {
  for (let at = youngest; at >= 0; at--) {
    const here = at * LANES;
    const a = (lanes[here] ?? 0) / 2;
    const b = (lanes[here + 1] ?? 0) / 2;
    const c = (lanes[here + 2] ?? 0) / 2;
    const d = (lanes[here + 3] ?? 0) / 2;
    give(lanes, sire[at] ?? -1, a, b, c, d);
    give(lanes, dam[at] ?? -1, a, b, c, d);
  }
}

function give(lanes: Float64Array, to: number, a: number, b: number, c: number, d: number): void {
  if (to < 0) return;
  lanes[to] = (lanes[to] ?? 0) + a;
  lanes[to + 1] = (lanes[to + 1] ?? 0) + b;
  lanes[to + 2] = (lanes[to + 2] ?? 0) + c;
  lanes[to + 3] = (lanes[to + 3] ?? 0) + d;
}

function down(count: number, sire: Int32Array, dam: Int32Array, own: Float64Array, lanes: Float64Array): void {
  for (let at = 0; at < count; at++) {
    const here = at * LANES;
    const [s, d, part] = [sire[at] ?? -1, dam[at] ?? -1, own[at] ?? 0];
    lanes[here] = (lanes[here] ?? 0) * part + halfOf(lanes, s, d, 0);
    lanes[here + 1] = (lanes[here + 1] ?? 0) * part + halfOf(lanes, s, d, 1);
    lanes[here + 2] = (lanes[here + 2] ?? 0) * part + halfOf(lanes, s, d, 2);
    lanes[here + 3] = (lanes[here + 3] ?? 0) * part + halfOf(lanes, s, d, 3);
  }
}

function halfOf(lanes: Float64Array, sire: number, dam: number, lane: number): number {
  return ((sire < 0 ? 0 : (lanes[sire + lane] ?? 0)) + (dam < 0 ? 0 : (lanes[dam + lane] ?? 0))) / 2;
}
