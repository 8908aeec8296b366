import * as z from 'zod/mini';
import { type Day, parseDay, type Result, refuse } from '../../core/index.ts';

/** A number of a case; JSON's 1e999 comes as infinite and is told apart by the rule, in its own words. */
export const number = z.custom<number>((value) => typeof value === 'number', 'a number is wanted, such as 950');

/** A number of a case that must not be guessed at: JSON writes NaN as null, and null stays NaN for the rule to refuse. */
export const figure = z.pipe(
  z.custom<number | null>((value) => typeof value === 'number' || value === null, 'a number is wanted, such as 950'),
  z.transform((value): number => value ?? Number.NaN),
);

/** A word or name of a case. */
export const word = z
  .string('a text is wanted')
  .check(z.minLength(1, 'a text is wanted, and this one is empty'), z.maxLength(200));

/** A low and a high figure, low first; one figure stands for both. */
export const range = z.pipe(
  z.union([number, z.tuple([number, number])], 'a number or [low, high] is wanted'),
  z.transform((value): [number, number] => (typeof value === 'number' ? [value, value] : value)),
);

/** A day of a case. Errors: `date-malformed`, at its path. */
export function dayAt(text: string, path: string): Result<Day> {
  const day = parseDay(text);
  return day.ok ? day : refuse('date-malformed', { text: text.slice(0, 40) }, path);
}

/** The keeper's own plan as a case gives it. */
export const planFields = z.object({
  percent: z.optional(range),
  everyDays: z.optional(range),
  prey: z.optional(word),
  count: z.optional(z.int('a whole number is wanted').check(z.gte(1, 'at least 1 is wanted'))),
});
