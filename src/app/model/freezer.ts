import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type Arrived,
  type Day,
  type Decision,
  decideLot,
  decideThaw,
  decideThrow,
  type Id,
  type Items,
  type LogEvent,
  type LotAct,
  type Moment,
  nameOf,
  type Problem,
  problem,
  type Result,
  receiveLot,
  sayDayShort,
  sayId,
  sayPrey,
} from '../../core/index.ts';
import type { Clock } from './clock.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';
import type { StripModel } from './strip.ts';

/** A question about prey, with two big answers. */
export interface FreezerQuestion {
  /** What it is about, such as `rat pup lot 7RMB-N615`. */
  readonly name: string;
  readonly problem: Problem;
  readonly said: string;
  yes(): Promise<void>;
  no(): void;
}

/** The freezer: the one way by which what happens to lots is written; it asks or refuses in words, on the strip and by signs. */
export interface FreezerModel {
  readonly question: ReadonlySignal<FreezerQuestion | null>;
  /** The lot that was received last on this device, whose label is to be printed; null once that is seen to. */
  readonly received: ReadonlySignal<Id | null>;
  /** Takes a lot in on a day. Gives the refusal, so that it stands at the form. */
  receive(arrived: Arrived, day: Day): Promise<Problem | null>;
  labelled(): void;
  /** Takes out of a lot, throws away or counts. Gives the refusal. */
  act(lot: Id, act: LotAct): Promise<Problem | null>;
  /** Takes a thaw list out for a feeding day. */
  thaw(list: readonly Items[], forDay: Day): Promise<Problem | null>;
  /** Throws away what of a feeding day is left thawed; what of it is still needed is asked about. */
  throwAway(forDay: Day, needed: readonly Items[]): Promise<Problem | null>;
}

interface FreezerParts {
  readonly site: SiteModel;
  readonly clock: Clock;
  readonly strip: StripModel;
  readonly signs: Signs;
}

/** What a decision is written as: under which name, and by which events. */
interface Deed {
  readonly subject: Id | null;
  readonly name: string;
  write(): Promise<Result<readonly LogEvent[]>>;
}

export function createFreezer({ site, clock, strip, signs }: FreezerParts): FreezerModel {
  const question = signal<FreezerQuestion | null>(null);
  const received = signal<Id | null>(null);
  const momentOn = (day: Day): Moment => ({ day, today: clock.today.value, nowMs: clock.nowMs() });

  function refused({ subject, name }: Omit<Deed, 'write'>, said: string, why: Problem): Problem {
    signs.give('refused');
    strip.add({ subject, name, said, result: 'refused', problem: why });
    return why;
  }

  async function written(deed: Deed, said: string): Promise<Problem | null> {
    const events = await deed.write();
    if (!events.ok) return refused(deed, `not written: ${said}`, events.problem);
    signs.give('accepted');
    const subject = deed.subject ?? events.value[0]?.subjects[0] ?? null;
    strip.add({ subject, name: deed.name, said, result: 'accepted', problem: null, events: events.value });
    return null;
  }

  type Decided = { kind: 'accepted'; said: string } | { kind: 'asks'; said: string; problem: Problem };
  async function decided(
    deed: Deed,
    decision: Decided | { kind: 'refused'; problem: Problem },
  ): Promise<Problem | null> {
    if (decision.kind === 'refused') return refused(deed, 'not written', decision.problem);
    if (decision.kind === 'accepted') return written(deed, decision.said);
    signs.give('asks');
    question.value = {
      name: deed.name,
      problem: decision.problem,
      said: decision.said,
      async yes() {
        question.value = null;
        await written(deed, decision.said);
      },
      no() {
        question.value = null;
      },
    };
    return null;
  }

  const draftsOf = (decision: Decision) => site.write(decision.kind === 'refused' ? [] : decision.drafts);

  return {
    question,
    received,
    async receive(arrived, day) {
      const decision = receiveLot(site.facility.value, arrived, momentOn(day));
      async function write() {
        if (decision.kind === 'refused') return { ok: false, problem: decision.problem } as const;
        const events = await site.writeNew((mint) => [decision.draftFor(mint())]);
        if (events.ok) received.value = events.value[0]?.subjects[0] ?? null;
        return events;
      }
      return decided({ subject: null, name: `${sayPrey(arrived.prey)} lot`, write }, decision);
    },
    labelled() {
      received.value = null;
    },
    async act(id, act) {
      const facility = site.facility.value;
      const lot = facility.lots.get(id);
      if (lot === undefined)
        return refused({ subject: null, name: sayId(id) }, 'not written', problem('lot-unknown', { id: sayId(id) }));
      const decision = decideLot(facility, lot, act, momentOn(clock.today.value));
      return decided({ subject: id, name: nameOf(facility, id), write: () => draftsOf(decision) }, decision);
    },
    async thaw(list, forDay) {
      const decision = decideThaw(site.facility.value, list, forDay, momentOn(clock.today.value));
      const name = `Thaw list for ${sayDayShort(forDay)}`;
      return decided({ subject: null, name, write: () => draftsOf(decision) }, decision);
    },
    async throwAway(forDay, needed) {
      const decision = decideThrow(site.facility.value, forDay, needed, momentOn(clock.today.value));
      const name = `Thawed for ${sayDayShort(forDay)}`;
      return decided({ subject: null, name, write: () => draftsOf(decision) }, decision);
    },
  };
}
