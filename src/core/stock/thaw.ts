import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { problem } from '../problems.ts';
import { unlessDoubted } from './doubts.ts';
import { lotsInFreezer, type StockLot, useFirst } from './lots.ts';
import { sayPrey } from './prey.ts';
import { type Items, sessionOf } from './session.ts';

/** What is taken out of the freezer for one class of a thaw list. */
export interface ThawTaking {
  readonly prey: string;
  /** As the list wants it. */
  readonly wanted: number;
  /** Of this, thawed for that day already and not yet eaten or thrown away. */
  readonly out: number;
  /** From which lots the rest comes, the oldest first. */
  readonly take: readonly { readonly lot: Id; readonly count: number }[];
  readonly short: number;
  /** Lots that lie there past their day: nothing is taken from them. */
  readonly past: readonly StockLot[];
}

/** Rule CARE-LOT: what to take out on a day for a feeding day, oldest lot first over several lots, less what is out already. */
export function thawTaking(facility: Facility, list: readonly Items[], forDay: Day, on: Day): readonly ThawTaking[] {
  const out = new Map(sessionOf(facility, forDay).map((line) => [line.prey, line.left]));
  const stock = lotsInFreezer(facility, on);
  return list.map(({ prey, count }) => {
    const isOut = Math.min(count, out.get(prey) ?? 0);
    const taking = useFirst(stock.get(prey) ?? [], prey, count - isOut);
    // Nothing to take is no count of prey.
    const { take, short, past } = taking.ok ? taking.value : NOTHING;
    return { prey, wanted: count, out: isOut, take, short, past };
  });
}

const NOTHING = { take: [], short: 0, past: [] } as const;

/**
 * Takes the whole list out in one go. Asked about: too little by the book, then what is there is taken. Refused:
 * `thaw-nothing` where nothing is wanted any more, `freezer-empty` where nothing of it is there.
 */
export function decideThaw(facility: Facility, list: readonly Items[], forDay: Day, moment: Moment): Decision {
  const taking = thawTaking(facility, list, forDay, moment.day);
  const short = taking.filter((one) => one.short > 0);
  const takes = taking.flatMap((one) => one.take);
  if (takes.length === 0)
    return {
      kind: 'refused',
      problem: short.length > 0 ? problem('freezer-empty') : problem('thaw-nothing', { day: sayDayShort(forDay) }),
    };
  const drafts = takes.map(
    ({ lot, count }): EventDraft => ({
      kind: 'lot-used',
      subjects: [lot],
      payload: { count, ...(forDay !== moment.day && { forDay }) },
      day: moment.day,
    }),
  );
  const missing = short.map((one) => `${one.short} × ${sayPrey(one.prey)}`).join(', ');
  const doubt = short.length === 0 ? null : problem('thaw-short', { missing });
  return unlessDoubted(drafts, `thawed ${sayTaken(taking)}`, [doubt]);
}

function sayTaken(taking: readonly ThawTaking[]): string {
  const counted = taking.map(({ prey, take }) => ({ prey, count: take.reduce((sum, one) => sum + one.count, 0) }));
  return counted.flatMap(({ prey, count }) => (count === 0 ? [] : [`${count} × ${sayPrey(prey)}`])).join(', ');
}
