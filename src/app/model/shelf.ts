import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type Decision,
  decideItem,
  type Id,
  type ItemAction,
  type ItemRecord,
  type Moment,
  type Problem,
  problem,
} from '../../core/index.ts';
import type { Clock } from './clock.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';
import type { StripModel } from './strip.ts';

/** What each scanned tag means in the shop until it is put down: one sold, or one more counted. */
export type ShelfMode = 'sell' | 'count';

/** A question about an item, with two big answers. */
export interface ItemQuestion {
  readonly item: ItemRecord;
  readonly problem: Problem;
  readonly said: string;
  yes(): Promise<void>;
  no(): void;
}

/** The shop's shelf: what a scanned tag does, what was counted so far, and the one way by which an item's events are written. */
export interface ShelfModel {
  readonly mode: ReadonlySignal<ShelfMode | null>;
  /** Pieces counted so far, by item; written when the count is ended. */
  readonly counted: ReadonlySignal<ReadonlyMap<Id, number>>;
  readonly question: ReadonlySignal<ItemQuestion | null>;
  take(mode: ShelfMode | null): void;
  /** Puts a scanned item to the mode in hand; false where there is none, so that its page opens. */
  scanned(id: Id): Promise<boolean>;
  /** Decides and writes what happens to an item; asks or refuses in words. */
  act(id: Id, action: ItemAction): Promise<Decision['kind']>;
  /** Writes what a rule decided of an item that may be new. */
  decided(id: Id, name: string, decision: Decision): Promise<Decision['kind']>;
  /** Writes the count of every scanned item in one go. */
  endCount(): Promise<Decision['kind']>;
  /** Puts one piece fewer to a count: a tag was scanned twice. */
  oneFewer(id: Id): void;
}

export interface ShelfParts {
  readonly site: SiteModel;
  readonly clock: Clock;
  readonly strip: StripModel;
  readonly signs: Signs;
}

export function createShelf({ site, clock, strip, signs }: ShelfParts): ShelfModel {
  const mode = signal<ShelfMode | null>(null);
  const counted = signal<ReadonlyMap<Id, number>>(new Map());
  const question = signal<ItemQuestion | null>(null);
  const moment = (): Moment => ({ day: clock.today.value, today: clock.today.value, nowMs: clock.nowMs() });

  function refused(subject: Id | null, name: string, why: Problem): 'refused' {
    signs.give('refused');
    strip.add({ subject, name, said: 'not written', result: 'refused', problem: why });
    return 'refused';
  }

  async function write(subject: Id, name: string, decision: Exclude<Decision, { kind: 'refused' }>) {
    const written = await site.write(decision.drafts);
    if (!written.ok) return refused(subject, name, written.problem);
    signs.give('accepted');
    strip.add({ subject, name, said: decision.said, result: 'accepted', problem: null, events: written.value });
    return 'accepted' as const;
  }

  async function decided(id: Id, name: string, decision: Decision): Promise<Decision['kind']> {
    if (decision.kind === 'refused') return refused(id, name, decision.problem);
    const item = site.facility.value.items.get(id);
    if (decision.kind === 'accepted' || item === undefined) return write(id, name, decision);
    signs.give('asks');
    question.value = {
      item,
      problem: decision.problem,
      said: decision.said,
      async yes() {
        question.value = null;
        await write(id, name, decision);
      },
      no() {
        question.value = null;
      },
    };
    return 'asks';
  }

  async function act(id: Id, action: ItemAction): Promise<Decision['kind']> {
    const item = site.facility.value.items.get(id);
    if (item === undefined) return refused(null, id, problem('unknown-id', { id }));
    return decided(id, item.name, decideItem(item, action, moment()));
  }

  function put(id: Id, by: number): void {
    const pieces = Math.max(0, (counted.value.get(id) ?? 0) + by);
    counted.value = new Map(counted.value).set(id, pieces);
  }

  async function scanned(id: Id): Promise<boolean> {
    if (mode.value === null) return false;
    if (mode.value === 'sell') {
      await act(id, { do: 'sold', count: 1 });
      return true;
    }
    put(id, 1);
    signs.give('accepted');
    return true;
  }

  async function endCount(): Promise<Decision['kind']> {
    const { items } = site.facility.value;
    const drafts = [...counted.value].flatMap(([id, count]) => {
      const item = items.get(id);
      const decision = item && decideItem(item, { do: 'counted', count }, moment());
      return decision?.kind === 'accepted' ? decision.drafts : [];
    });
    const said = `counted ${drafts.length === 1 ? '1 item' : `${drafts.length} items`}`;
    const [first] = counted.value.keys();
    if (first !== undefined && (await write(first, 'Shelf', { kind: 'accepted', drafts, said })) === 'refused')
      return 'refused';
    counted.value = new Map();
    mode.value = null;
    return 'accepted';
  }

  return {
    mode,
    counted,
    question,
    scanned,
    act,
    decided,
    endCount,
    take(next) {
      mode.value = next;
      counted.value = new Map();
    },
    oneFewer(id) {
      put(id, -1);
    },
  };
}
