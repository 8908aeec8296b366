import { type Fraction, fraction, type Parentage } from '../../core/index.ts';

/** What two animals are to each other in everyday words, and the kinship that is usual for it. */
export interface Relation {
  readonly says: string;
  /** Where neither is inbred and they are related on no other line. */
  readonly usual: Fraction;
}

const QUARTER = fraction(1n, 4n);
const EIGHTH = fraction(1n, 8n);
const SIXTEENTH = fraction(1n, 16n);

/**
 * The nearest everyday relation of two animals by their parents; null where there is none of these. The usual kinships
 * follow from the definition (Wright 1922): 1/4, 1/8, 1/16.
 */
export function relationOf(pedigree: readonly Parentage[], a: string, b: string): Relation | null {
  const byId = new Map(pedigree.map((one) => [one.id, one]));
  const parents = (id: string): readonly string[] => {
    const one = byId.get(id);
    return [one?.sire ?? null, one?.dam ?? null].filter((parent) => parent !== null);
  };
  const above = (id: string): readonly string[] => parents(id).flatMap(parents);
  const shared = parents(a).filter((one) => parents(b).includes(one)).length;
  const areFull = (one: string, other: string): boolean =>
    one !== other && parents(one).length === 2 && parents(one).every((parent) => parents(other).includes(parent));
  const either = (holds: (one: string, other: string) => boolean): boolean => holds(a, b) || holds(b, a);
  if (either((one, other) => parents(one).includes(other))) return { says: 'parent and young', usual: QUARTER };
  if (areFull(a, b)) return { says: 'full siblings', usual: QUARTER };
  if (shared > 0) return { says: 'half siblings', usual: EIGHTH };
  if (either((one, other) => above(one).includes(other))) return { says: 'grandparent and grand-young', usual: EIGHTH };
  if (either((one, other) => parents(one).some((parent) => areFull(parent, other))))
    return { says: 'a young and a full sibling of its parent', usual: EIGHTH };
  if (parents(a).some((one) => parents(b).some((other) => areFull(one, other))))
    return { says: 'first cousins', usual: SIXTEENTH };
  return null;
}
