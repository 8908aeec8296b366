import { useState } from 'preact/hooks';
import {
  type ClutchChances,
  type LocusRow,
  locusOrder,
  type PlannedPairing,
  type YoungLook,
} from '../../core/index.ts';
import { type Asked, useAsked, type YoungAnswer } from '../genetics/index.ts';
import { useApp } from '../model/app.ts';

/** The likeliest looks, shown at once. */
export const FIRST_LOOKS = 12;
/** Nobody reads on for longer, and the page stays quick. */
export const MOST_LOOKS = 5000;
/** So many lines of a long list at a time. */
const PAGE = 60;

export interface Looks {
  readonly first: Asked<YoungAnswer> | null;
  /** The long list, once it was asked for. */
  readonly all: Asked<YoungAnswer> | null;
  readonly lines: readonly YoungLook[];
  /** What the clutch can hold of each of the lines; empty until the worker has answered. */
  readonly clutches: Asked<readonly ClutchChances[]> | null;
  /** How many more lines there are to show of what is known. */
  readonly more: number;
  askAll(): void;
  /** Stops the long list and leaves the first lines. */
  cancel(): void;
  showMore(): void;
}

/** The looks of a pairing's young, worked out in the worker: the likeliest first, all of them when asked for. */
export function useLooks(planned: PlannedPairing, eggs: number): Looks {
  const { site } = useApp();
  const { cross, sire } = planned;
  const siteRows = site.facility.value.site.loci.filter((row) => row.species === sire.species);
  const key = keyOf(planned, siteRows);
  const [wantedAll, wantAll] = useState<string | null>(null);
  const [shown, setShown] = useState({ key, count: PAGE });
  const ask = { ask: 'young' as const, cross, species: sire.species, siteRows };
  const first = useAsked({ ...ask, limit: FIRST_LOOKS }, key);
  const all = useAsked(wantedAll === key ? { ...ask, limit: MOST_LOOKS } : null, key);
  const known = all?.at === 'done' ? all.value.looks : first?.at === 'done' ? first.value.looks : [];
  const count = shown.key === key ? shown.count : PAGE;
  const lines = known.slice(0, count);
  const order = locusOrder(cross);
  const looks = lines.map(({ labels }) => new Map(order.map((locus, at) => [locus, labels[at] ?? ''] as const)));
  const clutches = useAsked(
    looks.length === 0 ? null : { ask: 'clutches', cross, looks, size: eggs, of: 'eggs' },
    `${key} ${eggs} ${lines.length}`,
  );
  return {
    first,
    all,
    lines,
    clutches,
    more: known.length - lines.length,
    askAll: () => wantAll(key),
    cancel: () => wantAll(null),
    showMore: () => setShown({ key, count: count + PAGE }),
  };
}

/** Says when another cross is meant: the records are made anew by every event, also by those that change nothing here. */
function keyOf({ sire, dam }: PlannedPairing, siteRows: readonly LocusRow[]): string {
  return JSON.stringify([...[sire, dam].map(({ id, sex, traits }) => [id, sex, traits?.code]), siteRows]);
}
