import { ok, type Result, refuse } from '../problems.ts';
import { fallingOrder } from './fallingOrder.ts';
import { type Fraction, fraction, gcd, toNumber } from './fraction.ts';
import { locusOrder, type Sex } from './model.ts';
import type { Outcomes, Part, PartPhenotype } from './outcomes.ts';
import { countsOf, labelOrder } from './product.ts';
import { orderByClass, type WeightClasses, weightClasses } from './weightClasses.ts';

/** Larger tables than this are refused: numbers and order of this many rows take about 80 MB. */
export const MOST_PHENOTYPES = 5_000_000;

/**
 * Every phenotype of a cross in numbers, a row each, from 0 to below `size`: a mixed radix over the parts of the cross,
 * the first part slowest.
 */
export interface PhenotypeTable {
  readonly size: number;
  /** The loci of the labels, in the order of the chromosomes. */
  readonly loci: readonly string[];
  /** Whether every weight is a whole number below 2^53: each chance is then the double nearest to the true one. */
  readonly exact: boolean;
  /** The weight of all that live, in lowest terms part by part. */
  readonly total: bigint;
  /** The chance of each row among those that live. */
  readonly chances: Float64Array;
  labelsAt(row: number): readonly string[];
  sexAt(row: number): Sex | null;
  /** The exact chance of a row. */
  chanceAt(row: number): Fraction;
  /** The rows, most probable first by their exact chances; among equals the lower row first. */
  order(): Uint32Array;
}

/** The full table of a cross: each part keeps its own short list of looks, only the numbers are multiplied out. Errors: `table-too-large`. */
export function phenotypeTable(outcomes: Outcomes): Result<PhenotypeTable> {
  const size = Number(countsOf(outcomes).phenotypes);
  if (size > MOST_PHENOTYPES)
    return refuse('table-too-large', { looks: `${countsOf(outcomes).phenotypes}`, most: MOST_PHENOTYPES });
  const columns = outcomes.parts.map(columnOf);
  const total = columns.reduce((product, column) => product * column.total, 1n);
  const exact = total < EXACT_BELOW;
  const classes = weightClasses(columns.map(({ looks }) => looks.map(({ weight }) => weight)));
  const chances = classes === null ? chancesOf(columns, exact ? total : null) : classChances(classes, total);
  const looksAt = (row: number): readonly Look[] => decoded(columns, row);
  const weightAt = (row: number): bigint => looksAt(row).reduce((product, { weight }) => product * weight, 1n);
  const joined = labelOrder(outcomes);
  return ok({
    size,
    loci: locusOrder(outcomes.cross),
    exact,
    total,
    chances,
    labelsAt: (row) => {
      const labels = looksAt(row).flatMap(({ phenotype }) => phenotype.labels);
      return joined.map((at) => labels[at] ?? '');
    },
    sexAt: (row) => looksAt(row).find(({ phenotype }) => phenotype.sex !== null)?.phenotype.sex ?? null,
    chanceAt: (row) => fraction(weightAt(row), total),
    order: () => {
      if (classes !== null) return orderByClass(classes);
      return fallingOrder(chances, { weightAt, classes: classesOf(columns) });
    },
  });
}

const EXACT_BELOW = 2n ** 53n;

/** A phenotype of one part, its weight in lowest terms, and the number of that weight among the part's. */
interface Look {
  readonly phenotype: PartPhenotype;
  readonly weight: bigint;
  readonly weightClass: number;
}

/** One part of the cross as one digit of the row number. */
interface Column {
  readonly looks: readonly Look[];
  readonly total: bigint;
}

function columnOf({ phenotypes, total }: Part): Column {
  const common = phenotypes.reduce((sofar, { weight }) => gcd(sofar, weight), total) || 1n;
  const classes = new Map([...new Set(phenotypes.map(({ weight }) => weight))].map((weight, at) => [weight, at]));
  const looks = phenotypes.map((phenotype) => ({
    phenotype,
    weight: phenotype.weight / common,
    weightClass: classes.get(phenotype.weight) ?? 0,
  }));
  return { looks, total: total / common };
}

function classChances({ classOf, weights }: WeightClasses, total: bigint): Float64Array {
  const each = Float64Array.from(weights, (weight) => toNumber(fraction(weight, total)));
  const chances = new Float64Array(classOf.length);
  for (let row = 0; row < chances.length; row++) chances[row] = each[classOf[row] ?? 0] ?? 0;
  return chances;
}

/** Products of whole numbers below 2^53 are exact in doubles and the one division rounds once; larger ones go by shares. */
function chancesOf(columns: readonly Column[], exactTotal: bigint | null): Float64Array {
  if (exactTotal === null)
    return multipliedOut(
      columns.map(({ looks, total }) => looks.map((look) => toNumber(fraction(look.weight, total)))),
    );
  const chances = multipliedOut(columns.map(({ looks }) => looks.map(({ weight }) => Number(weight))));
  const total = Number(exactTotal);
  for (let row = 0; row < chances.length; row++) chances[row] = (chances[row] ?? 0) / total;
  return chances;
}

function multipliedOut(columns: readonly (readonly number[])[]): Float64Array {
  return unfolded(columns, 1, (sofar, digit) => sofar * digit);
}

/** The weights of the parts as one number: rows with the same have the same weight from every part. */
function classesOf(columns: readonly Column[]): Float64Array {
  const numbers = columns.map(({ looks }) => looks.map(({ weightClass }) => weightClass));
  return unfolded(numbers, 0, (sofar, digit, radix) => sofar * radix + digit);
}

/** A number for each row, from the number of the columns before and the one of the next. */
function unfolded(
  columns: readonly (readonly number[])[],
  start: number,
  step: (sofar: number, digit: number, radix: number) => number,
): Float64Array {
  let all = Float64Array.of(start);
  for (const digits of columns) {
    const next = new Float64Array(all.length * digits.length);
    let row = 0;
    for (let at = 0; at < all.length; at++)
      for (const digit of digits) next[row++] = step(all[at] ?? 0, digit, digits.length);
    all = next;
  }
  return all;
}

/** The look of each part in a row. */
function decoded(columns: readonly Column[], row: number): readonly Look[] {
  const looks: Look[] = [];
  let rest = row;
  for (const column of columns.toReversed()) {
    const look = column.looks[rest % column.looks.length];
    if (look !== undefined) looks.push(look);
    rest = Math.floor(rest / column.looks.length);
  }
  return looks.reverse();
}
