import { type Problem, problem } from '../../problems.ts';
import type { LocusRow, LocusTable } from '../loci/index.ts';
import type { Sex } from '../model.ts';
import { pathAt, type Settled } from './draft.ts';
import { printPiece, type TraitPiece } from './traits.ts';

/** What is wrong with the chromosomes that pieces are written on, given the animal's sex (null: not known). */
export function sexFault(settled: readonly Settled[], loci: LocusTable, sex: Sex | null): Problem | null {
  for (const one of settled) {
    const found = markFault(one, loci) ?? (sex === null ? null : ownSexFault(one, sex));
    if (found !== null) return found;
  }
  return disagreement(settled);
}

function markFault({ piece, rows, draft }: Settled, loci: LocusTable): Problem | null {
  const [row] = rows;
  if (row === undefined || piece.second === 'same') return null;
  const mark = piece.second === 'W' ? 'W' : draft.second === 'Y' ? 'Y:' : 'Y?';
  const needed = piece.second === 'W' ? 'ZW' : 'XY';
  if (row.sexLink?.system === needed) return null;
  const path = pathAt(draft.markAt);
  const system = loci.sexSystem;
  const why =
    system !== null && system !== needed
      ? `${loci.species} has ${system.split('').join(' and ')}`
      : 'this locus is not sex-linked';
  return problem('traits-chromosome', { mark, locus: row.locus, why }, path);
}

/** The sex that a piece is written for: null where it fits both. */
export function sexOfPiece(piece: TraitPiece, row: LocusRow | undefined): Sex | null {
  if (piece.second === 'W') return 'F';
  if (piece.second !== 'same') return 'M';
  if (row === undefined || row.sexLink === null) return null;
  return row.sexLink.system === 'XY' ? 'F' : 'M';
}

function ownSexFault({ piece, rows, draft }: Settled, sex: Sex): Problem | null {
  const written = sexOfPiece(piece, rows[0]);
  if (written === null || written === sex) return null;
  const [first = '', second = ''] = piece.copies.map(
    (copy) => printPiece({ ...piece, copies: [copy, copy], second: 'same' }).split('/')[0],
  );
  const like = { what: printPiece(piece), whom: sex === 'M' ? 'a male' : 'a female' };
  const path = pathAt(piece.second === 'same' ? draft.at : draft.markAt);
  const xy = rows[0]?.sexLink?.system === 'XY';
  const instead =
    sex === 'M'
      ? xy
        ? `${second}/Y:${first}, ${first}/Y:${second} or ${first}/Y?${second}`
        : `${first}/+`
      : xy
        ? `${first}/${second}`
        : `${first}/W`;
  const why = xy
    ? sex === 'M'
      ? 'one copy lies on X and one on Y'
      : 'a female has no Y'
    : sex === 'M'
      ? 'a male has no W'
      : 'a female has one Z';
  return problem('traits-sex', { ...like, why, instead }, path);
}

/** Pieces that cannot belong to one animal, because one is a male's and one a female's. */
function disagreement(settled: readonly Settled[]): Problem | null {
  const written = settled.flatMap((one) => {
    const sex = sexOfPiece(one.piece, one.rows[0]);
    return sex === null ? [] : [{ one, sex }];
  });
  const [first] = written;
  const other = written.find((entry) => entry.sex !== first?.sex);
  if (first === undefined || other === undefined) return null;
  const says = (sex: Sex): string => (sex === 'M' ? 'a male’s' : 'a female’s');
  return problem(
    'traits-sex',
    {
      what: printPiece(other.one.piece),
      whom: printPiece(first.one.piece),
      why: `one is ${says(other.sex)} and one ${says(first.sex)}`,
      instead: 'both for one sex',
    },
    pathAt(other.one.draft.at),
  );
}
