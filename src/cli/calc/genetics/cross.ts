import * as z from 'zod/mini';
import {
  addFractions,
  allGenotypes,
  type Block,
  type Chromosome,
  type Cross,
  compareFractions,
  countsOf,
  type Fraction,
  type Locus,
  locusOrder,
  ONE,
  type Outcomes,
  outcomesOf,
  type Phenotype,
  type Result,
  refuse,
  SEX_POINT,
  sayFraction,
  topPhenotypes,
  ZERO,
} from '../../../core/index.ts';
import { type Kind, readCase, wrongCase } from '../kind.ts';
import { attempt, fractionAt, named, take, written } from './fractions.ts';

const HELP = `cross: what a pairing can give, in exact fractions
  {"sexSystem","chromosomes","loci","sire","dam","lethal"?,"mask"?,"limit"?}
    -> {"loci","viable","genotypes","phenotypes","genotypeCount","phenotypeCount"}; with "limit" no genotypes`;

/** Without a limit no more than so many rows are written out. */
const MOST_ROWS = 3_000_000n;

const strands = z.tuple([named, named], 'two alleles are wanted');
const parent = z.object({
  blocks: z.array(z.object({ loci: z.array(named), states: z.array(z.tuple([written, z.array(strands)])) })),
});
const byLocus = z.record(named, z.array(named));
export const crossCase = z.object({
  sexSystem: z.enum(['XY', 'ZW'], '"XY" or "ZW" is wanted'),
  chromosomes: z.array(
    z.object({
      id: named,
      sex: z.optional(z.boolean()),
      loci: z.array(named),
      r: z.array(z.union([written, z.object({ sire: written, dam: written })])),
    }),
  ),
  loci: z.record(named, z.object({ alleles: z.array(named), phen: z.record(named, named) })),
  sire: parent,
  dam: parent,
  lethal: z.nullish(z.array(byLocus)),
  mask: z.nullish(z.array(z.object({ when: byLocus, hide: z.array(named) }))),
  limit: z.nullish(z.int('a whole number is wanted').check(z.gte(1, 'a number from 1 is wanted'))),
});
export type CrossCase = z.infer<typeof crossCase>;

/** What a pairing can give. */
export const crossKind: Kind = {
  name: 'cross',
  help: HELP,
  answer(given) {
    const asked = readCase(crossCase, given);
    if (!asked.ok) return asked;
    const cross = readCross(asked.value);
    if (!cross.ok) return cross;
    return answerOf(outcomesOf(cross.value), asked.value.limit ?? null);
  },
};

function answerOf(outcomes: Outcomes, limit: number | null): Result<unknown> {
  const unlabelled = missingLabel(outcomes);
  if (unlabelled !== null) return unlabelled;
  const { genotypes, phenotypes } = countsOf(outcomes);
  if (limit === null && genotypes > MOST_ROWS) return refuse('cross-too-large', { rows: String(genotypes) }, 'limit');
  const head = { loci: locusOrder(outcomes.cross), viable: sayFraction(outcomes.viable) };
  const counts = { genotypeCount: Number(genotypes), phenotypeCount: Number(phenotypes) };
  const said = topPhenotypes(outcomes, limit ?? undefined).map(sayPhenotype);
  if (limit !== null) return { ok: true, value: { ...head, phenotypes: said, ...counts } };
  const all = allGenotypes(outcomes).map(({ sex, keys, p }) => [sex, keys, sayFraction(p)]);
  return { ok: true, value: { ...head, genotypes: all, phenotypes: said, ...counts } };
}

function sayPhenotype({ sex, labels, p, within }: Phenotype): unknown {
  const genotypes = [...within].map(([locus, keys]) => [
    locus,
    Object.fromEntries([...keys].map(([key, share]) => [key, sayFraction(share)])),
  ]);
  return { sex, ph: labels, p: sayFraction(p), within: Object.fromEntries(genotypes) };
}

/** A genotype that can come out and has no phenotype in the case. */
function missingLabel(outcomes: Outcomes): ReturnType<typeof wrongCase> | null {
  for (const part of outcomes.parts) {
    for (const [at, locus] of part.loci.entries()) {
      const phen = outcomes.cross.loci.get(locus)?.phen;
      const found = part.genotypes.find(([egg]) => !phen?.has(egg.keys[at] ?? ''));
      if (found !== undefined) return wrongCase(`${locus} says nothing of ${found[0].keys[at]}`, `loci.${locus}.phen`);
    }
  }
  return null;
}

