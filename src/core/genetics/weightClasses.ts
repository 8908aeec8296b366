/** Rows of a mixed radix sorted into classes of like weight; classes are numbered from the heaviest on. */
export interface WeightClasses {
  /** The class of each row. */
  readonly classOf: Uint16Array;
  /** The weight of each class, falling. */
  readonly weights: readonly bigint[];
}

/** More different weights than this are not worth telling apart beforehand. */
const MOST_CLASSES = 0x10000;

/**
 * The classes of all products of one weight from each column, first column slowest: of a dozen loci at 1:2:1 there are
 * half a million products and thirteen classes. Null if there are too many classes.
 */
export function weightClasses(columns: readonly (readonly bigint[])[]): WeightClasses | null {
  const steps: Step[] = [];
  let weights: readonly bigint[] = [1n];
  for (const column of columns) {
    const step = stepOf(weights, column);
    if (step === null) return null;
    steps.push(step);
    weights = step.weights;
  }
  const falling = weights.map((weight, was) => ({ weight, was }));
  falling.sort((a, b) => (a.weight < b.weight ? 1 : a.weight > b.weight ? -1 : 0));
  const rank = new Uint16Array(weights.length);
  for (const [at, { was }] of falling.entries()) rank[was] = at;
  let classOf = Uint16Array.of(0);
  for (const step of steps) classOf = multipliedOut(classOf, step);
  return { classOf: classOf.map((was) => rank[was] ?? 0), weights: falling.map(({ weight }) => weight) };
}

/** One more column: the classes after it, and which one each class before it comes to with each of its rows. */
interface Step {
  readonly radix: number;
  readonly next: Uint16Array;
  readonly weights: readonly bigint[];
}

function stepOf(before: readonly bigint[], column: readonly bigint[]): Step | null {
  const found = new Map<bigint, number>();
  const next = new Uint16Array(before.length * column.length);
  let cell = 0;
  for (const weight of before) {
    for (const more of column) {
      const product = weight * more;
      const known = found.get(product) ?? found.size;
      if (known >= MOST_CLASSES) return null;
      found.set(product, known);
      next[cell++] = known;
    }
  }
  return { radix: column.length, next, weights: [...found.keys()] };
}

function multipliedOut(before: Uint16Array, { radix, next }: Step): Uint16Array<ArrayBuffer> {
  const all = new Uint16Array(before.length * radix);
  let row = 0;
  for (let at = 0; at < before.length; at++) {
    const first = (before[at] ?? 0) * radix;
    for (let digit = 0; digit < radix; digit++) all[row++] = next[first + digit] ?? 0;
  }
  return all;
}

/** The rows in the order of their classes, lower rows first within one: each class is counted, then filled. */
export function orderByClass({ classOf, weights }: WeightClasses): Uint32Array {
  const starts = new Uint32Array(weights.length + 1);
  for (let row = 0; row < classOf.length; row++) {
    const after = (classOf[row] ?? 0) + 1;
    starts[after] = (starts[after] ?? 0) + 1;
  }
  for (let at = 1; at < starts.length; at++) starts[at] = (starts[at] ?? 0) + (starts[at - 1] ?? 0);
  const order = new Uint32Array(classOf.length);
  for (let row = 0; row < classOf.length; row++) {
    const own = classOf[row] ?? 0;
    const to = starts[own] ?? 0;
    starts[own] = to + 1;
    order[to] = row;
  }
  return order;
}
