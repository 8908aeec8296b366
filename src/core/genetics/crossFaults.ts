import { type Problem, problem } from '../problems.ts';
import { compare, HALF, ONE, sayFraction, ZERO } from './fraction.ts';
import { alleleOf, type LocusTable } from './loci/index.ts';
import type { ParentRole, Sex } from './model.ts';
import { printPiece, sexOfPiece, symbolIn, type TraitPiece, type Traits } from './notation/index.ts';
import type { CrossSetting, Parent } from './parents.ts';

/** What speaks against these two as parents, before anything is worked out. */
export function parentFault(parents: Readonly<Record<ParentRole, Parent>>, loci: LocusTable): Problem | null {
  const { sire, dam } = parents;
  if (sire.traits.species !== dam.traits.species || sire.traits.species !== loci.species) {
    const other = sire.traits.species === dam.traits.species ? loci.species : dam.traits.species;
    return problem('pairing-species', { sire: sire.traits.species, dam: other });
  }
  for (const [role, wanted] of [
    ['sire', 'M'],
    ['dam', 'F'],
  ] as const) {
    const sexes = [parents[role].sex, ...parents[role].traits.pieces.map((piece) => markedSex(piece))];
    if (sexes.some((sex) => sex !== null && sex !== wanted)) {
      return problem('pairing-sexes', { role, sex: wanted === 'M' ? 'a female' : 'a male' }, role);
    }
  }
  return strangerFault([sire.traits, dam.traits], loci) ?? hemizygousFault(dam, loci);
}

/** An allele that stood in the table when the traits were written, and does not any more. */
function strangerFault(all: readonly Traits[], loci: LocusTable): Problem | null {
  const symbols = all.flatMap((traits) =>
    traits.pieces.flatMap((piece) => piece.copies.flat().flatMap((slot) => symbolIn(slot) ?? [])),
  );
  const symbol = symbols.find((one) => alleleOf(loci, one) === null);
  return symbol === undefined ? null : problem('traits-unknown', { species: loci.species, symbol, near: '' });
}

/** The sex that a mark says; a like-written pair may be an animal whose sex was not known. */
function markedSex(piece: TraitPiece): Sex | null {
  return piece.second === 'same' ? null : sexOfPiece(piece, undefined);
}

/** A dam with Z and W cannot carry two copies of a Z locus, whatever was written while she was unsexed. */
function hemizygousFault(dam: Parent, loci: LocusTable): Problem | null {
  for (const piece of dam.traits.pieces) {
    const row = loci.rows.find((one) => one.locus === piece.loci[0]);
    if (piece.second !== 'same' || row?.sexLink?.system !== 'ZW') continue;
    const [first = ''] = printPiece(piece).split('/');
    return problem(
      'traits-sex',
      { what: printPiece(piece), whom: 'a dam', why: 'a female has one Z', instead: `${first}/W` },
      'dam',
    );
  }
  return null;
}

/** A figure of the site's own that cannot be. */
export function figureFault(setting: CrossSetting): Problem | null {
  for (const [locus, p] of setting.secondDose ?? []) {
    if (compare(p, ZERO) < 0 || compare(p, ONE) > 0)
      return problem('pairing-figure', { figure: sayFraction(p), locus, why: 'a chance lies from 0 to 1' });
  }
  for (const [locus, r] of setting.r ?? []) {
    if (compare(r, ZERO) < 0 || compare(r, HALF) > 0)
      return problem('pairing-figure', { figure: sayFraction(r), locus, why: 'recombination lies from 0 to 1/2' });
  }
  return null;
}
