import { addConvolution, OVER, type Run } from './convolve.ts';

/** How likely each count is: `chances[n]` belongs to `least + n`. They add up to 1 but for what {@link TAIL} left out. */
export interface Counts {
  readonly least: number;
  readonly chances: Float64Array;
}

/**
 * One unlike chance, or so many independent ones that are alike: so many times `step` items, with the chance of each number
 * of times, starting from none.
 */
export interface Chance {
  readonly step: number;
  /** One row of chances, or one after another for more than one question. */
  readonly chances: Float64Array;
  /** How long a row is; all of it where it is left out. */
  readonly size?: number;
  /** How many are alike; 1 where it is left out. */
  readonly alike?: number;
}

/** So much is left out at either end of a sum each time two are put together: less than what rounding loses. */
const TAIL = 1e-17;
/** Chances are added one by one up to so many items, and such blocks are put together two by two: it keeps all of them short. */
const BLOCK = 48;
/** A share is reached when only rounding is missing. */
const ROUNDING = 1e-9;

/** The exact distribution of a sum of independent unlike chances, by convolution in doubles; no approximation. */
export function sumOfChances(all: readonly Chance[]): Counts {
  return sumsOfChances(all, 1)[0] ?? { least: 0, chances: Float64Array.of(1) };
}

/** The same for each of so many rows. */
export function sumsOfChances(all: readonly Chance[], rows: number): readonly Counts[] {
  const pile = new Pile(all.reduce((sum, one) => sum + one.step * (sizeOf(one) - 1) * (one.alike ?? 1), 0));
  return Array.from({ length: rows }, (_, row) => {
    for (const one of all) pile.add(one, row);
    return pile.end();
  });
}

/** The mean count. */
export function meanOf({ least, chances }: Counts): number {
  let mean = 0;
  for (let at = 0; at < chances.length; at++) mean += (chances[at] ?? 0) * (least + at);
  return mean;
}

/** The least count that is enough with this chance. */
export function enoughFor({ least, chances }: Counts, share: number): number {
  let sum = 0;
  for (let at = 0; at < chances.length; at++) {
    sum += chances[at] ?? 0;
    if (sum >= share - ROUNDING) return least + at;
  }
  return least + chances.length - 1;
}

function sizeOf({ size, chances }: Chance): number {
  return size ?? chances.length;
}

/** The most items of one chance that are possible at all. */
function mostOf(one: Chance, row: number): number {
  const size = sizeOf(one);
  let last = size - 1;
  while (last > 0 && one.chances[row * size + last] === 0) last -= 1;
  return one.step * last;
}

/** A sum that lies in the pile: so many blocks went into it. */
interface Part extends Run {
  readonly blocks: number;
  readonly least: number;
}

/** A sum that is being worked on, from the beginning of its buffer on. */
interface Scratch {
  of: Float64Array;
  readonly from: 0;
  length: number;
}

/**
 * Sums that wait to be put together, end to end in one buffer: thousands of small arrays would cost more than the sums.
 * Two of as many blocks become one at once, so that hardly any wait and both are always about as long.
 */
class Pile {
  readonly #parts: Part[] = [];
  readonly #held: Float64Array;
  readonly #one: Scratch;
  readonly #alike: Scratch;
  readonly #block: Scratch;
  #free: Float64Array;

  /** For sums of up to so many items. */
  constructor(most: number) {
    const room = most + 1 + OVER;
    // Each block takes one place more than the items that are possible in it.
    this.#held = new Float64Array(room + Math.ceil(most / BLOCK));
    this.#one = { of: new Float64Array(room), from: 0, length: 1 };
    this.#alike = { of: new Float64Array(room), from: 0, length: 1 };
    this.#block = { of: new Float64Array(room), from: 0, length: 1 };
    this.#free = new Float64Array(room);
    this.#block.of[0] = 1;
  }

  /** Adds a chance as often as it is there; what is alike makes whole blocks of its own. */
  add(one: Chance, row: number): void {
    const most = mostOf(one, row);
    if (most === 0) return;
    this.#spread(one, row, most);
    const atOnce = Math.max(1, Math.floor(BLOCK / most));
    let left = one.alike ?? 1;
    if (left > atOnce) this.#raise(atOnce);
    for (; left > atOnce; left -= atOnce) this.#lay(this.#alike);
    this.#raise(left);
    this.#multiply(this.#block, this.#alike);
    if (this.#block.length > BLOCK) this.#layBlock();
  }

  /** Puts everything together; the pile is then empty. */
  end(): Counts {
    this.#layBlock();
    while (this.#parts.length > 1) this.#join();
    const { least, from, length } = this.#parts.pop() ?? NOTHING;
    return { least, chances: this.#held.slice(from, from + length) };
  }

  #spread(one: Chance, row: number, most: number): void {
    const { of } = this.#one;
    const first = row * sizeOf(one);
    this.#one.length = most + 1;
    of.fill(0, 0, most + 1);
    for (let items = 0, at = first; items <= most; items += one.step, at++) of[items] = one.chances[at] ?? 0;
  }

  /** The sum of so many of the one. */
  #raise(times: number): void {
    const [{ of, length }, alike] = [this.#one, this.#alike];
    alike.length = length;
    for (let at = 0; at < length; at++) alike.of[at] = of[at] ?? 0;
    for (let more = 1; more < times; more++) this.#multiply(alike, this.#one);
  }

  #multiply(sum: Scratch, by: Scratch): void {
    const length = sum.length + by.length - 1;
    const into = this.#free;
    into.fill(0, 0, length + OVER);
    if (by.length < sum.length) addConvolution(by, sum, into);
    else addConvolution(sum, by, into);
    this.#free = sum.of;
    sum.of = into;
    sum.length = length;
  }

  #layBlock(): void {
    this.#lay(this.#block);
    this.#block.of[0] = 1;
    this.#block.length = 1;
  }

  /** Lays a block onto the pile. */
  #lay({ of, length }: Scratch): void {
    const last = this.#parts.at(-1);
    this.#put({ blocks: 1, least: 0, from: last === undefined ? 0 : last.from + last.length }, of, length);
    while (this.#parts.length > 1 && this.#parts.at(-1)?.blocks === this.#parts.at(-2)?.blocks) this.#join();
  }

  #join(): void {
    const b = this.#parts.pop() ?? NOTHING;
    const a = this.#parts.pop() ?? NOTHING;
    const length = a.length + b.length - 1;
    this.#free.fill(0, 0, length + OVER);
    addConvolution(a, b, this.#free);
    this.#put({ blocks: a.blocks + b.blocks, least: a.least + b.least, from: a.from }, this.#free, length);
  }

  /** Puts a sum down without the ends that are too unlikely to count. */
  #put({ blocks, least, from }: Omit<Part, 'of' | 'length'>, sum: Float64Array, length: number): void {
    let first = 0;
    let end = length;
    for (let all = sum[first] ?? 0; first < end - 1 && all < TAIL; all += sum[first] ?? 0) first += 1;
    for (let all = sum[end - 1] ?? 0; end - 1 > first && all < TAIL; all += sum[end - 1] ?? 0) end -= 1;
    for (let at = first; at < end; at++) this.#held[from + at - first] = sum[at] ?? 0;
    this.#parts.push({ of: this.#held, blocks, least: least + first, from, length: end - first });
  }
}

const NOTHING: Part = { of: Float64Array.of(1), blocks: 0, least: 0, from: 0, length: 1 };
