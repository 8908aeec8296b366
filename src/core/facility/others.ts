import type { Day } from '../days.ts';
import { laterWriter, type Payload, type SiteEvent } from '../events/index.ts';
import type { Id } from '../ids.ts';

/** A place: its own label, its place in the walk, what was done there last. */
export interface PlaceRecord {
  readonly id: Id;
  readonly placeKind: Payload<'place-added'>['placeKind'];
  readonly name: string;
  readonly parent: Id | null;
  /** Where it stands in the walk among its neighbours. */
  readonly walk: number;
  readonly cleanedOn: Day | null;
  readonly cleanedFullyOn: Day | null;
  readonly waterOn: Day | null;
  readonly lastMs: Readonly<Record<string, number>>;
}

/** A lot in the freezer. */
export interface LotRecord {
  readonly id: Id;
  readonly prey: string;
  readonly eachG: readonly [number, number];
  readonly received: number;
  readonly receivedOn: Day;
  readonly useBy: Day | null;
  /** The last count, or what came if nobody counted. */
  readonly left: number;
}

/** A clutch: who laid it and what became of it. */
export interface ClutchRecord {
  readonly id: Id;
  readonly dam: Id;
  readonly sire: Id | null;
  readonly laidOn: Day;
  readonly eggs: number;
  readonly slugs: number;
  readonly hatchedOn: Day | null;
  readonly hatched: number | null;
}

/** A person who logs. */
export interface KeeperRecord {
  readonly id: Id;
  readonly name: string;
  readonly role: Payload<'keeper-added'>['role'];
}

/** The site's own facts. */
export interface SiteRecord {
  readonly name: string;
  readonly timeZone: string;
  readonly host: string | null;
  readonly currency: string | null;
  readonly safetyLine: string | null;
}

/** A site before anybody named it. */
export const UNNAMED_SITE: SiteRecord = {
  name: 'Unnamed site',
  timeZone: 'UTC',
  host: null,
  currency: null,
  safetyLine: null,
};

/** The site's facts by their last writer. */
export function siteRecord(events: readonly SiteEvent[]): SiteRecord {
  const said = latest(events, 'site-named')?.payload;
  if (said === undefined) return UNNAMED_SITE;
  const { name, timeZone, host, currency, safetyLine } = said;
  return { name, timeZone, host: host ?? null, currency: currency ?? null, safetyLine: safetyLine ?? null };
}

/** The place that these events are about; null if none added it. */
export function placeRecord(id: Id, events: readonly SiteEvent[]): PlaceRecord | null {
  const said = latest(events, 'place-added')?.payload;
  if (said === undefined) return null;
  const lastMs: Record<string, number> = {};
  let [cleanedOn, cleanedFullyOn, waterOn]: (Day | null)[] = [null, null, null];
  for (const event of events) {
    lastMs[event.kind] = Math.max(lastMs[event.kind] ?? 0, event.clock[0]);
    if (event.kind === 'place-cleaned') cleanedOn = event.day;
    if (event.kind === 'place-cleaned' && event.payload.how === 'full') cleanedFullyOn = event.day;
    if (event.kind === 'water-changed') waterOn = event.day;
  }
  const parent = (said.parent as Id | undefined) ?? null;
  const done = { cleanedOn: cleanedOn ?? null, cleanedFullyOn: cleanedFullyOn ?? null, waterOn: waterOn ?? null };
  return { id, placeKind: said.placeKind, name: said.name, parent, walk: said.walk, ...done, lastMs };
}

/** The lot that these events are about; null if none received it. */
export function lotRecord(id: Id, events: readonly SiteEvent[]): LotRecord | null {
  const got = latest(events, 'lot-received');
  if (got === undefined) return null;
  const counted = events.filter((event) => event.kind === 'stock-counted').at(-1);
  const { prey, eachG, count, useBy } = got.payload;
  const left = counted?.payload.count ?? count;
  return { id, prey, eachG, received: count, receivedOn: got.day, useBy: (useBy as Day | undefined) ?? null, left };
}

/** The clutch that these events are about; null if none laid it. */
export function clutchRecord(id: Id, events: readonly SiteEvent[]): ClutchRecord | null {
  const laid = events
    .filter((event) => event.kind === 'clutch-laid' && event.payload.clutch === id)
    .sort(laterWriter)
    .at(-1);
  if (laid?.kind !== 'clutch-laid') return null;
  const dam = laid.subjects[0];
  if (dam === undefined) return null;
  const hatch = latest(events, 'clutch-hatched');
  const { eggs, slugs, sire } = laid.payload;
  const hatched = { hatchedOn: hatch?.day ?? null, hatched: hatch?.payload.hatched ?? null };
  return { id, dam, sire: (sire as Id | undefined) ?? null, laidOn: laid.day, eggs, slugs: slugs ?? 0, ...hatched };
}

/** The keeper that these events are about; null if none added them. */
export function keeperRecord(id: Id, events: readonly SiteEvent[]): KeeperRecord | null {
  const said = latest(events, 'keeper-added')?.payload;
  return said === undefined ? null : { id, name: said.name, role: said.role };
}

function latest<K extends SiteEvent['kind']>(
  events: readonly SiteEvent[],
  kind: K,
): Extract<SiteEvent, { kind: K }> | undefined {
  const of = events.filter((event): event is Extract<SiteEvent, { kind: K }> => event.kind === kind);
  return of.reduce<Extract<SiteEvent, { kind: K }> | undefined>(
    (last, event) => (last && laterWriter(last, event) > 0 ? last : event),
    undefined,
  );
}
