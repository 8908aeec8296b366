import { ok, type Result, refuse } from '../problems.ts';
import { add, compare, divide, type Fraction, fraction, isZero, multiply, ZERO } from './fraction.ts';
import { type Parentage, pedigreeOrder } from './kinship.ts';

/** How many ancestors of one generation are known; 1 is the parents. An ancestor on two lines counts twice. */
export interface GenerationKnown {
  readonly generation: number;
  readonly known: bigint;
  readonly of: bigint;
  readonly share: Fraction;
}

/** A known animal without known parents, and the share of the genes that is expected to come from it. */
export interface FounderShare {
  readonly id: string;
  readonly share: Fraction;
}

/** An unknown parent of an animal whose other parent is known: a founder without a name. */
export interface UnknownFounder {
  readonly young: string;
  readonly role: 'sire' | 'dam';
  readonly share: Fraction;
}

/** How much of an animal's pedigree is known. */
export interface Completeness {
  readonly id: string;
  readonly generations: readonly GenerationKnown[];
  /** Complete generation equivalent over the whole pedigree: (1/2)^generation summed over all known ancestors. */
  readonly equivalent: Fraction;
  /** Pedigree completeness index over the generations asked for, from 0 to 1. */
  readonly index: Fraction;
  /** Largest share first, then by id; with {@link unknown} they add up to 1. */
  readonly founders: readonly FounderShare[];
  readonly unknown: readonly UnknownFounder[];
  readonly unknownShare: Fraction;
}

/** More generations than this are no question about snakes. */
export const MOST_GENERATIONS = 100;

/** Exact shares have a digit for each generation; nobody keeps so many but by a slip in the records. */
const MOST_DEPTH = 10_000;

/**
 * The completeness of one animal's pedigree to so many generations: the equivalent of Maignel, Boichard & Verrier 1996,
 * Interbull Bulletin 14; the index of MacCluer et al. 1983, J Hered 74, the harmonic mean of both parents' sides (both
 * from memory). Errors: those of {@link pedigreeOrder}, `pedigree-without`,
 * `pedigree-generations`, `pedigree-deep`.
 */
export function completenessOf(animals: readonly Parentage[], id: string, generations: number): Result<Completeness> {
  if (!Number.isInteger(generations) || generations < 1 || generations > MOST_GENERATIONS)
    return refuse('pedigree-generations', { generations, most: MOST_GENERATIONS }, 'generations');
  const ordered = pedigreeOrder(animals);
  if (!ordered.ok) return ordered;
  const byId = new Map(ordered.value.map((one) => [one.id, one]));
  const subject = byId.get(id);
  if (subject === undefined) return refuse('pedigree-without', { id }, 'id');
  const depth = depthOf(ordered.value, subject);
  if (depth > MOST_DEPTH) return refuse('pedigree-deep', { id, depth, most: MOST_DEPTH }, 'animals');
  const sides = [sideKnown(subject.sire, byId, generations), sideKnown(subject.dam, byId, generations)] as const;
  return ok({
    id,
    generations: sides[0].map((known, at) => generationKnown(at + 1, known + (sides[1][at] ?? 0n))),
    index: harmonicMean(sideIndex(sides[0]), sideIndex(sides[1])),
    ...contributions(ordered.value, subject, depth + 1),
  });
}

function generationKnown(generation: number, known: bigint): GenerationKnown {
  const of = 1n << BigInt(generation);
  return { generation, known, of, share: fraction(known, of) };
}

/** Known ancestors by generation on one parent's side; the parent itself is the first. */
function sideKnown(
  parent: string | null,
  byId: ReadonlyMap<string, Parentage>,
  generations: number,
): readonly bigint[] {
  let here = new Map<string, bigint>(parent === null ? [] : [[parent, 1n]]);
  const counts: bigint[] = [];
  for (let at = 0; at < generations; at++) {
    counts.push([...here.values()].reduce((sum, times) => sum + times, 0n));
    const above = new Map<string, bigint>();
    for (const [id, times] of here) {
      const one = byId.get(id);
      for (const up of [one?.sire ?? null, one?.dam ?? null])
        if (up !== null) above.set(up, (above.get(up) ?? 0n) + times);
    }
    here = above;
  }
  return counts;
}

/** The mean over generations of the share that is known on one side. */
function sideIndex(counts: readonly bigint[]): Fraction {
  const shares = counts.map((known, at) => fraction(known, 1n << BigInt(at)));
  return multiply(shares.reduce(add, ZERO), fraction(1n, BigInt(counts.length)));
}

function harmonicMean(a: Fraction, b: Fraction): Fraction {
  const sum = add(a, b);
  return isZero(sum) ? ZERO : divide(multiply(fraction(2n, 1n), multiply(a, b)), sum);
}

/** Shares go up from the animal, half to each parent, youngest first; what arrives at a known ancestor counts for the equivalent. */
function contributions(
  ordered: readonly Parentage[],
  subject: Parentage,
  bits: number,
): Pick<Completeness, 'equivalent' | 'founders' | 'unknown' | 'unknownShare'> {
  const shares = new Map([[subject.id, 1n << BigInt(bits)]]);
  const founders: FounderShare[] = [];
  const unknown: UnknownFounder[] = [];
  let [known, lost] = [0n, 0n];
  for (const one of ordered.toReversed()) {
    const share = shares.get(one.id);
    if (share === undefined) continue;
    shares.delete(one.id);
    if (one.id !== subject.id) known += share;
    if (one.sire === null && one.dam === null) {
      founders.push({ id: one.id, share: dyadic(share, bits) });
      continue;
    }
    for (const role of ['sire', 'dam'] as const) {
      const parent = one[role];
      if (parent !== null) shares.set(parent, (shares.get(parent) ?? 0n) + share / 2n);
      else unknown.push({ young: one.id, role, share: dyadic(share / 2n, bits) });
      if (parent === null) lost += share / 2n;
    }
  }
  return {
    equivalent: dyadic(known, bits),
    founders: founders.sort((a, b) => compare(b.share, a.share) || (a.id < b.id ? -1 : 1)),
    unknown: unknown.sort((a, b) => compare(b.share, a.share) || (a.young < b.young ? -1 : 1)),
    unknownShare: dyadic(lost, bits),
  };
}

function depthOf(ordered: readonly Parentage[], subject: Parentage): number {
  const depth = new Map<string, number>();
  for (const one of ordered) {
    const above = [one.sire, one.dam].map((id) => (id === null ? 0 : (depth.get(id) ?? 0) + 1));
    depth.set(one.id, Math.max(...above));
  }
  return depth.get(subject.id) ?? 0;
}

/** top / 2^bits in lowest terms by taking out twos alone: a general gcd of such long numbers is slow. */
function dyadic(top: bigint, bits: number): Fraction {
  const bottom = 1n << BigInt(bits);
  if (top === 0n) return ZERO;
  const twos = top & -top;
  const common = twos < bottom ? twos : bottom;
  return { top: top / common, bottom: bottom / common };
}
