import {
  type AnimalRecord,
  type ChangedChance,
  type Facility,
  geneticSex,
  lociFor,
  makeTraits,
  printTraits,
  readTraits,
  type Slot,
  type TraitPiece,
  type TraitSaying,
  traitsOf,
} from '../../core/index.ts';
import { withPick } from '../traits/picks.ts';

/** What a parent's record would say once a doubt about one copy is gone; null where the record does not hold one such doubt. */
export function settled(facility: Facility, animal: AnimalRecord, change: ChangedChance): TraitSaying | null {
  const carries = isSure(change.after);
  const said = traitsOf(facility, animal);
  if (carries === null || !said.ok || said.value === null) return null;
  const { loci } = lociFor(facility, animal.species);
  const sex = geneticSex(animal.sex);
  let doubts = 0;
  const settle = (slot: Slot): Slot => {
    if (!isDoubt(slot, change)) return slot;
    doubts++;
    return carries ? { kind: 'allele', symbol: change.symbol } : { kind: 'wild' };
  };
  const pieces = said.value.traits.pieces.map((piece) => withSettled(piece, change.locus, settle));
  if (doubts !== 1) return null;
  // Where nothing is left at the locus it goes out of the code, which names no wild type beside other traits.
  const made = isWild(pieces, change.locus)
    ? withPick(said.value.traits, change.locus, null, loci, sex)
    : makeTraits(pieces, loci, sex);
  if (!made.ok) return null;
  const read = readTraits(printTraits(made.value), loci, sex);
  return read.ok ? read.value : null;
}

/** True for 1, false for 0, null for whatever is still open. */
export function isSure({ top, bottom }: ChangedChance['after']): boolean | null {
  if (top === 0n) return false;
  return top === bottom ? true : null;
}

/** The first copy is in doubt as a possible one, the second as an unknown one beside a sure one. */
function isDoubt(slot: Slot, { symbol, copies }: ChangedChance): boolean {
  return copies === 1 ? slot.kind === 'maybe' && slot.symbol === symbol : slot.kind === 'unknown';
}

function isWild(pieces: readonly TraitPiece[], locus: string): boolean {
  return pieces
    .flatMap(({ loci, copies }) => copies.map((copy) => copy[loci.indexOf(locus)]))
    .every((slot) => slot === undefined || slot.kind === 'wild');
}

function withSettled(piece: TraitPiece, locus: string, settle: (slot: Slot) => Slot): TraitPiece {
  const at = piece.loci.indexOf(locus);
  if (at < 0) return piece;
  const copy = (slots: readonly Slot[]): readonly Slot[] =>
    slots.map((slot, here) => (here === at ? settle(slot) : slot));
  return { ...piece, copies: [copy(piece.copies[0]), copy(piece.copies[1])] };
}
