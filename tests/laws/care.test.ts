import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Action,
  animalsInWalkingOrder,
  cardContent,
  checkWeighing,
  chooseMeal,
  decide,
  dueList,
  type Facility,
  foldFacility,
  isDay,
  type Meal,
  type MealQuestion,
  needsVet,
  nextFeedDue,
  PREY_CLASSES,
  parseEvent,
  plannedMeal,
  preyAtHand,
  SPECIES,
  STAMPS,
  thawList,
  walkingOrder,
} from '../../src/core/index.ts';
import { data, weighed } from '../core/log.ts';
import { anyLog, lives, someDay } from './histories.ts';

const anyNumber = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -1, 0.5, 1, 850, Number.NaN, Number.POSITIVE_INFINITY, 1e-9, 1e12),
);
const somePrey = fc.constantFrom(...PREY_CLASSES.map((one) => one.id), 'quail');
const stock = fc.array(
  fc.record({ prey: somePrey, eachG: fc.tuple(anyNumber, anyNumber), count: fc.option(anyNumber, { nil: null }) }),
  { maxLength: 4 },
);
const range = fc.tuple(fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 100 }));
const plan = fc.record(
  { prey: somePrey, count: fc.integer({ min: 1, max: 99 }), percent: range, everyDays: range },
  { requiredKeys: [] },
);
const question: fc.Arbitrary<MealQuestion> = fc.record({
  species: fc.constantFrom(...SPECIES.map((one) => one.name), 'Lampropeltis getula'),
  massG: fc.oneof(fc.double({ min: 0.5, max: 150_000, noNaN: true }), anyNumber),
  massDay: someDay,
  on: someDay,
  plan: fc.option(plan, { nil: null }),
  lastPrey: fc.array(somePrey, { maxLength: 3 }),
  stock: fc.option(stock, { nil: null }),
  share: fc.oneof(fc.constantFrom(0.5, 1), anyNumber),
});

function expectSound({ count, eachG, mealG, percent, warnings, why }: Meal): void {
  expect(Number.isInteger(count) && count >= 1 && count <= 1_000).toBe(true);
  for (const figure of [...eachG, ...mealG, ...percent]) expect(Number.isFinite(figure) && figure >= 0).toBe(true);
  expect([...warnings, ...why].join()).not.toMatch(/NaN|Infinity|undefined|null|\{\w+\}|(^|[ (])-\d/);
}

describe('a meal', () => {
  it('is never NaN, negative or of no item, whatever is asked', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const meal = chooseMeal(asked);
        if (meal.ok) expectSound(meal.value);
        else expect(meal.problem.message).not.toMatch(/undefined|\{\w+\}/);
      }),
      { numRuns: 1000 },
    );
  });
  it('of the whole list lies in the planned grams wherever one to twelve items of a class can', () => {
    const usual = fc.record({
      species: fc.constantFrom(...SPECIES),
      massG: fc.double({ min: 15, max: 4000, noNaN: true }),
    });
    fc.assert(
      fc.property(usual, someDay, ({ species, massG }, on) => {
        const asked = {
          species: species.name,
          massG,
          massDay: on,
          on,
          plan: null,
          lastPrey: [],
          stock: null,
          share: 1,
        };
        const meal = chooseMeal(asked);
        if (!meal.ok) throw new Error(meal.problem.message);
        const { count, eachG, mealG } = meal.value;
        const middle = (count * (eachG[0] + eachG[1])) / 2;
        const could = PREY_CLASSES.some((one) =>
          Array.from({ length: 12 }, (_, at) => ((at + 1) * (one.eachG[0] + one.eachG[1])) / 2).some(
            (total) => total >= mealG[0] && total <= mealG[1],
          ),
        );
        if (could) expect(middle >= mealG[0] && middle <= mealG[1]).toBe(true);
        else expect(meal.value.warnings.join()).toContain('than the planned');
      }),
      { numRuns: 200 },
    );
  });
  it('never takes more items than are at hand', () => {
    const held = fc.array(fc.record({ prey: somePrey, eachG: fc.constant([5, 9] as const), count: fc.nat(20) }), {
      minLength: 1,
      maxLength: 3,
    });
    fc.assert(
      fc.property(question, held, (asked, atHand) => {
        const meal = chooseMeal({ ...asked, plan: null, stock: atHand });
        if (meal.ok)
          expect(
            Math.max(...atHand.filter((one) => one.prey === meal.value.prey).map((one) => one.count)),
          ).toBeGreaterThanOrEqual(meal.value.count);
      }),
    );
  });
});

