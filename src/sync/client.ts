import { type Problem, problem } from '../core/index.ts';
import { LogFailure } from '../store/index.ts';
import { exchange, type Parties } from './exchange.ts';

/** How it stands between this device and its hub; offline is normal. */
export interface SyncState {
  readonly link: 'online' | 'offline';
  /** Events that the hub has not acknowledged. */
  readonly unsent: number;
  /** The instant of the oldest of them, RFC 3339 in UTC. */
  readonly oldestUnsentAt: string | null;
  /** When the hub was last heard, in milliseconds since 1970; null for never since the program began. */
  readonly lastSeenMs: number | null;
  /** Why it is offline or could not store; null while all is well. */
  readonly problem: Problem | null;
}

/** Keeps a device and its hub together. */
export interface SyncClient {
  state(): SyncState;
  /** Exchanges now, or joins the exchange that is running; never rejects. */
  syncNow(): Promise<SyncState>;
  /** Says the state at every change; gives back how to stop listening. */
  listen(heard: (state: SyncState) => void): () => void;
  /** Exchanges again and again until stopped; waits longer while the hub is away. */
  start(): void;
  stop(): void;
}

/** How long to wait after a good exchange and at most after a failed one. */
export interface Rhythm {
  readonly restMs: number;
  readonly longestMs: number;
}

const RHYTHM: Rhythm = { restMs: 3_000, longestMs: 60_000 };

/** A client that is not started yet. One tab of a device should run it (Web Locks); two do no harm. */
export function syncClient(parties: Parties, rhythm: Rhythm = RHYTHM): SyncClient {
  return new Client(parties, rhythm);
}

class Client implements SyncClient {
  readonly #parties: Parties;
  readonly #rhythm: Rhythm;
  readonly #listeners = new Set<(state: SyncState) => void>();
  #state: SyncState = { link: 'offline', unsent: 0, oldestUnsentAt: null, lastSeenMs: null, problem: null };
  #running: Promise<SyncState> | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #failures = 0;

  constructor(parties: Parties, rhythm: Rhythm) {
    this.#parties = parties;
    this.#rhythm = rhythm;
  }

  state(): SyncState {
    return this.#state;
  }

  syncNow(): Promise<SyncState> {
    this.#running ??= this.#sync().finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  listen(heard: (state: SyncState) => void): () => void {
    this.#listeners.add(heard);
    return () => void this.#listeners.delete(heard);
  }

  start(): void {
    if (this.#timer === null) this.#again(0);
  }

  stop(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }

  async #sync(): Promise<SyncState> {
    const failed = await this.#exchange();
    this.#failures = failed === null ? 0 : this.#failures + 1;
    const lastSeenMs = failed === null ? this.#parties.now() : this.#state.lastSeenMs;
    this.#state = { ...this.#state, link: failed === null ? 'online' : 'offline', lastSeenMs, problem: failed };
    await this.#count();
    for (const heard of this.#listeners) heard(this.#state);
    return this.#state;
  }

  async #exchange(): Promise<Problem | null> {
    try {
      const done = await exchange(this.#parties);
      return done.ok ? null : done.problem;
    } catch (error) {
      return said(error);
    }
  }

  async #count(): Promise<void> {
    try {
      const { count, oldestAt } = await this.#parties.log.unsent();
      this.#state = { ...this.#state, unsent: count, oldestUnsentAt: oldestAt };
    } catch (error) {
      this.#state = { ...this.#state, problem: said(error) };
    }
  }

  #again(waitMs: number): void {
    const timer = setTimeout(async () => {
      await this.syncNow();
      // Stopped, or stopped and started again, in the meantime: then another timer is in charge.
      if (this.#timer === timer) this.#again(this.#wait());
    }, waitMs);
    this.#timer = timer;
  }

  #wait(): number {
    const { restMs, longestMs } = this.#rhythm;
    return Math.min(restMs * 2 ** Math.min(this.#failures, 20), longestMs);
  }
}

/** A loop in the background must go on whatever happens; what happened is said instead of thrown. */
function said(error: unknown): Problem {
  return error instanceof LogFailure ? error.problem : problem('storage-failed', { why: String(error) });
}
