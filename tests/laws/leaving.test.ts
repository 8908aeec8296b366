import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AnimalRecord,
  type Arrival,
  arrive,
  canonicalJson,
  decideLeaving,
  type EventDraft,
  foldFacility,
  type Leaving,
  type LogEvent,
  parseEvent,
  SEXES,
} from '../../src/core/index.ts';
import { day, eventId, id, TUB, value } from '../core/log.ts';
import { lives, someDay } from './histories.ts';

const TODAY = day('2026-06-01');
const moment = { day: TODAY, today: TODAY, nowMs: Date.parse(`${TODAY}T08:00:00Z`) };
const text = fc.option(fc.constantFrom('Reed Farm', '🐍', '<b>', 'x'.repeat(80)), { nil: null });

const someLeaving: fc.Arbitrary<Leaving> = fc.oneof(
  fc.record({ how: fc.constant('died' as const), cause: text, note: text }),
  fc.record({ how: fc.constantFrom('sold' as const, 'given' as const), to: text, note: text }),
  fc.record({ how: fc.constant('lost' as const), note: text }),
);

function eventOf(draft: EventDraft, n: number): LogEvent {
  const clock = [Date.parse(`${draft.day}T10:00:00Z`), n];
  return value(
    parseEvent({
      v: 1,
      id: eventId(n),
      at: `${draft.day}T10:00:00Z`,
      keeper: 'Ada',
      device: 7,
      seq: n,
      clock,
      ...draft,
    }),
  );
}

/** All that is known of an animal, but not when somebody last wrote a slip about it. */
function known(animal: AnimalRecord | undefined): string {
  return canonicalJson({ ...animal, lastWritten: {} });
}

describe('a leaving', () => {
  it('is taken back whole by slips of all that it wrote', () => {
    let left = 0;
    fc.assert(
      fc.property(lives, someLeaving, (log, leaving) => {
        const before = foldFacility(log);
        for (const animal of before.animals.values()) {
          const decision = decideLeaving(animal, leaving, moment);
          if (decision.kind === 'refused') continue;
          left += 1;
          const events = decision.drafts.map((draft, at) => eventOf(draft, 200 + at));
          const gone = foldFacility([...log, ...events]).animals.get(animal.id);
          expect([gone?.left?.how, gone?.together, gone?.offer]).toEqual([leaving.how, [], null]);
          const slips = events.map((event, at) =>
            eventOf(
              {
                kind: 'slip-made',
                subjects: event.subjects,
                payload: { corrects: event.id, how: 'undo' },
                day: TODAY,
              },
              300 + at,
            ),
          );
          const back = foldFacility([...log, ...events, ...slips]).animals.get(animal.id);
          expect(known(back)).toBe(known(animal));
        }
      }),
      { numRuns: 150 },
    );
    expect(left).toBeGreaterThan(50);
  });
});

describe('an arrival', () => {
  const maybeDay = fc.option(someDay, { nil: null });
  const some: fc.Arbitrary<Arrival> = fc.record({
    species: fc.constantFrom('Python regius', '', 'Anilius scytale'),
    sex: fc.constantFrom(...SEXES),
    name: text,
    number: fc.option(fc.constantFrom('26-1'), { nil: null }),
    hatchedOn: maybeDay,
    acquiredOn: someDay,
    source: text,
    licence: text,
    papers: text,
    microchip: fc.option(fc.constantFrom('900255700411038', 'OLD12', '?', '000000000000000'), { nil: null }),
    traits: fc.constant(null),
    place: fc.constantFrom(null, TUB, id(99)),
    weightG: fc.constant(null),
    noFoodUntil: maybeDay,
    quarantine: fc.option(fc.record({ until: maybeDay, words: fc.constant(null) }), { nil: null }),
  });
  it('is refused with a reason at each line, or its events are all readable and make that animal', () => {
    fc.assert(
      fc.property(lives, some, (log, arrival) => {
        const arriving = arrive(foldFacility(log), arrival, moment);
        if (arriving.kind === 'refused') {
          expect(arriving.problems.length).toBeGreaterThan(0);
          for (const { path } of arriving.problems) expect(path).toMatch(/\w/);
          return;
        }
        const newcomer = id(77);
        const events = arriving.draftsFor(newcomer).map((draft, at) => eventOf(draft, 400 + at));
        const animal = foldFacility([...log, ...events]).animals.get(newcomer);
        expect(animal).toMatchObject({
          species: arrival.species,
          acquiredOn: arrival.acquiredOn,
          source: arrival.source,
          licence: arrival.licence,
          place: arrival.place,
        });
        const held = (reason: string) => animal?.holds.some((hold) => hold.reason === reason) ?? false;
        expect(held('quarantine')).toBe(arrival.quarantine !== null);
        expect(held('transport')).toBe(arrival.noFoodUntil !== null);
      }),
      { numRuns: 200 },
    );
  });
});
