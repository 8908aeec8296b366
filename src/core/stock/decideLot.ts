import { AGAIN_MINUTES, type Decision, type EventDraft, type Moment } from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import { minutesSince } from '../events/index.ts';
import type { Facility, LotRecord } from '../facility/index.ts';
import { sayId } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { unlessDoubted } from './doubts.ts';
import { lastDayOf, lotsInFreezer } from './lots.ts';
import { sayPrey } from './prey.ts';

/** What is done to one lot. */
export type LotAct =
  /** Taken out to thaw, for a feeding day; that of the moment where it is left out. */
  | { readonly do: 'use'; readonly count: number; readonly forDay?: Day }
  /** Thrown away: out of the freezer, or what was thawed before. */
  | { readonly do: 'waste'; readonly count: number; readonly why: string; readonly thawed: boolean }
  | { readonly do: 'count'; readonly count: number };

/** Rule CARE-COUNT: a count that is off by more than this share and more than so many items is asked about (ours). */
export const COUNT_OFF = { share: 0.1, items: 5 } as const;

/** The reasons that are offered for throwing away; any other words will do. */
export const WASTE_WHY = ['past its day', 'freezer burn', 'bag open', 'thawed by accident', 'wrong size'] as const;
/** And for what was thawed. */
export const THAWED_WHY = ['refused', 'left over', 'burst'] as const;

/**
 * Rule CARE-LOT: takes out of a lot, throws away, or counts. Asked about: a lot past its day, more than the book has, an
 * older lot that lies there, the same within ten minutes, a count far off. Refused: `not-whole`, `waste-why`, `lot-before`,
 * `date-future`.
 */
export function decideLot(facility: Facility, lot: LotRecord, act: LotAct, moment: Moment): Decision {
  const wrong = whatIsWrong(lot, act, moment);
  if (wrong !== null) return { kind: 'refused', problem: wrong };
  switch (act.do) {
    case 'use':
      return use(facility, lot, act, moment);
    case 'waste':
      return waste(lot, act, moment);
    case 'count':
      return count(lot, act.count, moment);
    default:
      return act satisfies never;
  }
}

function whatIsWrong(lot: LotRecord, act: LotAct, { day, today }: Moment): Problem | null {
  const least = act.do === 'count' ? 0 : 1;
  if (!Number.isInteger(act.count) || act.count < least) return problem('not-whole', { what: 'count of items' });
  if (day > today) return problem('date-future', { day: sayDayShort(day) });
  if (day < lot.receivedOn) return problem('lot-before', { day: sayDayShort(day), since: sayDayShort(lot.receivedOn) });
  return act.do === 'waste' && act.why.trim() === '' ? problem('waste-why') : null;
}

function use(
  facility: Facility,
  lot: LotRecord,
  { count, forDay = undefined }: Extract<LotAct, { do: 'use' }>,
  moment: Moment,
): Decision {
  const payload = { count, ...(forDay !== undefined && forDay !== moment.day && { forDay }) };
  const drafts: readonly EventDraft[] = [{ kind: 'lot-used', subjects: [lot.id], payload, day: moment.day }];
  return unlessDoubted(drafts, `thawed ${count} × ${sayPrey(lot.prey)}`, [
    pastDoubt(lot, moment.day),
    shortDoubt(lot, count),
    olderDoubt(facility, lot, moment.day),
    againDoubt(lot, count, moment),
  ]);
}

function waste(lot: LotRecord, act: Extract<LotAct, { do: 'waste' }>, { day }: Moment): Decision {
  const { count, thawed } = act;
  const why = act.why.trim();
  const payload = { count, why, ...(thawed && { thawed }) };
  const drafts: readonly EventDraft[] = [{ kind: 'lot-wasted', subjects: [lot.id], payload, day }];
  const said = `thrown away ${count} × ${sayPrey(lot.prey)}${thawed ? ', thawed' : ''} (${why})`;
  return unlessDoubted(drafts, said, [thawed ? thawedDoubt(lot, count, day) : shortDoubt(lot, count)]);
}

function count(lot: LotRecord, counted: number, { day }: Moment): Decision {
  const payload = { count: counted };
  const drafts: readonly EventDraft[] = [{ kind: 'stock-counted', subjects: [lot.id], payload, day }];
  const off = Math.abs(counted - lot.left);
  const isFar = off > COUNT_OFF.items && off > COUNT_OFF.share * lot.left;
  const doubt = isFar ? problem('count-differs', { left: lot.left, count: counted }) : null;
  return unlessDoubted(drafts, `counted ${counted} × ${sayPrey(lot.prey)}, ${lot.left} by the book`, [doubt]);
}

function pastDoubt(lot: LotRecord, on: Day): Problem | null {
  const last = lastDayOf(lot);
  return on > last ? problem('lot-past', { prey: sayPrey(lot.prey), day: sayDayShort(last) }) : null;
}

function shortDoubt({ left }: LotRecord, count: number): Problem | null {
  return count > left ? problem('lot-short', { left, count }) : null;
}

function olderDoubt(facility: Facility, lot: LotRecord, on: Day): Problem | null {
  const good = (lotsInFreezer(facility, on).get(lot.prey) ?? []).filter((one) => one.state !== 'past');
  const [oldest] = good;
  // A lot that the book has emptied, or that is past its day, is not in the list: then nobody can say what lies before it.
  if (oldest === undefined || oldest.id === lot.id || !good.some((one) => one.id === lot.id)) return null;
  const day = sayDayShort(oldest.receivedOn);
  return problem('lot-older', { prey: sayPrey(lot.prey), lot: sayId(oldest.id), left: oldest.left, day });
}

function againDoubt({ lastWritten, sessions }: LotRecord, count: number, { nowMs }: Moment): Problem | null {
  const minutes = minutesSince(lastWritten, 'lot-used', nowMs);
  if (Math.abs(minutes) >= AGAIN_MINUTES) return null;
  const last = sessions.at(-1)?.used ?? count;
  return problem('lot-again', { count: last, minutes: Math.max(1, Math.round(minutes)) });
}

function thawedDoubt({ sessions }: LotRecord, count: number, day: Day): Problem | null {
  const session = sessions.find((one) => one.day === day);
  const open = Math.max(0, (session?.used ?? 0) - (session?.thrown ?? 0));
  return count > open ? problem('waste-thawed', { open, count, day: sayDayShort(day) }) : null;
}
