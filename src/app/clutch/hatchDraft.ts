import { type Signal, signal } from '@preact/signals';
import type { ClutchRecord, Day, Id, Traits, YoungLook } from '../../core/index.ts';

/** Young of a look that was typed. */
export interface TypedYoung {
  readonly traits: Traits;
  readonly words: string;
  readonly count: number;
}

/** A hatch-out while it is filled in. */
export interface HatchDraft {
  readonly hatched: number;
  /** Of the eggs that are left then no more will come. */
  readonly isLast: boolean;
  /** Null: today, or for a litter the day of its birth. */
  readonly day: Day | null;
  /** The sire that the looks are worked out with; null where nobody is named. */
  readonly sire: Id | null;
  /** How many of each predicted look, by its labels. */
  readonly picked: ReadonlyMap<string, number>;
  readonly typed: readonly TypedYoung[];
}

/** Kept while the app is open, so that a look at another page loses nothing. */
const drafts = new Map<Id, Signal<HatchDraft>>();

/** The draft of a clutch; it begins with as many as are left. */
export function draftFor(clutch: ClutchRecord, left: number): Signal<HatchDraft> {
  const known = drafts.get(clutch.id);
  if (known !== undefined) return known;
  const begun = signal<HatchDraft>({
    hatched: left,
    isLast: false,
    day: null,
    sire: clutch.sire,
    picked: new Map(),
    typed: [],
  });
  drafts.set(clutch.id, begun);
  return begun;
}

/** What was written needs no draft any more. */
export function forgetDraft(id: Id): void {
  drafts.delete(id);
}

/** How many young have a look so far. */
export function saidOf({ picked, typed }: HatchDraft): number {
  const counts = [...picked.values(), ...typed.map(({ count }) => count)];
  return counts.reduce((sum, one) => sum + one, 0);
}

/** What tells one look from another. */
export function keyOf({ labels }: YoungLook): string {
  return labels.join('\u0000');
}
