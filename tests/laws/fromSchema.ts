import fc from 'fast-check';
import * as z from 'zod/mini';
import { CLUTCH, eventId, REX } from '../core/log.ts';

/** Texts that some field takes, and texts that hardly any does; emoji are two units and one code point. */
const TEXTS = [
  ...[REX, CLUTCH, eventId(1), '2026-03-09', '2026-03-09T08:00:00Z', 'place-cleaned', 'own-paper', '1/20', '12345678'],
  ...['', 'a', '🐍', 'é', '__proto__', 'AAAA', '2026-02-30', '7RMBN610', 'rex', '2026-03-09T08:00Z'],
  ...[19, 20, 21, 39, 40, 41, 79, 80, 81, 199, 200, 201, 400, 401].flatMap((n) => ['x'.repeat(n), '🐍'.repeat(n)]),
];
const NUMBERS = [
  0,
  -0,
  1,
  0.5,
  12,
  12.1,
  100,
  100.5,
  365,
  400,
  401,
  2000,
  99_999,
  100_000,
  100_001,
  1e9,
  2 ** 53,
  1e300,
];
const HOSTILE = [
  undefined,
  null,
  Number.NaN,
  Infinity,
  -1,
  true,
  [],
  {},
  [undefined],
  '1',
  new Date(0),
  new Map(),
  () => 1,
];

const someText = fc.oneof(fc.constantFrom(...TEXTS), fc.string());
const someNumber = fc.oneof(fc.constantFrom(...NUMBERS), fc.double(), fc.integer({ min: -5, max: 500 }));
const hostile: fc.Arbitrary<unknown> = fc.oneof(fc.constantFrom(...HOSTILE), someText, someNumber, fc.jsonValue());

/** Data that the schema takes often, misses closely often, and that are something else altogether now and then. */
export function dataFor(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  return fc.oneof({ weight: 40, arbitrary: near(schema) }, { weight: 1, arbitrary: hostile });
}

function near(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'string':
      return passing(schema, TEXTS, someText);
    case 'number':
      return passing(schema, NUMBERS, someNumber);
    case 'boolean':
      return fc.boolean();
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries));
    case 'literal':
      return fc.constantFrom(...def.values);
    case 'optional':
      return fc.oneof(
        { weight: 9, arbitrary: dataFor(def.innerType) },
        { weight: 1, arbitrary: fc.constant(undefined) },
      );
    case 'array':
      return fc.array(dataFor(def.element), { maxLength: 4 });
    case 'tuple':
      return fc.oneof(
        { weight: 9, arbitrary: fc.tuple(...def.items.map(dataFor)) },
        { weight: 1, arbitrary: fc.array(hostile, { maxLength: 3 }) },
      );
    case 'union':
      return fc.oneof(...def.options.map(dataFor));
    case 'object':
      return objectFor(def.shape);
    case 'record':
      return fc.dictionary(someText, hostile, { maxKeys: 3 });
    case 'unknown':
      return hostile;
    default:
      throw new Error(`No data are made for a schema of the type ${def.type} yet: add it here.`);
  }
}

/** Mostly figures and texts that pass the field's own checks, so that whole events do. */
function passing<T>(schema: z.core.$ZodType, known: readonly T[], other: fc.Arbitrary<T>): fc.Arbitrary<T> {
  const sound = known.filter((one) => z.safeParse(schema, one).success);
  if (sound.length === 0) return other;
  return fc.oneof({ weight: 15, arbitrary: fc.constantFrom(...sound) }, { weight: 1, arbitrary: other });
}

/** Keys in any order, some missing, some that the schema does not name, and at times all of them inherited. */
function objectFor(shape: z.core.$ZodShape): fc.Arbitrary<unknown> {
  const required = Object.keys(shape).filter((key) => (shape[key] as z.core.$ZodTypes)._zod.def.type !== 'optional');
  const fields = Object.fromEntries(Object.entries(shape).map(([key, field]) => [key, dataFor(field)]));
  const whole = fc.record(fields, { requiredKeys: required });
  const others = fc.dictionary(fc.constantFrom('extra', 'toString', 'constructor', 'id'), hostile, { maxKeys: 1 });
  return fc.oneof(
    { weight: 20, arbitrary: whole },
    { weight: 3, arbitrary: fc.tuple(others, whole).map(([more, data]) => ({ ...more, ...data })) },
    { weight: 2, arbitrary: fc.record(fields, { requiredKeys: [] }) },
    { weight: 1, arbitrary: whole.map((data) => Object.create(data) as unknown) },
  );
}
