import type * as z from 'zod/mini';
import { type Test, testsOf } from './swiftTests.ts';

/** What a look gives where only the schema can say: the data are wrong, or of a form that is not looked at here. */
const UNSURE: unique symbol = Symbol('unsure');

/** The value as the schema would give it, or {@link UNSURE}. */
type Look = (data: unknown) => unknown;
type Definition = z.core.$ZodTypes['_zod']['def'];
type Defined<T extends Definition['type']> = Extract<Definition, { type: T }>;

/**
 * A reader by a schema that gives the very value and the very issues of its `safeParse` (law: tests/laws/swiftReader). Nearly
 * every line of a log is sound, and sound data pass a look that was built once from the schema, several times as fast. What a
 * look is not sure of is left to the schema, which has the words.
 */
export function swiftReader<S extends z.ZodMiniType>(schema: S) {
  const look = lookOf(schema);
  return (data: unknown): z.core.util.SafeParseResult<z.output<S>> => {
    const value = look(data);
    return value === UNSURE ? schema.safeParse(data) : { success: true, data: value as z.output<S> };
  };
}

function lookOf(schema: z.core.$ZodType): Look {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  const tests = testsOf(def.checks ?? []);
  const look = tests === null ? unsure : formLook(def);
  return tests === null || tests.length === 0 || look === unsure ? look : testedLook(look, tests);
}

/** Forms that few events have, or that change what they read, are never sure: the schema alone reads them. */
function formLook(def: Definition): Look {
  switch (def.type) {
    case 'unknown':
      return (data) => data;
    case 'string':
      return 'check' in def || def.coerce ? unsure : (data) => (typeof data === 'string' ? data : UNSURE);
    case 'number':
      return numberLook(def);
    case 'boolean':
      return def.coerce ? unsure : (data) => (typeof data === 'boolean' ? data : UNSURE);
    case 'enum':
      return wordLook(Object.values(def.entries));
    case 'optional':
      return optionalLook(lookOf(def.innerType));
    case 'array':
      return arrayLook(lookOf(def.element));
    case 'tuple':
      return tupleLook(def);
    case 'object':
      return objectLook(def);
    default:
      return unsure;
  }
}

function unsure(): typeof UNSURE {
  return UNSURE;
}

function testedLook(look: Look, tests: readonly Test[]): Look {
  const [only, ...others] = tests;
  if (only !== undefined && others.length === 0)
    return (data) => {
      const value = look(data);
      return value !== UNSURE && only(value) ? value : UNSURE;
    };
  return (data) => {
    const value = look(data);
    if (value === UNSURE) return UNSURE;
    for (const test of tests) if (!test(value)) return UNSURE;
    return value;
  };
}

function numberLook(def: Defined<'number'>): Look {
  if (def.coerce) return unsure;
  if (!('check' in def)) return (data) => (Number.isFinite(data) ? data : UNSURE);
  return 'format' in def && def.format === 'safeint' ? (data) => (Number.isSafeInteger(data) ? data : UNSURE) : unsure;
}

function wordLook(entries: readonly unknown[]): Look {
  const words = new Set(entries);
  // Entries that are numbers stand in both directions, as TypeScript writes its enumerations.
  return entries.every((one) => typeof one === 'string') ? (data) => (words.has(data) ? data : UNSURE) : unsure;
}

function optionalLook(inner: Look): Look {
  // What is not looked at may give a value for one that is missing.
  return inner === unsure ? unsure : (data) => (data === undefined ? undefined : inner(data));
}

function arrayLook(element: Look): Look {
  return (data) => {
    if (!Array.isArray(data)) return UNSURE;
    const values = roomFor(data);
    for (let at = 0; at < data.length; at++) {
      const value = element(data[at]);
      if (value === UNSURE) return UNSURE;
      values[at] = value;
    }
    return values;
  };
}

function tupleLook({ items, rest }: Defined<'tuple'>): Look {
  const looks = items.map(lookOf);
  const mayEndEarly = items.some((item) => (item as z.core.$ZodTypes)._zod.def.type === 'optional');
  if (rest !== null || mayEndEarly) return unsure;
  return (data) => {
    if (!Array.isArray(data) || data.length !== looks.length) return UNSURE;
    const values = roomFor(data);
    for (let at = 0; at < looks.length; at++) {
      const value = (looks[at] as Look)(data[at]);
      if (value === UNSURE) return UNSURE;
      values[at] = value;
    }
    return values;
  };
}

/** A list of just that length: one that grows has room for 17, and a log holds two short ones an event. */
function roomFor({ length }: readonly unknown[]): unknown[] {
  return Array<unknown>(length);
}

/** Keys come in the order of the schema, and those that it does not name are left out, as zod does it. */
function objectLook({ shape, catchall }: Defined<'object'>): Look {
  if (catchall !== undefined) return unsure;
  const keys = Object.keys(shape);
  const looks = Object.values(shape).map(lookOf);
  const optional = Object.values(shape).map((one) => (one as z.core.$ZodTypes)._zod.def.type === 'optional');
  if (looks.includes(unsure)) return unsure;
  return (data) => {
    if (!isRecord(data)) return UNSURE;
    const values: Record<string, unknown> = {};
    for (let at = 0; at < keys.length; at++) {
      const key = keys[at] as string;
      const value = (looks[at] as Look)(data[key]);
      if (value === UNSURE) return UNSURE;
      if (value !== undefined || key in data) values[key] = value;
      else if (optional[at] !== true) return UNSURE;
    }
    return values;
  };
}

function isRecord(data: unknown): data is Record<string, unknown> {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}
