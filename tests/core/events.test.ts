import { describe, expect, it } from 'vitest';
import {
  type Clock,
  canonicalJson,
  clash,
  fingerprint,
  hear,
  inOrder,
  isEventKind,
  isKnown,
  laterWriter,
  parseEvent,
  tick,
  upgrade,
} from '../../src/core/index.ts';
import { data, eventId, type Line, log, REX, refusal, value, weighed } from './log.ts';

const LINE = weighed('2026-03-09', 850);
const sound = data(LINE, 1);

function pathOf(broken: unknown): string | undefined {
  const read = parseEvent(broken);
  return read.ok ? 'was read' : read.problem.path;
}

describe('reading an event', () => {
  it('gives back what was written', () => {
    expect(value(parseEvent(sound))).toEqual(sound);
  });
  it('survives a trip through JSON', () => {
    expect(value(parseEvent(JSON.parse(JSON.stringify(sound))))).toEqual(sound);
  });

  const broken: readonly [string, Record<string, unknown>, string][] = [
    ['an id that is no UUIDv7', { id: 'abc' }, 'id'],
    ['a kind in capitals', { kind: 'Animal-Weighed' }, 'kind'],
    ['an instant with an offset', { at: '2026-03-09T08:00:00+01:00' }, 'at'],
    ['a day that the calendar lacks', { day: '2026-02-30' }, 'day'],
    ['a subject that is no id', { subjects: [REX, '0000-0001'] }, 'subjects.1'],
    ['one subject that is no list', { subjects: REX }, 'subjects'],
    ['501 subjects', { subjects: Array(501).fill(REX) }, 'subjects'],
    ['a device below 0', { device: -1 }, 'device'],
    ['a sequence number with a part', { seq: 1.5 }, 'seq'],
    ['a clock of one number', { clock: [5] }, 'clock'],
    ['a clock that runs backwards', { clock: [5, -1] }, 'clock.1'],
    ['a version of 0', { v: 0 }, 'v'],
    ['a keeper of 41 letters', { keeper: 'a'.repeat(41) }, 'keeper'],
    ['a weight that no snake has', { payload: { weightG: 0.1 } }, 'payload.weightG'],
    ['a weight as text', { payload: { weightG: '850' } }, 'payload.weightG'],
    ['no payload', { payload: undefined }, 'payload'],
  ];
  it.each(broken)('refuses %s, and says where', (_, change, path) => {
    const bad = { ...sound, ...change };
    expect(refusal(parseEvent(bad))).toBe('event-malformed');
    expect(pathOf(bad)).toBe(path);
  });
  it('refuses what is no object at all', () => {
    for (const nothing of [null, undefined, 5, 'event', [], [sound], true])
      expect(refusal(parseEvent(nothing))).toBe('event-malformed');
  });

  const payloads: readonly [string, unknown][] = [
    ['animal-added', { species: '', sex: 'male' }],
    ['animal-added', { species: 'Python regius', sex: 'boy' }],
    ['animal-added', { species: 'Python regius', sex: 'male', hatchedOn: 'spring' }],
    ['prey-offered', { prey: 'rat-pup', count: 0, outcome: 'taken' }],
    ['prey-offered', { prey: 'rat-pup', count: 1, outcome: 'eaten' }],
    ['prey-offered', { prey: 'rat-pup', count: 1, totalG: -5, outcome: 'taken' }],
    ['feed-plan-set', { everyDays: [0, 7] }],
    ['feed-plan-set', { percent: [5] }],
    ['feed-plan-set', { percent: [5, 101] }],
    ['animal-flagged', { flags: ['dangerous'] }],
    ['animal-moved', { to: 'tub 5' }],
    ['clutch-laid', { clutch: REX, eggs: -1 }],
    ['slip-made', { corrects: 'that one', how: 'undo' }],
    ['note-made', { words: 'x'.repeat(2001) }],
  ];
  it.each(payloads)('refuses %s with %j', (kind, payload) => {
    expect(pathOf({ ...sound, kind, payload })).toMatch(/^payload/);
  });
});

describe('an event of a newer program', () => {
  it('of an unknown kind is kept whole and marked as unknown', () => {
    const newer = { ...sound, kind: 'tail-measured', payload: { lengthMm: 12, deep: [{ a: 1 }] } };
    const read = value(parseEvent(newer));
    expect(read).toEqual({ ...newer, unknown: true });
    expect(isKnown(read)).toBe(false);
  });
  it('of a newer version is kept whole, even where its payload is one that is refused today', () => {
    const newer = { ...sound, v: 2, payload: { weightMg: 850_000 } };
    expect(value(parseEvent(newer))).toEqual({ ...newer, unknown: true });
  });
  it('is refused all the same where its envelope is broken', () => {
    expect(refusal(parseEvent({ ...sound, kind: 'tail-measured', day: 'today' }))).toBe('event-malformed');
  });
  it('does not hide behind a name from the prototype', () => {
    expect(['constructor', 'toString', '__proto__', 'animal-weighed'].map(isEventKind)).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });
});

