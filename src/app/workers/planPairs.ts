import {
  chanceOf,
  crossOf,
  type Fraction,
  inbreedingOf,
  kinshipOfMany,
  type LocusTable,
  multiplyFractions,
  type Outcomes,
  ok,
  outcomesOf,
  type PairingWarning,
  type Problem,
  pairingWelfare,
  pedigreeArrays,
  pedigreeOrder,
  type Result,
  ZERO,
} from '../../core/index.ts';
import type {
  GeneticProgress,
  PairWarningsAsk,
  PlannedPair,
  PlannedParent,
  PlanPairsAnswer,
  PlanPairsAsk,
} from './geneticsMessages.ts';
import { tableOf } from './tableOf.ts';

type Tell = (progress: GeneticProgress) => void;
type Chances = Result<readonly Fraction[]>;

/** So many pairs between two words of progress. */
const REPORT_EVERY = 50;

/**
 * The chance of each goal and the kinship for all pairs. A pair whose cross cannot be worked out is left out and told in
 * `faults`. Errors: those of `pedigreeOrder`.
 */
export function planPairs(ask: PlanPairsAsk, tell: Tell): Result<PlanPairsAnswer> {
  const kinship = kinshipsOf(ask);
  if (!kinship.ok) return kinship;
  const chancesOf = chancesByCode(tableOf(ask.species, ask.siteRows), ask.goals);
  const [pairs, faults]: [PlannedPair[], PlanPairsAnswer['faults'][number][]] = [[], []];
  const count = ask.sires.length * ask.dams.length;
  for (const [at, sire] of ask.sires.entries()) {
    for (const [nth, dam] of ask.dams.entries()) {
      const done = at * ask.dams.length + nth;
      if (done % REPORT_EVERY === 0) tell({ done, of: count });
      const chances = chancesOf(sire, dam);
      if (chances.ok) pairs.push({ sire: at, dam: nth, kinship: kinship.value(at, dam.id), chances: chances.value });
      else if (!isTold(faults, chances.problem)) faults.push({ sire: at, dam: nth, problem: chances.problem });
    }
  }
  tell({ done: count, of: count });
  return ok({ pairs, faults });
}

function isTold(faults: PlanPairsAnswer['faults'], problem: Problem): boolean {
  return faults.some((one) => one.problem.message === problem.message);
}

/** One row of kinship for each sire, once the inbreeding of all is known. */
function kinshipsOf({ animals, sires }: PlanPairsAsk): Result<(sire: number, dam: string) => number> {
  const ordered = pedigreeOrder(animals);
  if (!ordered.ok) return ordered;
  const pedigree = pedigreeArrays(ordered.value);
  const founderF = new Float64Array(ordered.value.length);
  const inbreeding = inbreedingOf(pedigree, founderF);
  const place = new Map(ordered.value.map((one, at) => [one.id, at]));
  const places = sires.map(({ id }) => place.get(id) ?? -1);
  const rows = kinshipOfMany(pedigree, places, inbreeding, founderF);
  return ok((sire, dam) => rows[sire]?.[place.get(dam) ?? -1] ?? 0);
}

/** Animals of like traits give like young, so a cross of two codes is worked out once. */
function chancesByCode(loci: LocusTable, goals: PlanPairsAsk['goals']) {
  const known = new Map<string, Chances>();
  const none: Chances = ok(goals.map(() => ZERO));
  return (sire: PlannedParent, dam: PlannedParent): Chances => {
    const carried = new Set([sire, dam].flatMap(({ parent }) => parent.traits.pieces.flatMap((piece) => piece.loci)));
    // Where a wanted locus is wild type in both there is nothing to work out: most pairs of a large house are such.
    if (goals.every((wanted) => [...wanted.keys()].some((locus) => !carried.has(locus)))) return none;
    const key = `${sire.code}\u0000${dam.code}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const planned = crossOf(sire.parent, dam.parent, { loci });
    const chances: Chances = planned.ok ? ok(chancesIn(outcomesOf(planned.value.cross), goals)) : planned;
    known.set(key, chances);
    return chances;
  };
}

function chancesIn(outcomes: Outcomes, goals: PlanPairsAsk['goals']): readonly Fraction[] {
  return goals.map((wanted) => multiplyFractions(outcomes.viable, chanceAmongLiving(outcomes, wanted)));
}

/** A locus that neither parent carries anything at is not in the cross, and no young shows anything there. */
function chanceAmongLiving(outcomes: Outcomes, wanted: ReadonlyMap<string, string>): Fraction {
  const isBeyond = [...wanted.keys()].some((locus) => !outcomes.cross.loci.has(locus));
  return isBeyond ? ZERO : chanceOf(outcomes, wanted);
}

/** What is to be warned of for each pair. */
export function pairWarnings({ species, siteRows, pairs }: PairWarningsAsk): readonly (readonly PairingWarning[])[] {
  const loci = tableOf(species, siteRows);
  return pairs.map(({ sire, dam }) => pairingWelfare(sire.parent, dam.parent, { loci }));
}
