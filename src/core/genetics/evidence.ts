import { add, divide, type Fraction, isZero, multiply, ONE, power, ZERO } from './fraction.ts';
import { groupsOf } from './groups.ts';
import { type Block, type Cross, locusOrder, type Sex, type Strands } from './model.ts';
import { type Part, partOf } from './outcomes.ts';
import { chanceInPart } from './product.ts';
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
  const side = (role: 'sire' | 'dam', states: typeof sires): readonly StateChance[] =>
    states.map(({ strands, p }, at) => ({
      strands,
      p: joint === null ? p : sumOf(joint.filter((one) => one[role] === at).map((one) => one.p)),
    }));
  return { evidence, joint, sire: side('sire', sires), dam: side('dam', dams) };
}

type StrandsByLocus = ReadonlyMap<string, Strands>;

/** P(hatchlings | both parents' strands), each independent part worked out once for each pair of strands in it. */
function likelihoods(
  cross: Cross,
  observed: readonly Observed[],
): (sire: StrandsByLocus, dam: StrandsByLocus) => Fraction {
  const order = locusOrder(cross);
  const known = { ...cross, sire: certain(cross.sire), dam: certain(cross.dam) };
  const groups = groupsOf(known).judged;
  const wanted = observed.map((one) => ({
    ...one,
    byLocus: new Map(order.map((locus, at) => [locus, one.labels[at] ?? ''] as const)),
  }));
  const memo = new Map<string, Fraction>();
  return (sire, dam) => {
    let product = ONE;
    groups.forEach((group, at) => {
      const loci = group.flat().flatMap((chromosome) => chromosome.loci);
      const key = `${at}\u0002${loci.map((locus) => `${sire.get(locus)}\u0001${dam.get(locus)}`).join('\u0002')}`;
      const chance =
        memo.get(key) ?? partChance(partOf({ ...known, sire: fixed(sire), dam: fixed(dam) }, group), wanted);
      memo.set(key, chance);
      product = multiply(product, chance);
    });
    return product;
  };
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

function fixed(strands: StrandsByLocus): readonly Block[] {
  return [{ loci: [...strands.keys()], states: [{ p: ONE, pairs: [...strands.values()] }] }];
}

function certain(blocks: readonly Block[]): readonly Block[] {
  return blocks.map((block) => ({ ...block, states: block.states.slice(0, 1) }));
}

function sumOf(all: readonly Fraction[]): Fraction {
  return all.reduce(add, ZERO);
}
