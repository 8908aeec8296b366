import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import type { Facility, LotRecord } from '../facility/index.ts';
import { problem } from '../problems.ts';
import { unlessDoubted } from './doubts.ts';
import { sayPrey } from './prey.ts';

/** What was thawed of one class for a feeding day, and what became of it. */
export interface SessionLine {
  readonly prey: string;
  readonly used: number;
  /** Taken by animals on that day. */
  readonly eaten: number;
  /** Thrown away thawed. */
  readonly thrown: number;
  /** Thawed and neither eaten nor thrown away. */
  readonly left: number;
}

/** So many items of a class. */
export interface Items {
  readonly prey: string;
  readonly count: number;
}

/** Rule CARE-SESSION: what was thawed for a day is eaten that day or thrown away; it is never refrozen (common practice, no source). */
export function sessionOf(facility: Facility, day: Day): readonly SessionLine[] {
  const lines = new Map<string, { used: number; thrown: number }>();
  for (const lot of facility.lots.values()) {
    const session = lot.sessions.find((one) => one.day === day);
    if (session === undefined) continue;
    const line = lines.get(lot.prey) ?? { used: 0, thrown: 0 };
    lines.set(lot.prey, { used: line.used + session.used, thrown: line.thrown + session.thrown });
  }
  const eatenOf = eatenOn(facility, day);
  const sorted = [...lines].sort(([a], [b]) => (a < b ? -1 : 1));
  return sorted.map(([prey, { used, thrown }]) => {
    const eaten = eatenOf.get(prey) ?? 0;
    return { prey, used, eaten, thrown, left: Math.max(0, used - eaten - thrown) };
  });
}

/** Throws away what of a feeding day is left thawed; what is still needed is asked about. Refused: `throw-nothing`. */
export function decideThrow(facility: Facility, day: Day, needed: readonly Items[], moment: Moment): Decision {
  const over = sessionOf(facility, day).filter((line) => line.left > 0);
  if (over.length === 0) return { kind: 'refused', problem: problem('throw-nothing', { day: sayDayShort(day) }) };
  const drafts = over.flatMap((line) => draftsOf(facility, line, day, moment.day));
  const said = `thrown away thawed: ${over.map((line) => `${line.left} × ${sayPrey(line.prey)}`).join(', ')}`;
  const early = needed.filter(({ prey, count }) => count > 0 && over.some((line) => line.prey === prey));
  const words = early.map(({ prey, count }) => `${count} × ${sayPrey(prey)}`).join(', ');
  return unlessDoubted(drafts, said, [early.length === 0 ? null : problem('throw-early', { needed: words })]);
}

/** The newest lot first: of two that were thawed, the older one was probably eaten up. */
function draftsOf(facility: Facility, { prey, left }: SessionLine, day: Day, on: Day): readonly EventDraft[] {
  const lots = [...facility.lots.values()].filter((lot) => lot.prey === prey && openOf(lot, day) > 0);
  lots.sort((a, b) => (`${a.receivedOn} ${a.id}` > `${b.receivedOn} ${b.id}` ? -1 : 1));
  const drafts: EventDraft[] = [];
  let rest = left;
  for (const lot of lots) {
    const count = Math.min(rest, openOf(lot, day));
    rest -= count;
    if (count === 0) continue;
    const payload = { count, why: 'not eaten', thawed: true, ...(day !== on && { forDay: day }) };
    drafts.push({ kind: 'lot-wasted', subjects: [lot.id], payload, day: on });
  }
  return drafts;
}

function openOf({ sessions }: LotRecord, day: Day): number {
  const session = sessions.find((one) => one.day === day);
  return Math.max(0, (session?.used ?? 0) - (session?.thrown ?? 0));
}

/** Every offer is kept in the record for long enough to be found a day later. */
function eatenOn({ animals }: Facility, day: Day): ReadonlyMap<string, number> {
  const eaten = new Map<string, number>();
  for (const { offers } of animals.values())
    for (const offer of offers)
      if (offer.taken && offer.day === day) eaten.set(offer.prey, (eaten.get(offer.prey) ?? 0) + offer.count);
  return eaten;
}