/** Reads a cross and checks that it holds together. Errors: `case-malformed`, `not-a-number`, each at its path. */
export function readCross(data: CrossCase): Result<Cross> {
  return attempt(() => {
    const loci = new Map(
      Object.entries(data.loci).map(([name, { alleles, phen }]): [string, Locus] => [
        name,
        { name, alleles, phen: new Map(Object.entries(phen)) },
      ]),
    );
    const chromosomes = data.chromosomes.map((one, at) => chromosomeOf(one, `chromosomes.${at}`));
    const placed = chromosomes.flatMap((one) => one.loci).filter((locus) => locus !== SEX_POINT);
    for (const locus of placed) if (!loci.has(locus)) take(wrongCase(`nothing is said of locus ${locus}`, 'loci'));
    if (new Set(placed).size < placed.length) take(wrongCase('a locus stands on the chromosomes twice', 'chromosomes'));
    const side = (role: 'sire' | 'dam'): readonly Block[] => blocksOf(data[role].blocks, placed, loci, role);
    const known = (named: readonly string[], path: string): void => {
      const stranger = named.find((locus) => !placed.includes(locus));
      if (stranger !== undefined) take(wrongCase(`there is no locus ${stranger}`, path));
    };
    const sets = (rule: Readonly<Record<string, readonly string[]>>) =>
      new Map(Object.entries(rule).map(([locus, all]) => [locus, new Set(all)]));
    for (const [at, rule] of (data.lethal ?? []).entries()) known(Object.keys(rule), `lethal.${at}`);
    for (const [at, { when, hide }] of (data.mask ?? []).entries())
      known([...Object.keys(when), ...hide], `mask.${at}`);
    return {
      system: data.sexSystem,
      chromosomes,
      loci,
      sire: side('sire'),
      dam: side('dam'),
      lethal: (data.lethal ?? []).map(sets),
      mask: (data.mask ?? []).map(({ when, hide }) => ({ when: sets(when), hide })),
    };
  });
}

function chromosomeOf(data: CrossCase['chromosomes'][number], path: string): Chromosome {
  const { id, sex = false, loci } = data;
  if (data.r.length !== Math.max(loci.length - 1, 0))
    take(wrongCase('r wants one fraction between each two neighbours', `${path}.r`));
  const read = (role: 'sire' | 'dam') =>
    data.r.map((one, at) => recombination(typeof one === 'object' ? one[role] : one, `${path}.r.${at}`));
  if (!sex && loci.includes(SEX_POINT))
    take(wrongCase(`${SEX_POINT} stands on a chromosome that is not marked "sex"`, path));
  return { id, sex, loci, r: { sire: read('sire'), dam: read('dam') } };
}

function recombination(value: string | number, path: string): Fraction {
  const r = fractionAt(value, path);
  return r.top < 0n || compareFractions(r, ONE) > 0 ? take(wrongCase('a fraction from 0 to 1 is wanted', path)) : r;
}

type Written = CrossCase['sire']['blocks'];

function blocksOf(
  blocks: Written,
  placed: readonly string[],
  loci: ReadonlyMap<string, Locus>,
  role: string,
): readonly Block[] {
  const said = blocks.flatMap((block) => block.loci);
  const missing = placed.find((locus) => !said.includes(locus));
  if (missing !== undefined) take(wrongCase(`nothing is said of the ${role} at locus ${missing}`, `${role}.blocks`));
  if (new Set(said).size < said.length)
    take(wrongCase(`a locus of the ${role} stands in two blocks`, `${role}.blocks`));
  const stranger = said.find((locus) => !placed.includes(locus));
  if (stranger !== undefined) take(wrongCase(`locus ${stranger} stands on no chromosome`, `${role}.blocks`));
  return blocks.map((block, at) => blockOf(block, loci, `${role}.blocks.${at}`));
}

function blockOf({ loci: names, states }: Written[number], loci: ReadonlyMap<string, Locus>, path: string): Block {
  const read = states.map(([p, pairs], at) => {
    if (pairs.length !== names.length)
      take(wrongCase('a state wants two alleles for each locus of its block', `${path}.states.${at}`));
    pairs.forEach((pair, place) => {
      const alleles = loci.get(names[place] ?? '')?.alleles ?? [];
      const stranger = pair.find((allele) => !alleles.includes(allele));
      if (stranger !== undefined) take(wrongCase(`${names[place]} has no allele ${stranger}`, `${path}.states.${at}`));
    });
    return { p: fractionAt(p, `${path}.states.${at}.0`), pairs };
  });
  if (read.some(({ p }) => p.top < 0n)) take(wrongCase('a probability cannot be negative', `${path}.states`));
  if (compareFractions(read.map(({ p }) => p).reduce(addFractions, ZERO), ONE) !== 0)
    take(wrongCase('the states’ probabilities must add up to 1', `${path}.states`));
  return { loci: names, states: read };
}
