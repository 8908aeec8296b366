/**
 * Chance from a seed: mulberry32, a 32-bit mixing generator in the public domain, written from memory. It is here so
 * that the same seed gives the same site, byte for byte, on every machine; it is not for secrets.
 */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** A number from 0 up to, without, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** True in that share of cases. */
  happens(share: number): boolean {
    return this.next() < share;
  }

  /** A number between two others. */
  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** A whole number from low to high, both included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  /** One of a list that is not empty. */
  pick<T>(list: readonly T[]): T {
    const one = list[Math.floor(this.next() * list.length)];
    if (one === undefined) throw new RangeError('nothing to pick from');
    return one;
  }

  /** The list in another order. */
  shuffled<T>(list: readonly T[]): T[] {
    return list
      .map((one) => ({ one, at: this.next() }))
      .sort((a, b) => a.at - b.at)
      .map(({ one }) => one);
  }

  /** Ten bytes, as the id of an event needs them. */
  bytes(): Uint8Array {
    return Uint8Array.from({ length: 10 }, () => this.whole(0, 255));
  }
}
