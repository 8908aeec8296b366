/** One copy of a locus: an allele, wild type, nobody knows, an allele with chance p in q (else wild type), or no copy (W). */
export type Slot =
  | { readonly kind: 'allele'; readonly symbol: string }
  | { readonly kind: 'wild' }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'maybe'; readonly symbol: string; readonly p: number; readonly q: number }
  | { readonly kind: 'absent' };

/** What the second copy lies on: the like chromosome, the Y, X or Y (nobody knows), or the W. */
export type Second = 'same' | 'Y' | 'Y?' | 'W';

/** Loci written together: one, or several on one chromosome in phase; each copy holds a slot per locus. */
export interface TraitPiece {
  readonly loci: readonly string[];
  readonly copies: readonly [readonly Slot[], readonly Slot[]];
  readonly second: Second;
}

/** An animal's genotype as far as it is known, in canonical order; loci that are not named are wild type. Plain data. */
export interface Traits {
  readonly species: string;
  readonly pieces: readonly TraitPiece[];
}

/** The trait code of wild type. */
export const WILD_CODE = 'wt';

/**
 * The trait code, canonical for traits that {@link makeTraits} or the reader gave: loci in the order of the table, of two
 * like copies the allele that stands first in the table, then possible alleles, `+`, `-`.
 */
export function printTraits(traits: Traits): string {
  return traits.pieces.length === 0 ? WILD_CODE : traits.pieces.map(printPiece).join('; ');
}

/** The code of one piece. */
export function printPiece(piece: TraitPiece): string {
  const [first, second] = piece.copies.map((copy) => copy.map(printSlot).join(' '));
  switch (piece.second) {
    case 'same':
      return `${first}/${second}`;
    case 'Y':
      return `${first}/Y:${second}`;
    case 'Y?':
      return `${first}/Y?${second}`;
    case 'W':
      return `${first}/W`;
    default:
      return piece.second satisfies never;
  }
}

/** The code of one copy. */
export function printSlot(slot: Slot): string {
  switch (slot.kind) {
    case 'allele':
      return slot.symbol;
    case 'wild':
      return '+';
    case 'unknown':
      return '-';
    case 'maybe':
      return `[${slot.symbol} ${slot.p}:${slot.q}]`;
    case 'absent':
      return 'W';
    default:
      return slot satisfies never;
  }
}

/** The allele that a copy names, for sure or possibly. */
export function symbolIn(slot: Slot): string | null {
  return slot.kind === 'allele' || slot.kind === 'maybe' ? slot.symbol : null;
}
