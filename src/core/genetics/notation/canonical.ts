import { gcd } from '../fraction.ts';
import type { LocusRow, LocusTable } from '../loci/index.ts';
import { printPiece, type Slot, type TraitPiece } from './traits.ts';

/** A piece with its loci in table order and its like copies in canonical order; chances in lowest terms. */
export function canonicalPiece(
  piece: Omit<TraitPiece, 'loci'>,
  rows: readonly LocusRow[],
  loci: LocusTable,
): TraitPiece {
  const order = rows.map((_, at) => at).sort((a, b) => placeOf(rows[a], loci) - placeOf(rows[b], loci));
  const sorted = order.flatMap((at) => rows[at] ?? []);
  const copy = (which: 0 | 1): readonly Slot[] => order.flatMap((at) => reduced(piece.copies[which][at]));
  const [first, second] = [copy(0), copy(1)];
  const base = { loci: sorted.map((row) => row.locus) };
  if (piece.second === 'W' || piece.second === 'Y') return { ...base, copies: [first, second], second: piece.second };
  const swapped = compareCopies(first, second, sorted) > 0;
  const like: TraitPiece = { ...base, copies: swapped ? [second, first] : [first, second], second: piece.second };
  return piece.second === 'Y?' && printSame(like) ? { ...like, second: 'Y' } : like;
}

/** Where both copies read alike, nothing is unknown about which lies on the Y. */
function printSame(piece: TraitPiece): boolean {
  const [first, second] = piece.copies;
  return printPiece({ ...piece, copies: [first, first] }) === printPiece({ ...piece, copies: [second, second] });
}

/** Pieces in the order of the table, by their first locus. */
export function inTableOrder(pieces: readonly TraitPiece[], loci: LocusTable): readonly TraitPiece[] {
  const place = (piece: TraitPiece): number => loci.rows.findIndex((row) => row.locus === piece.loci[0]);
  return [...pieces].sort((a, b) => place(a) - place(b));
}

function placeOf(row: LocusRow | undefined, loci: LocusTable): number {
  return row === undefined ? -1 : loci.rows.indexOf(row);
}

function reduced(slot: Slot | undefined): readonly Slot[] {
  if (slot === undefined) return [];
  if (slot.kind !== 'maybe') return [slot];
  const common = Number(gcd(BigInt(slot.p), BigInt(slot.q)));
  return [{ ...slot, p: slot.p / common, q: slot.q / common }];
}

function compareCopies(a: readonly Slot[], b: readonly Slot[], rows: readonly LocusRow[]): number {
  for (const [at, row] of rows.entries()) {
    const difference = compareSlots(a[at], b[at], row);
    if (difference !== 0) return difference;
  }
  return 0;
}

const KINDS = ['allele', 'maybe', 'wild', 'unknown', 'absent'] as const satisfies readonly Slot['kind'][];

function compareSlots(a: Slot | undefined, b: Slot | undefined, row: LocusRow): number {
  if (a === undefined || b === undefined) return 0;
  if (a.kind !== b.kind) return KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind);
  if (a.kind === 'allele' && b.kind === 'allele') return rank(a.symbol, row) - rank(b.symbol, row);
  if (a.kind !== 'maybe' || b.kind !== 'maybe') return 0;
  return rank(a.symbol, row) - rank(b.symbol, row) || b.p * a.q - a.p * b.q || 0;
}

function rank(symbol: string, row: LocusRow): number {
  return row.alleles.findIndex((one) => one.symbol === symbol);
}
