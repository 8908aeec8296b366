import { gametesOf, readGamete } from './gametes.ts';
import type { Cross, Sex, Strands } from './model.ts';
import { type JudgedGroup, partOfStrands, type StrandsByLocus } from './strandPairs.ts';
import { lociOf } from './zygotes.ts';

/** The sex of young that have no father: two X in XY species; two Z in ZW species, as two W are not known to live (memory). */
export function fatherlessSex(cross: Cross): Sex {
  return cross.system === 'XY' ? 'F' : 'M';
}

/**
 * The looks at one judged group that young of the dam alone can have, each as labels in the group's locus order: every
 * gamete of hers doubled, less those that die of it.
 */
export function doubledLooks(cross: Cross, group: JudgedGroup, dam: StrandsByLocus): readonly (readonly string[])[] {
  const chromosomes = group.flat();
  const loci = lociOf(chromosomes);
  const gametes = [...gametesOf(chromosomes, 'dam', cross.system, (locus) => dam.get(locus) ?? ['', '']).of.keys()];
  const found = new Map<string, readonly string[]>();
  for (const { alleles, strand } of gametes.map(readGamete)) {
    if (strand === 1) continue;
    const twice = new Map(loci.map((locus, at): [string, Strands] => [locus, [alleles[at] ?? '', alleles[at] ?? '']]));
    for (const { sex, labels } of partOfStrands(cross, group, twice, twice).phenotypes) {
      if (sex === null || sex === fatherlessSex(cross)) found.set(labels.join('\u0000'), labels);
    }
  }
  return [...found.values()];
}
