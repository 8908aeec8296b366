import { ok, type Result, refuse } from '../problems.ts';
import {
  add,
  commonBottom,
  divide,
  type Fraction,
  fraction,
  gcd,
  isZero,
  multiply,
  ONE,
  sayFraction,
  subtract,
  ZERO,
} from './fraction.ts';
import { groupsOf } from './groups.ts';
import { type Block, type Cross, SEX_POINT, type Sex } from './model.ts';
import { NORMAL_LOOK } from './phenotype.ts';
import { chanceInPart } from './product.ts';
import { type JudgedGroup, MOST_STATE_PAIRS, partOfStrands } from './strandPairs.ts';
import { statesOf } from './zygotes.ts';

/** A clutch of more eggs than this is a slip of the pen. */
export const MOST_EGGS = 200;

/**
 * What a clutch of n can hold of one look: eggs are independent only given the parents, so the uncertainty of the parents
 * is kept to the end.
 */
export interface ClutchChances {
  /** The chance that one egg of all that are laid gives such a young. */
  readonly perEgg: Fraction;
  /** The chance of one young of those that live; 0 where no egg can live. */
  readonly perYoung: Fraction;
  /** How many such young the clutch holds on average. */
  readonly expected: Fraction;
  readonly atLeastOne: Fraction;
  /** P(exactly k), k = 0..n. */
  readonly counts: readonly Fraction[];
}

/**
 * The chances of a clutch of so many `eggs` (those that die counted) or `young` (those that live). The labels named are
 * enough, others may be anything; at a locus that the cross leaves out every young is normal. Exact: with q the chance
 * given both parents' states, P(exactly j of n) is C(n, j) E[q^j (1 - q)^(n - j)], got as differences of the moments E[q^m].
 * Errors: `clutch-size`, `parents-too-open`.
 */
export function clutchChances(
  cross: Cross,
  wanted: ReadonlyMap<string, string>,
  sex: Sex | null,
  size: number,
  of: 'eggs' | 'young',
): Result<ClutchChances> {
  if (!Number.isInteger(size) || size < 1 || size > MOST_EGGS) return refuse('clutch-size', { size, most: MOST_EGGS });
  const look: Look = { cross, wanted, sex };
  const groups = groupsOf(cross).judged.filter((group) => isJudged(group, look));
  const pairs = Math.max(1, ...groups.map((group) => statePairs(cross, group)));
  if (pairs > MOST_STATE_PAIRS) return refuse('parents-too-open', { pairs, most: MOST_STATE_PAIRS });
  const parts = isPossible(look) ? groups.map((group) => chancesOf(group, look)) : [IMPOSSIBLE];
  const [perEgg, perYoung] = [meanOf(parts, 'eggs'), meanOf(parts, 'young')];
  const counts = countsOf(parts, of, size);
  return ok({
    perEgg,
    perYoung,
    expected: multiply(of === 'eggs' ? perEgg : perYoung, fraction(BigInt(size), 1n)),
    atLeastOne: subtract(ONE, counts[0] ?? ONE),
    counts,
  });
}

interface Look {
  readonly cross: Cross;
  readonly wanted: ReadonlyMap<string, string>;
  readonly sex: Sex | null;
}

/** What one part says in one pair of the parents' states: how likely the pair is, and the chance there of one egg or young. */
type Chances = Readonly<Record<'eggs' | 'young', readonly StateChance[]>>;
type StateChance = readonly [p: Fraction, q: Fraction];

const IMPOSSIBLE: Chances = { eggs: [[ONE, ZERO]], young: [[ONE, ZERO]] };

function isPossible({ cross, wanted }: Look): boolean {
  return [...wanted].every(([locus, label]) => cross.loci.has(locus) || label === NORMAL_LOOK);
}

/** Whether a group says anything: it holds a wanted locus, the sex that is wanted, or eggs that die. */
function isJudged(group: JudgedGroup, { cross, wanted, sex }: Look): boolean {
  const loci = lociIn(group);
  const dying = cross.lethal.some((rule) => [...rule.keys()].some((locus) => loci.has(locus)));
  return dying || (sex !== null && loci.has(SEX_POINT)) || [...wanted.keys()].some((locus) => loci.has(locus));
}

function lociIn(group: JudgedGroup): ReadonlySet<string> {
  return new Set(group.flat().flatMap((chromosome) => chromosome.loci));
}

