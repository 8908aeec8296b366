import {
  type AnimalRecord,
  type Facility,
  geneticSex,
  ok,
  type PlanPair,
  pedigreeAround,
  type Result,
  type SeasonPlanCase,
  toNumber,
  traitsOf,
  WILD_CODE,
} from '../../core/index.ts';
import type { PlannedParent, PlanPairsAnswer, PlanPairsAsk } from '../workers/geneticsMessages.ts';
import type { GoalLook } from './goals.ts';
import type { Herd } from './herd.ts';
import type { PlanLimits } from './planDraft.ts';

/** A goal with its figures: expected eggs at least, and what an egg of it counts against the other goals'. */
export interface PlanGoal extends GoalLook {
  readonly leastEggs: number;
  readonly weight: number;
}

/** Who is asked about, and animals that cannot be planned with because their trait code cannot be read. */
export interface PairsWanted {
  readonly ask: PlanPairsAsk;
  readonly unread: readonly { readonly animal: AnimalRecord; readonly why: string }[];
}

/** What the worker is asked: every male with every female of the herd. Nobody's traits are guessed: unwritten is wild type. */
export function pairsWanted(facility: Facility, herd: Herd, goals: readonly GoalLook[]): PairsWanted {
  const unread: PairsWanted['unread'][number][] = [];
  const parents = (all: readonly AnimalRecord[]): readonly PlannedParent[] =>
    all.flatMap((animal) => {
      const parent = plannedParent(facility, animal);
      if (parent.ok) return [parent.value];
      unread.push({ animal, why: parent.problem.message });
      return [];
    });
  const [sires, dams] = [parents(herd.sires), parents(herd.dams)];
  const ask: PlanPairsAsk = {
    ask: 'plan-pairs',
    species: herd.species,
    siteRows: facility.site.loci.filter((row) => row.species === herd.species),
    sires,
    dams,
    goals: goals.map(({ wanted }) => wanted),
    animals: pedigreeAround(
      facility,
      [...sires, ...dams].map(({ id }) => id),
    ),
  };
  return { ask, unread };
}

function plannedParent(facility: Facility, animal: AnimalRecord): Result<PlannedParent> {
  const said = traitsOf(facility, animal);
  if (!said.ok) return said;
  const traits = said.value?.traits ?? { species: animal.species, pieces: [] };
  const code = said.value?.code ?? WILD_CODE;
  return ok({ id: animal.id, code, parent: { traits, sex: geneticSex(animal.sex) } });
}

/** What a plan is made of, besides the worker's chances. */
export interface PlanSetting {
  readonly goals: readonly PlanGoal[];
  readonly limits: PlanLimits;
  /** How many eggs a clutch is taken to have. */
  readonly eggs: number;
}

/**
 * The case of a season: expected eggs are the usual clutch times the chance per egg, and a pair's value is their sum over
 * the goals, each times its weight. A pair that gives towards no goal is left out: it would only thin out the mean kinship.
 */
export function planCaseOf(ask: PlanPairsAsk, answer: PlanPairsAnswer, setting: PlanSetting): SeasonPlanCase {
  const { goals, limits, eggs } = setting;
  const pairs = answer.pairs.flatMap(({ sire, dam, kinship, chances }): readonly PlanPair[] => {
    const expected = chances.map((chance) => eggs * toNumber(chance));
    const value = expected.reduce((sum, one, at) => sum + one * (goals[at]?.weight ?? 0), 0);
    return expected.some((one) => one > 0) ? [[dam, sire, kinship, value, expected]] : [];
  });
  return {
    females: ask.dams.length,
    males: ask.sires.length,
    ...limits,
    goalMinExpected: goals.map(({ leastEggs }) => leastEggs),
    pairs,
  };
}