describe('bringing an event up to date', () => {
  it('reads an event without a version as version 1', () => {
    const { v: _, ...old } = sound;
    expect(value(parseEvent(old))).toEqual(sound);
  });
  it('leaves the data that it was given as they were', () => {
    const old = Object.freeze({ kind: 'note-made' });
    expect(upgrade(old)).toEqual({ kind: 'note-made', v: 1 });
    expect(old).toEqual({ kind: 'note-made' });
  });
  it('leaves alone what is no event', () => {
    expect([null, 5, 'x', [1]].map(upgrade)).toEqual([null, 5, 'x', [1]]);
  });
});

describe('the order of events', () => {
  const sorted = (...lines: readonly Line[]): string[] =>
    log(...lines)
      .sort(inOrder)
      .map((event) => event.id);

  it('is the order of their days and instants, not of their arrival', () => {
    expect(sorted(weighed('2026-03-09', 5), weighed('2026-03-08', 5))).toEqual([eventId(1), eventId(0)]);
  });
  it('is right for instants that are written with and without parts of a second', () => {
    const at = (text: string): Line => ['2026-03-09', 'opaque-seen', {}, { at: `2026-03-09T08:00:0${text}Z` }];
    expect(sorted(at('1.5'), at('1'), at('0.999999999'), at('1.25'))).toEqual([2, 1, 3, 0].map(eventId));
  });
  it('takes 1.5 and 1.500 seconds for one instant and then goes by the clock', () => {
    const at = (text: string, ms: number): Line => [
      '2026-03-09',
      'opaque-seen',
      {},
      { at: `2026-03-09T08:00:0${text}Z`, clock: [ms, 0] },
    ];
    expect(sorted(at('1.5', 9), at('1.500', 8), at('1.50', 7))).toEqual([2, 1, 0].map(eventId));
  });
  it('files what was written down later under the day on which it happened', () => {
    const late = ['2026-03-05', 'opaque-seen', {}, { at: '2026-03-11T09:00:00.000Z' }] as const;
    expect(sorted(weighed('2026-03-09', 5), late)).toEqual([eventId(1), eventId(0)]);
  });
  it('falls the same way everywhere for events of one instant: clock, device, id', () => {
    const at = '2026-03-09T08:00:00.000Z';
    const line = (clock: Clock, device: number): Line => ['2026-03-09', 'opaque-seen', {}, { at, clock, device }];
    const lines = [line([2, 0], 1), line([1, 9], 9), line([1, 2], 9), line([1, 2], 4), line([1, 2], 4)];
    expect(sorted(...lines)).toEqual([3, 4, 2, 1, 0].map(eventId));
  });
  it('is nought for an event and itself', () => {
    const [one] = log(LINE);
    expect(one && inOrder(one, one)).toBe(0);
    expect(one && laterWriter(one, one)).toBe(0);
  });
});

describe('the clock', () => {
  it('follows the wall clock, and counts on where that stands still or was set back', () => {
    expect(tick([5, 3], 9)).toEqual([9, 0]);
    expect(tick([5, 3], 5)).toEqual([5, 4]);
    expect(tick([5, 3], 1)).toEqual([5, 4]);
  });
  it('is after every clock that it has heard', () => {
    expect(hear([5, 3], [7, 1], 6)).toEqual([7, 2]);
    expect(hear([7, 4], [7, 1], 6)).toEqual([7, 5]);
    expect(hear([5, 3], [7, 1], 8)).toEqual([8, 0]);
    expect(hear([5, 3], [1, 1], 2)).toEqual([5, 4]);
  });
});

describe('fingerprints', () => {
  it('are the same for the same data, whatever the order of keys', () => {
    expect(canonicalJson({ b: [{ d: 1, c: null }], a: 'x' })).toBe('{"a":"x","b":[{"c":null,"d":1}]}');
    expect(canonicalJson({ a: 'x', b: 1 })).toBe(canonicalJson({ b: 1, a: 'x' }));
  });
  it('keep a key called __proto__ as data', () => {
    expect(canonicalJson(JSON.parse('{"__proto__":{"a":1},"a":2}'))).toBe('{"__proto__":{"a":1},"a":2}');
  });
  it('have 11 characters and differ for 50,000 near texts', () => {
    const prints = Array.from({ length: 50_000 }, (_, at) => fingerprint(`850 g on 9 Mar 2026 · ${at}`));
    expect(new Set(prints).size).toBe(50_000);
    expect(prints.every((print) => /^[0-9a-z]{11}$/.test(print))).toBe(true);
    expect(fingerprint('é')).not.toBe(fingerprint('e'));
  });
});

describe('two events of one id', () => {
  it('are told with the id', () => {
    expect(clash(eventId(1)).message).toContain(eventId(1));
  });
});
