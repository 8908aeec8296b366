import { ok, type Result, refuse } from '../../problems.ts';
import { type AllelePlace, alleleOf, groupOf, type LocusRow, type LocusTable } from '../loci/index.ts';
import type { Sex } from '../model.ts';
import { canonicalPiece, inTableOrder } from './canonical.ts';
import { type DraftPiece, type PlacedSlot, pathAt, type Settled } from './draft.ts';
import { nearest, nearFirst } from './near.ts';
import { sexFault } from './sexes.ts';
import { symbolIn, type TraitPiece, type Traits } from './traits.ts';

/**
 * Gives drafts their meaning in a species and the canonical order. Errors, each at its place: `traits-unknown`,
 * `traits-apart`, `traits-nameless`, `traits-not-linked`, `traits-twice`, `traits-full`, `traits-chance`,
 * `traits-chromosome`, `traits-sex`.
 */
export function settleTraits(drafts: readonly DraftPiece[], loci: LocusTable, sex: Sex | null): Result<Traits> {
  const settled: Settled[] = [];
  for (const draft of drafts) {
    const one = settlePiece(draft, loci);
    if (!one.ok) return one;
    settled.push(one.value);
  }
  const again = repeated(settled);
  if (again !== null) return again;
  const fault = sexFault(settled, loci, sex);
  if (fault !== null) return { ok: false, problem: fault };
  return ok({
    species: loci.species,
    pieces: inTableOrder(
      settled.map((one) => one.piece),
      loci,
    ),
  });
}

/** Traits from pieces made elsewhere, checked and put in canonical order; errors as for a text, without a place. */
export function makeTraits(
  pieces: readonly Omit<TraitPiece, 'loci'>[],
  loci: LocusTable,
  sex: Sex | null = null,
): Result<Traits> {
  const unplaced = (piece: Omit<TraitPiece, 'loci'>, copy: 0 | 1): readonly PlacedSlot[] =>
    piece.copies[copy].map((slot) => ({ slot, at: 0 }));
  const drafts = pieces.map((piece) => ({
    copies: [unplaced(piece, 0), piece.second === 'W' ? [] : unplaced(piece, 1)] as const,
    second: piece.second,
    at: 0,
    markAt: 0,
  }));
  return settleTraits(drafts, loci, sex);
}

function settlePiece(draft: DraftPiece, loci: LocusTable): Result<Settled> {
  const rows: LocusRow[] = [];
  const copies: [PlacedSlot[], PlacedSlot[]] = [[], []];
  for (let at = 0; at < draft.copies[0].length; at++) {
    const found = settleLocus(draft, at, loci);
    if (!found.ok) return found;
    rows.push(found.value.row);
    copies[0].push(found.value.slots[0]);
    copies[1].push(found.value.slots[1]);
  }
  const group = rows[0] === undefined ? null : groupOf(rows[0]);
  const unlinked = rows.find((row, at) => at > 0 && (group === null || groupOf(row) !== group));
  if (unlinked !== undefined) {
    return refuse('traits-not-linked', { first: rows[0]?.locus ?? '', second: unlinked.locus }, pathAt(draft.at));
  }
  const twice = rows.find((row, at) => rows.indexOf(row) !== at);
  if (twice !== undefined) return refuse('traits-twice', twiceWords(twice, draft, draft), pathAt(draft.at));
  const slots = [copies[0].map((one) => one.slot), copies[1].map((one) => one.slot)] as const;
  return ok({ piece: canonicalPiece({ copies: slots, second: draft.second }, rows, loci), rows, draft });
}

interface Found {
  readonly row: LocusRow;
  readonly slots: readonly [PlacedSlot, PlacedSlot];
}

