import { type Fraction, isZero, multiply, ONE } from './fraction.ts';
import { groupsOf } from './groups.ts';
import type { Block, Chromosome, Cross, ParentRole, Strands } from './model.ts';
import { type Part, partOf } from './outcomes.ts';
import { statesOf } from './zygotes.ts';

/** The strands of one animal at every locus of a cross. */
export type StrandsByLocus = ReadonlyMap<string, Strands>;

/** More pairs of states than this take too long to wait for. */
export const MOST_STATE_PAIRS = 20_000;

/** How many pairs of states the parents of a cross can be in. */
export function pairsOfStates(cross: Cross): number {
  return [...cross.sire, ...cross.dam].reduce((product, block) => product * block.states.length, 1);
}

/** The states that a parent can be in, without their chances. */
export function possibleStates(cross: Cross, role: ParentRole): readonly StrandsByLocus[] {
  return statesOf(cross[role]).flatMap(({ p, strands }) => (isZero(p) ? [] : [strands]));
}

/** Chromosomes that lie together, as {@link groupsOf} judges them. */
export type JudgedGroup = readonly (readonly Chromosome[])[];

/**
 * A figure of two parents of known strands that is a product over the independent parts of their cross; each part is
 * worked out once for each pair of strands in it.
 */
export function overParts(
  cross: Cross,
  figureOf: (part: Part, group: JudgedGroup, dam: StrandsByLocus) => Fraction,
): (sire: StrandsByLocus, dam: StrandsByLocus) => Fraction {
  const groups = judgedGroups(cross);
  const memo = new Map<string, Fraction>();
  return (sire, dam) => {
    let product = ONE;
    for (const [at, group] of groups.entries()) {
      if (isZero(product)) return product;
      const loci = group.flat().flatMap((chromosome) => chromosome.loci);
      const key = `${at}\u0002${loci.map((locus) => `${sire.get(locus)}\u0001${dam.get(locus)}`).join('\u0002')}`;
      const value = memo.get(key) ?? figureOf(partOfStrands(cross, group, sire, dam), group, dam);
      memo.set(key, value);
      product = multiply(product, value);
    }
    return product;
  };
}

/** The groups of a cross once both parents' strands are known: fewer ties than with their uncertainty. */
export function judgedGroups(cross: Cross): readonly JudgedGroup[] {
  return groupsOf({ ...cross, sire: certain(cross.sire), dam: certain(cross.dam) }).judged;
}

/** One judged group of a cross whose parents have these strands. */
export function partOfStrands(cross: Cross, group: JudgedGroup, sire: StrandsByLocus, dam: StrandsByLocus): Part {
  return partOf({ ...cross, sire: fixed(sire), dam: fixed(dam) }, group);
}

function fixed(strands: StrandsByLocus): readonly Block[] {
  return [{ loci: [...strands.keys()], states: [{ p: ONE, pairs: [...strands.values()] }] }];
}

function certain(blocks: readonly Block[]): readonly Block[] {
  return blocks.map((block) => ({ ...block, states: block.states.slice(0, 1) }));
}
