/** What every place that print runs in has, or may have: pages, workers and Node share these names. */
interface Platform {
  readonly setTimeout: (then: () => void, ms: number) => unknown;
  /** Node's; its timers wait a whole millisecond. */
  readonly setImmediate?: (then: () => void) => unknown;
  readonly TextEncoder: new () => { encode(text: string): Uint8Array };
  readonly crypto?: { readonly subtle?: { digest(name: 'SHA-256', bytes: Uint8Array): Promise<ArrayBuffer> } };
}

const platform = globalThis as unknown as Platform;
const encoder = new platform.TextEncoder();

/** SHA-256 of bytes, as 32 bytes. */
export type Sha256 = (bytes: Uint8Array) => Promise<Uint8Array>;

/** Lets whatever else waits have its turn, so that a long job freezes no screen and no stream piles up. */
export function breathe(): Promise<void> {
  const { setImmediate, setTimeout } = platform;
  return new Promise((resolve) => (setImmediate ? setImmediate(resolve) : setTimeout(resolve, 0)));
}

/** The platform's own SHA-256, which browsers keep back on pages without https; then null. */
export function platformSha256(): Sha256 | null {
  const subtle = platform.crypto?.subtle;
  return subtle ? async (bytes) => new Uint8Array(await subtle.digest('SHA-256', bytes)) : null;
}

/** Text as UTF-8, by the platform's own and fast way. */
export function utf8(text: string): Uint8Array {
  return encoder.encode(text);
}

/** Bytes as hexadecimal digits in lower case. */
export function hex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Pieces of bytes as one. */
export function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((length, chunk) => length + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
