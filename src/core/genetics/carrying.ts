import type { Carrying, LocusRow, LocusTable } from './loci/index.ts';
import type { LethalRule } from './model.ts';

/** Whether two copies hold at least the alleles asked for, each as often as it is asked for. */
export function holds(copies: readonly string[], wanted: Carrying): boolean {
  return wanted.every((symbol) => count(copies, symbol) >= count(wanted, symbol));
}

/** The alleles asked for, sorted by the locus they belong to. */
export function byLocus(wanted: Carrying, loci: LocusTable): ReadonlyMap<LocusRow, Carrying> {
  const found = new Map<LocusRow, string[]>();
  for (const symbol of wanted) {
    const row = loci.rows.find((one) => one.alleles.some((allele) => allele.symbol === symbol));
    if (row !== undefined) found.set(row, [...(found.get(row) ?? []), symbol]);
  }
  return found;
}

/** The genotype keys of each locus that hold what is asked for; null if a cross has not all of these loci. */
export function keysHolding(
  wanted: Carrying,
  loci: LocusTable,
  keysOf: ReadonlyMap<string, Iterable<string>>,
): LethalRule | null {
  const rule = new Map<string, ReadonlySet<string>>();
  for (const [row, symbols] of byLocus(wanted, loci)) {
    const keys = keysOf.get(row.locus);
    if (keys === undefined) return null;
    rule.set(row.locus, new Set([...keys].filter((key) => holds(key.split(/[/|]/), symbols))));
  }
  return rule;
}

function count(all: readonly string[], one: string): number {
  return all.filter((other) => other === one).length;
}
