import { keysHolding } from './carrying.ts';
import type { Group } from './chromosomes.ts';
import type { LocusTable } from './loci/index.ts';
import type { LethalRule, Locus, MaskRule, SexSystem } from './model.ts';
import { symbolIn, type Traits } from './notation/index.ts';
import { ABSENT, looksOf, WILD } from './phenotype.ts';

/** The alleles that any of these animals names, by locus. */
export function carriedAlleles(all: readonly Traits[], loci: LocusTable): ReadonlyMap<string, ReadonlySet<string>> {
  const found = new Map<string, Set<string>>();
  for (const piece of all.flatMap((traits) => traits.pieces)) {
    piece.loci.forEach((locus, at) => {
      const own = found.get(locus) ?? new Set();
      for (const copy of piece.copies) {
        const symbol = copy[at] === undefined ? null : symbolIn(copy[at]);
        if (symbol !== null) own.add(symbol);
      }
      if (loci.rows.some((row) => row.locus === locus)) found.set(locus, own);
    });
  }
  return found;
}

/** The loci of a cross: the alleles carried in table order, then wild type, and what each genotype looks like. */
export function locusMap(
  groups: readonly Group[],
  carried: ReadonlyMap<string, ReadonlySet<string>>,
  system: SexSystem,
): ReadonlyMap<string, Locus> {
  const rows = groups.flatMap((group) => group.rows);
  return new Map(
    rows.map((row) => {
      const own = row.alleles.map((one) => one.symbol).filter((symbol) => carried.get(row.locus)?.has(symbol));
      const alleles = [...own, WILD, ...(row.sexLink !== null && system === 'ZW' ? [ABSENT] : [])];
      return [row.locus, { name: row.locus, alleles, phen: looksOf(row, alleles) }] as const;
    }),
  );
}

/** What the table says of lethal and hidden genotypes, as far as the loci are in the cross. */
export function rulesOf(
  loci: LocusTable,
  inCross: ReadonlyMap<string, Locus>,
): { readonly lethal: readonly LethalRule[]; readonly mask: readonly MaskRule[] } {
  const keys = new Map([...inCross].map(([name, locus]) => [name, [...locus.phen.keys()]] as const));
  const possible = (rule: LethalRule | null): rule is LethalRule =>
    rule !== null && [...rule.values()].every((set) => set.size > 0);
  const lethal = loci.rows
    .flatMap((row) => row.lethal.map((one) => keysHolding(one.carrying, loci, keys)))
    .filter(possible);
  const mask = loci.rows.flatMap((row) =>
    row.masks.flatMap((one) => {
      const rule = keysHolding(one.carrying, loci, keys);
      const hide = one.hides.filter((locus) => inCross.has(locus));
      if (!possible(rule) || hide.length === 0) return [];
      const when = new Map(
        [...rule].map(
          ([locus, own]) => [locus, new Set([...own].map((key) => inCross.get(locus)?.phen.get(key) ?? ''))] as const,
        ),
      );
      return [{ when, hide }];
    }),
  );
  return { lethal, mask };
}