/** The two copies at one position: the alleles named there say the locus. */
function settleLocus(draft: DraftPiece, at: number, loci: LocusTable): Result<Found> {
  const absent: PlacedSlot = { slot: { kind: 'absent' }, at: draft.markAt };
  const pair = [draft.copies[0][at] ?? absent, draft.copies[1][at] ?? absent] as const;
  const places: AllelePlace[] = [];
  const slots: PlacedSlot[] = [];
  for (const placed of pair) {
    const read = settleSlot(placed, loci);
    if (!read.ok) return read;
    slots.push(read.value.placed);
    if (read.value.place !== null) places.push(read.value.place);
  }
  const [first, second] = places;
  if (first === undefined) return refuse('traits-nameless', {}, pathAt(pair[0].at));
  if (second !== undefined && second.row !== first.row) {
    return refuse('traits-apart', { first: first.allele.symbol, second: second.allele.symbol }, pathAt(pair[1].at));
  }
  return ok({ row: first.row, slots: [slots[0] ?? absent, slots[1] ?? absent] });
}

function settleSlot(placed: PlacedSlot, loci: LocusTable): Result<{ placed: PlacedSlot; place: AllelePlace | null }> {
  const { slot, at } = placed;
  const symbol = symbolIn(slot);
  if (symbol === null) return ok({ placed, place: null });
  const place = alleleOf(loci, symbol);
  if (place === null)
    return refuse(
      'traits-unknown',
      { species: loci.species, symbol, near: nearFirst(nearSigns(symbol, loci)) },
      pathAt(at),
    );
  if (slot.kind === 'maybe' && !isChance(slot.p, slot.q))
    return refuse('traits-chance', { chance: `${slot.p}:${slot.q}` }, pathAt(at));
  const canonical =
    slot.kind === 'maybe'
      ? { ...slot, symbol: place.allele.symbol }
      : { kind: 'allele' as const, symbol: place.allele.symbol };
  return ok({ placed: { slot: canonical, at }, place });
}

function isChance(p: number, q: number): boolean {
  return Number.isSafeInteger(p) && Number.isSafeInteger(q) && p > 0 && p < q && q < 1_000_000;
}

/** Signs near to what was typed; a trade name typed for a sign counts as near to its sign. */
function nearSigns(typed: string, loci: LocusTable): readonly string[] {
  const alleles = loci.rows.flatMap((row) => row.alleles);
  const named = alleles.filter((one) => one.names.some((name) => name.toLowerCase() === typed.toLowerCase()));
  return named.length > 0
    ? named.map((one) => one.symbol)
    : nearest(
        typed,
        alleles.map((one) => one.symbol),
      );
}

/** A locus in two pieces: too many alleles for two copies, or written apart. */
function repeated(settled: readonly Settled[]): ReturnType<typeof refuse> | null {
  for (const [at, later] of settled.entries()) {
    for (const row of later.rows) {
      const earlier = settled.slice(0, at).find((one) => one.rows.includes(row));
      if (earlier === undefined) continue;
      const path = pathAt(later.draft.at);
      const alleles = [...symbolsAt(earlier, row), ...symbolsAt(later, row)];
      if (alleles.length > 2) return refuse('traits-full', { locus: row.locus, alleles: alleles.join(', ') }, path);
      return refuse('traits-twice', { locus: row.locus, first: alleles[0] ?? '', second: alleles[1] ?? '' }, path);
    }
  }
  return null;
}

function symbolsAt(settled: Settled, row: LocusRow): readonly string[] {
  const at = settled.piece.loci.indexOf(row.locus);
  return settled.piece.copies.flatMap((copy) => symbolIn(copy[at] ?? { kind: 'wild' }) ?? []);
}

function twiceWords(
  row: LocusRow,
  ...drafts: readonly [DraftPiece, DraftPiece]
): { locus: string; first: string; second: string } {
  const symbols = drafts[0].copies.flat().flatMap((one) => symbolIn(one.slot) ?? []);
  const own = symbols.filter((symbol) => row.alleles.some((one) => one.symbol.toLowerCase() === symbol.toLowerCase()));
  return { locus: row.locus, first: own[0] ?? '', second: own[1] ?? '' };
}
