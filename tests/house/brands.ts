import {
  addDays,
  type Day,
  type EventId,
  type Grams,
  grams,
  type Id,
  type Millimetres,
  sayDay,
  sayId,
} from '../../src/core/index.ts';

/** Lines that the compiler must refuse, each under a comment that expects it: a brand that loosens fails the build. */

// @ts-expect-error a plain number is no mass
export const mass: Grams = 850;
// @ts-expect-error grams are no length
export const length: Millimetres = grams(850);
// @ts-expect-error plain text is no id
export const animal: Id = '7RMBN615';
// @ts-expect-error plain text is no day
export const day: Day = '2026-03-09';
// @ts-expect-error a printed id is no event id
export const event = (id: Id): EventId => id;
// @ts-expect-error a day is no id
export const words = (on: Day): string => sayId(on);
// @ts-expect-error an id is no day
export const spoken = (id: Id): string => sayDay(id);
// @ts-expect-error a day is not counted on from plain text
export const later = (): Day => addDays('2026-03-09', 7);
