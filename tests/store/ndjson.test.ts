import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { eventLine, logReader, readEvent, readLog, sha256, writeLog } from '../../src/store/index.ts';
import { ids } from './contract.ts';
import { data, event, events } from './sample.ts';

const codes = (text: string) => readLog(text).problems.map(({ code }) => code);
const bare = (...list: unknown[]) =>
  list.map((one) => `${typeof one === 'string' ? one : JSON.stringify(one)}\n`).join('');

describe('SHA-256', () => {
  // NIST, FIPS 180-4 example values ("abc", the 448-bit message, a million times "a"); from memory, and held against
  // Node's OpenSSL below.
  test.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('the published example %#', (text, hex) => {
    const hash = sha256();
    hash.update(new TextEncoder().encode(text));
    expect(hash.hex()).toBe(hex);
  });

  test('any bytes in any pieces hash as OpenSSL says', () => {
    fc.assert(
      fc.property(fc.array(fc.uint8Array({ maxLength: 150 }), { maxLength: 6 }), (pieces) => {
        const ours = sha256();
        const theirs = createHash('sha256');
        for (const piece of pieces) {
          ours.update(piece);
          theirs.update(piece);
        }
        expect(ours.hex()).toBe(theirs.digest('hex'));
      }),
    );
  });
});

