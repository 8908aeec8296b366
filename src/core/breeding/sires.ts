import type { AnimalRecord } from '../animal/index.ts';
import { addDays, type Day, daysBetween } from '../days.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { followPlan, standingPlan } from './acceptedPlan.ts';
import { SEASON_DAYS } from './marks.ts';

/** A male that can be the sire of a clutch, and why. */
export interface CandidateSire {
  readonly id: Id;
  readonly lastTogether: Day;
  readonly why: string;
  readonly season: 'this' | 'last';
}

/** Stored sperm: males of the season before stay candidates (published of several snakes; the length is common practice, no source). */
export const STORAGE_DAYS = SEASON_DAYS + 365;

/** The males that were with a female before she laid: this season's, then last season's, since females store sperm. */
export function candidateSires(facility: Facility, female: AnimalRecord, laidOn: Day): readonly CandidateSire[] {
  const last = new Map<Id, Day>();
  for (const mark of female.season) {
    if (mark.with === null || mark.day > laidOn || (mark.kind !== 'paired' && mark.kind !== 'lock')) continue;
    if (daysBetween(mark.day, laidOn) <= STORAGE_DAYS) last.set(mark.with, mark.day);
  }
  return [...last]
    .map(([id, lastTogether]) => {
      const days = daysBetween(lastTogether, laidOn);
      const season = days <= SEASON_DAYS ? ('this' as const) : ('last' as const);
      const stored = season === 'this' ? '' : '; only if she stored sperm';
      return { id, lastTogether, season, why: `${nameOf(facility, id)} was with her ${days} d before${stored}` };
    })
    .sort((a, b) => (a.lastTogether > b.lastTogether ? -1 : a.lastTogether < b.lastTogether ? 1 : 0));
}

/** A male in the rota: with whom, since when, and from when he may go on. */
export interface MaleTurn {
  readonly animal: AnimalRecord;
  readonly with: readonly Id[];
  /** The first day after his rest; null where he is with a female. */
  readonly readyOn: Day | null;
  readonly partners: readonly Id[];
  /** Whom the accepted plan gives him and he was not with yet, in its order. */
  readonly planned: readonly Id[];
}

/** Rule BREED-REST: a male rests so many days between pairings. */
export const REST_DAYS = 5;

/** The males of a species that were paired this season or have an open pair in its plan, those that are ready longest first. */
export function maleRota(facility: Facility, species: string, on: Day, restDays = REST_DAYS): readonly MaleTurn[] {
  const males = [...facility.animals.values()].filter(
    (one) => one.species === species && one.sex === 'male' && one.left === null,
  );
  const open = openPairs(facility, species, on);
  const turns = males.flatMap((animal): readonly MaleTurn[] => {
    const marks = animal.season.filter((mark) => mark.day <= on && daysBetween(mark.day, on) <= SEASON_DAYS);
    const planned = open.get(animal.id) ?? [];
    if (marks.length === 0 && planned.length === 0) return [];
    const partners = [...new Set(marks.flatMap((mark) => mark.with ?? []))];
    const busy = animal.together.map((one) => one.with);
    const ended = animal.apartOn ?? marks.at(-1)?.day ?? null;
    const readyOn = busy.length > 0 ? null : ended === null ? on : addDays(ended, restDays);
    return [{ animal, with: busy, readyOn, partners, planned }];
  });
  return turns.sort((a, b) => ((a.readyOn ?? '9') < (b.readyOn ?? '9') ? -1 : 1));
}

/** Whom the plan of a species gives each male and he was not with yet. */
function openPairs(facility: Facility, species: string, on: Day): ReadonlyMap<Id, readonly Id[]> {
  const plan = standingPlan(facility, species, on);
  const open = new Map<Id, readonly Id[]>();
  for (const { male, female, now } of plan === null ? [] : followPlan(facility, plan, on))
    if (now.state === 'open') open.set(male, [...(open.get(male) ?? []), female]);
  return open;
}

/** Who goes to whom next: a male with a female that the plan gives him, else with the partner of his season that has waited longest. */
export interface NextPairing {
  readonly male: Id;
  readonly female: Id;
  readonly from: Day;
  readonly why: string;
}

/** Proposes the next visits: each male to one female, each female one male. Only the plan’s females and partners of this season; who is paired at all the breeder decides. */
export function nextPairings(
  facility: Facility,
  rota: readonly MaleTurn[],
  isWaiting: (female: Id) => boolean,
): readonly NextPairing[] {
  const taken = new Set<Id>();
  const planned = new Set(rota.flatMap((one) => one.planned));
  return rota.flatMap(({ animal, readyOn, partners, planned: own }) => {
    if (readyOn === null) return [];
    const isFree = (female: Id): boolean => !taken.has(female) && isWaiting(female);
    const [first] = own.filter(isFree);
    // Who is planned with another male and was not with him yet is left to him.
    const waiting = partners.filter((female) => isFree(female) && (!planned.has(female) || own.includes(female)));
    const [longest] = waiting.sort((a, b) => (lastVisit(animal, a) < lastVisit(animal, b) ? -1 : 1));
    const next = first ?? longest;
    if (next === undefined) return [];
    taken.add(next);
    const name = nameOf(facility, next);
    const why =
      first === undefined
        ? `${name} has waited longest of his partners, since ${lastVisit(animal, next)}`
        : `the plan gives him ${name}, and he was not with her yet`;
    return [{ male: animal.id, female: next, from: readyOn, why }];
  });
}

function lastVisit(male: AnimalRecord, female: Id): Day {
  return male.season.findLast((mark) => mark.with === female)?.day ?? male.addedOn;
}
