import type { Parentage } from '../../core/index.ts';

/** The way up from the animal that is drawn: `` itself, `S` its sire, `SD` its sire’s dam. */
export type Way = string;

/** Beside: a column for each generation, a pair of parents around their young. Below: one line for each animal, set in. */
export type Form = 'beside' | 'below';

/** One end or knot of the drawing. Column is the generation, row counts lines of text; what they measure is not said here. */
export interface Spot {
  readonly way: Way;
  /** Null where the parent is not known. */
  readonly id: string | null;
  readonly column: number;
  readonly row: number;
  /** `again`: drawn with its ancestors elsewhere; `ring`: it stands on its own way, so it is its own ancestor. */
  readonly is: 'drawn' | 'again' | 'ring' | 'unknown';
  /** Where its parents are: drawn, unknown both, in generations that are not shown, or at the place where it is drawn. */
  readonly above: 'drawn' | 'unknown' | 'further' | 'elsewhere';
  /** A letter for an animal that stands here more than once. */
  readonly mark: string | null;
}

/** A laid out drawing: its spots from the top down, and how many rows and columns it takes. */
export interface Tree {
  readonly spots: readonly Spot[];
  readonly rows: number;
  readonly columns: number;
}

interface TreeWanted {
  readonly of: string;
  /** How many generations of ancestors to show, 1 or more. */
  readonly generations: number;
  readonly form: Form;
}

type Placeless = Omit<Spot, 'row' | 'mark'>;

/**
 * Lays the ancestors of an animal out. An animal that comes up more than once keeps its ancestors where it is nearest
 * (of equals on the sire’s side), so each is walked once and a ring of parents ends; sires stand above dams.
 */
export function layOut(pedigree: readonly Parentage[], wanted: TreeWanted): Tree {
  const knots = knotsOf(pedigree, wanted);
  const rows = wanted.form === 'beside' ? rowsBeside(knots) : rowsBelow(knots);
  const marks = marksOf(knots, rows);
  const spots = [...knots.values()]
    .map((knot) => ({ ...knot, row: rows.get(knot.way) ?? 0, mark: marks.get(knot.id ?? '') ?? null }))
    .sort((a, b) => a.row - b.row || a.column - b.column);
  return {
    spots,
    rows: Math.max(...spots.map((spot) => spot.row)) + 1,
    columns: Math.max(...spots.map((spot) => spot.column)) + 1,
  };
}

function knotsOf(pedigree: readonly Parentage[], { of, generations }: TreeWanted): ReadonlyMap<Way, Placeless> {
  const byId = new Map(pedigree.map((one) => [one.id, one]));
  const knots = new Map<Way, Placeless>();
  const met = new Set<string>();
  let open: readonly { readonly way: Way; readonly id: string | null }[] = [{ way: '', id: of }];
  // Generation by generation, so that the nearest of several places is met first.
  for (let column = 0; open.length > 0; column++) {
    const next: { way: Way; id: string | null }[] = [];
    for (const { way, id } of open) {
      const parents = id === null ? undefined : byId.get(id);
      const above = aboveOf(parents, id !== null && met.has(id), column >= generations);
      knots.set(way, { way, id, column, is: standing(knots, way, id, met), above });
      if (id !== null) met.add(id);
      if (above === 'drawn')
        next.push({ way: `${way}S`, id: parents?.sire ?? null }, { way: `${way}D`, id: parents?.dam ?? null });
    }
    open = next;
  }
  return knots;
}

function aboveOf(parents: Parentage | undefined, isAgain: boolean, isLast: boolean): Spot['above'] {
  if (parents === undefined || (parents.sire === null && parents.dam === null)) return 'unknown';
  if (isAgain) return 'elsewhere';
  return isLast ? 'further' : 'drawn';
}

function standing(
  knots: ReadonlyMap<Way, Placeless>,
  way: Way,
  id: string | null,
  met: ReadonlySet<string>,
): Spot['is'] {
  if (id === null) return 'unknown';
  if (!met.has(id)) return 'drawn';
  for (let at = way.length - 1; at >= 0; at--) if (knots.get(way.slice(0, at))?.id === id) return 'ring';
  return 'again';
}

/** Ends take a row each from the top down, and young the middle between their parents. */
function rowsBeside(knots: ReadonlyMap<Way, Placeless>): ReadonlyMap<Way, number> {
  const rows = new Map<Way, number>();
  let next = 0;
  const place = (way: Way): number => {
    const row = knots.has(`${way}S`) ? (place(`${way}S`) + place(`${way}D`)) / 2 : next++;
    rows.set(way, row);
    return row;
  };
  place('');
  return rows;
}

/** The animal first, then all of its sire’s side, then all of its dam’s. */
function rowsBelow(knots: ReadonlyMap<Way, Placeless>): ReadonlyMap<Way, number> {
  const rows = new Map<Way, number>();
  const place = (way: Way): void => {
    if (!knots.has(way)) return;
    rows.set(way, rows.size);
    place(`${way}S`);
    place(`${way}D`);
  };
  place('');
  return rows;
}

function marksOf(knots: ReadonlyMap<Way, Placeless>, rows: ReadonlyMap<Way, number>): ReadonlyMap<string, string> {
  const row = ({ way }: Placeless): number => rows.get(way) ?? 0;
  const again = [...knots.values()].filter(({ is }) => is === 'again' || is === 'ring').sort((a, b) => row(a) - row(b));
  const ids = [...new Set(again.flatMap(({ id }) => id ?? []))];
  return new Map(ids.map((id, at) => [id, letter(at)]));
}

const LETTERS = 26;

function letter(at: number): string {
  const last = String.fromCharCode('a'.charCodeAt(0) + (at % LETTERS));
  return at < LETTERS ? last : `${letter(Math.floor(at / LETTERS) - 1)}${last}`;
}
