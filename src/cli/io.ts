import type { Readable, Writable } from 'node:stream';

/** What a command talks to: its input, its output, the words for people beside it, and the clock. */
export interface Io {
  readonly input: Readable;
  readonly output: Writable;
  readonly errors: Writable & { readonly isTTY?: boolean };
  /** True when people see the output on a terminal. */
  readonly terminal: boolean;
  /** Milliseconds since 1970. */
  readonly now: () => number;
}

/** One line of output. */
export function say(io: Io, line: string): void {
  io.output.write(`${line}\n`);
}

/** One line for people, beside the output. */
export function warn(io: Io, line: string): void {
  io.errors.write(`${line}\n`);
}

/** Writes a piece and waits where the reader is slower. */
export async function put(stream: Writable, piece: string | Uint8Array): Promise<void> {
  if (stream.write(piece)) return;
  await new Promise<void>((resolve) => stream.once('drain', resolve));
}

/** The process's own streams and clock. */
export function processIo(): Io {
  const { stdin, stdout, stderr } = process;
  return { input: stdin, output: stdout, errors: stderr, terminal: stdout.isTTY === true, now: Date.now };
}
