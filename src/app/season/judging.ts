import {
  addDays,
  candidateSires,
  type Day,
  emptyFacility,
  type Facility,
  fraction,
  type Id,
  type Result,
  type SeasonFlags,
  type SeasonTest,
  seasonFlags,
} from '../../core/index.ts';
import type { JudgedClutch } from '../workers/geneticsMessages.ts';

/** Clutches laid within so many days are this season's. */
export const SEASON_OF_CLUTCHES_DAYS = 365;

/** How many false ones the breeder is willing to see among the flagged: one in so many. */
export const RATES = [20, 10, 5] as const;
export type OneIn = (typeof RATES)[number];

/** The clutches of the season that have young with records, the latest first. */
export function clutchesToJudge(facility: Facility, today: Day): readonly Id[] {
  const since = addDays(today, -SEASON_OF_CLUTCHES_DAYS);
  const withYoung = new Set([...facility.animals.values()].flatMap(({ clutch }) => clutch ?? []));
  return [...facility.clutches.values()]
    .filter((one) => one.laidOn >= since && one.laidOn <= today && withYoung.has(one.id))
    .sort((a, b) => (a.laidOn > b.laidOn ? -1 : a.laidOn < b.laidOn ? 1 : a.id < b.id ? -1 : 1))
    .map(({ id }) => id);
}

/** The part of a facility that is needed to judge these clutches, small enough to be sent to a worker. */
export function partFor(facility: Facility, ids: readonly Id[]): Facility {
  const clutches = ids.flatMap((id) => facility.clutches.get(id) ?? []);
  const wanted = new Set<Id>();
  for (const clutch of clutches) {
    const dam = facility.animals.get(clutch.dam);
    const sires = dam === undefined ? [] : candidateSires(facility, dam, clutch.laidOn).map(({ id }) => id);
    for (const id of [clutch.dam, clutch.sire, ...sires]) if (id !== null) wanted.add(id);
  }
  const ofClutches = new Set(ids);
  const animals = [...facility.animals.values()].filter(
    (one) => wanted.has(one.id) || (one.clutch !== null && ofClutches.has(one.clutch)),
  );
  return {
    ...emptyFacility(),
    site: facility.site,
    animals: new Map(animals.map((one) => [one.id, one])),
    clutches: new Map(clutches.map((one) => [one.id, one])),
  };
}

/** A clutch to look at again. Hard: what was seen cannot come of the parents as written; else it is only unlikely. */
export interface ClutchFlag {
  readonly judged: JudgedClutch;
  readonly isHard: boolean;
  /** The least rate at which it would be flagged by its p; null where it was not flagged by that. */
  readonly adjusted: SeasonFlags['flags'][number]['adjusted'];
}

export interface Judgement {
  /** Hard ones first, then by how unlikely. */
  readonly flags: readonly ClutchFlag[];
  readonly tested: number;
  readonly untested: readonly JudgedClutch[];
}

/** What is flagged at a rate of one false flag in so many. Errors of {@link seasonFlags}. */
export function judgementOf(all: readonly JudgedClutch[], oneIn: OneIn): Result<Judgement> {
  const tests = all.flatMap(({ id, p }): readonly SeasonTest[] => (p === null ? [] : [{ id, p }]));
  const made = seasonFlags(tests, fraction(1n, BigInt(oneIn)));
  if (!made.ok) return made;
  const byId = new Map(made.value.flags.map((one) => [one.id, one]));
  const flags = all.flatMap((judged): readonly ClutchFlag[] => {
    const flag = byId.get(judged.id);
    const isHard = judged.noSire !== null || flag?.isImpossible === true;
    const isFlagged = isHard || flag?.isFlagged === true || judged.withoutFather.length > 0;
    return isFlagged ? [{ judged, isHard, adjusted: flag?.isFlagged === true ? flag.adjusted : null }] : [];
  });
  const rank = (one: ClutchFlag): number => (one.isHard ? 0 : one.adjusted === null ? 2 : 1);
  const sorted = flags.sort((a, b) => rank(a) - rank(b));
  return { ok: true, value: { flags: sorted, tested: tests.length, untested: all.filter(({ p }) => p === null) } };
}
