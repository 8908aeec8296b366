import {
  addFractions,
  type Block,
  type Cross,
  type Fraction,
  HALF,
  multiplyFractions,
  ONE,
} from '../../src/core/index.ts';

interface NaiveGamete {
  readonly alleles: readonly string[];
  readonly p: Fraction;
}

/**
 * What a cross gives, worked out as on squared paper: every gamete of either parent is multiplied out, every pair of
 * them is one box (4^n for n het loci), and boxes of like look are added. For unlinked loci of parents that are known.
 */
export function naiveLooks(cross: Cross): ReadonlyMap<string, Fraction> {
  const loci = [...cross.loci.values()];
  const [sire, dam] = [naiveGametes(cross.sire), naiveGametes(cross.dam)];
  const found = new Map<string, Fraction>();
  for (const one of sire) {
    for (const other of dam) {
      const look = loci
        .map(({ alleles, phen }, at) => {
          const pair = [one.alleles[at] ?? '', other.alleles[at] ?? ''];
          return phen.get(pair.sort((a, b) => alleles.indexOf(a) - alleles.indexOf(b)).join('/')) ?? '';
        })
        .join(', ');
      const p = multiplyFractions(one.p, other.p);
      const known = found.get(look);
      found.set(look, known === undefined ? p : addFractions(known, p));
    }
  }
  return found;
}

function naiveGametes(blocks: readonly Block[]): readonly NaiveGamete[] {
  let all: readonly NaiveGamete[] = [{ alleles: [], p: ONE }];
  for (const { states } of blocks) {
    const strands = states[0]?.pairs[0] ?? [];
    all = all.flatMap(({ alleles, p }) =>
      strands.map((allele) => ({ alleles: [...alleles, allele], p: multiplyFractions(p, HALF) })),
    );
  }
  return all;
}
