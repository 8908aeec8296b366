import {
  type Completeness,
  completenessOf,
  exactKinship,
  inbreedingOf,
  kinshipOfMany,
  ok,
  type Parentage,
  pedigreeArrays,
  pedigreeOrder,
  type Result,
} from '../../core/index.ts';
import {
  GENERATIONS_SAID,
  type GeneticProgress,
  type LineageAnswer,
  type LineageAsk,
  type Share,
} from './geneticsMessages.ts';

/** Exact kinship fills a table of all pairs: up to so many animals it is there at once. */
const MOST_EXACT = 600;
/** Stands for the young in its parents’ pedigree; no animal’s id is as short. */
const YOUNG = 'young';
const NO_FACTS = { inbreeding: new Map(), kinship: [] };

type Tell = (progress: GeneticProgress) => void;

/** What is asked of a pedigree, for any animals and pairs of it. */
interface Shares {
  inbreeding(id: string): Share;
  kinship(a: string, b: string): Share;
}

/** Kinship and inbreeding of the animals asked about. Errors: those of `pedigreeOrder`, `pedigree-without`. */
export function lineage({ animals, of }: LineageAsk, tell: Tell): Result<LineageAnswer> {
  const ordered = pedigreeOrder(animals);
  if (!ordered.ok) return ordered;
  const known = completenessOfAll(animals, of);
  if (!known.ok) return known;
  const exact = animals.length <= MOST_EXACT;
  const shares = exact ? exactShares(ordered.value, tell) : doubleShares(ordered.value, of, tell);
  const pairs = of.flatMap((a, at) => of.slice(at + 1).map((b): readonly [string, string] => [a, b]));
  const kinship = pairs.map((pair) => ({ pair, share: shares.kinship(...pair) }));
  const [inbreeding, completeness] = [kinship[0]?.share, known.value.get(YOUNG)];
  return ok({
    exact,
    animals: animals.length,
    inbreeding: new Map(of.map((id) => [id, shares.inbreeding(id)])),
    kinship,
    completeness: known.value,
    young: inbreeding === undefined || completeness === undefined ? null : { inbreeding, completeness },
  });
}

/** Of each animal, and of young that two would have. */
function completenessOfAll(
  animals: readonly Parentage[],
  of: readonly string[],
): Result<ReadonlyMap<string, Completeness>> {
  const [sire, dam, third] = of;
  const isPair = sire !== undefined && dam !== undefined && third === undefined;
  const all = isPair ? [...animals, { id: YOUNG, sire, dam }] : animals;
  const known = new Map<string, Completeness>();
  for (const id of isPair ? [...of, YOUNG] : of) {
    const one = completenessOf(all, id, GENERATIONS_SAID);
    if (!one.ok) return one;
    known.set(id, one.value);
  }
  return ok(known);
}

function exactShares(ordered: readonly Parentage[], tell: Tell): Shares {
  const kinship = exactKinship(ordered, NO_FACTS);
  tell({ done: ordered.length, of: ordered.length });
  return { inbreeding: (id) => kinship.inbreeding(id), kinship: (a, b) => kinship.of(a, b) };
}

/** One row of kinship for each animal asked about, once the inbreeding of all is known. */
function doubleShares(ordered: readonly Parentage[], of: readonly string[], tell: Tell): Shares {
  const pedigree = pedigreeArrays(ordered);
  const founderF = new Float64Array(ordered.length);
  const inbreeding = inbreedingOf(pedigree, founderF, (done, all) => tell({ done, of: all }));
  const place = new Map(ordered.map((one, at) => [one.id, at]));
  const placeOf = (id: string): number => place.get(id) ?? -1;
  const rows = kinshipOfMany(pedigree, of.map(placeOf), inbreeding, founderF);
  return {
    inbreeding: (id) => inbreeding[placeOf(id)] ?? 0,
    kinship: (a, b) => rows[of.indexOf(a)]?.[placeOf(b)] ?? 0,
  };
}
