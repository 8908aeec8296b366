import * as z from 'zod/mini';
import {
  addFractions,
  type Carrier,
  carrierChances,
  compareFractions,
  genotypeKeys,
  ONE,
  sayFraction,
  ZERO,
} from '../../../core/index.ts';
import { type Kind, readCase, wrongCase } from '../kind.ts';
import { attempt, fractionAt, named, take, written } from './fractions.ts';

const HELP = `carriers: genotype chances at one locus over a pedigree, loops allowed
  {"alleles","animals": [{"id","sire"|null,"dam"|null,"prior"?: {key: p},"seen"?: [keys]}],"founderFreq": {allele: p}}
    -> {"evidence","post": {id: {key: p}}}`;

const carriersCase = z.object({
  alleles: z.array(named).check(z.minLength(1, 'at least one allele is wanted')),
  animals: z.array(
    z.object({
      id: named,
      sire: z.nullish(named),
      dam: z.nullish(named),
      prior: z.nullish(z.record(named, written)),
      seen: z.nullish(z.array(named)),
    }),
  ),
  founderFreq: z.record(named, written),
});
type CarriersCase = z.infer<typeof carriersCase>;

/** Who carries what, over a pedigree. */
export const carriersKind: Kind = {
  name: 'carriers',
  help: HELP,
  answer(given) {
    const asked = readCase(carriersCase, given);
    return asked.ok ? attempt(() => answerOf(asked.value)) : asked;
  },
};

function answerOf(data: CarriersCase): unknown {
  const keys = new Set(genotypeKeys(data.alleles));
  const freq = new Map(
    Object.entries(data.founderFreq).map(([allele, p]) => [allele, fractionAt(p, `founderFreq.${allele}`)]),
  );
  const stranger = [...freq.keys()].find((allele) => !data.alleles.includes(allele));
  if (stranger !== undefined) take(wrongCase(`${stranger} is not among the alleles`, 'founderFreq'));
  if (compareFractions([...freq.values()].reduce(addFractions, ZERO), ONE) !== 0)
    take(wrongCase('the frequencies must add up to 1', 'founderFreq'));
  const animals = data.animals.map((one, at) => carrierOf(one, keys, `animals.${at}`));
  const { evidence, post } = take(carrierChances(data.alleles, animals, freq));
  const said = [...post].map(([id, chances]) => [
    id,
    Object.fromEntries([...chances].map(([key, p]) => [key, sayFraction(p)])),
  ]);
  return { evidence: sayFraction(evidence), post: evidence.top === 0n ? null : Object.fromEntries(said) };
}

function carrierOf(
  { id, sire, dam, prior, seen }: CarriersCase['animals'][number],
  keys: ReadonlySet<string>,
  path: string,
): Carrier {
  const stranger = [...Object.keys(prior ?? {}), ...(seen ?? [])].find((key) => !keys.has(key));
  if (stranger !== undefined) take(wrongCase(`${stranger} is no genotype of these alleles, as ${[...keys][0]}`, path));
  return {
    id,
    sire: sire ?? null,
    dam: dam ?? null,
    prior: prior
      ? new Map(Object.entries(prior).map(([key, p]) => [key, fractionAt(p, `${path}.prior.${key}`)]))
      : null,
    seen: seen ? new Set(seen) : null,
  };
}
