import type { AnimalRecord } from '../animal/index.ts';
import type { ClutchRecord, Facility } from '../facility/index.ts';
import {
  type Cross,
  type LocusTable,
  locusOrder,
  lookOf,
  type Observed,
  type Slot,
  type TraitPiece,
  type Traits,
} from '../genetics/index.ts';
import { geneticSex, traitsOf } from '../lineage/index.ts';

/** The young of a clutch that have records, by number, then by id. */
export function youngOf({ animals }: Facility, clutch: ClutchRecord): readonly AnimalRecord[] {
  return [...animals.values()]
    .filter((one) => one.clutch === clutch.id)
    .sort((a, b) => (keyFor(a) < keyFor(b) ? -1 : 1));
}

function keyFor({ number, id }: AnimalRecord): string {
  return `${number ?? ''}\u0000${id}`;
}

/**
 * What the young of a clutch look like, as rows that {@link evidenceOf} takes: only what shows by their trait codes counts.
 * Young whose traits nobody has written, or whose code cannot be read, are no observation.
 */
export function observedOf(
  facility: Facility,
  clutch: ClutchRecord,
  cross: Cross,
  loci: LocusTable,
): readonly Observed[] {
  const rows = new Map<string, Observed>();
  for (const young of youngOf(facility, clutch)) {
    const said = traitsOf(facility, young);
    if (!said.ok || said.value === null) continue;
    const sex = geneticSex(young.sex);
    const labels = labelsOf(said.value.traits, cross, loci);
    const key = `${sex}\u0000${labels.join('\u0000')}`;
    rows.set(key, { sex, labels, count: (rows.get(key)?.count ?? 0) + 1 });
  }
  return [...rows.values()];
}

/** The look at each locus of a cross, from the alleles that are sure. */
function labelsOf(traits: Traits, cross: Cross, loci: LocusTable): readonly string[] {
  return locusOrder(cross).map((locus) => {
    const row = loci.rows.find((one) => one.locus === locus);
    const piece = traits.pieces.find((one) => one.loci.includes(locus));
    return row === undefined ? '' : lookOf(row, keyOf(piece, locus));
  });
}

function keyOf(piece: TraitPiece | undefined, locus: string): string {
  if (piece === undefined) return '+/+';
  const at = piece.loci.indexOf(locus);
  const [a, b] = [sureAllele(piece.copies[0][at]), sureAllele(piece.copies[1][at])];
  return piece.second === 'W' ? `${a}|W` : `${a}/${b}`;
}

function sureAllele(slot: Slot | undefined): string {
  return slot?.kind === 'allele' ? slot.symbol : '+';
}
