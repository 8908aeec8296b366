import { describe, expect, it } from 'vitest';
import { eventIdFrom, isEventId } from '../../src/core/index.ts';

describe('RFC 9562, 5.7: the layout of UUIDv7', () => {
  const all = eventIdFrom(2 ** 48 - 1, new Uint8Array(10).fill(255));
  const none = eventIdFrom(0, new Uint8Array(10));
  it('48 bits of milliseconds, version 7, 12 random bits, variant 10, 62 random bits', () => {
    expect(all).toBe('ffffffff-ffff-7fff-bfff-ffffffffffff');
    expect(none).toBe('00000000-0000-7000-8000-000000000000');
  });
  // RFC 9562, appendix A.6, quoted from memory: 2022-02-22T19:22:22Z, rand_a CC3, rand_b 18C4DC0C0C07398F.
  it('gives the example of appendix A.6 (from memory)', () => {
    const random = Uint8Array.from([0xcc, 0x30 | 0x9, 0x8c, 0x4d, 0xc0, 0xc0, 0xc0, 0x73, 0x98, 0xf0]);
    const made = eventIdFrom(Date.UTC(2022, 1, 22, 19, 22, 22), random);
    expect(made).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
    expect(isEventId(made)).toBe(true);
  });
});

describe('another implementation’s example (the version 7 example of the Rust crate uuid)', () => {
  it('1497624119 s after 1970 begins with 015cb15a-86d8-7', () => {
    expect(eventIdFrom(1_497_624_119_000, new Uint8Array(10)).startsWith('015cb15a-86d8-7')).toBe(true);
  });
});
