import {
  type AnimalRecord,
  type Completeness,
  completenessOf,
  type Facility,
  type Id,
  nameOf,
  type Parentage,
  type Problem,
  pedigreeAround,
  problem,
} from '../../core/index.ts';
import type { Spot, Tree } from './layout.ts';
import { type RingLink, ringIn } from './ring.ts';

/** An animal's pedigree as its page needs it. */
export interface PedigreeStanding {
  readonly animal: AnimalRecord;
  readonly pedigree: readonly Parentage[];
  /** The longest line of known ancestors; null in a ring, which has no end. */
  readonly depth: number | null;
  readonly completeness: Completeness | null;
  /** What stands in place of the figures. */
  readonly problem: Problem | null;
  readonly ring: readonly RingLink[];
}

export function pedigreeStanding(facility: Facility, animal: AnimalRecord, generations: number): PedigreeStanding {
  const pedigree = pedigreeAround(facility, [animal.id]);
  const completeness = completenessOf(pedigree, animal.id, generations);
  const known = { animal, pedigree };
  if (completeness.ok)
    return { ...known, depth: depthOf(pedigree, animal.id), completeness: completeness.value, problem: null, ring: [] };
  const ring = ringIn(pedigree);
  const first = ring[0];
  // The core names animals by their ids alone; here they have names.
  const why =
    first === undefined ? completeness.problem : problem('pedigree-cycle', { id: nameOf(facility, first.id as Id) });
  return { ...known, depth: null, completeness: null, problem: why, ring };
}

/** Generation by generation; only asked where there is no ring, so it ends. */
function depthOf(pedigree: readonly Parentage[], of: string): number {
  const byId = new Map(pedigree.map((one) => [one.id, one]));
  let depth = 0;
  for (let level = parentsOf(byId, [of]); level.length > 0; level = parentsOf(byId, level)) depth++;
  return depth;
}

function parentsOf(byId: ReadonlyMap<string, Parentage>, level: readonly string[]): readonly string[] {
  const parents = level.flatMap((id) => [byId.get(id)?.sire ?? null, byId.get(id)?.dam ?? null]);
  return [...new Set(parents.filter((id) => id !== null))];
}

/** More inbred ancestors than this are not asked about at once: their pairs would be. */
const MOST_ASKED = 40;

/** Who of a drawing can be inbred at all: both parents are known. */
export function inbredCandidates({ spots }: Tree, pedigree: readonly Parentage[]): readonly string[] {
  const both = new Set(pedigree.filter((one) => one.sire !== null && one.dam !== null).map((one) => one.id));
  const can = (spot: Spot): spot is Spot & { readonly id: string } => spot.is === 'drawn' && both.has(spot.id ?? '');
  return spots
    .filter(can)
    .sort((a, b) => a.column - b.column)
    .slice(0, MOST_ASKED)
    .map(({ id }) => id);
}
