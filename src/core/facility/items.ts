import type { Day } from '../days.ts';
import { type EventOf, lastMsOf, laterWriter, type SiteEvent } from '../events/index.ts';
import type { Id } from '../ids.ts';
import { latest } from './latest.ts';

/** A thing in the shop: a ware, or the pieces of one shed skin. Prices are in the smallest unit of the site's currency. */
export interface ItemRecord {
  readonly id: Id;
  readonly kind: 'ware' | 'shed';
  readonly name: string;
  readonly priceMinor: number;
  /** The maker's number, where the ware has one (GTIN-8, 12, 13 or 14). */
  readonly gtin: string | null;
  readonly words: string | null;
  readonly shelf: Id | null;
  /** At so few left it is to be made or ordered again. */
  readonly lowAt: number | null;
  /** So many will ever be made; null for no limit. */
  readonly edition: number | null;
  /** Of a shed item: the animal, and what it was and was called on that day. */
  readonly animal: Id | null;
  readonly species: string | null;
  readonly shedOn: Day | null;
  readonly since: Day;
  /** Ever made or received. */
  readonly made: number;
  readonly sold: number;
  readonly wasted: number;
  readonly left: number;
  readonly countedOn: Day | null;
  readonly lastSoldOn: Day | null;
  readonly retiredOn: Day | null;
  readonly printed: { readonly revision: string; readonly day: Day } | null;
  readonly lastMs: Readonly<Record<string, number>>;
}

type Pricing = EventOf<'ware-set'> | EventOf<'shed-item-made'> | EventOf<'item-priced'>;

/** The shop's item that these events are about; null if none made it. */
export function itemRecord(id: Id, events: readonly SiteEvent[]): ItemRecord | null {
  const own = events.filter((event) => event.subjects[0] === id);
  const what = ware(own) ?? shed(own);
  const first = own.find((event) => event.kind === 'ware-set' || event.kind === 'shed-item-made');
  if (what === null || first === undefined) return null;
  const printed = own.filter((event) => event.kind === 'tag-printed').at(-1);
  return {
    id,
    ...what,
    priceMinor: priceOf(own),
    since: first.day,
    ...counts(own),
    printed: printed === undefined ? null : { revision: printed.payload.revision, day: printed.day },
    lastMs: lastMsOf(own),
  };
}

function ware(own: readonly SiteEvent[]) {
  const said = latest(own, 'ware-set')?.payload;
  if (said === undefined) return null;
  return {
    kind: 'ware',
    name: said.name,
    gtin: said.gtin ?? null,
    words: said.words ?? null,
    shelf: (said.shelf as Id | undefined) ?? null,
    lowAt: said.lowAt ?? null,
    edition: said.edition ?? null,
    animal: null,
    species: null,
    shedOn: null,
  } as const;
}

function shed(own: readonly SiteEvent[]) {
  const event = latest(own, 'shed-item-made');
  if (event === undefined) return null;
  const { shown, species, shedOn, words, shelf } = event.payload;
  return {
    kind: 'shed',
    name: shown,
    gtin: null,
    words: words ?? null,
    shelf: (shelf as Id | undefined) ?? null,
    lowAt: null,
    edition: null,
    animal: event.subjects[1] ?? null,
    species,
    shedOn: shedOn as Day,
  } as const;
}

function priceOf(own: readonly SiteEvent[]): number {
  const prices = own.filter(
    (event): event is Pricing =>
      event.kind === 'ware-set' || event.kind === 'shed-item-made' || event.kind === 'item-priced',
  );
  return prices.sort(laterWriter).at(-1)?.payload.priceMinor ?? 0;
}

/** A count begins anew: what was sold before it is in it already. */
function counts(own: readonly SiteEvent[]) {
  let [made, sold, wasted, left] = [0, 0, 0, 0];
  let [countedOn, lastSoldOn, retiredOn]: (Day | null)[] = [null, null, null];
  for (const event of own) {
    if (event.kind === 'item-stocked' || event.kind === 'shed-item-made') {
      made += event.payload.count;
      left += event.payload.count;
    } else if (event.kind === 'item-counted') {
      [left, countedOn] = [event.payload.count, event.day];
    } else if (event.kind === 'item-sold') {
      [sold, left, lastSoldOn] = [sold + event.payload.count, Math.max(0, left - event.payload.count), event.day];
    } else if (event.kind === 'item-wasted') {
      [wasted, left] = [wasted + event.payload.count, Math.max(0, left - event.payload.count)];
    } else if (event.kind === 'item-retired') retiredOn = event.day;
  }
  const days = { countedOn: countedOn ?? null, lastSoldOn: lastSoldOn ?? null, retiredOn: retiredOn ?? null };
  return { made, sold, wasted, left, ...days };
}
