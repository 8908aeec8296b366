/** So many numbers of a buffer, from a place on. */
export interface Run {
  readonly of: Float64Array;
  readonly from: number;
  readonly length: number;
}

/** Rows that are taken together. */
const ROWS = 4;
/** What is written may run over its end by so many places, with nothing. */
export const OVER = ROWS - 1;

/** Adds the convolution of two runs to a buffer from its beginning on; it needs {@link OVER} places more than the convolution is long. */
export function addConvolution(rows: Run, along: Run, into: Float64Array): void {
  for (let at = 0; at < rows.length; at += ROWS) addRows(rows, at, along, into);
}

/** Four rows at a time: each place is read and written a quarter as often. */
function addRows(
  { of: rows, from, length }: Run,
  at: number,
  { of: along, from: start, length: count }: Run,
  into: Float64Array,
): void {
  // Single names: taken out of a list these numbers would be boxed, which makes the loop four times as slow.
  const p = rows[from + at] ?? 0;
  const q = at + 1 < length ? (rows[from + at + 1] ?? 0) : 0;
  const r = at + 2 < length ? (rows[from + at + 2] ?? 0) : 0;
  const s = at + 3 < length ? (rows[from + at + 3] ?? 0) : 0;
  let x = 0;
  let y = 0;
  let z = 0;
  let to = at;
  for (let j = start; j < start + count; j++, to++) {
    const w = along[j] ?? 0;
    into[to] = (into[to] ?? 0) + p * w + q * x + r * y + s * z;
    z = y;
    y = x;
    x = w;
  }
  into[to] = (into[to] ?? 0) + q * x + r * y + s * z;
  into[to + 1] = (into[to + 1] ?? 0) + r * x + s * y;
  into[to + 2] = (into[to + 2] ?? 0) + s * x;
}
