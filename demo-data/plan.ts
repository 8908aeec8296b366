import {
  acceptPlan,
  breedingOf,
  chanceOf,
  type Day,
  exactKinship,
  type Facility,
  type Id,
  lociFor,
  lookOf,
  multiplyFractions,
  type NewPlan,
  NORMAL_LOOK,
  type Outcomes,
  outcomesOf,
  pedigreeAround,
  pedigreeOrder,
  planPairing,
  toNumber,
} from '../src/core/index.ts';
import type { House } from './herd.ts';

/** A female and the male that she is to meet. */
export interface Pair {
  readonly dam: { readonly id: Id };
  readonly sire: { readonly id: Id };
}

/** The house wants so many looks of a season: those that it can hope for most. */
const WANTED = 3;
const FEMALES_A_MALE = 3;

/** The house accepts whom it pairs this season; made by hand, so nobody says that it is the best plan. */
export function acceptSeason(house: House, species: string, pairs: readonly Pair[], from: Day): void {
  const { log } = house;
  const plan = planOf(log.facility, species, pairs, from);
  const decision = acceptPlan(log.facility, plan, { day: log.day, today: log.day, nowMs: 0 });
  if (decision.kind === 'refused') throw new RangeError(decision.problem.message);
  for (const draft of decision.drafts) if (draft.kind === 'plan-accepted') log.write(draft.kind, [], draft.payload);
}

function planOf(facility: Facility, species: string, pairs: readonly Pair[], from: Day): NewPlan {
  const clutch = breedingOf(species)?.clutch;
  if (clutch?.mean == null) throw new RangeError(`no usual clutch of ${species}`);
  const eggs = clutch.mean;
  const [low, high] = clutch.range;
  const outcomes = pairs.map((pair) => outcomesIn(facility, pair));
  const goals = goalsOf(facility, species, outcomes);
  return {
    species,
    from,
    eggs,
    basis: `mean of ${low}–${high}, ${clutch.mark}: ${clutch.source} (BREED-CALENDAR)`,
    goals: goals.map(({ look }) => ({ words: look, least: 0, weight: 1 })),
    limits: {
      capPerMale: FEMALES_A_MALE,
      maxMales: new Set(pairs.map(({ sire }) => sire.id)).size,
      meanKinship: null,
      maleCost: 0,
    },
    gap: null,
    pairs: pairs
      .map(({ dam, sire }, at) => ({
        female: dam.id,
        male: sire.id,
        kinship: kinshipOf(facility, dam.id, sire.id),
        expected: goals.map((goal) => eggs * chanceIn(outcomes[at], goal)),
      }))
      // Whoever gives nothing towards a goal may meet all the same, but not by the plan.
      .filter(({ expected }) => expected.some((eggs) => eggs > 0)),
  };
}

interface Goal {
  readonly locus: string;
  readonly look: string;
}

/** The looks that these pairs give most eggs of. */
function goalsOf(facility: Facility, species: string, all: readonly Outcomes[]): readonly Goal[] {
  const { rows } = lociFor(facility, species).loci;
  const looks = rows.flatMap((row) =>
    row.alleles.map(({ symbol }): Goal => {
      const single = lookOf(row, `${symbol}/+`);
      return { locus: row.locus, look: single === NORMAL_LOOK ? lookOf(row, `${symbol}/${symbol}`) : single };
    }),
  );
  const hopeOf = (goal: Goal): number => all.reduce((sum, outcomes) => sum + chanceIn(outcomes, goal), 0);
  const hopes = looks.map((goal) => ({ goal, hope: hopeOf(goal) }));
  return hopes
    .sort((a, b) => b.hope - a.hope)
    .slice(0, WANTED)
    .map(({ goal }) => goal);
}

function outcomesIn(facility: Facility, { dam, sire }: Pair): Outcomes {
  const planned = planPairing(facility, sire.id, dam.id);
  if (!planned.ok) throw new RangeError(planned.problem.message);
  return outcomesOf(planned.value.cross);
}

/** The chance that an egg lives and shows a look; a locus at which neither parent carries anything gives none. */
function chanceIn(outcomes: Outcomes | undefined, { locus, look }: Goal): number {
  if (outcomes === undefined || !outcomes.cross.loci.has(locus)) return 0;
  return toNumber(multiplyFractions(outcomes.viable, chanceOf(outcomes, new Map([[locus, look]]))));
}

function kinshipOf(facility: Facility, dam: Id, sire: Id): number {
  const ordered = pedigreeOrder(pedigreeAround(facility, [dam, sire]));
  if (!ordered.ok) throw new RangeError(ordered.problem.message);
  return toNumber(exactKinship(ordered.value, { inbreeding: new Map(), kinship: [] }).of(dam, sire));
}
