import { type Day, daysBetween } from '../days.ts';
import { type EventOf, laterWriter, type SiteEvent } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';

/** A pair of an accepted plan with what it was chosen for. */
export interface PlannedPair {
  readonly female: Id;
  readonly male: Id;
  readonly kinship: number;
  /** Expected eggs towards each goal, in the order of the goals. */
  readonly expected: readonly number[];
}

/** What a plan was made for, within which limits, and how good it is. */
export interface PlanTerms {
  readonly species: string;
  /** The season’s first day: pairings from this day on count as made. */
  readonly from: Day;
  /** How many eggs a clutch was taken to have, and on what ground. */
  readonly eggs: number;
  readonly basis: string;
  readonly goals: readonly { readonly words: string; readonly least: number; readonly weight: number }[];
  readonly limits: {
    readonly capPerMale: number;
    readonly maxMales: number;
    readonly meanKinship: number | null;
    readonly maleCost: number;
  };
  /** By what share another plan may be better: 0 is proven to be the best, null is not known. */
  readonly gap: number | null;
}

/** A season plan that somebody accepted and nobody took back. */
export interface SeasonPlan extends PlanTerms {
  readonly id: string;
  readonly acceptedOn: Day;
  readonly keeper: string;
  readonly pairs: readonly PlannedPair[];
  /** Parts of a long plan that have not come here yet. */
  readonly missingParts: number;
  /** The events that say it, and those of the plans of the same season that it took the place of. */
  readonly written: readonly EventId[];
  readonly replaced: readonly EventId[];
}

/** Plans of one species whose first days lie nearer than this are of one season, and the last accepted stands. */
export const SAME_SEASON_DAYS = 183;

type Accepted = EventOf<'plan-accepted'>;

/** The plans that stand, one for each species and season, by species and then by first day; the same for any order of arrival. */
export function seasonPlans(events: readonly SiteEvent[]): readonly SeasonPlan[] {
  const groups = new Map<string, Accepted[]>();
  for (const event of events) {
    if (event.kind !== 'plan-accepted') continue;
    groups.set(event.payload.plan, [...(groups.get(event.payload.plan) ?? []), event]);
  }
  if (groups.size === 0) return NONE;
  const byWriter = [...groups.values()].map((group) => group.sort(laterWriter));
  byWriter.sort((a, b) => laterWriter(last(b), last(a)));
  const standing: SeasonPlan[] = [];
  for (const group of byWriter) place(standing, planOf(group));
  return standing.sort((a, b) => compare(a.species, b.species) || compare(a.from, b.from));
}

const NONE: readonly SeasonPlan[] = [];

/** The later writer came first: what is of a season that has its plan is only counted among those it replaced. */
function place(standing: SeasonPlan[], plan: SeasonPlan): void {
  const at = standing.findIndex(
    (one) => one.species === plan.species && Math.abs(daysBetween(one.from, plan.from)) < SAME_SEASON_DAYS,
  );
  const before = standing[at];
  if (before === undefined) standing.push(plan);
  else standing[at] = { ...before, replaced: [...before.replaced, ...plan.written].sort() };
}

/** Puts the parts of a plan together; of a part that was written twice the later one counts. */
function planOf(group: readonly Accepted[]): SeasonPlan {
  const { payload, day, keeper } = last(group);
  const parts = new Map(group.map((event) => [event.payload.part?.[0] ?? 1, event.payload.pairs]));
  const numbers = Array.from({ length: payload.part?.[1] ?? 1 }, (_none, at) => at + 1);
  const { meanKinship, ...limits } = payload.limits;
  return {
    id: payload.plan,
    species: payload.species,
    from: payload.from as Day,
    eggs: payload.eggs,
    basis: payload.basis,
    goals: payload.goals,
    limits: { ...limits, meanKinship: meanKinship ?? null },
    gap: payload.gap ?? null,
    acceptedOn: day,
    keeper,
    pairs: numbers.flatMap((nth) => (parts.get(nth) ?? []).map(pairOf)),
    missingParts: numbers.filter((nth) => !parts.has(nth)).length,
    written: group.map((event) => event.id).sort(),
    replaced: [],
  };
}

function pairOf([female, male, kinship, expected]: Accepted['payload']['pairs'][number]): PlannedPair {
  return { female: female as Id, male: male as Id, kinship, expected };
}

function last(group: readonly Accepted[]): Accepted {
  const event = group.at(-1);
  if (event === undefined) throw new RangeError('a plan without an event');
  return event;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