describe('what is due', () => {
  it('has sound days, first before last, for any life and any day', () => {
    fc.assert(
      fc.property(lives, someDay, (events, on) => {
        for (const animal of foldFacility(events).animals.values()) {
          const due = nextFeedDue(animal, on);
          if (!due.ok) continue;
          const { next, last, state, why } = due.value;
          expect((next === null) === (last === null)).toBe(true);
          if (next !== null && last !== null) expect(isDay(next) && isDay(last) && next <= last).toBe(true);
          expect(state === 'soon' && next !== null && on >= next).toBe(false);
          expect(state === 'vet').toBe(needsVet(animal) !== null);
          expect(why.join()).not.toMatch(/NaN|undefined|\{\w+\}/);
        }
      }),
      { numRuns: 200 },
    );
  });
  it('is never due on a hold, and a hold that is over never stands', () => {
    fc.assert(
      fc.property(lives, someDay, (events, on) => {
        for (const animal of foldFacility(events).animals.values()) {
          const due = nextFeedDue(animal, on);
          if (!due.ok || due.value.state === 'vet') continue;
          expect(due.value.state === 'hold').toBe(due.value.holds.length > 0);
          for (const hold of due.value.holds) expect(hold.until === null || hold.until > on).toBe(true);
          if (due.value.state === 'hold' && due.value.next !== null) expect(due.value.next > on).toBe(true);
        }
      }),
      { numRuns: 200 },
    );
  });
  it('lists, meals, thaw list and cards are made for any log, and meals are sound', () => {
    fc.assert(
      fc.property(fc.oneof(anyLog, lives), someDay, (events, on) => {
        const facility = foldFacility(events);
        for (const line of dueList(facility, on)) if (line.meal !== null) expectSound(line.meal);
        for (const line of thawList(facility, on)) expect(line.thaw).toBeGreaterThanOrEqual(line.needed);
        for (const animal of facility.animals.values()) {
          const meal = plannedMeal(animal, on, preyAtHand(facility, on));
          if (meal.ok) expectSound(meal.value);
          const { lines, flags } = cardContent(facility, animal, on);
          for (const { long, medium, short } of [...lines, ...flags]) {
            expect(Math.min(long.length, medium.length, short.length)).toBeGreaterThan(0);
            expect(long + medium + short).not.toMatch(/NaN|undefined/);
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('an action', () => {
  const action: fc.Arbitrary<Action> = fc.oneof(
    fc.constantFrom(...STAMPS.flatMap((stamp) => stamp.action ?? [])),
    fc.record({ do: fc.constant('weighed'), weightG: anyNumber }),
    fc.record({
      do: fc.constant('fed'),
      prey: somePrey,
      count: fc.integer({ min: -2, max: 20 }),
      totalG: anyNumber,
      taken: fc.boolean(),
    }),
    fc.record({ do: fc.constant('note'), words: fc.string({ maxLength: 50 }) }),
  );
  it('writes only what can be read again, or says why it writes nothing', () => {
    fc.assert(
      fc.property(lives, action, someDay, someDay, (events, what, on, today) => {
        for (const animal of foldFacility(events).animals.values()) {
          const decision = decide(animal, what, { day: on, today, nowMs: 5 });
          if (decision.kind === 'refused') expect(decision.problem.remedy.length).toBeGreaterThan(0);
          else
            for (const draft of decision.drafts) {
              const read = parseEvent({ ...data(weighed('2026-03-09', 5), 1), ...draft });
              expect(read.ok ? '' : read.problem.message).toBe('');
            }
        }
      }),
      { numRuns: 200 },
    );
  });
  it('a weighing is judged without a NaN for any life', () => {
    fc.assert(
      fc.property(lives, fc.double({ min: 0.5, max: 150_000, noNaN: true }), someDay, (events, weightG, on) => {
        for (const animal of foldFacility(events).animals.values())
          expect(checkWeighing(animal, weightG, on)?.message ?? '').not.toMatch(/NaN|Infinity|undefined/);
      }),
    );
  });
});

describe('walking order', () => {
  const below = (facility: Facility, place: string): string | null => {
    for (const one of facility.places.values()) if (one.id === place) return one.parent;
    return null;
  };
  it('has every place once and no animal twice, for any log', () => {
    fc.assert(
      fc.property(anyLog, (events) => {
        const facility = foldFacility(events);
        const order = walkingOrder(facility);
        expect([...order.values()].sort((a, b) => a - b)).toEqual([...facility.places.keys()].map((_, at) => at));
        const animals = animalsInWalkingOrder(facility);
        expect(new Set(animals).size).toBe(animals.length);
        for (const [place, at] of order) {
          const parent = below(facility, place);
          const inRing = parent !== null && (parent === place || below(facility, parent) !== null);
          const number = facility.places.has(parent as never) ? order.get(parent as never) : undefined;
          if (number !== undefined && !inRing) expect(number).toBeLessThan(at);
        }
      }),
    );
  });
});
