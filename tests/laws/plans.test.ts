import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  canonicalJson,
  foldFacility,
  type LogEvent,
  parseEvent,
  SAME_SEASON_DAYS,
  type SeasonPlan,
} from '../../src/core/index.ts';
import { DAM, day, eventId, REX, SIRE, value } from '../core/log.ts';
import { shuffled } from './histories.ts';

const FIRST = day('2025-11-01');
const terms = { eggs: 6, basis: 'as ever', goals: [{ words: 'Clown', least: 0, weight: 1 }] };
const limits = { capPerMale: 4, maxMales: 3, maleCost: 0 };

/** A plan, or a slip on an event of the log; few keys, clocks and days, so that they meet. */
const happening = fc.oneof(
  { weight: 3, arbitrary: fc.record({ key: fc.constantFrom('a', 'b', 'c'), nth: fc.constantFrom(1, 2) }) },
  { weight: 1, arbitrary: fc.record({ undoes: fc.nat(14) }) },
);
const seed = fc.record({
  what: happening,
  from: fc.nat(420).map((days) => addDays(FIRST, days)),
  on: fc.nat(420).map((days) => addDays(FIRST, days)),
  clock: fc.tuple(fc.nat(5), fc.nat(1)),
  device: fc.nat(2),
});

type Seed = typeof seed extends fc.Arbitrary<infer T> ? T : never;

function eventOf({ what, from, on, clock, device }: Seed, n: number): LogEvent {
  const head = {
    v: 1,
    id: eventId(n),
    at: `${on}T08:00:00Z`,
    day: on,
    subjects: [],
    keeper: 'Ada',
    device,
    seq: n,
    clock,
  };
  if ('undoes' in what) {
    const payload = { corrects: eventId(what.undoes), how: 'undo' };
    return value(parseEvent({ ...head, kind: 'slip-made', payload }));
  }
  const species = what.key === 'c' ? 'Pantherophis guttatus' : 'Python regius';
  const pairs = [[DAM, what.nth === 1 ? SIRE : REX, 0, [2.5]]];
  const payload = { plan: what.key, part: [what.nth, 2], species, from, ...terms, limits, pairs };
  return value(parseEvent({ ...head, kind: 'plan-accepted', payload }));
}

const plansLog = fc.array(seed, { maxLength: 14 }).map((seeds) => seeds.map(eventOf));
const plansOf = (events: readonly LogEvent[]): readonly SeasonPlan[] => foldFacility(events).site.plans;
const isApart = (a: SeasonPlan, b: SeasonPlan): boolean =>
  a.species !== b.species || Math.abs(Date.parse(a.from) - Date.parse(b.from)) >= SAME_SEASON_DAYS * 86_400_000;

describe('accepted plans', () => {
  it('are the same for any order of arrival, and when events come twice', () => {
    const both = plansLog.chain((events) =>
      fc.tuple(fc.constant(events), shuffled([...events, ...events.slice(0, 3)])),
    );
    fc.assert(
      fc.property(both, ([events, other]) => {
        expect(canonicalJson(plansOf(other))).toBe(canonicalJson(plansOf(events)));
      }),
      { numRuns: 500 },
    );
  });
  it('stand one for each species and season', () => {
    fc.assert(
      fc.property(plansLog, (events) => {
        const plans = plansOf(events);
        for (const [at, plan] of plans.entries())
          for (const other of plans.slice(at + 1)) expect(isApart(plan, other)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
  it('are gone when the events of each, and those that it replaced, are taken back', () => {
    fc.assert(
      fc.property(plansLog, (events) => {
        const plans = plansOf(events);
        const ids = plans.flatMap((one) => [...one.written, ...one.replaced]);
        const slips = ids.map((corrects, at) => {
          const head = { v: 1, id: eventId(500 + at), at: '2027-03-01T08:00:00Z', day: '2027-03-01', subjects: [] };
          const more = { keeper: 'Ada', device: 9, seq: at, clock: [99, at] };
          return value(parseEvent({ ...head, ...more, kind: 'slip-made', payload: { corrects, how: 'undo' } }));
        });
        expect(plansOf([...events, ...slips])).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
