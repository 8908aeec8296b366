import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ALPHABET,
  addDays,
  canonicalJson,
  dayFromNumber,
  dayNumber,
  ENROLLED,
  eventIdFrom,
  foldFacility,
  fromSnapshot,
  isEventId,
  isId,
  type LogEvent,
  mintId,
  mintUnenrolledId,
  parseDay,
  parseEvent,
  parseId,
  parseWeight,
  roundTo,
  sayGrams,
  sayId,
  UNENROLLED,
} from '../../src/core/index.ts';
import { data, value, weighed } from '../core/log.ts';
import { someDay } from './histories.ts';

/** JSON as it may come over a wire, with the keys that hurt careless code. */
const hostileKey = fc.constantFrom('__proto__', 'constructor', 'toString', 'payload', 'v', 'id', 'kind', 'subjects');
const hostileJson = fc
  .letrec<{ any: unknown }>((tie) => ({
    any: fc.oneof(
      { depthSize: 'small' },
      fc.oneof(fc.string(), fc.double(), fc.boolean(), fc.constant(null)),
      fc.array(tie('any'), { maxLength: 4 }),
      fc.dictionary(fc.oneof(hostileKey, fc.string()), tie('any'), { maxKeys: 5 }),
    ),
  }))
  .any.map((data) => JSON.stringify(data) ?? 'null');

const SOUND = data(weighed('2026-03-09', 850), 1);

describe('foreign data', () => {
  it('are read or refused as an event, and never throw', () => {
    fc.assert(
      fc.property(hostileJson, (json) => {
        expect(typeof parseEvent(JSON.parse(json)).ok).toBe('boolean');
      }),
      { numRuns: 500 },
    );
  });
  it('in any place of a sound event are read or refused, and what is read folds', () => {
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(SOUND), '__proto__'), hostileJson, (key, json) => {
        const text = `${JSON.stringify(SOUND).slice(0, -1)},${JSON.stringify(key)}:${json}}`;
        const read = parseEvent(JSON.parse(text));
        if (read.ok) foldFacility([read.value, read.value]);
        else expect(read.problem.code).toBe('event-malformed');
      }),
      { numRuns: 500 },
    );
  });
  it('never reach the prototype of objects', () => {
    fc.assert(
      fc.property(hostileJson, (json) => {
        const slip = {
          ...SOUND,
          kind: 'slip-made',
          payload: { corrects: SOUND['id'], how: 'amend', payload: JSON.parse(json) },
        };
        const events = [SOUND, slip].map((one) => parseEvent(one)).filter((read) => read.ok);
        foldFacility(events.map((read): LogEvent => read.value));
        expect(Object.keys(Object.prototype)).toEqual([]);
        expect(({} as Record<string, unknown>)['weightG']).toBeUndefined();
      }),
      { numRuns: 300 },
    );
  });
  it('as a snapshot are read or left, and never throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), hostileJson), (text) => {
        expect(fromSnapshot(text)).toBeNull();
      }),
    );
  });
  it('as an id, a day or a weight are read or refused, and never throw', () => {
    const text = fc.oneof(
      fc.string(),
      fc.array(fc.nat(0xffff)).map((units) => String.fromCharCode(...units)),
      fc.stringMatching(/^[0-9A-Za-z*~$=.,\- ]{0,12}$/),
    );
    fc.assert(
      fc.property(text, (typed) => {
        for (const read of [parseId, parseDay, parseWeight]) expect(typeof read(typed).ok).toBe('boolean');
      }),
      { numRuns: 1000 },
    );
  });
});

describe('ids', () => {
  const device = fc.nat(ENROLLED.devices - 1);
  const counter = fc.nat(ENROLLED.counters - 1);
  it('minted anywhere come back from every way to write them, with a plain check', () => {
    fc.assert(
      fc.property(device, counter, (at, n) => {
        const id = value(mintId(at, n));
        expect([isId(id), ALPHABET.includes(id.slice(-1)), value(parseId(sayId(id).toLowerCase())).id]).toEqual([
          true,
          true,
          id,
        ]);
      }),
      { numRuns: 1000 },
    );
  });
  it('are ids in their stored form only, as reading them out says', () => {
    const near = fc.tuple(device, counter, fc.nat(7), fc.constantFrom(...ALPHABET, 'I', 'O', 'l', 'ß', '-', '*', ''));
    const changed = near.map(([at, n, place, letter]) => {
      const id = value(mintId(at, n));
      return id.slice(0, place) + letter + id.slice(place + 1);
    });
    fc.assert(
      fc.property(fc.oneof(changed, fc.string()), (text) => {
        const read = parseId(text);
        expect(isId(text)).toBe(read.ok && read.value.id === text);
      }),
      { numRuns: 3000 },
    );
  });
  it('of two devices or counters are two', () => {
    fc.assert(
      fc.property(device, counter, device, counter, (a, n, b, m) => {
        expect(value(mintId(a, n)) === value(mintId(b, m))).toBe(a === b && n === m);
      }),
      { numRuns: 1000 },
    );
  });
  it('of a device without a hub are none of an enrolled one', () => {
    const mine = fc.tuple(fc.nat(UNENROLLED.devices - 1), fc.nat(UNENROLLED.counters - 1));
    fc.assert(
      fc.property(device, counter, mine, (a, n, [b, m]) => {
        expect(value(mintId(a, n))).not.toBe(value(mintUnenrolledId(b, m)));
      }),
      { numRuns: 1000 },
    );
  });
  it('of events are UUIDv7 for any bytes and any time', () => {
    fc.assert(
      fc.property(fc.nat({ max: 2 ** 48 - 1 }), fc.uint8Array({ maxLength: 16 }), (ms, bytes) => {
        expect(isEventId(eventIdFrom(ms, bytes))).toBe(true);
      }),
    );
  });
});

describe('days, weights and text', () => {
  it('a day and its number are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.integer({ min: -719_528, max: 2_932_896 }), (number) => {
        expect(dayNumber(dayFromNumber(number))).toBe(number);
        expect(value(parseDay(dayFromNumber(number)))).toBe(dayFromNumber(number));
      }),
      { numRuns: 2000 },
    );
  });
  it('days added and taken away again are the same day, and text order is day order', () => {
    fc.assert(
      fc.property(someDay, fc.integer({ min: -5000, max: 5000 }), (day, days) => {
        expect(addDays(addDays(day, days), -days)).toBe(day);
        expect(addDays(day, days) > day).toBe(days > 0);
      }),
    );
  });
  it('a weight as printed is never read as another weight: it is read as itself or asked about', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 150_000, noNaN: true }), (weightG) => {
        const read = parseWeight(sayGrams(weightG));
        if (read.ok) expect(Math.abs(read.value - weightG)).toBeLessThanOrEqual(weightG < 20 ? 0.0501 : 0.501);
        else expect([read.problem.code, weightG >= 999.5]).toEqual(['number-ambiguous', true]);
      }),
      { numRuns: 1000 },
    );
  });
  it('rounding is within half a step, and rounding again changes nothing', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.nat(6), (number, decimals) => {
        const rounded = roundTo(number, decimals);
        expect(Math.abs(rounded - number)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + Math.abs(number) * 1e-15);
        expect(roundTo(rounded, decimals)).toBe(rounded);
      }),
      { numRuns: 1000 },
    );
  });
  it('canonical text is the same for every order of keys, and says what JSON says', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (data) => {
        expect(JSON.parse(canonicalJson(data))).toEqual(JSON.parse(JSON.stringify(data)));
        expect(canonicalJson(JSON.parse(canonicalJson(data)))).toBe(canonicalJson(data));
      }),
    );
  });
});