function blocksIn(blocks: readonly Block[], group: JudgedGroup): readonly Block[] {
  const loci = lociIn(group);
  return blocks.filter((block) => block.loci.some((locus) => loci.has(locus)));
}

function statePairs(cross: Cross, group: JudgedGroup): number {
  const blocks = [...blocksIn(cross.sire, group), ...blocksIn(cross.dam, group)];
  return blocks.reduce((product, block) => product * block.states.length, 1);
}

/** The chances in each pair of states; young are of those pairs of states that give any. */
function chancesOf(group: JudgedGroup, { cross, wanted, sex }: Look): Chances {
  const dams = statesOf(blocksIn(cross.dam, group));
  const pairs = statesOf(blocksIn(cross.sire, group)).flatMap((sire) =>
    dams.map((dam) => {
      const part = partOfStrands(cross, group, sire.strands, dam.strands);
      return { p: multiply(sire.p, dam.p), viable: part.viable, young: chanceInPart(part, wanted, sex) };
    }),
  );
  const living = pairs.filter((one) => !isZero(one.viable));
  const total = living.map(({ p }) => p).reduce(add, ZERO);
  return {
    eggs: merged(pairs.map(({ p, viable, young }) => [p, multiply(viable, young)])),
    young: isZero(total) ? IMPOSSIBLE.young : merged(living.map(({ p, young }) => [divide(p, total), young])),
  };
}

/** States that give the same chance are one. */
function merged(all: readonly StateChance[]): readonly StateChance[] {
  const found = new Map<string, StateChance>();
  for (const [p, q] of all) found.set(sayFraction(q), [add(p, found.get(sayFraction(q))?.[0] ?? ZERO), q]);
  return [...found.values()];
}

function meanOf(parts: readonly Chances[], of: 'eggs' | 'young'): Fraction {
  return parts.map((part) => part[of].map(([p, q]) => multiply(p, q)).reduce(add, ZERO)).reduce(multiply, ONE);
}

/** P(exactly k) of n. E[q^j (1 - q)^(n - j)] is the (n - j)th difference of the moments, whole over one bottom. */
function countsOf(parts: readonly Chances[], of: 'eggs' | 'young', size: number): readonly Fraction[] {
  const { tops, bottom, step } = momentsOf(
    parts.map((part) => part[of]),
    size,
  );
  const counts: Fraction[] = [];
  let ways = 1n;
  for (let k = size; k >= 0; k--) {
    counts.unshift(lowest(ways * (tops[k] ?? 0n), bottom, step));
    for (let at = 0; at < k; at++) tops[at] = (tops[at] ?? 0n) - (tops[at + 1] ?? 0n);
    ways = (ways * BigInt(k)) / BigInt(size - k + 1);
  }
  return counts;
}

interface Moments {
  /** E[q^m] times the bottom, m = 0..n. */
  readonly tops: bigint[];
  readonly bottom: bigint;
  /** Holds every prime of the bottom. */
  readonly step: bigint;
}

/** Parts are independent, so the moments of their product are the products of their moments. */
function momentsOf(parts: readonly (readonly StateChance[])[], size: number): Moments {
  const tops = Array.from({ length: size + 1 }, () => 1n);
  let [bottom, step] = [1n, 1n];
  for (const part of parts) {
    const [ps, qs] = [commonBottom(part.map(([p]) => p)), commonBottom(part.map(([, q]) => q))];
    const powers = part.map(([p, q]) => ({ sum: (p.top * ps) / p.bottom, by: (q.top * qs) / q.bottom }));
    for (let m = 0; m <= size; m++) {
      const moment = powers.reduce((sum, one) => sum + one.sum, 0n);
      tops[m] = (tops[m] ?? 0n) * moment * qs ** BigInt(size - m);
      for (const one of powers) one.sum *= one.by;
    }
    bottom *= ps * qs ** BigInt(size);
    step *= ps * qs;
  }
  return { tops, bottom, step };
}

/** A fraction over a long bottom in lowest terms; its few primes are taken out one by one, which is faster than one long division after another. */
function lowest(top: bigint, bottom: bigint, step: bigint): Fraction {
  if (top === 0n) return ZERO;
  let [over, under] = [top, bottom];
  for (;;) {
    const common = gcd(gcd(step, over % step), under % step);
    if (common === 1n) return { top: over, bottom: under };
    over /= common;
    under /= common;
  }
}
