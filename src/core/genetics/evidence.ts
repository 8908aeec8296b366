import { add, divide, type Fraction, isZero, multiply, ONE, power, ZERO } from './fraction.ts';
import { type Cross, locusOrder, type Sex, type Strands } from './model.ts';
import type { Part } from './outcomes.ts';
import { chanceInPart } from './product.ts';
import { overParts, type StrandsByLocus } from './strandPairs.ts';
import { statesOf } from './zygotes.ts';

/** Hatchlings of one look: sex (null if nobody looked), a label per locus in chromosome order, how many. */
export interface Observed {
  readonly sex: Sex | null;
  readonly labels: readonly string[];
  readonly count: number;
}

/** A parent's possible state and its chance after the hatchlings were seen. */
export interface StateChance {
  readonly p: Fraction;
  readonly strands: ReadonlyMap<string, Strands>;
}

/** What hatchlings say of both parents. `joint` is null when no pair of states can give them. */
export interface Evidence {
  /** The probability of what was seen, as a product over hatchlings without the multinomial coefficient. */
  readonly evidence: Fraction;
  readonly joint: readonly { readonly sire: number; readonly dam: number; readonly p: Fraction }[] | null;
  readonly sire: readonly StateChance[];
  readonly dam: readonly StateChance[];
}

/**
 * The chances of both parents' states after hatchlings were seen: prior times the product over hatchlings, jointly,
 * because eggs are independent only given the parents. Slugs are no observation and stay out of `observed`.
 */
export function evidenceOf(cross: Cross, observed: readonly Observed[]): Evidence {
  const [sires, dams] = [statesOf(cross.sire), statesOf(cross.dam)];
  const likelihood = likelihoods(cross, observed);
  const raw = sires.flatMap((sire, i) =>
    dams.map((dam, j) => {
      const prior = multiply(sire.p, dam.p);
      return { sire: i, dam: j, p: isZero(prior) ? ZERO : multiply(prior, likelihood(sire.strands, dam.strands)) };
    }),
  );
  const evidence = raw.reduce((sum, one) => add(sum, one.p), ZERO);
  const joint = isZero(evidence) ? null : raw.map((one) => ({ ...one, p: divide(one.p, evidence) }));
  const side = (role: 'sire' | 'dam', states: typeof sires): readonly StateChance[] => {
    if (joint === null) return states.map(({ strands, p }) => ({ strands, p }));
    const sums = states.map(() => ZERO);
    for (const one of joint) sums[one[role]] = add(sums[one[role]] ?? ZERO, one.p);
    return states.map(({ strands }, at) => ({ strands, p: sums[at] ?? ZERO }));
  };
  return { evidence, joint, sire: side('sire', sires), dam: side('dam', dams) };
}

/** P(hatchlings | both parents' strands), each independent part worked out once for each pair of strands in it. */
export function likelihoods(
  cross: Cross,
  observed: readonly Observed[],
): (sire: StrandsByLocus, dam: StrandsByLocus) => Fraction {
  const wanted = observed.map((one) => ({ ...one, byLocus: labelsByLocus(cross, one) }));
  return overParts(cross, (part) => partChance(part, wanted));
}

/** The labels of some hatchlings, by locus. */
export function labelsByLocus(cross: Cross, { labels }: Observed): ReadonlyMap<string, string> {
  return new Map(locusOrder(cross).map((locus, at) => [locus, labels[at] ?? ''] as const));
}

function partChance(
  part: Part,
  wanted: readonly (Observed & { readonly byLocus: ReadonlyMap<string, string> })[],
): Fraction {
  return wanted.reduce(
    (all, one) => (isZero(all) ? all : multiply(all, power(chanceInPart(part, one.byLocus, one.sex), one.count))),
    ONE,
  );
}
