/**
 * SHA-256 (FIPS 180-4, section 6.2), fed piece by piece. Our own because the browser's is asynchronous and absent on plain
 * HTTP, where a log file must be provable too.
 */
export interface Sha256 {
  update(bytes: Uint8Array): void;
  /** The hash so far as 64 hex digits; more may follow. */
  hex(): string;
}

const BLOCK = 64;
/** Cube and square roots of the first primes, as FIPS 180-4 (4.2.2 and 5.3.3) derives its constants. */
const PRIMES = firstPrimes(64);
const K = Uint32Array.from(PRIMES, (prime) => fraction(Math.cbrt(prime)));
const START = PRIMES.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));

/** A fresh hash of no bytes. */
export function sha256(): Sha256 {
  const state = Uint32Array.from(START);
  const schedule = new Uint32Array(BLOCK);
  const rest = new Uint8Array(BLOCK);
  let length = 0;
  return {
    update(bytes) {
      let at = 0;
      while (at < bytes.length) {
        const used = length % BLOCK;
        const taken = Math.min(BLOCK - used, bytes.length - at);
        if (taken === BLOCK) compress(state, schedule, bytes, at);
        else {
          rest.set(bytes.subarray(at, at + taken), used);
          if (used + taken === BLOCK) compress(state, schedule, rest, 0);
        }
        at += taken;
        length += taken;
      }
    },
    hex() {
      const last = Uint32Array.from(state);
      const tail = padding(rest.subarray(0, length % BLOCK), length);
      for (let at = 0; at < tail.length; at += BLOCK) compress(last, schedule, tail, at);
      return Array.from(last, (word) => word.toString(16).padStart(8, '0')).join('');
    },
  };
}

function padding(rest: Uint8Array, length: number): Uint8Array {
  const tail = new Uint8Array(rest.length + 9 > BLOCK ? 2 * BLOCK : BLOCK);
  tail.set(rest);
  tail[rest.length] = 0x80;
  const view = new DataView(tail.buffer);
  view.setUint32(tail.length - 8, Math.floor(length / 2 ** 29));
  view.setUint32(tail.length - 4, (length * 8) >>> 0);
  return tail;
}

function compress(state: Uint32Array, w: Uint32Array, bytes: Uint8Array, from: number): void {
  expand(w, bytes, from);
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let t = 0; t < BLOCK; t++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + (K[t] ?? 0) + (w[t] ?? 0)) | 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, at) => {
    state[at] = (state[at] ?? 0) + word;
  });
}

function expand(w: Uint32Array, bytes: Uint8Array, from: number): void {
  for (let t = 0, at = from; t < 16; t++, at += 4) {
    w[t] = ((bytes[at] ?? 0) << 24) | ((bytes[at + 1] ?? 0) << 16) | ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
  }
  for (let t = 16; t < BLOCK; t++) {
    const before = w[t - 15] ?? 0;
    const lately = w[t - 2] ?? 0;
    const s0 = turn(before, 7) ^ turn(before, 18) ^ (before >>> 3);
    const s1 = turn(lately, 17) ^ turn(lately, 19) ^ (lately >>> 10);
    w[t] = (w[t - 16] ?? 0) + s0 + (w[t - 7] ?? 0) + s1;
  }
}

function turn(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

function fraction(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32);
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n++) {
    if (primes.every((prime) => n % prime !== 0)) primes.push(n);
  }
  return primes;
}
