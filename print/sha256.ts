const ROUND_WORDS = roots(64, 3);
const START = roots(8, 2);

/** SHA-256 (FIPS 180-4, 6.2) where the platform has none: a browser page without https, as on a site's own network. */
export async function ownSha256(bytes: Uint8Array): Promise<Uint8Array> {
  const state = Uint32Array.from(START);
  const words = new Uint32Array(64);
  const padded = pad(bytes);
  const view = new DataView(padded.buffer);
  for (let block = 0; block < padded.length; block += 64) {
    for (let at = 0; at < 16; at++) words[at] = view.getUint32(block + 4 * at);
    mix(state, words);
  }
  const out = new DataView(new ArrayBuffer(32));
  for (const [at, word] of state.entries()) out.setUint32(4 * at, word);
  return new Uint8Array(out.buffer);
}

/** The message, a one bit, zeros, and its length in bits, up to a whole block (5.1.1). */
function pad(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, bytes.length * 8);
  return padded;
}

function mix(state: Uint32Array, words: Uint32Array): void {
  const word = (at: number) => words[at] ?? 0;
  for (let at = 16; at < 64; at++) {
    const [x, y] = [word(at - 15), word(at - 2)];
    const low = turn(x, 7) ^ turn(x, 18) ^ (x >>> 3);
    const high = turn(y, 17) ^ turn(y, 19) ^ (y >>> 10);
    words[at] = (word(at - 16) + low + word(at - 7) + high) | 0;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let at = 0; at < 64; at++) {
    const choice = (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g));
    const first = (h + choice + (ROUND_WORDS[at] ?? 0) + word(at)) | 0;
    const second = ((turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0];
  }
  for (const [at, value] of [a, b, c, d, e, f, g, h].entries()) state[at] = (state[at] ?? 0) + value;
}

function turn(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

/** The first 32 bits of the fractional parts of the square or cube roots of the first primes (4.2.2, 5.3.3), in whole numbers. */
function roots(count: number, degree: 2 | 3): Uint32Array {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++)
    if (isPrime(n)) found.push(Number(rootOf(BigInt(n), degree) & 0xffffffffn));
  return Uint32Array.from(found);
}

function isPrime(n: number): boolean {
  for (let factor = 2; factor * factor <= n; factor++) if (n % factor === 0) return false;
  return true;
}

/** The whole part of 2^32 times the root. */
function rootOf(n: bigint, degree: 2 | 3): bigint {
  const target = n << BigInt(32 * degree);
  let low = 0n;
  let high = 1n << 40n;
  while (high - low > 1n) {
    const middle = (low + high) / 2n;
    if (middle ** BigInt(degree) <= target) low = middle;
    else high = middle;
  }
  return low;
}
