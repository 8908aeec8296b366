/** What every place that print runs in has, or may have: pages, workers and Node share these names. */
interface Platform {
  readonly setTimeout: (then: () => void, ms: number) => unknown;
  /** Node's; its timers wait a whole millisecond. */
  readonly setImmediate?: (then: () => void) => unknown;
  readonly DecompressionStream?: new (format: 'deflate') => ByteTransform;
  readonly TextEncoder: new () => { encode(text: string): Uint8Array };
  readonly crypto?: { readonly subtle?: { digest(name: 'SHA-256', bytes: Uint8Array): Promise<ArrayBuffer> } };
}

/** As much of the platform's streams as unpacking takes. */
interface ByteTransform {
  readonly writable: { getWriter(): { write(bytes: Uint8Array): Promise<void>; close(): Promise<void> } };
  readonly readable: { getReader(): { read(): Promise<{ readonly done: boolean; readonly value?: Uint8Array }> } };
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

/** Bytes unpacked (RFC 1950). Rejects with an Error where the platform cannot, or where they are no such bytes. */
export async function inflated(bytes: Uint8Array): Promise<Uint8Array> {
  const { DecompressionStream } = platform;
  if (DecompressionStream === undefined) throw new Error('this browser is too old to unpack what it printed');
  const stream = new DecompressionStream('deflate');
  const writer = stream.writable.getWriter();
  const written = writer.write(bytes).then(() => writer.close());
  const reader = stream.readable.getReader();
  const chunks: Uint8Array[] = [];
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    if (value !== undefined) chunks.push(value);
  }
  await written;
  return joined(chunks);
}
