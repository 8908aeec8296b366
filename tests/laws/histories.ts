import fc from 'fast-check';
import {
  ANIMAL_FLAGS,
  addDays,
  type Day,
  type EventKind,
  HOLD_REASONS,
  type Id,
  LEAVINGS,
  LENGTHS_OF,
  type LogEvent,
  OFFER_OUTCOMES,
  type Payload,
  PLACE_KINDS,
  POOL_WORK,
  PREY_CLASSES,
  parseEvent,
  ROUND_TASKS,
  SEXES,
  SITE_ROLES,
  SPECIES,
} from '../../src/core/index.ts';
import { CLUTCH, DAM, day, eventId, id, LOT, RACK, REX, SIRE, TUB, value } from '../core/log.ts';

const FIRST = day('2025-11-01');
const ANIMALS = [REX, DAM, SIRE] as const;
const KEEPER = id(40);
const ITEM = id(41);
const SUBJECTS = [...ANIMALS, RACK, TUB, LOT, CLUTCH, KEEPER, ITEM];

/** A day of one half-year. */
export const someDay: fc.Arbitrary<Day> = fc.integer({ min: 0, max: 180 }).map((days) => addDays(FIRST, days));
const someId: fc.Arbitrary<Id> = fc.constantFrom(...SUBJECTS);
const someName = fc.constantFrom('Rex', 'Nora', 'Tub 3', 'Émile', '🐍');
const someWords = fc.constantFrom('calm', 'sore mouth', '<b>');
const someGrams = fc.double({ min: 0.5, max: 5000, noNaN: true });
const somePrey = fc.constantFrom(...PREY_CLASSES.map((one) => one.id), 'quail', 'constructor');
const PRESCRIPTIONS = [1, 2, 3].map(eventId);
const someTask = fc.constantFrom(...ROUND_TASKS);
const somePrice = fc.integer({ min: 0, max: 50_000 });
const none = fc.constant({});
const pair = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<[T, T]> => fc.tuple(of, of);
const maybe = { requiredKeys: [] as [] };

