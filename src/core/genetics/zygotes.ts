import { multiply } from './fraction.ts';
import { type Gamete, gametesOf, readGamete } from './gametes.ts';
import {
  type Block,
  type Chromosome,
  type Cross,
  heterogametic,
  type Locus,
  type ParentRole,
  SEX_POINT,
  type Sex,
  type Strands,
} from './model.ts';
import { addWeight, shareOf, type Weights, weightsOf } from './weights.ts';

/** A fertilised egg at some loci: its sex, where one of them decides it, and a genotype key per locus. */
export interface Zygote {
  readonly sex: Sex | null;
  readonly keys: readonly string[];
}

/** The loci of some chromosomes in map order, without the sex point. */
export function lociOf(chromosomes: readonly Chromosome[]): readonly string[] {
  return chromosomes.flatMap((chromosome) => chromosome.loci.filter((locus) => locus !== SEX_POINT));
}

/** Every fertilised egg of one transmitted group, by text form, before anything dies. */
export function zygotesOf(cross: Cross, chromosomes: readonly Chromosome[]): Weights<string> {
  const sire = parentGametes(cross, 'sire', chromosomes);
  const dam = parentGametes(cross, 'dam', chromosomes);
  const sites = sitesOf(cross, chromosomes);
  const of = new Map<string, bigint>();
  const damGametes = [...dam.of].map(([key, weight]) => [readGamete(key), weight] as const);
  for (const [key, weight] of sire.of) {
    const fromSire = readGamete(key);
    for (const [fromDam, more] of damGametes)
      addWeight(of, zygoteKey(united(cross, sites, fromSire, fromDam)), weight * more);
  }
  return { total: sire.total * dam.total, of };
}

/** What a parent gives on at some chromosomes, over all its uncertain states. */
export function parentGametes(cross: Cross, parent: ParentRole, chromosomes: readonly Chromosome[]): Weights<string> {
  const loci = new Set(lociOf(chromosomes));
  const blocks = cross[parent].filter((block) => block.loci.some((locus) => loci.has(locus)));
  const given = statesOf(blocks).map(({ p, strands }) => ({
    p,
    gametes: gametesOf(chromosomes, parent, cross.system, (locus) => strands.get(locus) ?? ['', '']),
  }));
  const [only, another] = given;
  const isCertain = another === undefined && only?.p.top === only?.p.bottom;
  if (only !== undefined && isCertain) return only.gametes;
  const pairs = given.flatMap(({ p, gametes }) =>
    [...gametes.of].map(([key, weight]) => [key, multiply(p, shareOf(weight, gametes.total))] as const),
  );
  return weightsOf(pairs);
}

/** The product of the blocks' states, first block slowest. */
export function statesOf(
  blocks: readonly Block[],
): readonly { p: { top: bigint; bottom: bigint }; strands: ReadonlyMap<string, Strands> }[] {
  let all = [{ p: { top: 1n, bottom: 1n }, strands: new Map<string, Strands>() }];
  for (const block of blocks) {
    all = all.flatMap((sofar) =>
      block.states.map((state) => {
        const strands = new Map(sofar.strands);
        block.loci.forEach((locus, at) => {
          const pair = state.pairs[at];
          if (pair !== undefined) strands.set(locus, pair);
        });
        return { p: multiply(sofar.p, state.p), strands };
      }),
    );
  }
  return all;
}

/** A zygote's text form. */
export function zygoteKey(zygote: Zygote): string {
  return `${zygote.sex ?? ''}\u0001${zygote.keys.join('\u0000')}`;
}

/** The zygote of a text form. */
export function readZygote(key: string): Zygote {
  const [sex = '', keys = ''] = key.split('\u0001');
  return { sex: sex === 'M' || sex === 'F' ? sex : null, keys: keys === '' ? [] : keys.split('\u0000') };
}

/** Two zygotes at different loci as one. */
export function joinZygotes(a: string, b: string): string {
  const [one, other] = [readZygote(a), readZygote(b)];
  return zygoteKey({ sex: one.sex ?? other.sex, keys: [...one.keys, ...other.keys] });
}

interface Site {
  readonly locus: Locus;
  readonly onSexChromosome: boolean;
}

function sitesOf(cross: Cross, chromosomes: readonly Chromosome[]): readonly Site[] {
  return chromosomes.flatMap((chromosome) => {
    const sexed = chromosome.sex && chromosome.loci.includes(SEX_POINT);
    return chromosome.loci
      .map((name) => cross.loci.get(name))
      .filter((locus) => locus !== undefined)
      .map((locus) => ({ locus, onSexChromosome: sexed }));
  });
}

function united(cross: Cross, sites: readonly Site[], sire: Gamete, dam: Gamete): Zygote {
  const mixed = heterogametic(cross.system);
  const strand = (mixed === 'sire' ? sire : dam).strand;
  const keys = sites.map(({ locus, onSexChromosome }, at) => {
    const [fromSire, fromDam] = [sire.alleles[at] ?? '', dam.alleles[at] ?? ''];
    if (!onSexChromosome || strand !== 1) return genotypeKey(locus, fromSire, fromDam);
    return mixed === 'sire' ? `${fromDam}|${fromSire}` : `${fromSire}|${fromDam}`;
  });
  return { sex: sexOf(cross, strand), keys };
}

function sexOf(cross: Cross, strand: 0 | 1 | null): Sex | null {
  if (strand === null) return null;
  if (cross.system === 'XY') return strand === 0 ? 'F' : 'M';
  return strand === 0 ? 'M' : 'F';
}

/** `a/b` in the order of the locus' alleles. */
export function genotypeKey(locus: Locus, a: string, b: string): string {
  return locus.alleles.indexOf(a) <= locus.alleles.indexOf(b) ? `${a}/${b}` : `${b}/${a}`;
}
