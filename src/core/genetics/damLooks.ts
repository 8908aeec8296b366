import { doubledLooks, fatherlessSex } from './doubled.ts';
import { labelsByLocus, type Observed } from './evidence.ts';
import { add, type Fraction, fraction, isZero, multiply, power, ZERO } from './fraction.ts';
import { type Cross, locusOrder } from './model.ts';
import { HIDDEN, outcomesOf, type Part, type PartPhenotype } from './outcomes.ts';
import { ABSENT } from './phenotype.ts';
import { type JudgedGroup, judgedGroups, overParts, type StrandsByLocus } from './strandPairs.ts';
import { lociOf, statesOf } from './zygotes.ts';

/** The looks that young of the dam alone can have, kept for each group and each of her states. */
export class DamLooks {
  readonly #cross: Cross;
  readonly #groups: readonly JudgedGroup[];
  readonly #states: readonly { readonly p: Fraction; readonly strands: StrandsByLocus }[];
  readonly #kept = new Map<string, ReadonlySet<string>>();

  constructor(cross: Cross) {
    this.#cross = cross;
    this.#groups = judgedGroups(cross);
    this.#states = statesOf(cross.dam).filter(({ p }) => !isZero(p));
  }

  /** Whether she has or may have two kinds of copy at a locus; a W is no copy. */
  mayBeMixed(locus: string): boolean {
    return this.#states.some(({ strands }) => {
      const [a, b] = strands.get(locus) ?? ['', ''];
      return a !== b && a !== ABSENT && b !== ABSENT;
    });
  }

  /** Whether she can be in a state in which each of these looks can come from her alone. */
  fit(rows: readonly Observed[]): boolean {
    const wanted = rows.map((row) => labelsByLocus(this.#cross, row));
    return this.#states.some(({ strands }) =>
      this.#groups.every((group) => {
        const own = this.#looks(group, strands);
        const loci = lociOf(group.flat());
        return wanted.every((labels) => own.has(loci.map((locus) => labels.get(locus) ?? '').join('\u0000')));
      }),
    );
  }

  /** The chance that all of so many sired young would look as hers alone can: given both parents, then over their states. */
  chanceBySire(live: number): Fraction {
    const given = overParts(this.#cross, (part, group, dam) => power(this.#share(part, group, dam), live));
    const sires = statesOf(this.#cross.sire);
    return this.#states.reduce(
      (sum, dam) =>
        sires.reduce(
          (sofar, sire) => add(sofar, multiply(multiply(sire.p, dam.p), given(sire.strands, dam.strands))),
          sum,
        ),
      ZERO,
    );
  }

  /** Loci at which a sired young can look as no young of the dam alone does. */
  telling(): readonly string[] {
    const hers = new Map(locusOrder(this.#cross).map((locus) => [locus, new Set<string>()]));
    for (const { strands } of this.#states) {
      for (const group of this.#groups) {
        const loci = lociOf(group.flat());
        for (const look of this.#looks(group, strands))
          for (const [at, label] of look.split('\u0000').entries()) hers.get(loci[at] ?? '')?.add(label);
      }
    }
    const parts = outcomesOf(this.#cross).parts;
    const sired = (locus: string): readonly string[] =>
      parts.flatMap((part) =>
        part.loci.includes(locus)
          ? part.phenotypes.filter((one) => this.#isSex(one)).map((one) => one.labels[part.loci.indexOf(locus)] ?? '')
          : [],
      );
    return [...hers].flatMap(([locus, own]) =>
      sired(locus).some((label) => label !== HIDDEN && !own.has(label)) ? [locus] : [],
    );
  }

  #isSex(one: PartPhenotype): boolean {
    return one.sex === null || one.sex === fatherlessSex(this.#cross);
  }

  #share(part: Part, group: JudgedGroup, dam: StrandsByLocus): Fraction {
    const own = this.#looks(group, dam);
    if (part.total === 0n) return ZERO;
    const fitting = part.phenotypes.filter((one) => this.#isSex(one) && own.has(one.labels.join('\u0000')));
    return fraction(
      fitting.reduce((sum, one) => sum + one.weight, 0n),
      part.total,
    );
  }

  #looks(group: JudgedGroup, dam: StrandsByLocus): ReadonlySet<string> {
    const key = lociOf(group.flat())
      .map((locus) => `${locus}\u0001${dam.get(locus)}`)
      .join('\u0002');
    const kept = this.#kept.get(key);
    if (kept !== undefined) return kept;
    const looks = new Set(doubledLooks(this.#cross, group, dam).map((labels) => labels.join('\u0000')));
    this.#kept.set(key, looks);
    return looks;
  }
}
