import * as z from 'zod/mini';
import { isEventId, isId } from '../ids.ts';

const text = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const id = z.string().check(z.refine(isId, 'not an id'));
const eventId = z.string().check(z.refine(isEventId, 'not an event id'));
const mm = z.int().check(z.gte(1), z.lte(100_000));
const count = z.int().check(z.gte(0), z.lte(100_000));
const days = z.int().check(z.gte(1), z.lte(400));
const percent = z.number().check(z.gt(0), z.lte(100));
const maybe = z.optional;

/** What a round is for; the pool tasks belong to exhibits with water. */
export const ROUND_TASKS = [
  'feeding',
  'water',
  'spot',
  'clean',
  'weigh',
  'treat',
  'look',
  'pool-part',
  'pool-filter',
  'pool-drain',
] as const;
const task = z.enum(ROUND_TASKS);

/** How long an animal is, and from where to where. */
export const LENGTHS_OF = ['total', 'snout-vent'] as const;
/** What is done to a pool. */
export const POOL_WORK = ['part', 'filter', 'drain'] as const;
/** The largest picture of a paper, as letters of base 64: a page stays readable and a log stays light. */
export const PAPER_LETTERS = 240_000;

/** What is known of a place beyond its name; whole each time, the later writer wins. */
export const placeSetSchema = z.object({
  name: maybe(text(80)),
  parent: maybe(id),
  walk: maybe(z.int()),
  sizeMm: maybe(z.object({ length: mm, width: mm, height: mm })),
  pool: maybe(z.object({ litres: z.number().check(z.gt(0), z.lte(1_000_000)), filtered: z.boolean() })),
  twoPeople: maybe(z.boolean()),
});

/** The keeper's own interval for a task at a place and all below it; without days it is learned again. */
export const intervalSetSchema = z.object({ task, everyDays: maybe(z.tuple([days, days])) });

/** That a round began with a second person, or without where none is asked for. */
export const roundStartedSchema = z.object({ task, second: maybe(text(80)) });

/** How a round ended, as it was confirmed. */
export const roundEndedSchema = z.object({
  task,
  done: count,
  refused: maybe(count),
  skipped: count,
  left: count,
  second: maybe(text(80)),
  used: maybe(z.array(z.object({ prey: text(80), count: z.int().check(z.gte(1), z.lte(100_000)) }))),
});

/** A task that was passed over on purpose. */
export const taskSkippedSchema = z.object({ task, why: maybe(text(200)) });

/** Work on a pool. */
export const poolServedSchema = z.object({ work: z.enum(POOL_WORK), percent: maybe(percent) });

/** A look at an animal's health: well, or to be looked at again. */
export const healthLookedSchema = z.object({ well: z.boolean(), words: maybe(text(2000)) });

/** A length, measured or guessed. */
export const lengthSchema = z.object({ lengthMm: mm, of: z.enum(LENGTHS_OF), guessed: maybe(z.boolean()) });

/** Where an animal came from, beyond the name of the source. */
export const originSchema = z.object({
  source: maybe(text(80)),
  licence: maybe(text(120)),
  papers: maybe(text(400)),
});

/** A chip's number as read; ISO 11784 numbers have 15 digits, older chips others. */
export const microchipSchema = z.object({ code: text(30) });

/** A picture of a paper, small enough for the log; `of` names the event that it belongs to. */
export const paperSchema = z.object({
  of: maybe(eventId),
  mime: z.enum(['image/jpeg', 'image/webp', 'image/png']),
  base64: z.string().check(z.minLength(4), z.maxLength(PAPER_LETTERS), z.regex(/^[A-Za-z0-9+/]+={0,2}$/)),
  words: maybe(text(200)),
});
