import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedDays, plannedServing } from '../../../src/core/care/index.ts';
import { addDays, feedPlan, lastWeight, nextFeedDue, plannedMeal, roundTo, SPECIES } from '../../../src/core/index.ts';
import { day, fed, type Line, refused, rex, weighed } from '../log.ts';

const ON = day('2026-03-02');
const daysAgo = fc.integer({ min: 0, max: 60 }).map((days) => addDays(ON, -days));
const happened: fc.Arbitrary<Line> = fc.oneof(
  daysAgo.map((on) => fed(on)),
  daysAgo.map((on) => refused(on)),
  daysAgo.map((on): Line => [on, 'regurgitation-seen', {}]),
  daysAgo.map((on): Line => [on, 'opaque-seen', {}]),
  daysAgo.map((on): Line => [on, 'shed-seen', {}]),
  daysAgo.map((on): Line => [on, 'cooling-started', {}]),
  daysAgo.map((on): Line => [on, 'hold-placed', { reason: 'keeper', until: addDays(on, 40) }]),
  daysAgo.map((on): Line => [on, 'hold-placed', { reason: 'vet' }]),
  fc
    .record({ prey: fc.constantFrom('rat-pup', 'rat-small', 'mouse-adult'), count: fc.integer({ min: 1, max: 3 }) })
    .map((plan): Line => ['2026-01-01', 'feed-plan-set', plan]),
);
const animal = fc
  .record({
    species: fc.constantFrom(...SPECIES.map(({ name }) => name), 'Lampropeltis getula'),
    weightG: fc.option(fc.integer({ min: 5, max: 4000 })),
    lines: fc.array(happened, { maxLength: 8 }),
  })
  .map(({ species, weightG, lines }) =>
    rex({ species, sex: 'female' }, ...(weightG === null ? [] : [weighed('2026-02-20', weightG)]), ...lines),
  );

describe('answers without words', () => {
  it('name the days that the answer with words has', () => {
    fc.assert(
      fc.property(animal, (one) => {
        const plan = feedPlan(one.species, lastWeight(one)?.weightG ?? null, one.plan);
        const due = nextFeedDue(one, ON);
        if (!plan.ok || !due.ok) return;
        const { next, last, hold } = due.value;
        expect(feedDays(one, ON, plan.value)).toMatchObject({ next, last, hold });
      }),
    );
  });
  it('serve what the meal with words is, or are refused as it is', () => {
    fc.assert(
      fc.property(animal, (one) => {
        const meal = plannedMeal(one, ON);
        const serving = plannedServing(one, ON);
        if (!meal.ok || !serving.ok) {
          expect(serving).toEqual(meal);
          return;
        }
        const { prey, count, eachG, mealG, percent } = meal.value;
        expect(serving.value).toMatchObject({ prey, count, eachG, mealG, percent });
      }),
    );
  });
});

describe('rounding', () => {
  /** As the digits of the number stand there: the long way. */
  function byDigits(value: number, decimals: number): number {
    const text = String(Math.abs(value));
    if (text.includes('e')) return Math.sign(value) * (Math.round(Math.abs(value) * 10 ** decimals) / 10 ** decimals);
    return Math.sign(value) * Number(`${Math.round(Number(`${text}e${decimals}`))}e-${decimals}`);
  }
  it('goes the short way only where that gives the same', () => {
    const value = fc.oneof(
      fc.double({ min: -1e7, max: 1e7, noNaN: true }),
      fc.integer({ min: -1e7, max: 1e7 }).map((n) => n / 2000),
    );
    fc.assert(
      fc.property(value, fc.integer({ min: 0, max: 4 }), (one, decimals) => {
        expect(roundTo(one, decimals)).toBe(byDigits(one, decimals));
      }),
      { numRuns: 2000 },
    );
  });
});
