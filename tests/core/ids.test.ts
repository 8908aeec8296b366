import { describe, expect, it } from 'vitest';
import {
  ALPHABET,
  checkSymbol,
  ENROLLED,
  encodeBase32,
  eventIdFrom,
  isEventId,
  isId,
  mintId,
  mintUnenrolledId,
  parseId,
  sayId,
  UNENROLLED,
} from '../../src/core/index.ts';
import { id, refusal, value } from './log.ts';

const SOME = [0, 1, 2, 999, 123_456, 16_777_215].map(id);

describe('reading an id', () => {
  const one = id(7);
  const plain = `0000001${checkSymbol(1)}`;

  it('comes back as it was minted', () => {
    for (const minted of SOME) expect(value(parseId(minted))).toEqual({ id: minted, corrected: false });
  });
  it('reads it as people write it: in groups, in small letters, with blanks around', () => {
    for (const text of [sayId(one), one.toLowerCase(), `  ${one}\n`, [...one].join('-'), one.replace(/(..)/g, '$1 ')])
      expect(value(parseId(text)), text).toEqual({ id: one, corrected: false });
  });
  it('takes I and L for 1, and O for 0, and says so', () => {
    for (const text of ['OOOOOO1', '0o0O0oI', '000000l', 'oooooo1'])
      expect(value(parseId(text + plain.slice(-1))), text).toEqual({ id: plain, corrected: true });
  });
  it('refuses text of another length', () => {
    for (const text of ['', '7', one.slice(1), `${one}0`, ' - - ', 'A'.repeat(100_000)])
      expect(refusal(parseId(text))).toBe('not-an-id');
  });
  it('refuses letters outside the alphabet', () => {
    for (const text of ['U000000X', '000000É0', '00000🐍X', '0000.00X'])
      expect(refusal(parseId(text))).toBe('not-an-id');
  });
  it('refuses a check that does not fit', () => {
    expect(refusal(parseId(`0000001${checkSymbol(2)}`))).toBe('check-failed');
  });
  it('refuses an id whose check is one of * ~ $ = U though it fits, because none was ever minted', () => {
    for (const number of [32, 33, 34, 35, 36]) {
      const text = encodeBase32(number).padStart(7, '0') + checkSymbol(number);
      expect(refusal(parseId(text)), text).toBe('check-failed');
    }
  });
  it('cuts long text in its message', () => {
    const read = parseId('x'.repeat(5000));
    expect(read.ok ? 0 : read.problem.message.length).toBeLessThan(100);
  });
  it('knows the stored form from the others', () => {
    expect([isId(one), isId(sayId(one)), isId(one.toLowerCase()), isId('')]).toEqual([true, false, false, false]);
  });
});

describe('one slip of the pen', () => {
  it('every substitution of one character by another is caught (exhaustive on six ids)', () => {
    let tried = 0;
    for (const minted of SOME)
      for (let at = 0; at < minted.length; at++)
        for (const other of ALPHABET) {
          if (other === minted[at]) continue;
          tried += 1;
          expect(isId(minted.slice(0, at) + other + minted.slice(at + 1))).toBe(false);
        }
    expect(tried).toBe(6 * 8 * 31);
  });
  it('every swap of any two different characters is caught (exhaustive on two thousand ids)', () => {
    let tried = 0;
    for (let n = 0; n < 2000; n++) {
      const letters = [...id(n)];
      for (let a = 0; a < 8; a++)
        for (let b = a + 1; b < 8; b++) {
          if (letters[a] === letters[b]) continue;
          const swapped = letters.map((letter, at) => letters[at === a ? b : at === b ? a : at] ?? letter).join('');
          tried += 1;
          expect(isId(swapped), swapped).toBe(false);
        }
    }
    expect(tried).toBeGreaterThan(50_000);
  });
});

describe('minting', () => {
  it('never gives a check of * ~ $ = U', () => {
    for (let n = 0; n < 20_000; n++) expect(ALPHABET.includes(id(n * 838).slice(-1))).toBe(true);
  });
  it('gives different devices and counters different ids', () => {
    const seen = new Set<string>();
    const edges = (most: number): number[] => [0, 1, 2, 3, most >> 1, most - 3, most - 2, most - 1];
    for (let device = 0; device < ENROLLED.devices; device++)
      for (const counter of edges(ENROLLED.counters)) seen.add(value(mintId(device, counter)));
    for (let device = 0; device < UNENROLLED.devices; device += 127)
      for (const counter of edges(UNENROLLED.counters)) seen.add(value(mintUnenrolledId(device, counter)));
    const devices = ENROLLED.devices + Math.ceil(UNENROLLED.devices / 127);
    expect(seen.size).toBe(devices * 8);
  });
  it('gives one device 200,000 different ids in a row', () => {
    const seen = new Set(Array.from({ length: 200_000 }, (_, n) => value(mintId(5, n))));
    expect(seen.size).toBe(200_000);
  });
  it('makes neighbours look different: five or more of eight characters on average', () => {
    let differing = 0;
    for (let n = 0; n < 1000; n++) differing += [...id(n)].filter((letter, at) => letter !== id(n + 1)[at]).length;
    expect(differing / 1000).toBeGreaterThan(5);
  });
  it('refuses device numbers and counters outside their share', () => {
    expect([-1, ENROLLED.devices, 1.5, Number.NaN].map((device) => refusal(mintId(device, 0)))).toEqual(
      Array(4).fill('device-number'),
    );
    expect([-1, ENROLLED.counters, 0.5].map((counter) => refusal(mintId(0, counter)))).toEqual(
      Array(3).fill('counter-spent'),
    );
    expect(refusal(mintUnenrolledId(UNENROLLED.devices, 0))).toBe('device-number');
    expect(refusal(mintUnenrolledId(0, UNENROLLED.counters))).toBe('counter-spent');
  });
});

describe('event ids', () => {
  const bytes = Uint8Array.from([255, 255, 255, 255, 255, 255, 255, 255, 255, 255]);

  it('are UUIDv7 whatever the random bytes are', () => {
    expect(isEventId(eventIdFrom(Date.UTC(2026, 2, 9), bytes))).toBe(true);
    expect(isEventId(eventIdFrom(0, new Uint8Array(10)))).toBe(true);
    expect(isEventId(eventIdFrom(Date.UTC(2026, 2, 9), new Uint8Array(0)))).toBe(true);
  });
  it('sort by their time', () => {
    expect(eventIdFrom(1_000, bytes) < eventIdFrom(1_001, new Uint8Array(10))).toBe(true);
  });
  it('keep all ten random bytes apart, but for the bits that the version takes', () => {
    const ids = Array.from({ length: 10 }, (_, at) =>
      eventIdFrom(
        0,
        bytes.map((byte, to) => (to === at ? 0x55 : byte)),
      ),
    );
    expect(new Set(ids).size).toBe(10);
  });
  it('are not taken in capitals, nor with another version', () => {
    const sound = eventIdFrom(5, bytes);
    expect([isEventId(sound.toUpperCase()), isEventId(sound.replace('-7', '-4')), isEventId('')]).toEqual([
      false,
      false,
      false,
    ]);
  });
});
