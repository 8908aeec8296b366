import {
  type LocusTable,
  lookOf,
  NORMAL_LOOK,
  ok,
  problem,
  type Result,
  readTraits,
  type Slot,
  type TraitPiece,
} from '../../core/index.ts';

/** What is wanted of a season: a look, by locus. Other loci may be anything. */
export interface GoalLook {
  readonly words: string;
  readonly wanted: ReadonlyMap<string, string>;
}

/**
 * Reads a goal as it is typed. Only what shows on a young can be counted: a het or a possible het is refused, and so is
 * wild type, which asks for nothing. An open second copy counts as one. Errors: `goal-unseen` and those of {@link readTraits}.
 */
export function readGoal(text: string, loci: LocusTable): Result<GoalLook> {
  const read = readTraits(text, loci, null);
  if (!read.ok) return read;
  const { traits, words } = read.value;
  const wanted = new Map<string, string>();
  for (const piece of traits.pieces) {
    for (const [at, locus] of piece.loci.entries()) {
      const row = loci.rows.find((one) => one.locus === locus);
      const look = row === undefined ? NORMAL_LOOK : lookOf(row, keyAt(piece, at));
      if (look === NORMAL_LOOK) return { ok: false, problem: problem('goal-unseen', { words: words.long }) };
      wanted.set(locus, look);
    }
  }
  if (wanted.size === 0) return { ok: false, problem: problem('goal-unseen', { words: words.long }) };
  return ok({ words: words.long, wanted });
}

function keyAt(piece: TraitPiece, at: number): string {
  const [first, second] = piece.copies.map((copy) => sure(copy[at]));
  return piece.second === 'W' ? `${first}|W` : `${first}/${second}`;
}

function sure(slot: Slot | undefined): string {
  return slot?.kind === 'allele' ? slot.symbol : '+';
}
