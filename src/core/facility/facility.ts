import { type AnimalRecord, animalRecord } from '../animal/index.ts';
import { entries, standing } from '../events/effective.ts';
import type { LogEvent, SiteEvent } from '../events/index.ts';
import type { Id } from '../ids.ts';
import { gramsOfPrey } from '../stock/index.ts';
import { type ItemRecord, itemRecord } from './items.ts';
import { type LotRecord, lotRecord } from './lots.ts';
import {
  type ClutchRecord,
  clutchRecord,
  type KeeperRecord,
  keeperRecord,
  type SiteRecord,
  siteRecord,
  UNNAMED_SITE,
} from './others.ts';
import { type PlaceRecord, placeRecord } from './places.ts';

/** What is known now: the fold of the log. Records are plain JSON and do not depend on today. */
export interface Facility {
  readonly site: SiteRecord;
  readonly animals: ReadonlyMap<Id, AnimalRecord>;
  readonly places: ReadonlyMap<Id, PlaceRecord>;
  readonly lots: ReadonlyMap<Id, LotRecord>;
  readonly clutches: ReadonlyMap<Id, ClutchRecord>;
  readonly items: ReadonlyMap<Id, ItemRecord>;
  readonly keepers: ReadonlyMap<Id, KeeperRecord>;
  /** Subjects that events speak of but none has added, with how many events wait for them. */
  readonly strangers: ReadonlyMap<Id, number>;
}

interface Draft {
  site: SiteRecord;
  readonly animals: Map<Id, AnimalRecord>;
  readonly places: Map<Id, PlaceRecord>;
  readonly lots: Map<Id, LotRecord>;
  readonly clutches: Map<Id, ClutchRecord>;
  readonly items: Map<Id, ItemRecord>;
  readonly keepers: Map<Id, KeeperRecord>;
  readonly strangers: Map<Id, number>;
}

/** A site of which nothing is known yet. */
export function emptyFacility(): Facility {
  return emptyDraft();
}

/** Folds a log, in any order; it never throws (law: tests/laws). Events that make no sense leave the state as it was. */
export function foldFacility(events: Iterable<LogEvent>): Facility {
  const draft = emptyDraft();
  const histories = historiesOf(events);
  for (const [subject, history] of histories) putRecord(draft, subject, history);
  return draft;
}

/**
 * Folds one subject again from its whole history and gives a facility with that record in it. The maps are shared with
 * the old one (a copy at each event is too slow for a large log), so the old value is no longer to be used.
 */
export function refold(facility: Facility, subject: Id | typeof SITE, history: readonly LogEvent[]): Facility {
  const draft = { ...facility } as Draft;
  if (subject !== SITE) forget(draft, subject);
  putRecord(draft, subject, history);
  return draft;
}

/** The key of events that have no subject: they are about the site itself. */
export const SITE = '';

/** Events by subject; slips are also filed with the subjects of what they correct. */
export function historiesOf(events: Iterable<LogEvent>): Map<Id | typeof SITE, LogEvent[]> {
  const histories = new Map<Id | typeof SITE, LogEvent[]>();
  const slips: LogEvent[] = [];
  for (const event of events) {
    file(histories, event, event.subjects);
    if (event.kind === 'slip-made') slips.push(event);
  }
  if (slips.length > 0) fileSlips(histories, slips);
  return histories;
}

/** Plain JSON of a facility, for a snapshot. */
export function toSnapshot(facility: Facility): string {
  const { site, animals, places, lots, clutches, items, keepers, strangers } = facility;
  const snapshot: Snapshot = {
    version: SNAPSHOT_VERSION,
    site,
    animals: [...animals.values()],
    places: [...places.values()],
    lots: [...lots.values()],
    clutches: [...clutches.values()],
    items: [...items.values()],
    keepers: [...keepers.values()],
    strangers: [...strangers],
  };
  return JSON.stringify(snapshot);
}

/** Raised whenever the shape of a record changes; an older snapshot is then left and the log folded again. */
export const SNAPSHOT_VERSION = 8;

interface Snapshot {
  readonly version: number;
  readonly site: SiteRecord;
  readonly animals: readonly AnimalRecord[];
  readonly places: readonly PlaceRecord[];
  readonly lots: readonly LotRecord[];
  readonly clutches: readonly ClutchRecord[];
  readonly items: readonly ItemRecord[];
  readonly keepers: readonly KeeperRecord[];
  readonly strangers: readonly [Id, number][];
}