describe('a log as a file', () => {
  test('is read back as it was written, and its seal fits', () => {
    const text = writeLog(events(0, 2500));
    expect(readLog(text)).toEqual({ events: events(0, 2500), problems: [], sealed: true });
    expect(writeLog(readLog(text).events)).toBe(text);
  });

  test('is sound when it is empty', () => {
    expect(readLog(writeLog([]))).toEqual({ events: [], problems: [], sealed: true });
    expect(readLog('')).toEqual({ events: [], problems: [], sealed: false });
  });

  test('is read without a seal too, blank lines and Windows line ends included', () => {
    const text = `${bare(data({ n: 1 }), '', data({ n: 2 })).replaceAll('\n', '\r\n')}`;
    expect(readLog(text)).toEqual({ events: [event(1), event(2)], problems: [], sealed: false });
  });

  test('gives the same in pieces of any size', () => {
    const text = writeLog([...events(0, 5), event({ n: 9, kind: 'note-made', payload: { words: 'snö 🐍' } })]);
    for (const size of [1, 7, 100, 10_000]) {
      const reader = logReader();
      const read = [];
      for (let at = 0; at < text.length; at += size) read.push(...reader.push(text.slice(at, at + size)));
      const end = reader.end();
      expect(read).toEqual(readLog(text).events);
      // A hash is over bytes: a piece must not end inside a surrogate pair for it to fit.
      if (size > 1) expect(end.sealed).toBe(true);
    }
  });

  test.each([
    ['a letter of a weight', (text: string) => text.replace('"weightG":103', '"weightG":104'), ['file-edited']],
    ['a line taken out', (text: string) => text.replace(/^.*\n/, ''), ['file-edited']],
    ['two lines swapped', (text: string) => text.replace(/^(.*\n)(.*\n)/, '$2$1'), ['file-edited']],
    ['a line added after the seal', (text: string) => text + bare(data({ n: 50 })), ['file-edited']],
    ['all line ends made Windows ones', (text: string) => text.replaceAll('\n', '\r\n'), ['file-edited']],
    ['cut inside the seal', (text: string) => text.slice(0, -30), ['file-cut']],
    ['cut before the seal, between two lines', (text: string) => text.replace(/\{"seal.*\n$/, ''), ['file-cut']],
    ['cut to the first line', (text: string) => `${text.split('\n')[0]}\n`, ['file-cut']],
    ['cut inside a line', (text: string) => text.slice(0, 500), ['file-cut']],
    ['only the last newline missing', (text: string) => text.slice(0, -1), ['file-cut']],
  ])('with %s is not sound, and says why', (_what, harm, expected) => {
    const harmed = readLog(harm(writeLog(events(0, 6))));
    expect(harmed.problems.map(({ code }) => code)).toEqual(expected);
    expect(harmed.sealed).toBe(false);
  });

  test('a flipped byte anywhere is noticed', () => {
    const text = writeLog(events(0, 3));
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.integer({ min: 1, max: 127 }), (at, flip) => {
        const harmed = text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ flip) + text.slice(at + 1);
        expect(readLog(harmed).problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  test('a file cut at any byte is noticed, and every whole line before the cut is read', () => {
    const text = writeLog(events(0, 4));
    for (let at = 1; at < text.length; at++) {
      const cut = readLog(text.slice(0, at));
      expect(cut.problems.map(({ code }) => code)).toEqual(['file-cut']);
      const whole = text.slice(0, at).split('\n').length - 1;
      expect(cut.events.length).toBeGreaterThanOrEqual(Math.min(whole, 4));
    }
  });

  test('a broken line in the middle costs only itself, and its number is said', () => {
    const read = readLog(bare(data({ n: 1 }), '{"id": oops', data({ n: 2 }), { id: 7 }, data({ n: 3 })));
    expect(ids(read.events)).toEqual(ids([event(1), event(2), event(3)]));
    expect(read.problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([
      'line-broken: Line 2 is not a whole event: it is not JSON.',
      expect.stringContaining('line-broken: Line 4 is not a whole event: '),
    ]);
  });

  test('a last line that was cut says how many lines before it were read', () => {
    const [problem] = readLog(bare(data({ n: 1 }), data({ n: 2 })).slice(0, -20)).problems;
    expect(problem).toMatchObject({
      code: 'file-cut',
      message: 'The file ends in the middle of line 2.',
      remedy: expect.stringContaining('the 1 whole lines'),
    });
  });

  test('a log without last newline keeps its last event and says it was cut', () => {
    const text = bare(data({ n: 1 })).trimEnd();
    expect(ids(readLog(text).events)).toEqual(ids([event(1)]));
    expect(codes(text)).toEqual(['file-cut']);
  });

  test.each([
    ['a kind from the future', { kind: 'moon-seen', payload: { z: [1, { y: null }], a: 'ß' } }],
    ['a known kind of a later version', { v: 9, payload: { weightMg: 5 } }],
    ['a later envelope', { v: 9, witness: ['Bo'], rows: { b: 1, a: 2 } }],
  ])('%s is kept and written back letter for letter', (_what, more) => {
    const strange = { ...data({ n: 1 }), ...more };
    const [read] = readLog(bare(strange)).events;
    if (read === undefined) throw new Error('it was not read');
    expect(JSON.parse(eventLine(read))).toEqual(strange);
    expect(eventLine(read)).not.toContain('unknown');
    expect(readLog(writeLog([read])).events.map(eventLine)).toEqual([eventLine(read)]);
  });

  test.each([
    ['a key __proto__', '{"__proto__":{"a":1}}', '__proto__'],
    ['a key __proto__ deep within', '{"a":[{"__proto__":1}]}', '__proto__'],
    ['a million levels', `${'['.repeat(1_000_000)}${']'.repeat(1_000_000)}`, 'nested deeper than 32 levels'],
  ])('an event with %s is refused', (_what, payload, why) => {
    const line = JSON.stringify(data({ n: 1, kind: 'moon-seen', payload: 0 })).replace(
      '"payload":0',
      () => `"payload":${payload}`,
    );
    const read = readLog(bare(line, data({ n: 2 })));
    expect(ids(read.events)).toEqual(ids([event(2)]));
    expect(read.problems).toMatchObject([{ code: 'line-broken', message: expect.stringContaining(why) }]);
  });

  test('a known event that claims to be unknown is read as what it is', () => {
    const read = readEvent({ ...data({ n: 1 }), unknown: true });
    expect(read).toEqual({ ok: true, value: event(1) });
  });

  test.each(['null', '[]', '7', '"x"', '{}', '{"seal":7}', '{"seal":{"events":"1","sha256":2}}'])(
    'the line %s is broken, not fatal',
    (line) => {
      expect(codes(bare(line, data({ n: 1 })))).toEqual(['line-broken']);
      expect(ids(readLog(bare(line, data({ n: 1 }))).events)).toEqual(ids([event(1)]));
    },
  );
});