/** A payload of every kind, sound in shape and without any sense. */
export const SOUND_PAYLOADS: { readonly [K in Exclude<EventKind, 'slip-made'>]: fc.Arbitrary<Payload<K>> } = {
  'site-named': fc.record({ name: someName, timeZone: fc.constantFrom('UTC', 'Europe/Berlin') }),
  'site-rules-set': fc.record({ secondAtDoses: fc.boolean(), enclosureRule: fc.constantFrom('austria', 'own') }, maybe),
  'keeper-added': fc.record({ name: someName, role: fc.constantFrom(...SITE_ROLES) }),
  'place-added': fc.record(
    {
      placeKind: fc.constantFrom(...PLACE_KINDS),
      name: someName,
      walk: fc.integer({ min: -3, max: 3 }),
      parent: someId,
    },
    { requiredKeys: ['placeKind', 'name', 'walk'] },
  ),
  'place-set': fc.record(
    {
      name: someName,
      parent: someId,
      walk: fc.nat(5),
      sizeMm: fc.constant({ length: 900, width: 450, height: 300 }),
      pool: fc.record({ litres: fc.integer({ min: 1, max: 900 }), filtered: fc.boolean() }),
      twoPeople: fc.boolean(),
    },
    maybe,
  ),
  'interval-set': fc.record(
    { task: someTask, everyDays: pair(fc.integer({ min: 1, max: 60 })) },
    { requiredKeys: ['task'] },
  ),
  'locus-set': fc.record({
    species: fc.constantFrom('Python regius', 'Lampropeltis getula'),
    locus: fc.constantFrom('TYR', 'Own'),
    inheritance: fc.constantFrom('recessive', 'dominant'),
    alleles: fc.constantFrom([{ symbol: 'own', names: ['Own'] }], [{ symbol: 'pie', names: ['Pied again'] }]),
    sources: fc.constant(['a breeder’s word']),
    confidence: fc.constant('memory'),
  }),
  'animal-added': fc.record(
    {
      species: fc.constantFrom(...SPECIES.map((one) => one.name), 'Lampropeltis getula', 'constructor'),
      sex: fc.constantFrom(...SEXES),
      name: someName,
      hatchedOn: someDay,
      acquiredOn: someDay,
      sire: someId,
    },
    { requiredKeys: ['species', 'sex'] },
  ),
  'animal-named': fc.record({ name: someName }),
  'animal-sexed': fc.record({ sex: fc.constantFrom(...SEXES) }),
  'traits-set': fc.record({ code: fc.constantFrom('wt', 'pie/+'), words: someWords }, { requiredKeys: ['code'] }),
  'parents-set': fc.record({ sire: someId, dam: someId }, maybe),
  'animal-flagged': fc.record({ flags: fc.uniqueArray(fc.constantFrom(...ANIMAL_FLAGS)) }),
  'animal-moved': fc.record({ to: someId }),
  'animal-left': fc.record(
    { how: fc.constantFrom(...LEAVINGS), to: someName, cause: someWords },
    { requiredKeys: ['how'] },
  ),
  'origin-set': fc.record({ source: someName, licence: someWords, papers: someWords }, maybe),
  'microchip-set': fc.record({ code: fc.constantFrom('900000000000001', 'OLD-1') }),
  'animal-measured': fc.record({ lengthMm: fc.integer({ min: 100, max: 6000 }), of: fc.constantFrom(...LENGTHS_OF) }),
  'paper-kept': fc.record(
    {
      of: fc.constantFrom(...PRESCRIPTIONS),
      mime: fc.constant('image/webp'),
      base64: fc.constant('UklGRg=='),
      words: someWords,
    },
    { requiredKeys: ['mime', 'base64'] },
  ),
  'feed-plan-set': fc.record(
    {
      prey: somePrey,
      count: fc.integer({ min: 1, max: 20 }),
      percent: pair(fc.integer({ min: 1, max: 60 })),
      everyDays: pair(fc.integer({ min: 1, max: 400 })),
    },
    maybe,
  ),
  'prey-offered': fc.record(
    {
      prey: somePrey,
      count: fc.integer({ min: 1, max: 5 }),
      outcome: fc.constantFrom(...OFFER_OUTCOMES),
      totalG: someGrams,
    },
    { requiredKeys: ['prey', 'count', 'outcome'] },
  ),
  'regurgitation-seen': none,
  'hold-placed': fc.record(
    { reason: fc.constantFrom(...HOLD_REASONS), until: someDay, words: someWords },
    { requiredKeys: ['reason'] },
  ),
  'hold-lifted': fc.record({ reason: fc.constantFrom(...HOLD_REASONS) }),
  'vet-cleared': fc.record({ by: someName }),
  'prescription-written': fc.constant({
    drug: 'as the vet wrote',
    prescriber: 'Dr Test',
    amount: { by: 'volume' as const, ml: 0.3 },
    route: 'by mouth',
    everyHours: 24,
    count: 5,
    startsOn: '2026-03-01',
  }),
  'prescription-stopped': fc.record({ prescription: fc.constantFrom(...PRESCRIPTIONS), by: someName }),
  'dose-given': fc.record({ prescription: fc.constantFrom(...PRESCRIPTIONS), ml: fc.constantFrom(0.1, 0.3) }),
  'outcome-noted': fc.record({ prescription: fc.constantFrom(...PRESCRIPTIONS), words: someWords }),
  'animal-weighed': fc.record({ weightG: someGrams }),
  'opaque-seen': none,
  'shed-seen': fc.record({ whole: fc.boolean() }, maybe),
  'place-cleaned': fc.record({ how: fc.constantFrom('spot', 'full') }),
  'water-changed': none,
  'pool-served': fc.record(
    { work: fc.constantFrom(...POOL_WORK), percent: fc.integer({ min: 1, max: 100 }) },
    { requiredKeys: ['work'] },
  ),
  'health-looked': fc.record({ well: fc.boolean(), words: someWords }, { requiredKeys: ['well'] }),
  'task-skipped': fc.record({ task: someTask, why: someWords }, { requiredKeys: ['task'] }),
  'round-started': fc.record({ task: someTask, second: someName }, { requiredKeys: ['task'] }),
  'round-ended': fc.record({ task: someTask, done: fc.nat(60), skipped: fc.nat(5), left: fc.nat(5) }),
  'cooling-started': none,
  'cooling-ended': none,
  'note-made': fc.record({ words: someWords }),
  'plan-accepted': fc.record(
    {
      plan: fc.constantFrom('a', 'b', 'c'),
      part: fc.constantFrom([1, 2], [2, 2], [1, 1], [3, 2]),
      species: fc.constantFrom('Python regius', 'Pantherophis guttatus'),
      from: someDay,
      eggs: fc.integer({ min: 1, max: 12 }),
      basis: someWords,
      goals: fc.constantFrom([], [{ words: 'Clown', least: 2, weight: 1 }]),
      limits: fc.constant({ capPerMale: 4, maxMales: 3, maleCost: 0 }),
      pairs: fc.array(fc.tuple(someId, someId, fc.constantFrom(0, 0.25), fc.array(fc.nat(9), { maxLength: 1 })), {
        minLength: 1,
        maxLength: 3,
      }),
    },
    { requiredKeys: ['plan', 'species', 'from', 'eggs', 'basis', 'goals', 'limits', 'pairs'] },
  ),
  'pairing-started': none,
  'pairing-ended': none,
  'lock-seen': none,
  'ovulation-seen': none,
  'pre-lay-shed-seen': none,
  'clutch-laid': fc.record(
    { clutch: someId, eggs: fc.nat(12), damG: someGrams, sire: someId },
    { requiredKeys: ['clutch', 'eggs'] },
  ),
  'follicles-measured': fc.record({ largestMm: fc.integer({ min: 1, max: 60 }) }),
  'young-born': fc.record(
    { clutch: someId, young: fc.nat(20), damG: someGrams, sire: someId },
    { requiredKeys: ['clutch', 'young'] },
  ),
  'clutch-sired': fc.record({ sire: someId }, maybe),
  'clutch-incubated': fc.record({ place: someId, setC: fc.integer({ min: 20, max: 35 }) }, maybe),
  'incubation-read': fc.record({ tempC: fc.integer({ min: 20, max: 35 }) }),
  'pip-seen': fc.record({ count: fc.integer({ min: 1, max: 12 }) }, maybe),
  'egg-candled': fc.record({ egg: fc.integer({ min: 1, max: 12 }), state: fc.constantFrom('good', 'slug', 'lost') }),
  'clutch-hatched': fc.record({ hatched: fc.nat(12), last: fc.boolean() }, { requiredKeys: ['hatched'] }),
  'lot-received': fc.record({ prey: somePrey, eachG: pair(someGrams), count: fc.integer({ min: 1, max: 300 }) }),
  'lot-used': fc.record({ count: fc.integer({ min: 1, max: 300 }), forDay: someDay }, { requiredKeys: ['count'] }),
  'lot-wasted': fc.record(
    { count: fc.integer({ min: 1, max: 30 }), why: someWords, thawed: fc.boolean(), forDay: someDay },
    { requiredKeys: ['count'] },
  ),
  'stock-counted': fc.record({ count: fc.nat(300) }),
  'ware-set': fc.record(
    {
      name: someName,
      priceMinor: somePrice,
      gtin: fc.constant('4012345678901'),
      lowAt: fc.nat(5),
      edition: fc.integer({ min: 1, max: 50 }),
    },
    { requiredKeys: ['name', 'priceMinor'] },
  ),
  'shed-item-made': fc.record({
    shown: someName,
    species: fc.constant('Python regius'),
    shedOn: someDay,
    priceMinor: somePrice,
    count: fc.integer({ min: 1, max: 9 }),
  }),
  'item-priced': fc.record({ priceMinor: somePrice }),
  'item-stocked': fc.record({ count: fc.integer({ min: 1, max: 40 }) }),
  'item-counted': fc.record({ count: fc.nat(40) }),
  'item-sold': fc.record({ count: fc.integer({ min: 1, max: 9 }), priceMinor: somePrice }),
  'item-wasted': fc.record({ count: fc.integer({ min: 1, max: 9 }), why: someWords }, { requiredKeys: ['count'] }),
  'item-retired': fc.record({ why: someWords }, maybe),
  'animal-offered': fc.record({ priceMinor: somePrice, words: someWords }, { requiredKeys: ['priceMinor'] }),
  'offer-ended': fc.record({ why: someWords }, maybe),
  'tag-printed': fc.record({ revision: fc.constantFrom('a', 'b'), stock: fc.constant('a4') }),
  'own-stock-set': fc.record({
    stock: fc.constantFrom('own-a', 'own-b'),
    name: someName,
    typedIn: fc.constantFrom('mm', 'inch'),
    pageWidthMm: fc.constant(210),
    pageHeightMm: fc.constant(297),
    labelWidthMm: fc.constant(60),
    labelHeightMm: fc.constant(40),
    columns: fc.constant(2),
    rows: fc.constant(4),
    firstXMm: fc.constant(5),
    firstYMm: fc.constant(5),
    pitchXMm: fc.constant(65),
    pitchYMm: fc.constant(45),
    printerInsetMm: fc.constant(5),
    removed: fc.boolean(),
  }),
  'own-printer-set': fc.record({
    printer: fc.constantFrom('own-p', 'own-q'),
    name: someName,
    dotsPerMm: fc.constantFrom(8, 12),
    insetDots: fc.constantFrom(0, 0.25),
    removed: fc.boolean(),
  }),
  'printer-calibrated': fc.record({
    printer: fc.constantFrom('own-p', 'office-600'),
    stock: fc.constant('own-a'),
    offsetXMm: fc.integer({ min: -3, max: 3 }),
    offsetYMm: fc.integer({ min: -3, max: 3 }),
    scaleX: fc.constant(1),
    scaleY: fc.constantFrom(0.99, 1.01),
  }),
  'run-laid': fc.record(
    {
      run: fc.constantFrom('r1', 'r2', 'r3'),
      what: fc.constant('card'),
      stock: fc.constant('own-a'),
      part: fc.constantFrom([1, 2], [2, 2], [2, 3]),
      ids: fc.constant(['C9HG9RAR']),
      revisions: fc.constantFrom(['a'], ['b']),
      lastPages: fc.constant([1]),
      pages: fc.integer({ min: 1, max: 9 }),
    },
    { requiredKeys: ['run', 'what', 'stock', 'ids', 'revisions', 'lastPages', 'pages'] },
  ),
  'run-printed': fc.record(
    { run: fc.constantFrom('r1', 'r2'), toPage: fc.nat(9), done: fc.boolean() },
    { requiredKeys: ['run', 'toPage'] },
  ),
  'card-printed': fc.record({ revision: fc.constantFrom('a', 'b'), stock: fc.constant('a4') }),
};