/** Reads a snapshot that this version wrote (the store has checked its hash); null for any other text: fold the log instead. */
export function fromSnapshot(json: string): Facility | null {
  try {
    const data = JSON.parse(json) as Snapshot;
    if (data.version !== SNAPSHOT_VERSION) return null;
    return {
      site: data.site,
      animals: byId(data.animals),
      places: byId(data.places),
      lots: byId(data.lots),
      clutches: byId(data.clutches),
      items: byId(data.items),
      keepers: byId(data.keepers),
      strangers: new Map(data.strangers),
    };
  } catch {
    return null;
  }
}

function byId<T extends { readonly id: Id }>(list: readonly T[]): Map<Id, T> {
  return new Map(list.map((one) => [one.id, one]));
}

function fileSlips(histories: Map<Id | typeof SITE, LogEvent[]>, slips: readonly LogEvent[]): void {
  const targets = new Map<string, LogEvent[]>();
  for (const slip of slips) {
    const corrects = (slip.payload as { corrects?: string } | null)?.corrects;
    if (corrects === undefined) continue;
    const same = targets.get(corrects);
    if (same === undefined) targets.set(corrects, [slip]);
    else same.push(slip);
  }
  for (const history of histories.values()) fileSlipsIn(history, targets);
}

function fileSlipsIn(history: LogEvent[], targets: ReadonlyMap<string, readonly LogEvent[]>): void {
  // Most histories have nothing that was corrected.
  let filed: Set<LogEvent> | null = null;
  // The list grows while it is walked, because a slip that was just filed may itself be corrected.
  for (const event of history) {
    const slips = targets.get(event.id);
    if (slips === undefined) continue;
    filed ??= new Set(history);
    for (const slip of slips) {
      if (!filed.has(slip)) history.push(slip);
      filed.add(slip);
    }
  }
}

function file(histories: Map<Id | typeof SITE, LogEvent[]>, event: LogEvent, subjects: readonly Id[]): void {
  if (subjects.length === 0) push(histories, SITE, event);
  for (const subject of subjects) push(histories, subject, event);
}

function push(histories: Map<Id | typeof SITE, LogEvent[]>, key: Id | typeof SITE, event: LogEvent): void {
  const list = histories.get(key);
  if (list === undefined) histories.set(key, [event]);
  else list.push(event);
}

function putRecord(draft: Draft, subject: Id | typeof SITE, history: readonly LogEvent[]): void {
  const events = standing(history);
  if (subject === SITE) {
    draft.site = siteRecord(events);
    return;
  }
  if (!putFound(draft, subject, events)) draft.strangers.set(subject, entries(history).length);
}

function putFound(draft: Draft, id: Id, events: readonly SiteEvent[]): boolean {
  switch (foundingKind(id, events)) {
    case 'animal':
      return put(draft.animals, id, animalRecord(id, events, gramsOfPrey));
    case 'place':
      return put(draft.places, id, placeRecord(id, events));
    case 'lot':
      return put(draft.lots, id, lotRecord(id, events));
    case 'clutch':
      return put(draft.clutches, id, clutchRecord(id, events));
    case 'item':
      return put(draft.items, id, itemRecord(id, events));
    case 'keeper':
      return put(draft.keepers, id, keeperRecord(id, events));
    case null:
      return false;
  }
}

type Founded = 'animal' | 'place' | 'lot' | 'clutch' | 'item' | 'keeper';

/** An id is one thing only: if damage makes two of it, the animal comes first, since it must not vanish. */
function foundingKind(id: Id, events: readonly SiteEvent[]): Founded | null {
  const founds = (kind: SiteEvent['kind']): boolean =>
    events.some((event) => event.kind === kind && event.subjects[0] === id);
  if (founds('animal-added')) return 'animal';
  if (founds('place-added')) return 'place';
  if (founds('lot-received')) return 'lot';
  if (founds('ware-set') || founds('shed-item-made')) return 'item';
  if (founds('keeper-added')) return 'keeper';
  const laid = (event: SiteEvent): boolean =>
    (event.kind === 'clutch-laid' || event.kind === 'young-born') && event.payload.clutch === id;
  return events.some(laid) ? 'clutch' : null;
}

function put<T>(map: Map<Id, T>, id: Id, record: T | null): boolean {
  if (record === null) return false;
  map.set(id, record);
  return true;
}

function forget(draft: Draft, id: Id): void {
  for (const map of [
    draft.animals,
    draft.places,
    draft.lots,
    draft.clutches,
    draft.items,
    draft.keepers,
    draft.strangers,
  ])
    map.delete(id);
}

function emptyDraft(): Draft {
  return {
    site: UNNAMED_SITE,
    animals: new Map(),
    places: new Map(),
    lots: new Map(),
    clutches: new Map(),
    items: new Map(),
    keepers: new Map(),
    strangers: new Map(),
  };
}
