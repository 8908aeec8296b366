import fc from 'fast-check';
import {
  ANIMAL_FLAGS,
  addDays,
  type Day,
  type EventKind,
  HOLD_REASONS,
  type Id,
  LEAVINGS,
  type LogEvent,
  OFFER_OUTCOMES,
  type Payload,
  PLACE_KINDS,
  PREY_CLASSES,
  parseEvent,
  SEXES,
  SITE_ROLES,
  SPECIES,
} from '../../src/core/index.ts';
import { CLUTCH, DAM, day, eventId, id, LOT, RACK, REX, SIRE, TUB, value } from '../core/log.ts';

const FIRST = day('2025-11-01');
const ANIMALS = [REX, DAM, SIRE] as const;
const KEEPER = id(40);
const SUBJECTS = [...ANIMALS, RACK, TUB, LOT, CLUTCH, KEEPER];

/** A day of one half-year. */
export const someDay: fc.Arbitrary<Day> = fc.integer({ min: 0, max: 180 }).map((days) => addDays(FIRST, days));
const someId: fc.Arbitrary<Id> = fc.constantFrom(...SUBJECTS);
const someName = fc.constantFrom('Rex', 'Nora', 'Tub 3', 'Émile', '🐍');
const someWords = fc.constantFrom('calm', 'sore mouth', '<b>');
const someGrams = fc.double({ min: 0.5, max: 5000, noNaN: true });
const somePrey = fc.constantFrom(...PREY_CLASSES.map((one) => one.id), 'quail', 'constructor');
const PRESCRIPTIONS = [1, 2, 3].map(eventId);
const none = fc.constant({});
const pair = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<[T, T]> => fc.tuple(of, of);
const maybe = { requiredKeys: [] as [] };

/** A payload of every kind, sound in shape and without any sense. */
const PAYLOADS: { readonly [K in Exclude<EventKind, 'slip-made'>]: fc.Arbitrary<Payload<K>> } = {
  'site-named': fc.record({ name: someName, timeZone: fc.constantFrom('UTC', 'Europe/Berlin') }),
  'site-rules-set': fc.record({ secondAtDoses: fc.boolean() }, maybe),
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
  'animal-left': fc.record({ how: fc.constantFrom(...LEAVINGS) }),
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
  'animal-weighed': fc.record({ weightG: someGrams }),
  'opaque-seen': none,
  'shed-seen': fc.record({ whole: fc.boolean() }, maybe),
  'place-cleaned': fc.record({ how: fc.constantFrom('spot', 'full') }),
  'water-changed': none,
  'cooling-started': none,
  'cooling-ended': none,
  'note-made': fc.record({ words: someWords }),
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
  'clutch-hatched': fc.record({ hatched: fc.nat(12) }),
  'lot-received': fc.record({ prey: somePrey, eachG: pair(someGrams), count: fc.integer({ min: 1, max: 300 }) }),
  'lot-used': fc.record({ count: fc.integer({ min: 1, max: 300 }) }),
  'lot-wasted': fc.record({ count: fc.integer({ min: 1, max: 30 }), why: someWords }, { requiredKeys: ['count'] }),
  'stock-counted': fc.record({ count: fc.nat(300) }),
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

const kinds = Object.entries(PAYLOADS).map(([kind, of]) =>
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
