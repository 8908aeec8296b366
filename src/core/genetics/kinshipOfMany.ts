import { type OnProgress, ownShares, type PedigreeArrays } from './pedigreeArrays.ts';
import { relationshipsWith } from './relationships.ts';

/**
 * The kinship (half the relationship) of some animals with everyone of a pedigree, a row for each in the order asked,
 * as doubles. `places` are their numbers in it; a number that no animal has is kin to nobody.
 */
export function kinshipOfMany(
  pedigree: PedigreeArrays,
  places: readonly number[],
  inbreeding: Float64Array,
  founderF: Float64Array,
  onProgress: OnProgress = () => undefined,
): readonly Float64Array[] {
  const own = ownShares(pedigree, inbreeding, founderF);
  return places.map((one, done) => {
    onProgress(done, places.length);
    const row = new Float64Array(own.length);
    if (one < 0 || one >= row.length) return row;
    relationshipsWith(one, pedigree, own, row);
    for (let at = 0; at < row.length; at++) row[at] = (row[at] ?? 0) / 2;
    return row;
  });
}
