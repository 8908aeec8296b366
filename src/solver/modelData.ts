import type { Highs, ModelData } from 'highs';
import type { PlanModel, PlanRow } from '../core/index.ts';

/** What each column may be; equal bounds fix it. */
export interface Bounds {
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/** Bounds that leave everything open. */
export function openBounds({ columns }: PlanModel): Bounds {
  return { lower: new Float64Array(columns.length), upper: new Float64Array(columns.length).fill(1) };
}

/** The largest value lies below this after scaling: the solver's own tolerances are meant for such figures. */
export const LARGEST = 128;
/** Two ways to the same scaled value differ by this share of it at most. */
export const AGREED = 1e-6;

/** A power of two, so that scaling changes no digit of a value. */
export function scaleOf({ columns }: PlanModel): number {
  const largest = columns.reduce((most, { value }) => Math.max(most, Math.abs(value)), 0);
  return largest === 0 ? 1 : 2 ** Math.floor(Math.log2(LARGEST / largest));
}

/** Decimals of so many digits are looked for in the values; one that differs by no larger share from a whole number is one. */
const MOST_DIGITS = 6;
const WHOLE = 1e-13;
/** Sums of figures that are nearly whole are a little off: a step is taken as smaller by this share. */
const SLACK = 1e-3;

/** What a better plan is better by at least: a shade below the greatest common divisor of all values, 0 where there is none. */
export function stepOf({ columns }: PlanModel): number {
  for (let digits = 0; digits <= MOST_DIGITS; digits++) {
    const unit = 10 ** digits;
    const whole = columns.map(({ value }) => Math.round(value * unit));
    // The share is of the whole number, so that a tiny value is never taken for nothing.
    if (whole.some((value, at) => Math.abs((columns[at]?.value ?? 0) * unit - value) > WHOLE * Math.abs(value)))
      continue;
    return (whole.reduce(commonDivisor, 0) / unit) * (1 - SLACK);
  }
  return 0;
}

function commonDivisor(a: number, b: number): number {
  let [large, small] = [Math.abs(a), Math.abs(b)];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}

/** A program as the solver takes it, with some rows and in scaled values; columns keep their places. */
export function modelData(
  highs: Highs,
  model: PlanModel,
  rows: readonly PlanRow[],
  { lower, upper }: Bounds,
): ModelData {
  const scale = scaleOf(model);
  const terms = rows.flatMap((row) => row.terms);
  const starts = Int32Array.from({ length: rows.length + 1 }, () => 0);
  for (const [at, row] of rows.entries()) starts[at + 1] = (starts[at] ?? 0) + row.terms.length;
  return {
    numCols: model.columns.length,
    numRows: rows.length,
    sense: highs.constants.objectiveSense.maximize,
    colCost: model.columns.map(({ value }) => value * scale),
    colLower: lower,
    colUpper: upper,
    rowLower: rows.map(({ sign, bound }) => (sign === '>=' ? bound : -highs.infinity)),
    rowUpper: rows.map(({ sign, bound }) => (sign === '<=' ? bound : highs.infinity)),
    matrix: {
      format: 'csr',
      numRows: rows.length,
      numCols: model.columns.length,
      starts,
      indices: Int32Array.from(terms, ([column]) => column),
      values: Float64Array.from(terms, ([, coefficient]) => coefficient),
    },
  };
}