interface Seed {
  readonly kind: string;
  readonly payload: unknown;
  readonly day: Day;
  readonly second: number;
  readonly subjects: readonly Id[];
  readonly clock: readonly [number, number];
  readonly device: number;
  readonly n: number;
}

const kinds = Object.entries(SOUND_PAYLOADS).map(([kind, of]) =>
  (of as fc.Arbitrary<unknown>).map((payload) => ({ kind, payload })),
);
const unknownKind = fc.record({ kind: fc.constant('tail-measured'), payload: fc.jsonValue() });
/** Slips name an event by its number, so that undos of undos and rings come up by themselves. */
const slip = (most: number) =>
  fc
    .record({
      n: fc.nat(most),
      how: fc.constantFrom('undo', 'undo', 'amend'),
      payload: fc.option(fc.oneof(fc.record({ weightG: someGrams }), fc.record({ name: someName })), {
        nil: undefined,
      }),
    })
    .map(({ n, how, payload }) => ({
      kind: 'slip-made',
      payload: { corrects: eventId(n), how, ...(payload === undefined ? {} : { payload }) },
    }));
const happening = (most: number) =>
  fc.oneof(
    { weight: 8, arbitrary: fc.oneof(...kinds) },
    { weight: 3, arbitrary: slip(most) },
    { weight: 1, arbitrary: unknownKind },
  );

