import type { Day } from '../days.ts';
import { type EventOf, lastMsOf, laterWriter, type Payload, type SiteEvent } from '../events/index.ts';
import { type LocusRow, PLAIN_ROW } from '../genetics/index.ts';
import type { Id } from '../ids.ts';
import { type Hatched, hatchedOf } from './hatchings.ts';
import { latest } from './latest.ts';
import { NO_PAPER, type PaperRecord, paperRecord } from './paper.ts';
import { type SeasonPlan, seasonPlans } from './plans.ts';

/** What an egg was when somebody last looked. */
export interface EggState {
  readonly state: Payload<'egg-candled'>['state'];
  readonly day: Day;
}

/** Where a clutch lies and at what it is kept. */
export interface Incubation {
  readonly place: Id | null;
  readonly setC: number | null;
  readonly since: Day;
}

/** One look at the incubator. */
export interface IncubationReading {
  readonly day: Day;
  readonly tempC: number;
  readonly humidityPercent: number | null;
}

/** So many readings of an incubator are kept in the record; the log holds all. */
const KEPT_READINGS = 90;

/** A clutch or a litter: who laid or bore it and what became of it. */
export interface ClutchRecord extends Hatched {
  readonly bears: 'eggs' | 'live young';
  readonly id: Id;
  readonly dam: Id;
  readonly sire: Id | null;
  readonly laidOn: Day;
  readonly eggs: number;
  readonly slugs: number;
  readonly clutchG: number | null;
  readonly incubation: Incubation | null;
  /** The latest readings, oldest first. */
  readonly readings: readonly IncubationReading[];
  /** By egg number from 1, as last candled. */
  readonly eggStates: Readonly<Record<string, EggState>>;
  readonly pippedOn: Day | null;
  readonly lastMs: Readonly<Record<string, number>>;
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
  /** The site's own rows of the tables of loci, by species and locus; they amend ours or come after them. */
  readonly loci: readonly LocusRow[];
  readonly rules: SiteRules;
  readonly paper: PaperRecord;
  /** The season plans that were accepted and stand, by species and first day. */
  readonly plans: readonly SeasonPlan[];
}

/** What the site asks for beyond the defaults. */
export interface SiteRules {
  /** A second person checks each dose. */
  readonly secondAtDoses: boolean;
  /** Which country’s record rules the inspector’s pack follows; null: none was chosen. */
  readonly countryProfile: string | null;
  /** Snakes from this length on are opened by two people. */
  readonly twoPeopleFromM: number | null;
  /** The syringes at hand, in mL; null: nobody said, and the usual sizes are taken. */
  readonly syringesMl: readonly number[] | null;
  /** Which published rule of enclosures is shown first; null: none was chosen. */
  readonly enclosureRule: string | null;
  /** For how many weeks prey is ordered; null: nobody said. */
  readonly orderWeeks: number | null;
  /** An order of prey comes after so many days; null: nobody said. */
  readonly leadDays: number | null;
  /** So many items of prey fit into the freezer; null: nobody counted. */
  readonly freezerItems: number | null;
  /** So much more than the 90 % figure is ordered, in percent; null: the spare of the thaw list. */
  readonly reservePercent: number | null;
}

const PLAIN_RULES: SiteRules = {
  secondAtDoses: false,
  countryProfile: null,
  twoPeopleFromM: null,
  syringesMl: null,
  enclosureRule: null,
  orderWeeks: null,
  leadDays: null,
  freezerItems: null,
  reservePercent: null,
};

/** A site before anybody named it. */
export const UNNAMED_SITE: SiteRecord = {
  name: 'Unnamed site',
  timeZone: 'UTC',
  host: null,
  currency: null,
  safetyLine: null,
  loci: [],
  rules: PLAIN_RULES,
  paper: NO_PAPER,
  plans: [],
};

/** The site's facts by their last writer. */
export function siteRecord(events: readonly SiteEvent[]): SiteRecord {
  const loci = siteLoci(events);
  const rules = siteRules(events);
  const said = latest(events, 'site-named')?.payload;
  const paper = paperRecord(events);
  const plans = seasonPlans(events);
  if (said === undefined) return { ...UNNAMED_SITE, loci, rules, paper, plans };
  const { name, timeZone, host, currency, safetyLine } = said;
  const facts = { host: host ?? null, currency: currency ?? null, safetyLine: safetyLine ?? null };
  return { name, timeZone, ...facts, loci, rules, paper, plans };
}

function siteRules(events: readonly SiteEvent[]): SiteRules {
  const said = latest(events, 'site-rules-set')?.payload;
  return {
    secondAtDoses: said?.secondAtDoses ?? false,
    countryProfile: said?.countryProfile ?? null,
    twoPeopleFromM: said?.twoPeopleFromM ?? null,
    syringesMl: said?.syringesMl ?? null,
    enclosureRule: said?.enclosureRule ?? null,
    orderWeeks: said?.orderWeeks ?? null,
    leadDays: said?.leadDays ?? null,
    freezerItems: said?.freezerItems ?? null,
    reservePercent: said?.reservePercent ?? null,
  };
}

