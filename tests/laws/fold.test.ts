import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  canonicalJson,
  type Facility,
  foldFacility,
  fromSnapshot,
  historiesOf,
  inOrder,
  type LogEvent,
  ledger,
  refold,
  SITE,
  toSnapshot,
} from '../../src/core/index.ts';
import { DAM, eventId, REX, SIRE } from '../core/log.ts';
import { anyLog, lives, shuffled, soundLog } from './histories.ts';

/** A facility as text, whatever the order of its maps. */
function said(facility: Facility): string {
  const parts = Object.entries(facility).map(([name, part]) => [
    name,
    part instanceof Map ? [...part].sort(([a], [b]) => (a < b ? -1 : 1)) : part,
  ]);
  return canonicalJson(parts);
}

const logAndShuffled = (log: fc.Arbitrary<readonly LogEvent[]>) =>
  log.chain((events) => fc.tuple(fc.constant(events), shuffled(events), fc.array(fc.nat(), { maxLength: 10 })));

describe('the fold', () => {
  it('gives the same facility for any order of arrival', () => {
    fc.assert(
      fc.property(logAndShuffled(soundLog), ([events, other]) => {
        expect(said(foldFacility(other))).toBe(said(foldFacility(events)));
      }),
      { numRuns: 300 },
    );
  });
  it('does so even for logs in which one id was given to several events', () => {
    fc.assert(
      fc.property(logAndShuffled(anyLog), ([events, other]) => {
        expect(said(foldFacility(other))).toBe(said(foldFacility(events)));
      }),
      { numRuns: 300 },
    );
  });
  it('gives the same facility when events come twice', () => {
    fc.assert(
      fc.property(logAndShuffled(soundLog), ([events, other, picks]) => {
        const twice = picks.flatMap((pick) => events[pick % Math.max(events.length, 1)] ?? []);
        expect(said(foldFacility([...other, ...twice]))).toBe(said(foldFacility(events)));
      }),
      { numRuns: 300 },
    );
  });
  it('never throws, whatever a log of sound shape says', () => {
    fc.assert(
      fc.property(anyLog, (events) => {
        const facility = foldFacility(events);
        for (const [subject, history] of historiesOf(events)) if (subject !== SITE) ledger(history, String, subject);
        expect(facility.animals.size + facility.strangers.size).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 500 },
    );
  });
  it('knows every subject as one thing or as a stranger', () => {
    fc.assert(
      fc.property(anyLog, (events) => {
        const { site: _, ...maps } = foldFacility(events);
        const known = Object.values(maps).flatMap((map) => [...map.keys()]);
        const subjects = new Set(events.flatMap((event) => event.subjects));
        expect(known.sort()).toEqual([...subjects].sort());
      }),
    );
  });
  it('of one subject again is the fold of the whole log', () => {
    fc.assert(
      fc.property(soundLog, fc.nat(40), (events, cut) => {
        const histories = historiesOf(events);
        let facility = foldFacility(events.slice(0, cut));
        for (const [subject, history] of histories) facility = refold(facility, subject, history);
        expect(said(facility)).toBe(said(foldFacility(events)));
      }),
      { numRuns: 300 },
    );
  });
  it('comes through a snapshot unchanged', () => {
    fc.assert(
      fc.property(anyLog, (events) => {
        const facility = foldFacility(events);
        const back = fromSnapshot(toSnapshot(facility));
        expect(back && said(back)).toBe(said(facility));
      }),
    );
  });
  it('leaves the events that it was given as they were', () => {
    fc.assert(
      fc.property(anyLog, (events) => {
        const before = JSON.stringify(events);
        foldFacility(events);
        expect(JSON.stringify(events)).toBe(before);
      }),
    );
  });
});

describe('one animal', () => {
  it('is not touched by what happens to others', () => {
    fc.assert(
      fc.property(lives, lives, (events, others) => {
        const mine = events
          .filter((event) => event.subjects[0] === REX)
          .map((event) => ({ ...event, subjects: event.subjects.filter((one) => one !== DAM && one !== SIRE) }));
        const theirs = others
          .filter((event) => event.kind !== 'slip-made' && !event.subjects.includes(REX))
          .map((event, at) => ({ ...event, id: eventId(1000 + at) }));
        const alone = foldFacility(mine);
        const together = foldFacility([...theirs, ...mine]);
        expect(together.animals.get(REX)).toEqual(alone.animals.get(REX));
        expect(together.strangers.get(REX)).toBe(alone.strangers.get(REX));
      }),
      { numRuns: 300 },
    );
  });
});

describe('the order of events', () => {
  it('is one order: nothing is before and after, and what is between stays between', () => {
    fc.assert(
      fc.property(fc.array(soundLog, { minLength: 1, maxLength: 2 }), ([events = []]) => {
        const sorted = [...events].sort(inOrder);
        for (const [at, a] of sorted.entries())
          for (const b of sorted.slice(at)) {
            expect(inOrder(a, b)).toBeLessThanOrEqual(0);
            expect(Math.sign(inOrder(b, a)) + Math.sign(inOrder(a, b))).toBe(0);
          }
      }),
    );
  });
});
