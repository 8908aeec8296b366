import * as z from 'zod/mini';
import { isDay } from '../days.ts';
import { isId } from '../ids.ts';

/** So many pairs stand in one event at most; a plan of more is written in parts. */
export const MOST_PAIRS_OF_PART = 500;
/** A season has no more goals than this, and a plan no more parts. */
const MOST = 100;

const text = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const day = z.string().check(z.refine(isDay, 'not a day as 2026-03-09'));
const id = z.string().check(z.refine(isId, 'not an id'));
const count = z.int().check(z.gte(1));
const figure = z.number().check(z.gte(0));
const share = z.number().check(z.gte(0), z.lte(1));
const maybe = z.optional;

/** A season plan that was accepted, or a part of it: its pairs with the figures that they were chosen for. */
export const planAcceptedSchema = z.object({
  plan: text(40),
  part: maybe(z.tuple([count.check(z.lte(MOST)), count.check(z.lte(MOST))])),
  species: text(80),
  from: day,
  eggs: z.number().check(z.gt(0), z.lte(1000)),
  basis: text(400),
  goals: z.array(z.object({ words: text(300), least: figure, weight: figure })).check(z.maxLength(MOST)),
  limits: z.object({ capPerMale: count, maxMales: count, meanKinship: maybe(share), maleCost: figure }),
  gap: maybe(figure),
  pairs: z
    .array(z.tuple([id, id, share, z.array(figure).check(z.maxLength(MOST))]))
    .check(z.minLength(1), z.maxLength(MOST_PAIRS_OF_PART)),
});
