import * as z from 'zod/mini';
import { isDay } from '../days.ts';
import { isEventId, isId } from '../ids.ts';
import { WEIGHT_LIMITS_G } from '../units.ts';
import {
  healthLookedSchema,
  intervalSetSchema,
  lengthSchema,
  microchipSchema,
  originSchema,
  paperSchema,
  placeSetSchema,
  poolServedSchema,
  type ROUND_TASKS,
  roundEndedSchema,
  roundStartedSchema,
  taskSkippedSchema,
} from './careSchemas.ts';
import { locusSchema } from './locusSchema.ts';
import { calibratedSchema, ownPrinterSchema, ownStockSchema, runLaidSchema, runPrintedSchema } from './paperSchemas.ts';
import { planAcceptedSchema } from './planSchema.ts';
import {
  countedSchema,
  goneSchema,
  offeredSchema,
  pricedSchema,
  retiredSchema,
  shedItemSchema,
  soldSchema,
  stockedSchema,
  tagPrintedSchema,
  wareSchema,
} from './shopSchemas.ts';
import { doseSchema, outcomeSchema, prescriptionSchema, prescriptionStoppedSchema } from './treatmentSchemas.ts';

/** Schemas of every event payload, version 1. Foreign data passes here once, at the edge. */
const text = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const name = text(80);
const words = text(2000);
const day = z.string().check(z.refine(isDay, 'not a day as 2026-03-09'));
const id = z.string().check(z.refine(isId, 'not an id'));
const eventId = z.string().check(z.refine(isEventId, 'not an event id'));
const weightG = z.number().check(z.gte(WEIGHT_LIMITS_G.least), z.lte(WEIGHT_LIMITS_G.most));
const lightG = z.number().check(z.gt(0), z.lte(WEIGHT_LIMITS_G.most));
const count = z.int().check(z.gte(0), z.lte(100_000));
const someCount = z.int().check(z.gte(1), z.lte(100_000));
const days = z.int().check(z.gte(1), z.lte(400));
const tempC = z.number().check(z.gte(0), z.lte(50));
const percent = z.number().check(z.gt(0), z.lte(100));
const range = <T extends z.ZodMiniType<number>>(of: T) => z.tuple([of, of]);
const maybe = z.optional;

export const SEXES = ['male', 'female', 'unsexed'] as const;
export const PLACE_KINDS = ['room', 'rack', 'tub', 'exhibit', 'incubator', 'shelf', 'freezer', 'quarantine'] as const;
export const OFFER_OUTCOMES = ['taken', 'refused'] as const;
export const HOLD_REASONS = ['vet', 'quarantine', 'treatment', 'transport', 'keeper'] as const;
export const SITE_ROLES = ['keeper', 'breeder', 'shop', 'vet', 'inspector'] as const;
export const LEAVINGS = ['died', 'sold', 'given', 'lost'] as const;
export const ANIMAL_FLAGS = ['two-people', 'venomous', 'not-for-sale'] as const;
const CHECKED_STAGES = ['good', 'slug', 'lost'] as const;

