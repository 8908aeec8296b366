import { type AnimalRecord, type Facility, type Id, nameOf, type PairingWarning, sayEggs } from '../../core/index.ts';
import { sayAboutPercent, sayPercent } from '../genetics/index.ts';
import type { PlanMade } from './usePlan.ts';

/** A chosen pair with everything that is said of it. */
export interface ChosenPair {
  readonly sire: Id;
  readonly dam: Id;
  readonly goals: readonly string[];
  readonly kinship: string;
  readonly figures: { readonly kinship: number; readonly expected: readonly number[] };
  readonly warnings: readonly string[];
}

/** The pairs of a plan by male, those worth most first, each with its reasons. */
export function chosenPairs({ answer, wanted, chances, made, asked, warnings }: PlanMade): readonly ChosenPair[] {
  const places = new Map(chances.pairs.map((one) => [`${one.dam} ${one.sire}`, one]));
  const cases = new Map(made.pairs.map((one) => [`${one[0]} ${one[1]}`, one]));
  const pairs = (answer.plan?.pairs ?? []).flatMap(([female, male], nth) => {
    const [known, pair] = [places.get(`${female} ${male}`), cases.get(`${female} ${male}`)];
    const [sire, dam] = [wanted.ask.sires[male]?.id, wanted.ask.dams[female]?.id];
    if (known === undefined || pair === undefined || sire === undefined || dam === undefined) return [];
    const goals = asked.setting.goals.flatMap(({ words }, at) => {
      const [chance, eggs] = [known.chances[at], pair[4]?.[at] ?? 0];
      if (chance === undefined || eggs === 0) return [];
      return [`${words}: ${sayEggs(eggs)} expected, ${sayPercent(chance)} of the eggs`];
    });
    const kinship = known.kinship === 0 ? 'no kinship known' : `kinship ${sayAboutPercent(known.kinship)}`;
    const figures = { kinship: known.kinship, expected: pair[4] ?? [] };
    const said = { sire, dam, goals, kinship, figures, warnings: sayWarnings(warnings[nth] ?? []) };
    return [{ male, value: pair[3], said }];
  });
  return pairs.sort((a, b) => a.male - b.male || b.value - a.value).map(({ said }) => said);
}

/** What is to be warned of, each once, lethal ones first. */
export function sayWarnings(warnings: readonly PairingWarning[]): readonly string[] {
  const sorted = [...warnings].sort((a, b) => rank(a) - rank(b));
  const words = sorted.map(
    (one) => `${one.kind === 'lethal' ? 'Lethal' : 'Look at this'}: ${one.says} (${one.source})`,
  );
  return [...new Set(words)];
}

function rank({ kind }: PairingWarning): number {
  return kind === 'lethal' ? 0 : 1;
}

/** `Clown`, `Clown, at least 5 eggs`. */
export function sayEggsAtLeast({ words, least }: { readonly words: string; readonly least: number }): string {
  return least === 0 ? words : `${words}, at least ${sayEggs(least)}`;
}

/** How good a plan is known to be; by what share another may be better, 0 where it is proven. */
export function sayProof(gap: number | null): string {
  if (gap === 0) return 'no other plan is worth more';
  return gap === null ? 'not proven to be the best' : `at most ${(100 * gap).toPrecision(2)} % below the best`;
}

/** Why a goal is out of reach: what no male and no female here brings towards it. */
export function whyUnreachable(facility: Facility, { wanted, asked }: PlanMade, goal: number): string {
  const loci = [...(asked.setting.goals[goal]?.wanted.keys() ?? [])];
  const carriers = (all: readonly { readonly id: Id }[], locus: string): number =>
    all.filter(({ id }) => carries(facility.animals.get(id), locus, wanted.ask)).length;
  const missing = loci.flatMap((locus) => {
    const [males, females] = [carriers(wanted.ask.sires, locus), carriers(wanted.ask.dams, locus)];
    if (males > 0 && females > 0) return [];
    if (males === 0 && females === 0) return [`nobody carries anything at ${locus}`];
    return [`no ${males === 0 ? 'male' : 'female'} carries anything at ${locus}`];
  });
  return missing.length > 0 ? missing.join('; ') : 'no two of them carry what it takes together';
}

function carries(animal: AnimalRecord | undefined, locus: string, { sires, dams }: PlanMade['wanted']['ask']): boolean {
  const parent = [...sires, ...dams].find(({ id }) => id === animal?.id);
  return parent?.parent.traits.pieces.some((piece) => piece.loci.includes(locus)) === true;
}

/** `Cedar × Daisy`. */
export function sayPair(facility: Facility, sire: Id, dam: Id): string {
  return `${nameOf(facility, sire)} × ${nameOf(facility, dam)}`;
}
