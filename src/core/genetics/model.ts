import type { Fraction } from './fraction.ts';

/** The name that stands for the sex-determining point in a sex chromosome's loci. */
export const SEX_POINT = 'SD';

/** Which parent carries two kinds of sex chromosome: XY the sire, ZW the dam. */
export type SexSystem = 'XY' | 'ZW';
export type Sex = 'M' | 'F';
export type ParentRole = 'sire' | 'dam';

/** A chromosome: its loci in map order and the recombination fraction between neighbours, per parent. */
export interface Chromosome {
  readonly id: string;
  readonly sex: boolean;
  readonly loci: readonly string[];
  readonly r: Readonly<Record<ParentRole, readonly Fraction[]>>;
}

/** A locus: its alleles in order and what each genotype looks like. */
export interface Locus {
  readonly name: string;
  readonly alleles: readonly string[];
  readonly phen: ReadonlyMap<string, string>;
}

/** Two strands of one locus, as allele names. */
export type Strands = readonly [string, string];

/** Some loci of a parent whose uncertain states belong together. */
export interface Block {
  readonly loci: readonly string[];
  readonly states: readonly { readonly p: Fraction; readonly pairs: readonly Strands[] }[];
}

/** All conditions must hold: the genotypes at which such an egg dies. */
export type LethalRule = ReadonlyMap<string, ReadonlySet<string>>;

/** When all these phenotypes show, those loci cannot be seen. */
export interface MaskRule {
  readonly when: ReadonlyMap<string, ReadonlySet<string>>;
  readonly hide: readonly string[];
}

/** A cross that has passed every check. */
export interface Cross {
  readonly system: SexSystem;
  readonly chromosomes: readonly Chromosome[];
  readonly loci: ReadonlyMap<string, Locus>;
  readonly sire: readonly Block[];
  readonly dam: readonly Block[];
  readonly lethal: readonly LethalRule[];
  readonly mask: readonly MaskRule[];
}

/** The parent with two kinds of sex chromosome. */
export function heterogametic(system: SexSystem): ParentRole {
  return system === 'XY' ? 'sire' : 'dam';
}

/** The loci in the order of the chromosomes, without the sex-determining point. */
export function locusOrder(cross: Cross): readonly string[] {
  return cross.chromosomes.flatMap((chromosome) => chromosome.loci.filter((locus) => locus !== SEX_POINT));
}
