import type { AnimalRecord } from '../animal/index.ts';
import { holdsOn, needsVet } from '../care/index.ts';
import { type Day, daysBetween, sayDayShort } from '../days.ts';
import {
  type Facility,
  isQuarantinePlace,
  nameOf,
  type PlannedPair,
  SAME_SEASON_DAYS,
  type SeasonPlan,
} from '../facility/index.ts';
import type { Id } from '../ids.ts';

/** What became of a planned pair: paired since the season’s first day, still open, or fallen out, for now or for good. */
export type PairState =
  | { readonly state: 'made'; readonly on: Day; readonly visits: number }
  | { readonly state: 'open'; readonly meanwhile: readonly Id[] }
  | { readonly state: 'out'; readonly why: string };

/** A planned pair and what became of it. */
export type FollowedPair = PlannedPair & { readonly plan: SeasonPlan; readonly now: PairState };

/** So long from its first day a season’s plan is shown; the next one’s takes its place sooner. */
export const PLAN_DAYS = 365;

/** The plan that a species’ season goes by on a day: of those that are not over the one of the latest season. */
export function standingPlan({ site }: Facility, species: string, on: Day): SeasonPlan | null {
  return site.plans.findLast((one) => one.species === species && daysBetween(one.from, on) <= PLAN_DAYS) ?? null;
}

/** The standing plan of each species, those accepted last first. */
export function standingPlans(facility: Facility, on: Day): readonly SeasonPlan[] {
  const species = [...new Set(facility.site.plans.map((one) => one.species))];
  const plans = species.flatMap((one) => standingPlan(facility, one, on) ?? []);
  return plans.sort((a, b) => (a.acceptedOn < b.acceptedOn ? 1 : a.acceptedOn > b.acceptedOn ? -1 : 0));
}

/** The pairs of a plan with what became of each, in the plan’s order. */
export function followPlan(facility: Facility, plan: SeasonPlan, on: Day): readonly FollowedPair[] {
  return plan.pairs.map((pair) => ({ ...pair, plan, now: pairState(facility, plan, pair, on) }));
}

/** The pairs that the standing plan of its species has an animal in. */
export function plannedFor(facility: Facility, animal: AnimalRecord, on: Day): readonly FollowedPair[] {
  const plan = standingPlan(facility, animal.species, on);
  if (plan === null) return [];
  const pairs = plan.pairs.filter(({ female, male }) => female === animal.id || male === animal.id);
  return followPlan(facility, { ...plan, pairs }, on);
}

/** The pair of two animals in the standing plan of their species; null where it has none. */
export function plannedPair(
  facility: Facility,
  female: AnimalRecord,
  male: Id,
  on: Day,
): (PlannedPair & { readonly plan: SeasonPlan }) | null {
  const plan = standingPlan(facility, female.species, on);
  const pair = plan?.pairs.find((one) => one.female === female.id && one.male === male);
  return plan === null || pair === undefined ? null : { ...pair, plan };
}

function pairState(facility: Facility, { from }: SeasonPlan, { female, male }: PlannedPair, on: Day): PairState {
  const marks = (facility.animals.get(female)?.season ?? []).filter(({ day }) => day >= from && day <= on);
  const met = marks.filter((one) => (one.kind === 'paired' || one.kind === 'lock') && one.with !== null);
  const own = met.filter((one) => one.with === male);
  const [first] = own;
  if (first !== undefined) {
    const visits = own.filter(({ kind }) => kind === 'paired').length;
    return { state: 'made', on: first.day, visits };
  }
  const why = whyOut(facility, male, on) ?? whyOut(facility, female, on);
  if (why !== null) return { state: 'out', why };
  const past = marks.find(({ kind }) => PAST.includes(kind));
  if (past !== undefined)
    return { state: 'out', why: `${nameOf(facility, female)} is past pairing: ${past.kind} ${sayDayShort(past.day)}` };
  return { state: 'open', meanwhile: [...new Set(met.flatMap((one) => one.with ?? []))] };
}

/** From these marks on nobody is put with her any more. */
const PAST: readonly string[] = ['ovulation', 'pre-lay shed', 'laid', 'born'];

/** Why an animal is not to be paired on a day; null where nothing written stands against it. */
function whyOut(facility: Facility, id: Id, on: Day): string | null {
  const animal = facility.animals.get(id);
  const name = nameOf(facility, id);
  if (animal === undefined) return `${name} is not on record here`;
  if (animal.left !== null) return `${name} ${LEFT_WORDS[animal.left.how]} ${sayDayShort(animal.left.day)}`;
  if (needsVet(animal) !== null) return `${name} waits for the vet’s word`;
  const apart = animal.holds.find((one) => one.reason === 'quarantine');
  // A quarantine lasts until somebody ends it, whatever day was written (CARE-QUARANTINE).
  if (apart !== undefined || isQuarantinePlace(facility, animal.place))
    return `${name} is in quarantine${apart?.until == null ? '' : `, until ${sayDayShort(apart.until)} at least`}`;
  const treated = holdsOn(animal, on).find(({ kind }) => kind === 'treatment');
  return treated === undefined
    ? null
    : `${name} is under treatment${treated.until === null ? '' : ` until ${sayDayShort(treated.until)}`}`;
}

const LEFT_WORDS = { died: 'died', sold: 'was sold', given: 'was given away', lost: 'was lost' } as const;

/** Without a pairing for so long a new season has begun (our own choice). */
const QUIET_DAYS = 60;

/**
 * The first day of the season that a species is in: the one of the plan that stands for it, else the first pairing after a
 * pause, else the day itself; and why.
 */
export function seasonBegan(
  facility: Facility,
  species: string,
  on: Day,
): { readonly from: Day; readonly why: string } {
  const plan = standingPlan(facility, species, on);
  if (plan !== null && Math.abs(daysBetween(plan.from, on)) < SAME_SEASON_DAYS)
    return { from: plan.from, why: 'as in the plan that stands' };
  const days = [...facility.animals.values()]
    .filter((one) => one.species === species && one.sex !== 'male')
    .flatMap(({ season }) => season.filter(({ kind, day }) => (kind === 'paired' || kind === 'lock') && day <= on))
    .map(({ day }) => day)
    .sort();
  let from = on;
  for (const day of days.reverse()) {
    if (daysBetween(day, from) > QUIET_DAYS) break;
    from = day;
  }
  const isToday = from === on && days[0] !== on;
  return {
    from,
    why: isToday ? `nobody was paired in the ${QUIET_DAYS} days before` : 'the first pairing of this season',
  };
}
