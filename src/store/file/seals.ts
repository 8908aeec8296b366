import { createHash, type Hash } from 'node:crypto';
import { appendFile, readFile } from 'node:fs/promises';
import * as z from 'zod/mini';
import { parseJson } from '../line.ts';

/** The hash of the bytes of a log from the end of the seal before up to `bytes`. */
export interface FileSeal {
  readonly bytes: number;
  readonly sha256: string;
}

/** So many lines are sealed at once. */
export const SEAL_LINES = 5000;

const schema = z.object({ bytes: z.int().check(z.gte(0)), sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)) });

/** The seals beside a log; a last one that was torn is left out, and there may be none. */
export async function readSeals(path: string): Promise<readonly FileSeal[]> {
  const text = await readFile(path, 'utf8').catch(() => '');
  return text.split('\n').flatMap((line) => {
    const data = parseJson(line);
    const seal = data.ok ? schema.safeParse(data.value) : null;
    return seal?.success ? [seal.data] : [];
  });
}

/** Holds a log's bytes against its seals while it is read, and seals what is written after. */
export class Sealer {
  readonly #path: string;
  #expected: readonly FileSeal[];
  #hash: Hash = createHash('sha256');
  #bytes = 0;
  #sealed = 0;
  #lines = 0;
  /** True when bytes differed from what was sealed, or were missing. */
  broken = false;

  constructor(path: string, expected: readonly FileSeal[]) {
    this.#path = path;
    this.#expected = expected;
  }

  /** Takes bytes that were read. */
  read(bytes: Uint8Array): void {
    let rest = bytes;
    for (let next = this.#expected[0]; next !== undefined; next = this.#expected[0]) {
      const missing = next.bytes - this.#bytes;
      if (missing > rest.length) break;
      this.#take(rest.subarray(0, missing));
      rest = rest.subarray(missing);
      if (this.#hash.digest('hex') !== next.sha256) this.broken = true;
      this.#hash = createHash('sha256');
      this.#sealed = this.#bytes;
      this.#expected = this.#expected.slice(1);
    }
    this.#take(rest);
  }

  /** True when every byte so far is sealed and fits. */
  get complete(): boolean {
    return !this.broken && this.#bytes === this.#sealed;
  }

  /** The file has been read to its end. */
  readAll(): void {
    if (this.#expected.length > 0) this.broken = true;
  }

  /** Takes bytes that are on the disk now, and seals them when there are enough. */
  async written(bytes: Uint8Array, lines: number): Promise<void> {
    this.#take(bytes);
    this.#lines += lines;
    if (this.#lines >= SEAL_LINES) await this.seal();
  }

  /** Seals what is not sealed yet. A seal that cannot be written is left for the next time: it proves, it holds nothing. */
  async seal(): Promise<void> {
    if (this.#bytes === this.#sealed) return;
    const seal: FileSeal = { bytes: this.#bytes, sha256: this.#hash.copy().digest('hex') };
    try {
      await appendFile(this.#path, `${JSON.stringify(seal)}\n`);
    } catch {
      return;
    }
    this.#hash = createHash('sha256');
    this.#sealed = this.#bytes;
    this.#lines = 0;
  }

  #take(bytes: Uint8Array): void {
    this.#hash.update(bytes);
    this.#bytes += bytes.length;
  }
}
