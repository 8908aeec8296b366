import * as z from 'zod/mini';
import { isDay } from '../days.ts';
import { isId } from '../ids.ts';

const text = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const id = z.string().check(z.refine(isId, 'not an id'));
const day = z.string().check(z.refine(isDay, 'not a day as 2026-03-09'));
const someCount = z.int().check(z.gte(1), z.lte(100_000));
const count = z.int().check(z.gte(0), z.lte(100_000));
/** In the smallest unit of the site's currency (ISO 4217), such as cents. */
const priceMinor = z.int().check(z.gte(0), z.lte(1_000_000_000));
const maybe = z.optional;

/** A ware as it is sold; whole each time, the later writer wins. */
export const wareSchema = z.object({
  name: text(80),
  priceMinor,
  gtin: maybe(z.string().check(z.regex(/^(\d{8}|\d{12,14})$/))),
  words: maybe(text(200)),
  shelf: maybe(id),
  lowAt: maybe(count),
  edition: maybe(someCount),
});

/** A shed skin made into pieces to sell: what the animal was called and what it is stay as they were on that day. */
export const shedItemSchema = z.object({
  shown: text(80),
  species: text(80),
  shedOn: day,
  priceMinor,
  count: someCount,
  words: maybe(text(200)),
  shelf: maybe(id),
});

/** A new price. */
export const pricedSchema = z.object({ priceMinor });
/** Pieces that were made or came in. */
export const stockedSchema = z.object({ count: someCount });
/** What is really on the shelf. */
export const countedSchema = z.object({ count });
/** Pieces sold, at what price each. */
export const soldSchema = z.object({ count: someCount, priceMinor });
/** Pieces broken, lost or given away. */
export const goneSchema = z.object({ count: someCount, why: maybe(text(200)) });
/** That it is no longer sold. */
export const retiredSchema = z.object({ why: maybe(text(200)) });
/** An animal on offer. */
export const offeredSchema = z.object({ priceMinor, words: maybe(text(300)) });
/** A tag as printed; so many copies. */
export const tagPrintedSchema = z.object({ revision: text(40), stock: text(40), copies: maybe(someCount) });
