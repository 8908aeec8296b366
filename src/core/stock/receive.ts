import type { EventDraft, Moment } from '../care/index.ts';
import { type Day, daysBetween, sayDayShort } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { ok, type Problem, problem, type Result, refuse } from '../problems.ts';
import { sayGramRange, WEIGHT_LIMITS_G } from '../units.ts';
import { oneDoubt } from './doubts.ts';
import { PREY_CLASSES, type PreyClass, preyClass } from './prey.ts';

/** Rule CARE-RECEIVE: a last day further away than this is asked about: somebody may have read the year wrong (ours). */
export const USE_BY_DAYS = 730;

/** A lot as it comes out of the box. */
export interface Arrived {
  readonly prey: string;
  /** The lightest and the heaviest item. */
  readonly eachG: readonly [number, number];
  readonly count: number;
  readonly useBy: Day | null;
  readonly source: string | null;
  readonly topical: string | null;
}

/** What becomes of it; the draft is made for the id that is minted when it is written. */
export type Receiving =
  | { readonly kind: 'accepted'; readonly said: string; draftFor(lot: Id): EventDraft }
  | { readonly kind: 'asks'; readonly problem: Problem; readonly said: string; draftFor(lot: Id): EventDraft }
  | { readonly kind: 'refused'; readonly problem: Problem };

/**
 * Rule CARE-RECEIVE: takes a lot into the freezer. Asked about: grams outside of the class, a last day that is over or far
 * away, more than the freezer holds. Refused: `prey-unknown`, `not-whole`, `lot-grams-malformed`, `date-future`.
 */
export function receiveLot(facility: Facility, arrived: Arrived, moment: Moment): Receiving {
  const found = preyClass(arrived.prey);
  const wrong = whatIsWrong(arrived, found, moment);
  if (found === undefined || wrong !== null) return { kind: 'refused', problem: wrong ?? preyUnknown(arrived.prey) };
  const doubt = oneDoubt([
    lastDayDoubt(arrived, moment.day),
    gramsDoubt(arrived, found),
    spaceDoubt(facility, arrived),
  ]);
  const said = `received ${arrived.count} × ${found.name}`;
  const draftFor = (lot: Id): EventDraft => draftOf(arrived, lot, moment.day);
  return doubt === null ? { kind: 'accepted', said, draftFor } : { kind: 'asks', problem: doubt, said, draftFor };
}

/** `20-35`, `20 – 35 g` or `27`: the lightest and the heaviest item; nothing is the class's own. Errors: `lot-grams-malformed`. */
export function readEachG(text: string, found: PreyClass): Result<readonly [number, number]> {
  const trimmed = text.trim();
  if (trimmed === '') return ok(found.eachG);
  const read = /^(\d+(?:[.,]\d+)?)\s*(?:g\s*)?(?:[-–—]\s*(\d+(?:[.,]\d+)?)\s*)?g?$/i.exec(trimmed);
  const low = Number((read?.[1] ?? '').replace(',', '.'));
  const high = read?.[2] === undefined ? low : Number(read[2].replace(',', '.'));
  return read !== null && isGrams([low, high]) ? ok([low, high]) : refuse('lot-grams-malformed', { text: trimmed });
}

function whatIsWrong(
  { prey, eachG, count }: Arrived,
  found: PreyClass | undefined,
  { day, today }: Moment,
): Problem | null {
  if (found === undefined) return preyUnknown(prey);
  if (!isGrams(eachG)) return problem('lot-grams-malformed', { text: eachG.join('-') });
  if (!Number.isInteger(count) || count < 1) return problem('not-whole', { what: 'count of items' });
  return day > today ? problem('date-future', { day: sayDayShort(day) }) : null;
}

function preyUnknown(prey: string): Problem {
  return problem('prey-unknown', { prey, known: PREY_CLASSES.map((one) => one.id).join(', ') });
}

function isGrams([low, high]: readonly [number, number]): boolean {
  return low > 0 && low <= high && high <= WEIGHT_LIMITS_G.most;
}

function gramsDoubt({ eachG }: Arrived, { name, eachG: usual }: PreyClass): Problem | null {
  if (eachG[0] >= usual[0] && eachG[1] <= usual[1]) return null;
  return problem('lot-grams', { prey: name, usual: sayGramRange(usual), written: sayGramRange(eachG) });
}

function lastDayDoubt({ useBy }: Arrived, on: Day): Problem | null {
  if (useBy === null) return null;
  const day = sayDayShort(useBy);
  if (useBy < on) return problem('lot-day-over', { day });
  return daysBetween(on, useBy) > USE_BY_DAYS ? problem('lot-day-far', { day, days: USE_BY_DAYS }) : null;
}

function spaceDoubt({ site, lots }: Facility, { count }: Arrived): Problem | null {
  const space = site.rules.freezerItems;
  if (space === null) return null;
  const items = [...lots.values()].reduce((sum, lot) => sum + lot.left, count);
  return items > space ? problem('freezer-full', { items, space }) : null;
}

function draftOf({ prey, eachG, count, useBy, source, topical }: Arrived, lot: Id, day: Day): EventDraft {
  return {
    kind: 'lot-received',
    subjects: [lot],
    payload: {
      prey,
      eachG: [eachG[0], eachG[1]],
      count,
      ...(useBy !== null && { useBy }),
      ...(source !== null && { source }),
      ...(topical !== null && { topical }),
    },
    day,
  };
}
