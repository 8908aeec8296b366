import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import * as z from 'zod/mini';
import { envelopeSchema } from '../../src/core/events/event.ts';
import { PAYLOADS } from '../../src/core/events/payloads.ts';
import { swiftReader } from '../../src/core/events/swiftReader.ts';
import { eventId, REX } from '../core/log.ts';
import { dataFor } from './fromSchema.ts';
import { SOUND_PAYLOADS } from './histories.ts';

const RUNS = 400;
const SCHEMAS: readonly [string, z.ZodMiniType][] = [['envelope', envelopeSchema], ...Object.entries(PAYLOADS)];
/** Of forms that the schema alone reads: their own words say which. */
const ZOD_ALONE = ['slip-made', 'prescription-written'];

/** Data made from the schema's own fields, and what other laws take for sound. */
function dataOf(name: string, schema: z.ZodMiniType): readonly fc.MaybeWeightedArbitrary<unknown>[] {
  const sound = Object.entries(SOUND_PAYLOADS).find(([kind]) => kind === name)?.[1];
  const made = { weight: 7, arbitrary: dataFor(schema) };
  return sound === undefined ? [made] : [made, { weight: 1, arbitrary: sound }];
}

/** The value with its keys in their order, and with what JSON leaves out. */
function written(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(written);
  if (typeof value !== 'object' || value === null || Object.getPrototypeOf(value) !== Object.prototype) return value;
  return Object.entries(value).map(([key, inner]) => [key, written(inner)]);
}

/** A schema that counts how often it is asked itself. */
function watched(schema: z.ZodMiniType): { schema: z.ZodMiniType; asked: () => number } {
  let asked = 0;
  const safeParse = (data: unknown) => {
    asked += 1;
    return schema.safeParse(data);
  };
  return { schema: Object.create(schema, { safeParse: { value: safeParse } }) as z.ZodMiniType, asked: () => asked };
}

describe('a swift reader', () => {
  it.each(SCHEMAS)('of %s gives the value or the issues of its schema', (name, schema) => {
    const { schema: counted, asked } = watched(schema);
    const read = swiftReader(counted);
    let [sound, swift] = [0, 0];
    fc.assert(
      fc.property(fc.oneof(...dataOf(name, schema)), (data) => {
        const expected = schema.safeParse(data);
        const before = asked();
        const given = read(data);
        expect(given.success).toBe(expected.success);
        expect(given.error?.issues).toEqual(expected.error?.issues);
        if (!expected.success) return;
        expect(given.data).toStrictEqual(expected.data);
        expect(written(given.data)).toStrictEqual(written(expected.data));
        sound += 1;
        if (asked() === before) swift += 1;
      }),
      { numRuns: RUNS },
    );
    // A law about data that are all refused, or all read by the schema, would prove nothing.
    expect(sound).toBeGreaterThan(RUNS / 20);
    if (ZOD_ALONE.includes(name)) expect(swift).toBeLessThan(sound);
    else expect(swift).toBeGreaterThan(sound / 4);
  });
});

const SCHEMAS_OF_OTHERS: readonly [string, z.ZodMiniType][] = [
  ['a default value', z.object({ a: z._default(z.number(), 5) })],
  ['a default value that may be missing', z.object({ a: z.optional(z._default(z.number(), 5)) })],
  ['a value that is changed', z.string().check(z.trim())],
  ['a check that says when it runs', z.string().check(z.refine(() => false, { when: () => false }))],
  ['a pattern that remembers its place', z.string().check(z.regex(/a/g))],
  ['keys that nobody named', z.looseObject({ a: z.string() })],
  ['no keys but its own', z.strictObject({ a: z.string() })],
  ['a tuple that goes on', z.tuple([z.number()], z.string())],
  ['a tuple that may end early', z.tuple([z.number(), z.optional(z.string())])],
  ['a tuple of one', z.tuple([z.number()])],
  ['a field that must be there, whatever it is', z.object({ a: z.unknown() })],
  ['a least length, which counts code points', z.string().check(z.minLength(4))],
  ['a longest length, which counts code points', z.string().check(z.maxLength(2))],
  ['a 32-bit number', z.int32()],
  ['a date for a number', z.coerce.number()],
  ['a text of a known form', z.email()],
];

describe('forms that no event has yet', () => {
  const data = [
    ...[undefined, null, {}, { a: undefined }, { a: 'x', b: 1 }, { a: 7 }, [1], [1, 'x'], [1, undefined], [1, 2, 3]],
    ...['a', ' a ', '🐍🐍', '🐍🐍🐍🐍', '7', 7, 2 ** 40, 'a@b.cd', REX, eventId(1)],
  ];
  test.each(SCHEMAS_OF_OTHERS)('%s: read as the schema reads it', (_what, schema) => {
    const read = swiftReader(schema);
    for (const one of [...data, ...data]) {
      const [given, expected] = [read(one), schema.safeParse(one)];
      expect([given.success, given.data]).toStrictEqual([expected.success, expected.data]);
      expect(given.error?.issues).toEqual(expected.error?.issues);
    }
  });
});
