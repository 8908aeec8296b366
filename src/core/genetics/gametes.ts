import { add, type Fraction, HALF, multiply, ONE, subtract } from './fraction.ts';
import { type Chromosome, heterogametic, type ParentRole, SEX_POINT, type SexSystem, type Strands } from './model.ts';
import { joined, type Weights, weightsOf } from './weights.ts';

/** One gamete: an allele at each locus of a list, in that list's order, and X or Y where the sex point lies on it. */
export interface Gamete {
  readonly alleles: readonly string[];
  /** Which strand carried the sex-determining point; null where there is none. */
  readonly strand: 0 | 1 | null;
}

/** What a parent of known strands gives on: every gamete with its probability, strand changes by recombination without interference. */
export function gametesOf(
  chromosomes: readonly Chromosome[],
  parent: ParentRole,
  system: SexSystem,
  strandsAt: (locus: string) => Strands,
): Weights<string> {
  const [first = NO_LOCI, ...rest] = chromosomes.map((chromosome) =>
    chromosomeGametes(chromosome, parent, heterogametic(system) === parent, strandsAt),
  );
  return rest.reduce((all, one) => joined(all, one, joinKeys), first);
}

/** A gamete's text form; alleles never hold these separators because the reader refuses them. */
export function gameteKey(gamete: Gamete): string {
  return `${gamete.strand ?? ''}\u0001${gamete.alleles.join('\u0000')}`;
}

/** The gamete of a text form. */
export function readGamete(key: string): Gamete {
  const [strand = '', alleles = ''] = key.split('\u0001');
  return {
    alleles: alleles === '' ? [] : alleles.split('\u0000'),
    strand: strand === '' ? null : strand === '0' ? 0 : 1,
  };
}

const EMPTY = gameteKey({ alleles: [], strand: null });
const NO_LOCI: Weights<string> = { total: 1n, of: new Map([[EMPTY, 1n]]) };

function joinKeys(a: string, b: string): string {
  const [one, other] = [readGamete(a), readGamete(b)];
  return gameteKey({ alleles: [...one.alleles, ...other.alleles], strand: one.strand ?? other.strand });
}

function chromosomeGametes(
  chromosome: Chromosome,
  parent: ParentRole,
  isHeterogametic: boolean,
  strandsAt: (locus: string) => Strands,
): Weights<string> {
  let paths: { strand: 0 | 1; p: Fraction; gamete: Gamete }[] = [];
  chromosome.loci.forEach((locus, at) => {
    const steps = at === 0 ? starts() : paths.flatMap((path) => onwards(path, chromosome.r[parent][at - 1] ?? HALF));
    paths = merged(
      steps.map((step) => ({ ...step, gamete: taking(step.gamete, locus, step.strand, isHeterogametic, strandsAt) })),
    );
  });
  const pairs = paths.map((path) => [gameteKey(path.gamete), path.p] as const);
  return weightsOf(pairs.length === 0 ? [[EMPTY, ONE]] : pairs);
}

type Path = { strand: 0 | 1; p: Fraction; gamete: Gamete };

function starts(): Path[] {
  const gamete: Gamete = { alleles: [], strand: null };
  return [
    { strand: 0, p: HALF, gamete },
    { strand: 1, p: HALF, gamete },
  ];
}

function onwards(path: Path, r: Fraction): Path[] {
  const across = path.strand === 0 ? 1 : 0;
  return [
    { ...path, p: multiply(path.p, subtract(ONE, r)) },
    { ...path, strand: across, p: multiply(path.p, r) },
  ];
}

/** Paths that end on the same strand with the same gamete are one: this keeps 2^loci down to what can be told apart. */
function merged(paths: readonly Path[]): Path[] {
  const byKey = new Map<string, Path>();
  for (const path of paths) {
    if (path.p.top === 0n) continue;
    const key = `${path.strand}${gameteKey(path.gamete)}`;
    const same = byKey.get(key);
    byKey.set(key, same ? { ...same, p: add(same.p, path.p) } : path);
  }
  return [...byKey.values()];
}

function taking(
  gamete: Gamete,
  locus: string,
  strand: 0 | 1,
  isHeterogametic: boolean,
  strandsAt: (locus: string) => Strands,
): Gamete {
  if (locus !== SEX_POINT) return { ...gamete, alleles: [...gamete.alleles, strandsAt(locus)[strand]] };
  return isHeterogametic ? { ...gamete, strand } : gamete;
}
