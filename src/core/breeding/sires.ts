import type { AnimalRecord } from '../animal/index.ts';
import { addDays, type Day, daysBetween } from '../days.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import type { Id } from '../ids.ts';
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
}

/** Rule BREED-REST: a male rests so many days between pairings. */
export const REST_DAYS = 5;

/** The males of a species that were paired this season or are ready to be, those that are ready longest first. */
export function maleRota(facility: Facility, species: string, on: Day, restDays = REST_DAYS): readonly MaleTurn[] {
  const males = [...facility.animals.values()].filter(
    (one) => one.species === species && one.sex === 'male' && one.left === null,
  );
  const turns = males.flatMap((animal): readonly MaleTurn[] => {
    const marks = animal.season.filter((mark) => mark.day <= on && daysBetween(mark.day, on) <= SEASON_DAYS);
    if (marks.length === 0) return [];
    const partners = [...new Set(marks.flatMap((mark) => mark.with ?? []))];
    const busy = animal.together.map((one) => one.with);
    const ended = animal.apartOn ?? marks.at(-1)?.day ?? on;
    return [{ animal, with: busy, readyOn: busy.length > 0 ? null : addDays(ended, restDays), partners }];
  });
  return turns.sort((a, b) => ((a.readyOn ?? '9') < (b.readyOn ?? '9') ? -1 : 1));
}

/** Who goes to whom next: a male with the partner of his season that has waited longest and is not yet past it. */
export interface NextPairing {
  readonly male: Id;
  readonly female: Id;
  readonly from: Day;
  readonly why: string;
}

/** Proposes the next visits: each male to one female, each female one male. Only partners of this season; who is paired at all the breeder decides. */
export function nextPairings(
  facility: Facility,
  rota: readonly MaleTurn[],
  isWaiting: (female: Id) => boolean,
): readonly NextPairing[] {
  const taken = new Set<Id>();
  return rota.flatMap(({ animal, readyOn, partners }) => {
    if (readyOn === null) return [];
    const waiting = partners.filter((female) => !taken.has(female) && isWaiting(female));
    const [next] = waiting.sort((a, b) => (lastVisit(animal, a) < lastVisit(animal, b) ? -1 : 1));
    if (next === undefined) return [];
    taken.add(next);
    const why = `${nameOf(facility, next)} has waited longest of his partners, since ${lastVisit(animal, next)}`;
    return [{ male: animal.id, female: next, from: readyOn, why }];
  });
}

function lastVisit(male: AnimalRecord, female: Id): Day {
  return male.season.findLast((mark) => mark.with === female)?.day ?? male.addedOn;
}
