import * as z from 'zod/mini';
import { isDay } from '../days.ts';
import { isEventId } from '../ids.ts';

const text = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const day = z.string().check(z.refine(isDay, 'not a day as 2026-03-09'));
const above0 = z.number().check(z.gt(0), z.lte(1_000_000));
const maybe = z.optional;

const strength = z.object({ mgPerMl: maybe(above0), percentWv: maybe(above0) });
const amount = z.discriminatedUnion('by', [
  z.object({ by: z.literal('mass'), dose: z.object({ mgPerKg: above0 }), strength }),
  z.object({ by: z.literal('volume'), ml: above0, strength: maybe(strength) }),
]);

/** A prescription as the vet wrote it; the form only, since the rules of its arithmetic are judged where it is used. */
export const prescriptionSchema = z.object({
  drug: text(120),
  prescriber: text(80),
  amount,
  route: text(60),
  everyHours: above0,
  count: maybe(z.int().check(z.gte(1), z.lte(1000))),
  startsOn: day,
  endsOn: maybe(day),
  validUntil: maybe(day),
  drugExpiresOn: maybe(day),
  recheckOn: maybe(day),
  capPercent: maybe(above0),
  withholdFood: maybe(z.boolean()),
  syringesMl: maybe(z.array(above0)),
  lot: maybe(text(60)),
  paper: maybe(text(400)),
});

const eventId = z.string().check(z.refine(isEventId, 'not an event id'));

/** That the vet ended a prescription. */
export const prescriptionStoppedSchema = z.object({ prescription: eventId, by: text(80), why: maybe(text(400)) });

/** A dose that was given: the volume that was shown and confirmed. */
export const doseSchema = z.object({
  prescription: eventId,
  ml: above0,
  second: maybe(text(80)),
  lot: maybe(text(60)),
  note: maybe(text(400)),
});

/** How a treatment went, in words; a later one stands beside it and never in its place. */
export const outcomeSchema = z.object({ prescription: eventId, words: text(400), by: maybe(text(80)) });
