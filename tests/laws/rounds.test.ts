import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  allAsPlanned,
  type Day,
  DEFAULT_INTERVALS,
  daysBetween,
  dayWork,
  type Facility,
  foldFacility,
  isAtPlace,
  isLeft,
  type LogEvent,
  learnedDays,
  notDone,
  parseEvent,
  ROUND_TASKS,
  type RoundLine,
  roundPlan,
  roundsOfDay,
  sayWhy,
} from '../../src/core/index.ts';
import { data, day, type Line, weighed } from '../core/log.ts';
import { eventsOf, HOMES, historyOf, RACK, TUBS, written } from '../core/rounds/house.ts';
import { anyLog, shuffled, someDay } from './histories.ts';

const someTask = fc.constantFrom(...ROUND_TASKS);
const FIRST = day('2026-01-01');
const someDayOf = fc.integer({ min: 0, max: 90 }).map((days) => addDays(FIRST, days));
/** Deeds, skips, moves and own days in the small house, in any order. */
const someLine: fc.Arbitrary<Line> = fc.oneof(
  fc
    .tuple(someDayOf, fc.subarray([...HOMES], { minLength: 1 }))
    .map(([on, at]): Line => [on, 'water-changed', {}, { subjects: [RACK, ...at] }]),
  fc
    .tuple(someDayOf, fc.constantFrom(...HOMES))
    .map(([on, at]): Line => [on, 'place-cleaned', { how: 'full' }, { subjects: [at] }]),
  fc
    .tuple(someDayOf, fc.constantFrom(...HOMES), someTask)
    .map(([on, at, task]): Line => [on, 'task-skipped', { task }, { subjects: [at] }]),
  fc
    .tuple(
      someDayOf,
      fc.constantFrom(...HOMES),
      fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 })),
    )
    .map(([on, at, everyDays]): Line => [on, 'interval-set', { task: 'clean', everyDays }, { subjects: [at] }]),
);
const someHouse = fc.array(someLine, { maxLength: 40 }).map((lines) => eventsOf(...lines));

function linesOf(facility: Facility, on: Day): readonly RoundLine[] {
  return roundsOfDay(facility, on).flatMap((round) => round.lines);
}

describe('what a place learns', () => {
  const gaps = fc.array(fc.integer({ min: -5, max: 500 }), { maxLength: 12 });
  const usual = fc.option(fc.constantFrom(...Object.values(DEFAULT_INTERVALS).map((one) => one.everyDays)));
  it('does not depend on the order of the gaps', () => {
    fc.assert(
      fc.property(
        gaps.chain((all) => fc.tuple(fc.constant(all), shuffled(all))),
        usual,
        ([all, other], days) => {
          expect(learnedDays(other, days)).toEqual(learnedDays(all, days));
        },
      ),
    );
  });
  it('is a range of whole days from 1 on that never ends later than the default', () => {
    fc.assert(
      fc.property(gaps, usual, (all, days) => {
        const learned = learnedDays(all, days);
        if (learned === null) return;
        const [low, high] = learned.everyDays;
        expect([Number.isInteger(low), Number.isInteger(high), low >= 1, low <= high]).toEqual([
          true,
          true,
          true,
          true,
        ]);
        if (days !== null) expect(high).toBeLessThanOrEqual(days[1]);
      }),
    );
  });
});

describe('a round', () => {
  it('is the same for any order of the log', () => {
    fc.assert(
      fc.property(
        someHouse.chain((events) => fc.tuple(fc.constant(events), shuffled(events))),
        someDayOf,
        ([events, other], on) => {
          expect(linesOf(foldFacility(other), on)).toEqual(linesOf(foldFacility(events), on));
        },
      ),
      { numRuns: 40 },
    );
  });
  it('never asks for a deed before the first day of its interval, and calls none overdue within it', () => {
    fc.assert(
      fc.property(someHouse, someDayOf, (events, on) => {
        for (const { lastDone, interval, state, next, last } of linesOf(foldFacility(events), on)) {
          if (lastDone === null || interval === null) continue;
          const passed = daysBetween(lastDone.day, on);
          if (state === 'due' || state === 'overdue') expect(passed).toBeGreaterThanOrEqual(interval.everyDays[0]);
          if (state === 'overdue') expect(passed).toBeGreaterThan(interval.everyDays[1]);
          if (state === 'done') expect(passed).toBe(0);
          expect([next, last]).toEqual(interval.everyDays.map((days) => addDays(lastDone.day, days)));
        }
      }),
      { numRuns: 60 },
    );
  });
  it('is worked out for any log, with words and without a NaN', () => {
    fc.assert(
      fc.property(anyLog, someDay, (events, on) => {
        const facility = foldFacility(events);
        for (const line of linesOf(facility, on)) {
          expect(sayWhy(facility, line).join()).not.toMatch(/NaN|undefined|\{\w+\}/);
          expect(new Set(sayWhy(facility, line)).size).toBeGreaterThan(0);
        }
        dayWork(facility, events, on);
      }),
      { numRuns: 80 },
    );
  });
});

describe('all as planned', () => {
  it('writes only what can be read again, and leaves nothing that it did not name', () => {
    fc.assert(
      fc.property(someHouse, someDayOf, someTask, (events, on, task) => {
        const moment = { day: on, today: on, nowMs: 5 };
        const { drafts, left } = allAsPlanned(foldFacility(events), { place: RACK, task }, moment);
        for (const draft of drafts) {
          const read = parseEvent({ ...data(weighed('2026-03-09', 5), 1), ...draft });
          expect(read.ok ? '' : read.problem.message).toBe('');
        }
        const after = foldFacility(written(events, drafts));
        const open = roundPlan(after, { task, on, within: RACK }).filter(
          (line) => isLeft(line) || line.problem !== null,
        );
        expect(open.map((line) => line.of).sort()).toEqual(left.map(({ line }) => line.of).sort());
      }),
      { numRuns: 80 },
    );
  });
  it('an exception changes its own home and no other', () => {
    fc.assert(
      fc.property(
        someHouse,
        someDayOf,
        fc.constantFrom(...TUBS),
        someTask.filter(isAtPlace),
        (events, on, home, task) => {
          const moment = { day: on, today: on, nowMs: 5 };
          const swept: LogEvent[] = written(
            events,
            allAsPlanned(foldFacility(events), { place: RACK, task }, moment).drafts,
          );
          const facility = foldFacility(swept);
          const line = roundPlan(facility, { task, on }).find((one) => one.of === home);
          if (line?.state !== 'done') return;
          const decision = notDone(facility, { line, history: historyOf(swept, home) }, moment);
          if (decision.kind !== 'accepted') throw new Error('nothing was taken back');
          const after = foldFacility(written(swept, decision.drafts));
          for (const other of roundPlan(facility, { task, on })) {
            const now = roundPlan(after, { task, on }).find((one) => one.of === other.of);
            expect([other.of, now?.state]).toEqual([other.of, other.of === home ? 'skipped' : other.state]);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
