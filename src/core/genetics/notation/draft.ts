import type { LocusRow } from '../loci/index.ts';
import type { Second, Slot, TraitPiece } from './traits.ts';

/** A copy as it was written, with the character where it stands (from 1; 0 where there is no text). */
export interface PlacedSlot {
  readonly slot: Slot;
  readonly at: number;
}

/** A piece that nobody has checked yet. On the W the second copy holds nothing. */
export interface DraftPiece {
  readonly copies: readonly [readonly PlacedSlot[], readonly PlacedSlot[]];
  readonly second: Second;
  /** Where the piece begins, and where its mark Y:, Y? or W stands. */
  readonly at: number;
  readonly markAt: number;
}

/** A piece whose loci are known. */
export interface Settled {
  readonly piece: TraitPiece;
  readonly rows: readonly LocusRow[];
  readonly draft: DraftPiece;
}

/** The path of a problem in a trait code. */
export function pathAt(at: number): string | undefined {
  return at === 0 ? undefined : `char ${at}`;
}