export const PAYLOADS = {
  // the site
  'site-named': z.object({
    name,
    timeZone: text(60),
    host: maybe(text(60)),
    currency: maybe(text(3)),
    safetyLine: maybe(text(120)),
  }),
  'site-rules-set': z.object({
    secondAtDoses: maybe(z.boolean()),
    countryProfile: maybe(text(20)),
    twoPeopleFromM: maybe(z.number().check(z.gt(0), z.lte(12))),
    syringesMl: maybe(z.array(z.number().check(z.gt(0), z.lte(200))).check(z.maxLength(12))),
    enclosureRule: maybe(text(20)),
    orderWeeks: maybe(z.int().check(z.gte(1), z.lte(26))),
    leadDays: maybe(z.int().check(z.gte(0), z.lte(90))),
    freezerItems: maybe(z.int().check(z.gte(0), z.lte(1_000_000))),
    reservePercent: maybe(z.number().check(z.gte(0), z.lte(100))),
  }),
  'keeper-added': z.object({ name, role: z.enum(SITE_ROLES) }),
  'place-added': z.object({
    placeKind: z.enum(PLACE_KINDS),
    name,
    parent: maybe(id),
    walk: z.int(),
    lengthMm: maybe(someCount),
  }),
  'place-set': placeSetSchema,
  'interval-set': intervalSetSchema,
  'locus-set': locusSchema,
  // who the animal is
  'animal-added': z.object({
    species: name,
    name: maybe(name),
    number: maybe(text(20)),
    sex: z.enum(SEXES),
    hatchedOn: maybe(day),
    acquiredOn: maybe(day),
    source: maybe(name),
    sire: maybe(id),
    dam: maybe(id),
    clutch: maybe(id),
  }),
  'animal-named': z.object({ name }),
  'animal-sexed': z.object({ sex: z.enum(SEXES) }),
  'traits-set': z.object({ code: text(200), words: maybe(text(300)) }),
  'parents-set': z.object({ sire: maybe(id), dam: maybe(id) }),
  'animal-flagged': z.object({ flags: z.array(z.enum(ANIMAL_FLAGS)) }),
  'animal-moved': z.object({ to: id }),
  'origin-set': originSchema,
  'microchip-set': microchipSchema,
  'animal-measured': lengthSchema,
  'animal-left': z.object({
    how: z.enum(LEAVINGS),
    to: maybe(text(200)),
    cause: maybe(text(200)),
    note: maybe(words),
  }),
  'paper-kept': paperSchema,
  // feeding
  'feed-plan-set': z.object({
    prey: maybe(name),
    count: maybe(someCount),
    percent: maybe(range(percent)),
    everyDays: maybe(range(days)),
    note: maybe(words),
  }),
  'prey-offered': z.object({
    prey: name,
    count: someCount,
    totalG: maybe(lightG),
    outcome: z.enum(OFFER_OUTCOMES),
    asPlanned: maybe(z.boolean()),
  }),
  'regurgitation-seen': z.object({ note: maybe(words) }),
  'hold-placed': z.object({
    reason: z.enum(HOLD_REASONS),
    words: maybe(text(200)),
    until: maybe(day),
    by: maybe(name),
  }),
  'hold-lifted': z.object({ reason: z.enum(HOLD_REASONS), by: maybe(name) }),
  'vet-cleared': z.object({ by: name, words: maybe(words) }),
  'prescription-written': prescriptionSchema,
  'prescription-stopped': prescriptionStoppedSchema,
  'dose-given': doseSchema,
  'outcome-noted': outcomeSchema,
  // looking after
  'animal-weighed': z.object({ weightG, confirmed: maybe(z.boolean()) }),
  'opaque-seen': z.object({}),
  'shed-seen': z.object({ whole: maybe(z.boolean()) }),
  'place-cleaned': z.object({ how: z.enum(['spot', 'full']) }),
  'water-changed': z.object({}),
  'pool-served': poolServedSchema,
  'health-looked': healthLookedSchema,
  'task-skipped': taskSkippedSchema,
  'round-started': roundStartedSchema,
  'round-ended': roundEndedSchema,
  'cooling-started': z.object({}),
  'cooling-ended': z.object({}),
  'note-made': z.object({ words }),
  // the season
  'plan-accepted': planAcceptedSchema,
  'pairing-started': z.object({}),
  'pairing-ended': z.object({}),
  'lock-seen': z.object({}),
  'follicles-measured': z.object({ largestMm: z.number().check(z.gte(1), z.lte(100)), count: maybe(count) }),
  'ovulation-seen': z.object({}),
  'pre-lay-shed-seen': z.object({}),
  'clutch-laid': z.object({
    clutch: id,
    eggs: count,
    slugs: maybe(count),
    clutchG: maybe(lightG),
    damG: maybe(weightG),
    sire: maybe(id),
  }),
  'young-born': z.object({
    clutch: id,
    young: count,
    stillborn: maybe(count),
    slugs: maybe(count),
    damG: maybe(weightG),
    sire: maybe(id),
  }),
  'clutch-sired': z.object({ sire: maybe(id) }),
  'clutch-incubated': z.object({ place: maybe(id), setC: maybe(tempC) }),
  'incubation-read': z.object({ tempC, humidityPercent: maybe(z.number().check(z.gte(0), z.lte(100))) }),
  'egg-candled': z.object({ egg: someCount, state: z.enum(CHECKED_STAGES) }),
  'pip-seen': z.object({ count: maybe(someCount) }),
  'clutch-hatched': z.object({ hatched: count, last: maybe(z.boolean()) }),
  // the freezer
  'lot-received': z.object({
    prey: name,
    eachG: range(lightG),
    count: someCount,
    useBy: maybe(day),
    source: maybe(name),
    topical: maybe(text(200)),
  }),
  'lot-used': z.object({ count: someCount, forDay: maybe(day) }),
  'lot-wasted': z.object({
    count: someCount,
    why: maybe(text(200)),
    thawed: maybe(z.boolean()),
    forDay: maybe(day),
  }),
  'stock-counted': z.object({ count }),
  // the shop
  'ware-set': wareSchema,
  'shed-item-made': shedItemSchema,
  'item-priced': pricedSchema,
  'item-stocked': stockedSchema,
  'item-counted': countedSchema,
  'item-sold': soldSchema,
  'item-wasted': goneSchema,
  'item-retired': retiredSchema,
  'animal-offered': offeredSchema,
  'offer-ended': retiredSchema,
  // paper
  'card-printed': z.object({ revision: text(40), stock: text(40) }),
  'tag-printed': tagPrintedSchema,
  'own-stock-set': ownStockSchema,
  'own-printer-set': ownPrinterSchema,
  'printer-calibrated': calibratedSchema,
  'run-laid': runLaidSchema,
  'run-printed': runPrintedSchema,
  // correcting
  'slip-made': z.object({
    corrects: eventId,
    how: z.enum(['undo', 'amend']),
    payload: maybe(z.record(z.string(), z.unknown())),
  }),
} as const satisfies Record<string, z.ZodMiniType>;

/** The name of an event: past tense, kebab-case. */
export type EventKind = keyof typeof PAYLOADS;
/** What a round is for. */
export type RoundTask = (typeof ROUND_TASKS)[number];
/** The payload of one kind. */
export type Payload<K extends EventKind> = z.infer<(typeof PAYLOADS)[K]>;

/** True for a kind that this version knows. */
export function isEventKind(kind: string): kind is EventKind {
  return Object.hasOwn(PAYLOADS, kind);
}