function seed(most: number): fc.Arbitrary<Seed> {
  const rest = fc.record({
    day: someDay,
    // Few seconds, clocks and devices, so that ties are common.
    second: fc.nat(3),
    subjects: fc.array(someId, { maxLength: 3 }),
    clock: fc.tuple(fc.nat(5), fc.nat(2)),
    device: fc.nat(2),
    n: fc.nat(most),
  });
  return fc.tuple(happening(most), rest).map(([what, more]) => ({ ...what, ...more }));
}

function eventOf({ n, second, ...seed }: Seed): LogEvent {
  const at = `${seed.day}T08:00:0${second}${second === 3 ? '.250' : ''}Z`;
  return value(parseEvent({ v: 1, id: eventId(n), at, keeper: 'Ada', seq: n, ...seed }));
}

/** A log of sound shape and no sense; ids may come up twice with other content. */
export const anyLog: fc.Arbitrary<readonly LogEvent[]> = fc.array(seed(40).map(eventOf), { maxLength: 60 });

/** A log of sound shape in which every event has an id of its own. */
export const soundLog: fc.Arbitrary<readonly LogEvent[]> = fc
  .array(seed(40), { maxLength: 40 })
  .map((seeds) => seeds.map((one, n) => eventOf({ ...one, n })));

/** A log in which the three animals are added and live: what a record can come to be. */
export const lives: fc.Arbitrary<readonly LogEvent[]> = fc
  .array(seed(40), { minLength: 3, maxLength: 40 })
  .map((seeds) =>
    seeds.map((one, n) => {
      const here = { ...one, n, subjects: [ANIMALS[n % 3] ?? REX, ...one.subjects] };
      const species = SPECIES[n % SPECIES.length]?.name ?? '';
      return eventOf(n < 3 ? { ...here, kind: 'animal-added', payload: { species, sex: 'female' } } : here);
    }),
  );

/** The same events in another order. */
export function shuffled<T>(of: readonly T[]): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...of], { minLength: of.length, maxLength: of.length });
}
