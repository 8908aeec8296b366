import { type LocusRow, type LocusTable, rowOf, showsInOneDose } from './loci/index.ts';
import type { Sex, Strands } from './model.ts';
import { makeTraits, type Slot, type TraitPiece, type Traits } from './notation/index.ts';
import type { Parent } from './parents.ts';
import { nameOf } from './phenotype.ts';
import type { Doubt, Proof, ProofCase } from './proofCase.ts';
import { matesFor } from './proofMates.ts';
import { priorOf, proofWay } from './proofWay.ts';

/**
 * What is not known of an animal and which young would settle it, in the order of its traits. A possible copy is proven by
 * one young that cannot come otherwise; two copies (`x/-`) and the side of `Y?` are never proven but grow likelier with
 * every young that fits, and one that does not fit speaks against them. What nobody can put a prior to, such as `x/-` of
 * a recessive, is left out. It says what breeding would tell, not that anybody should breed.
 */
export function provingOf(traits: Traits, loci: LocusTable, sex: Sex | null): readonly Proof[] {
  return traits.pieces.flatMap((piece) =>
    piece.loci.flatMap((locus, at) => {
      const row = rowOf(loci, locus);
      const pair = [piece.copies[0][at], piece.copies[1][at]] as const;
      const own = sexFor(piece, row, sex);
      if (row === null || pair[0] === undefined || pair[1] === undefined || own === null) return [];
      const known = makeTraits([{ copies: [[pair[0]], [pair[1]]], second: piece.second }], loci, own);
      if (!known.ok) return [];
      const animal: Parent = { traits: known.value, sex: own };
      const whole: Parent = { traits, sex: own };
      return doubtsOf(row, [pair[0], pair[1]], piece).flatMap((doubt) => proofOf({ doubt, row, animal, whole, loci }));
    }),
  );
}

function proofOf(one: ProofCase): readonly Proof[] {
  const prior = priorOf(one);
  if (prior === null || prior.top === 0n || prior.top === prior.bottom) return [];
  const ways = matesFor(one).flatMap((mate) => proofWay(one, mate) ?? []);
  return [{ locus: one.row.locus, what: one.doubt.what, prior, ways }];
}

/** On autosomes the sexes are alike, so an unsexed animal is put on the sire's side; on a sex chromosome its sex must be known. */
function sexFor(piece: TraitPiece, row: LocusRow | null, sex: Sex | null): Sex | null {
  if (sex !== null) return sex;
  if (piece.second === 'W') return 'F';
  if (piece.second !== 'same') return 'M';
  return row?.sexLink === null ? 'M' : null;
}

/** What the two copies leave open. */
function doubtsOf(row: LocusRow, pair: readonly [Slot, Slot], piece: TraitPiece): readonly Doubt[] {
  const open = pair.filter((slot) => slot.kind === 'maybe' || slot.kind === 'unknown');
  const sure = pair.flatMap((slot) => (slot.kind === 'allele' ? [slot.symbol] : []));
  const found = new Map<string, Doubt>();
  for (const slot of open) {
    const symbol = slot.kind === 'maybe' ? slot.symbol : sure[0];
    if (symbol === undefined) continue;
    const doubt = sure.includes(symbol) ? twoCopies(row, symbol) : carrying(row, symbol, open.length, piece);
    found.set(doubt.what, doubt);
  }
  if (piece.second === 'Y?' && open.length === 0) found.set('side', onTheY(row, pair));
  return [...found.values()];
}

function twoCopies(row: LocusRow, symbol: string): Doubt {
  const holds = ([a, b]: Strands): boolean => a === symbol && b === symbol;
  const name = nameOf(row, symbol);
  return { symbol, what: `two copies of ${name}`, sign: 'against', says: 'then there is one copy only', holds };
}

/** A daughter with one Z would show what she carries there, so she is no het. */
function carrying(row: LocusRow, symbol: string, open: number, piece: TraitPiece): Doubt {
  const name = nameOf(row, symbol);
  const what =
    showsInOneDose(symbol) || piece.second === 'W' ? name : open > 1 ? `${name}, one copy or two` : `het ${name}`;
  return { symbol, what, sign: 'for', says: null, holds: (strands) => strands.includes(symbol) };
}

/** The second strand is the one with the Y. */
function onTheY(row: LocusRow, pair: readonly [Slot, Slot]): Doubt {
  const symbol = pair.flatMap((slot) => (slot.kind === 'allele' ? [slot.symbol] : []))[0] ?? '';
  const name = nameOf(row, symbol);
  return {
    symbol,
    what: `${name} on the Y (male-maker)`,
    sign: 'likelier',
    says: 'it speaks for the X, a female-maker',
    holds: ([, onY]) => onY === symbol,
  };
}
