import type { PedigreeArrays } from './pedigreeArrays.ts';

/**
 * The relationship of one animal with everyone up to `last`, into `into` (Colleau 2002, Genet. Sel. Evol. 34:409):
 * its shares go up to the ancestors, are weighted by what each ancestor brings of its own, and come down again.
 */
export function relationshipsWith(
  one: number,
  { sire, dam }: PedigreeArrays,
  own: Float64Array,
  into: Float64Array,
  last = sire.length - 1,
): void {
  into.fill(0, 0, last + 1);
  into[one] = 1;
  for (let at = one; at >= 0; at--) {
    const here = into[at] ?? 0;
    if (here === 0) continue;
    const [s, d] = [sire[at] ?? -1, dam[at] ?? -1];
    if (s >= 0) into[s] = (into[s] ?? 0) + here / 2;
    if (d >= 0) into[d] = (into[d] ?? 0) + here / 2;
  }
  for (let at = 0; at <= last; at++) {
    const [s, d] = [sire[at] ?? -1, dam[at] ?? -1];
    const fromParents = (s < 0 ? 0 : (into[s] ?? 0)) + (d < 0 ? 0 : (into[d] ?? 0));
    into[at] = (into[at] ?? 0) * (own[at] ?? 0) + fromParents / 2;
  }
}
