import { type Fraction, fraction, multiply, ONE } from './fraction.ts';
import { groupsOf } from './groups.ts';
import type { Chromosome, Cross, LethalRule, MaskRule, Sex } from './model.ts';
import { joined, type Weights } from './weights.ts';
import { joinZygotes, lociOf, readZygote, type Zygote, zygotesOf } from './zygotes.ts';

/** What stands for a phenotype that another one hides. */
export const HIDDEN = '?';

/** A phenotype of one independent part: its weight, and the genotypes behind it. */
export interface PartPhenotype {
  readonly sex: Sex | null;
  readonly labels: readonly string[];
  readonly weight: bigint;
  readonly within: readonly ReadonlyMap<string, bigint>[];
}

/** One independent part of a cross, after the eggs that die there are taken out. */
export interface Part {
  readonly loci: readonly string[];
  /** The share of eggs that live, as far as this part decides. */
  readonly viable: Fraction;
  /** The weight of all that live. */
  readonly total: bigint;
  readonly genotypes: readonly (readonly [Zygote, bigint])[];
  /** Most probable first. */
  readonly phenotypes: readonly PartPhenotype[];
}

/** A cross worked out part by part; nothing is multiplied out until somebody asks. */
export interface Outcomes {
  readonly cross: Cross;
  readonly parts: readonly Part[];
  readonly viable: Fraction;
}

/** Works a cross out. The cost is the sum over its parts, not their product. */
export function outcomesOf(cross: Cross): Outcomes {
  const parts = groupsOf(cross).judged.map((group) => partOf(cross, group));
  return { cross, parts, viable: parts.reduce((all, part) => multiply(all, part.viable), ONE) };
}

/** One judged group: its eggs, those that live, and what they look like. */
export function partOf(cross: Cross, group: readonly (readonly Chromosome[])[]): Part {
  const loci = group.flatMap(lociOf);
  const [first = NO_EGGS, ...rest] = group.map((chromosomes) => zygotesOf(cross, chromosomes));
  const eggs = rest.reduce((all, one) => joined(all, one, joinZygotes), first);
  const lethal = cross.lethal.filter((rule) => [...rule.keys()].every((locus) => loci.includes(locus)));
  const living = [...eggs.of]
    .map(([key, weight]) => [readZygote(key), weight] as const)
    .filter(([egg]) => !lethal.some((rule) => dies(rule, loci, egg)));
  const total = living.reduce((sum, [, weight]) => sum + weight, 0n);
  return {
    loci,
    viable: fraction(total, eggs.total),
    total,
    genotypes: living,
    phenotypes: phenotypesOf(cross, loci, living),
  };
}

const NO_EGGS: Weights<string> = { total: 1n, of: new Map([['\u0001', 1n]]) };

function dies(rule: LethalRule, loci: readonly string[], egg: Zygote): boolean {
  return [...rule].every(([locus, keys]) => keys.has(egg.keys[loci.indexOf(locus)] ?? ''));
}

function phenotypesOf(
  cross: Cross,
  loci: readonly string[],
  living: readonly (readonly [Zygote, bigint])[],
): readonly PartPhenotype[] {
  const masks = cross.mask.filter((rule) => rule.hide.some((locus) => loci.includes(locus)));
  const found = new Map<
    string,
    { sex: Sex | null; labels: readonly string[]; weight: bigint; within: Map<string, bigint>[] }
  >();
  for (const [egg, weight] of living) {
    const labels = masked(
      masks,
      loci,
      loci.map((locus, at) => cross.loci.get(locus)?.phen.get(egg.keys[at] ?? '') ?? ''),
    );
    const key = `${egg.sex ?? ''}\u0001${labels.join('\u0000')}`;
    const same = found.get(key) ?? {
      sex: egg.sex,
      labels,
      weight: 0n,
      within: loci.map(() => new Map<string, bigint>()),
    };
    same.weight += weight;
    for (const [at, genotype] of egg.keys.entries()) {
      same.within[at]?.set(genotype, (same.within[at]?.get(genotype) ?? 0n) + weight);
    }
    found.set(key, same);
  }
  return [...found.values()].sort((a, b) => (a.weight < b.weight ? 1 : a.weight > b.weight ? -1 : 0));
}

function masked(rules: readonly MaskRule[], loci: readonly string[], labels: readonly string[]): readonly string[] {
  const hidden = new Set<string>();
  for (const rule of rules) {
    const shows = [...rule.when].every(([locus, wanted]) => wanted.has(labels[loci.indexOf(locus)] ?? ''));
    if (shows) for (const locus of rule.hide) hidden.add(locus);
  }
  return hidden.size === 0 ? labels : labels.map((label, at) => (hidden.has(loci[at] ?? '') ? HIDDEN : label));
}
