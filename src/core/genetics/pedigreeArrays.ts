import type { Parentage } from './kinship.ts';

/** A pedigree as numbers: parents before young, -1 for an unknown parent. */
export interface PedigreeArrays {
  readonly sire: Int32Array;
  readonly dam: Int32Array;
  /** The longest line of ancestors above each animal; founders 0. */
  readonly depth: Int32Array;
}

/** How far a long run has come; throw from it to stop the run. */
export type OnProgress = (done: number, of: number) => void;

/** Numbers a pedigree whose animals stand parents before young. */
export function pedigreeArrays(ordered: readonly Parentage[]): PedigreeArrays {
  const place = new Map(ordered.map((one, at) => [one.id, at]));
  const column = (of: (one: Parentage) => string | null): Int32Array =>
    Int32Array.from(ordered, (one) => place.get(of(one) ?? '') ?? -1);
  const [sire, dam] = [column((one) => one.sire), column((one) => one.dam)];
  const depth = new Int32Array(ordered.length);
  for (let at = 0; at < depth.length; at++) depth[at] = Math.max(above(depth, sire[at]), above(depth, dam[at]));
  return { sire, dam, depth };
}

function above(depth: Int32Array, parent = -1): number {
  return parent < 0 ? 0 : (depth[parent] ?? 0) + 1;
}

/** The part of an animal's relationship with itself that its parents do not explain. */
export function ownShare(
  { sire, dam }: PedigreeArrays,
  inbreeding: Float64Array,
  founderF: Float64Array,
  at: number,
): number {
  const [s, d] = [sire[at] ?? -1, dam[at] ?? -1];
  if (s < 0 && d < 0) return 1 + (founderF[at] ?? 0);
  const of = (parent: number): number => (parent < 0 ? -1 : (inbreeding[parent] ?? 0));
  return 0.5 - 0.25 * (of(s) + of(d));
}

/** What each animal brings of its own, for {@link relationshipsWith}, once its inbreeding is known. */
export function ownShares(pedigree: PedigreeArrays, inbreeding: Float64Array, founderF: Float64Array): Float64Array {
  return Float64Array.from(pedigree.sire, (_, at) => ownShare(pedigree, inbreeding, founderF, at));
}