/** Each locus by its last writer, in an order that does not depend on arrival. */
function siteLoci(events: readonly SiteEvent[]): readonly LocusRow[] {
  const last = new Map<string, EventOf<'locus-set'>>();
  for (const event of events) {
    if (event.kind !== 'locus-set') continue;
    const key = `${event.payload.species}\u0000${event.payload.locus.toLowerCase()}`;
    const before = last.get(key);
    if (before === undefined || laterWriter(before, event) < 0) last.set(key, event);
  }
  return [...last].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, event]) => locusRow(event.payload));
}

function locusRow(said: Payload<'locus-set'>): LocusRow {
  const { sexLink, linkage } = said;
  return {
    ...PLAIN_ROW,
    species: said.species,
    locus: said.locus,
    gene: said.gene ?? null,
    inheritance: said.inheritance,
    alleles: said.alleles,
    named: (said.named ?? []).map((one) => ({
      pair: one.pair,
      name: one.name,
      also: one.also ?? [],
      looks: one.looks ?? null,
      note: one.note ?? null,
    })),
    sexLink: sexLink === undefined ? null : { ...sexLink, r: sexLink.r ?? null },
    linkage: linkage === undefined ? null : { ...linkage, r: linkage.r ?? null },
    lethal: said.lethal ?? [],
    masks: said.masks ?? [],
    welfare: (said.welfare ?? []).map((one) => ({ ...one, sex: one.sex ?? null })),
    sources: said.sources,
    confidence: said.confidence,
    note: said.note ?? null,
  };
}

/** The clutch that these events are about; null if none laid or bore it. */
export function clutchRecord(id: Id, events: readonly SiteEvent[]): ClutchRecord | null {
  const founding = events
    .filter((event) => (event.kind === 'clutch-laid' || event.kind === 'young-born') && event.payload.clutch === id)
    .sort(laterWriter)
    .at(-1);
  if (founding?.kind !== 'clutch-laid' && founding?.kind !== 'young-born') return null;
  const dam = founding.subjects[0];
  if (dam === undefined) return null;
  const lastMs = lastMsOf(events);
  const { slugs } = founding.payload;
  const { sire } = (latest(events, 'clutch-sired') ?? founding).payload;
  const begun = { id, dam, sire: (sire as Id | undefined) ?? null, laidOn: founding.day, slugs: slugs ?? 0, lastMs };
  if (founding.kind === 'young-born') return { ...begun, ...UNHATCHED, ...bornRecord(founding) };
  const { eggs, clutchG } = founding.payload;
  return { ...begun, bears: 'eggs', eggs, clutchG: clutchG ?? null, ...hatchRecord(events) };
}

const UNHATCHED = { clutchG: null, incubation: null, readings: [], eggStates: {}, pippedOn: null } as const;

function bornRecord({ payload, day }: EventOf<'young-born'>) {
  const eggs = payload.young + (payload.stillborn ?? 0);
  const hatchings = payload.young === 0 ? [] : [{ day, count: payload.young }];
  return { bears: 'live young', eggs, hatchedOn: day, hatched: payload.young, hatchings, isOver: true } as const;
}

/** What happened to eggs since they were laid. */
function hatchRecord(events: readonly SiteEvent[]) {
  let incubation: Incubation | null = null;
  let pippedOn: Day | null = null;
  const readings: IncubationReading[] = [];
  const eggStates: Record<string, EggState> = {};
  for (const event of events) {
    if (event.kind === 'clutch-incubated') incubation = incubated(event, incubation);
    if (event.kind === 'incubation-read') {
      const { tempC, humidityPercent } = event.payload;
      readings.push({ day: event.day, tempC, humidityPercent: humidityPercent ?? null });
    }
    if (event.kind === 'egg-candled') eggStates[event.payload.egg] = { state: event.payload.state, day: event.day };
    if (event.kind === 'pip-seen') pippedOn ??= event.day;
  }
  return { incubation, readings: readings.slice(-KEPT_READINGS), eggStates, pippedOn, ...hatchedOf(events) };
}

function incubated({ payload, day }: EventOf<'clutch-incubated'>, before: Incubation | null): Incubation {
  const place = (payload.place as Id | undefined) ?? before?.place ?? null;
  return { place, setC: payload.setC ?? before?.setC ?? null, since: before?.since ?? day };
}

/** The keeper that these events are about; null if none added them. */
export function keeperRecord(id: Id, events: readonly SiteEvent[]): KeeperRecord | null {
  const said = latest(events, 'keeper-added')?.payload;
  return said === undefined ? null : { id, name: said.name, role: said.role };
}
