import type { Io } from './io.ts';

/** A bar for people who wait; other readers of the stream never see it. */
export interface Progress {
  /** How much is done, from 0 to 1. */
  at(share: number): void;
  /** Takes the bar away. */
  end(): void;
}

/** What takes less is over before anybody wonders. */
const QUIET_MS = 1000;
const BETWEEN_MS = 100;
const WIDTH = 30;

/** A bar on a terminal for whatever takes longer than a second; nothing elsewhere. */
export function progress(io: Io, what: string): Progress {
  if (io.errors.isTTY !== true) return { at: () => undefined, end: () => undefined };
  const start = io.now();
  let drawn = 0;
  return {
    at(share) {
      const now = io.now();
      if (now - start < QUIET_MS || now - drawn < BETWEEN_MS) return;
      drawn = now;
      io.errors.write(`\r${bar(share)} ${what}\u001b[K`);
    },
    end() {
      if (drawn > 0) io.errors.write('\r\u001b[K');
    },
  };
}

function bar(share: number): string {
  const done = Math.min(Math.max(share, 0), 1);
  const full = Math.round(done * WIDTH);
  return `[${'#'.repeat(full)}${'.'.repeat(WIDTH - full)}] ${String(Math.round(done * 100)).padStart(3)} %`;
}
