/** How rows are told apart whose chances are too close for doubles. */
export interface ExactRows {
  weightAt(row: number): bigint;
  /** Rows of one class have the same chance to the last bit, without looking at the weight. */
  readonly classes: Float64Array;
}

/**
 * The rows of some chances (0 or more), largest first, equals in their own order: sorted by the upper halves of the
 * doubles, which stand in the order of their values, and then each run of likes among themselves, exactly.
 */
export function fallingOrder(chances: Float64Array, exact: ExactRows): Uint32Array {
  const { order, keys } = roughly(chances);
  const compare = comparison(chances, exact);
  let [start, isMixed] = [0, false];
  for (let end = 1; end <= order.length; end++) {
    // Two doubles that stand for the same chance may lie on both sides of a step of the upper half.
    const isLike = end < order.length && (keys[end - 1] ?? 0) - (keys[end] ?? 0) <= 1;
    if (isLike) isMixed ||= exact.classes[order[end] ?? 0] !== exact.classes[order[start] ?? 0];
    else {
      if (isMixed) order.subarray(start, end).sort(compare);
      [start, isMixed] = [end, false];
    }
  }
  return order;
}

/** Doubles that went through two dozen products are off by less than this share. */
const NEAR = 2 ** -44;

function comparison(chances: Float64Array, exact: ExactRows): (a: number, b: number) => number {
  const known = new Map<number, bigint>();
  const weightOf = (row: number): bigint => {
    const own = exact.classes[row] ?? 0;
    const weight = known.get(own) ?? exact.weightAt(row);
    known.set(own, weight);
    return weight;
  };
  return (a, b) => {
    const [one, other] = [chances[a] ?? 0, chances[b] ?? 0];
    if (Math.abs(one - other) > NEAR * one) return other - one;
    const [weight, more] = [weightOf(a), weightOf(b)];
    return weight === more ? a - b : weight < more ? 1 : -1;
  };
}

const UPPER_HALF = new Uint16Array(Uint32Array.of(1).buffer)[0] === 1 ? 1 : 0;
/** Three digits make up the upper half; counts of more values than this fall out of a processor's nearest memory. */
const DIGIT_BITS = 11;
const RADIX = 2 ** DIGIT_BITS;

/** The places by the upper halves of their doubles, largest first, and those halves in that order: a radix sort. */
function roughly(chances: Float64Array): { order: Uint32Array; keys: Uint32Array } {
  const size = chances.length;
  const halves = new Uint32Array(chances.buffer, chances.byteOffset, 2 * size);
  let [order, nextOrder] = [new Uint32Array(size), new Uint32Array(size)];
  let [keys, nextKeys] = [new Uint32Array(size), new Uint32Array(size)];
  for (let at = 0; at < size; at++) {
    order[at] = at;
    keys[at] = halves[2 * at + UPPER_HALF] ?? 0;
  }
  for (let shift = 0; shift < 32; shift += DIGIT_BITS) {
    const starts = startsOf(keys, shift);
    for (let at = 0; at < size; at++) {
      const key = keys[at] ?? 0;
      const value = (key >>> shift) % RADIX;
      const to = starts[value] ?? 0;
      starts[value] = to + 1;
      nextKeys[to] = key;
      nextOrder[to] = order[at] ?? 0;
    }
    [order, nextOrder] = [nextOrder, order];
    [keys, nextKeys] = [nextKeys, keys];
  }
  return { order, keys };
}

/** Where the places of each value of a digit start, largest value first. */
function startsOf(keys: Uint32Array, shift: number): Uint32Array {
  const counts = new Uint32Array(RADIX);
  for (let at = 0; at < keys.length; at++) {
    const value = ((keys[at] ?? 0) >>> shift) % RADIX;
    counts[value] = (counts[value] ?? 0) + 1;
  }
  let sofar = 0;
  for (let value = RADIX - 1; value >= 0; value--) {
    const count = counts[value] ?? 0;
    counts[value] = sofar;
    sofar += count;
  }
  return counts;
}
