import * as z from 'zod/mini';
import {
  exactKinship,
  type FounderFacts,
  inbreedingOf,
  ownShares,
  type Parentage,
  pedigreeArrays,
  pedigreeOrder,
  refuse,
  relationshipsWith,
  sayFraction,
  toNumber,
} from '../../../core/index.ts';
import { type Kind, readCase, wrongCase } from '../kind.ts';
import { attempt, fractionAt, named, take, written } from './fractions.ts';

const HELP = `pedigree: inbreeding and kinship
  {"animals": [{"id","sire"|null,"dam"|null}],"founderF"?: {id: F},"founderKin"?: [[a, b, k]],"pairs"?: [[a, b]],"float"?: true}
    -> {"F": {id: …},"kin": [[a, b, …]]}; with "float" plain numbers, for large pedigrees`;

const pedigreeCase = z.object({
  animals: z.array(z.object({ id: named, sire: z.nullish(named), dam: z.nullish(named) })),
  founderF: z.nullish(z.record(named, written)),
  founderKin: z.nullish(z.array(z.tuple([named, named, written]))),
  pairs: z.nullish(z.array(z.tuple([named, named]))),
  float: z.nullish(z.boolean()),
});
type PedigreeCase = z.infer<typeof pedigreeCase>;

/** Exact fractions of more animals than this take too long; `float` has no such bound. */
const MOST_EXACT = 3000;

/** Inbreeding and kinship of a pedigree. */
export const pedigreeKind: Kind = {
  name: 'pedigree',
  help: HELP,
  answer(given) {
    const asked = readCase(pedigreeCase, given);
    return asked.ok ? attempt(() => answerOf(asked.value)) : asked;
  },
};

function answerOf(data: PedigreeCase): unknown {
  const animals = data.animals.map(({ id, sire, dam }): Parentage => ({ id, sire: sire ?? null, dam: dam ?? null }));
  const ordered = take(pedigreeOrder(animals));
  const ids = new Set(animals.map((one) => one.id));
  const founders = data.founderKin ?? [];
  const kin = [...founders.map(([a]) => a), ...founders.map(([, b]) => b)];
  const named = [...(data.pairs ?? []).flat(), ...kin, ...Object.keys(data.founderF ?? {})];
  const stranger = named.find((id) => !ids.has(id));
  if (stranger !== undefined) take(wrongCase(`${stranger} is not among the animals`, 'pairs'));
  const facts = factsOf(data);
  const isPlain = facts.kinship.length === 0 && data.float === true;
  if (!isPlain && animals.length > MOST_EXACT)
    take(refuse('pedigree-too-large', { animals: animals.length, most: MOST_EXACT }, 'animals'));
  return isPlain ? inNumbers(data, animals, ordered, facts) : inFractions(data, animals, ordered, facts);
}

function factsOf({ founderF, founderKin }: PedigreeCase): FounderFacts {
  return {
    inbreeding: new Map(Object.entries(founderF ?? {}).map(([id, f]) => [id, fractionAt(f, `founderF.${id}`)])),
    kinship: (founderKin ?? []).map(([a, b, k], at) => [a, b, fractionAt(k, `founderKin.${at}.2`)] as const),
  };
}

function inFractions(
  data: PedigreeCase,
  animals: readonly Parentage[],
  ordered: readonly Parentage[],
  facts: FounderFacts,
): unknown {
  const kinship = exactKinship(ordered, facts);
  const say = data.float === true ? toNumber : sayFraction;
  return {
    F: Object.fromEntries(animals.map(({ id }) => [id, say(kinship.inbreeding(id))])),
    kin: (data.pairs ?? []).map(([a, b]) => [a, b, say(kinship.of(a, b))]),
  };
}

function inNumbers(
  data: PedigreeCase,
  animals: readonly Parentage[],
  ordered: readonly Parentage[],
  facts: FounderFacts,
): unknown {
  const pedigree = pedigreeArrays(ordered);
  const founderF = Float64Array.from(ordered, ({ id }) =>
    toNumber(facts.inbreeding.get(id) ?? { top: 0n, bottom: 1n }),
  );
  const found = inbreedingOf(pedigree, founderF);
  const place = new Map(ordered.map(({ id }, at) => [id, at]));
  const own = ownShares(pedigree, found, founderF);
  const rows = new Map<string, Float64Array>();
  const row = (id: string): Float64Array => {
    const known = rows.get(id) ?? new Float64Array(ordered.length);
    if (!rows.has(id)) relationshipsWith(place.get(id) ?? 0, pedigree, own, known);
    rows.clear();
    rows.set(id, known);
    return known;
  };
  return {
    F: Object.fromEntries(animals.map(({ id }) => [id, found[place.get(id) ?? 0] ?? 0])),
    kin: (data.pairs ?? []).map(([a, b]) => [a, b, (row(a)[place.get(b) ?? 0] ?? 0) / 2]),
  };
}
