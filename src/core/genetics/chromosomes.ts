import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  HALF,
  isZero,
  multiply,
  parseFraction,
  sayFraction,
  subtract,
  ZERO,
} from './fraction.ts';
import { groupOf, type LocusRow } from './loci/index.ts';
import { type Chromosome, SEX_POINT } from './model.ts';

/**
 * The recombination of a partly sex-linked locus where neither table nor site has a figure. From memory: the published
 * cross of banana (Mallery & Carrillo 2016) was seen in its abstract only, without r. Every answer says so.
 */
export const DEFAULT_SEX_LINK_R: Fraction = fraction(1n, 20n);

/** A chromosome of a cross, the rows on it in map order, and what was assumed for it. */
export interface Group {
  readonly chromosome: Chromosome;
  readonly rows: readonly LocusRow[];
  readonly assumed: readonly string[];
}

/** The chromosomes of some rows of a table, the sex chromosome first and always there; `given` holds the site's own r by locus. */
export function chromosomesOf(
  rows: readonly LocusRow[],
  table: readonly LocusRow[],
  given: ReadonlyMap<string, Fraction>,
): readonly Group[] {
  const others = rows.filter((row) => row.sexLink === null);
  const nameOf = (row: LocusRow): string => groupOf(row) ?? row.locus;
  const names = [...new Set(others.map(nameOf))];
  const linked = names.map((name) =>
    linkedGroup(
      name,
      others.filter((row) => nameOf(row) === name),
      table,
      given,
    ),
  );
  return [
    sexGroup(
      rows.filter((row) => row.sexLink !== null),
      given,
    ),
    ...linked,
  ];
}

/** Loci in the order of their distance from the sex point, all on one side of it; between two of them as without interference. */
function sexGroup(rows: readonly LocusRow[], given: ReadonlyMap<string, Fraction>): Group {
  const placed = rows.map((row) => ({ row, ...sexDistance(row, given) })).sort((a, b) => compare(a.r, b.r));
  const steps = placed.map(({ r }, at) => between(placed[at - 1]?.r ?? ZERO, r));
  const order = placed.map(({ row }) => row);
  return {
    chromosome: {
      id: 'sex',
      sex: true,
      loci: [SEX_POINT, ...order.map((row) => row.locus)],
      r: { sire: steps, dam: steps },
    },
    rows: order,
    assumed: placed.flatMap(({ assumed }) => assumed),
  };
}

function sexDistance(row: LocusRow, given: ReadonlyMap<string, Fraction>): { r: Fraction; assumed: readonly string[] } {
  if (row.sexLink?.kind === 'full') return { r: ZERO, assumed: [] };
  const known = given.get(row.locus) ?? written(row.sexLink?.r ?? null);
  if (known !== null) return { r: known, assumed: [] };
  const words = `${row.locus} is taken to cross over with the sex point at r = ${sayFraction(DEFAULT_SEX_LINK_R)} (from memory, no published figure seen).`;
  return { r: DEFAULT_SEX_LINK_R, assumed: [words] };
}

/** r between two loci at r from one point, near and far on one side: far = near + r - 2 near r (no interference). */
function between(near: Fraction, far: Fraction): Fraction {
  const rest = subtract({ top: 1n, bottom: 1n }, multiply({ top: 2n, bottom: 1n }, near));
  return isZero(rest) ? HALF : divide(subtract(far, near), rest);
}

/** Rows that the cross leaves out still lie between the others: r over two steps is r1 + r2 - 2 r1 r2 (no interference). */
function linkedGroup(
  name: string,
  rows: readonly LocusRow[],
  table: readonly LocusRow[],
  given: ReadonlyMap<string, Fraction>,
): Group {
  const all = table.filter((row) => (groupOf(row) ?? row.locus) === name);
  const trailing = [...all].reverse().findIndex((row) => rows.includes(row));
  const first = all.findIndex((row) => rows.includes(row));
  const r: Fraction[] = [];
  const assumed: string[] = [];
  let sofar = ZERO;
  for (const row of all.slice(first + 1, all.length - trailing)) {
    const step = given.get(row.locus) ?? written(row.linkage?.r ?? null);
    if (step === null) assumed.push(`No recombination is known for ${row.locus}: it is taken as unlinked (1/2).`);
    sofar = twoSteps(sofar, step ?? HALF);
    if (!rows.includes(row)) continue;
    r.push(sofar);
    sofar = ZERO;
  }
  return {
    chromosome: { id: rows[0]?.locus ?? '', sex: false, loci: rows.map((row) => row.locus), r: { sire: r, dam: r } },
    rows,
    assumed,
  };
}

function twoSteps(a: Fraction, b: Fraction): Fraction {
  return subtract(add(a, b), multiply({ top: 2n, bottom: 1n }, multiply(a, b)));
}

function written(r: string | null): Fraction | null {
  if (r === null) return null;
  const read = parseFraction(r);
  return read.ok ? read.value : null;
}
