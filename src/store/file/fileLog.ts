import type { FileHandle } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type EventId, type Id, type LogEvent, type Problem, problem, type SITE } from '../../core/index.ts';
import { type Appended, type Cursor, type EventLog, LogFailure, type Page } from '../eventLog.ts';
import { type Entry, readOwnLines } from '../line.ts';
import { MORE } from '../ndjson.ts';
import { type Sifted, sift } from '../sift.ts';
import { withSlips } from '../slips.ts';
import { syncDirectory } from './durable.ts';
import { diskFailure } from './failure.ts';
import type { LineIndex } from './lineIndex.ts';
import { lock } from './lock.ts';
import { type OpenedFile, openFile } from './openFile.ts';
import type { Sealer } from './seals.ts';

/** A page as the lines that stand in the file, to be passed on without reading them. */
export interface LinePage {
  readonly lines: readonly string[];
  readonly next: Cursor;
  readonly head: Cursor;
}

/** An event log in one NDJSON file. */
export interface FileLog extends EventLog {
  /** What was wrong with the file when it was opened, and was set right or set aside. */
  readonly problems: readonly Problem[];
  lines(after: Cursor, limit: number): Promise<LinePage>;
}

/** A page is cut short before it takes more than this. */
const PAGE_BYTES = 8_000_000;

/**
 * The log in a file, which one program at a time may have open. Appends that wait together are written together, with
 * one sync. Beside it stand `PATH.seals` (hashes that prove it), `PATH.parked` and, after a crash, `PATH.torn`.
 * Rejects with `log-in-use`, `log-is-export`, `storage-failed`.
 */
export async function fileLog(path: string): Promise<FileLog> {
  try {
    const unlock = await lock(path);
    try {
      const main = await openFile(path);
      const parked = await openFile(`${path}.parked`);
      await syncDirectory(dirname(path));
      return new NdjsonLog(main, parked, unlock);
    } catch (error) {
      await unlock();
      throw error;
    }
  } catch (error) {
    throw diskFailure(error);
  }
}

interface Waiting {
  readonly events: readonly LogEvent[];
  readonly resolve: (appended: Appended) => void;
  readonly reject: (failure: LogFailure) => void;
}

class NdjsonLog implements FileLog {
  readonly problems: readonly Problem[];
  readonly #main: Part;
  readonly #parked: Part;
  readonly #unlock: () => Promise<void>;
  #waiting: Waiting[] = [];
  #working: Promise<void> | null = null;

  constructor(main: OpenedFile, parked: OpenedFile, unlock: () => Promise<void>) {
    this.problems = [...main.problems, ...parked.problems];
    this.#main = new Part(main);
    this.#parked = new Part(parked);
    this.#unlock = unlock;
  }

  append(events: readonly LogEvent[]): Promise<Appended> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ events, resolve, reject });
      this.#working ??= this.#work();
    });
  }

  async read(after: Cursor, limit: number): Promise<Page> {
    const { lines, next, head } = await this.lines(after, limit);
    return { events: readOwnLines(lines), next, head };
  }

  async lines(after: Cursor, limit: number): Promise<LinePage> {
    const { index } = this.#main;
    const head = index.size;
    if (after >= head) return { lines: [], next: head, head };
    let next = Math.min(after + limit, head);
    while (next > after + 1 && sizeOf(index.span(after, next)) > PAGE_BYTES) next = after + ((next - after) >> 1);
    const lines = await this.#main.linesAt(after, next);
    return { lines: lines.filter((_line, at) => !index.isBroken(after + at + 1)), next, head };
  }

  async history(subject: Id | typeof SITE): Promise<readonly LogEvent[]> {
    const { index } = this.#main;
    const own = await this.#at(index.linesOf(subject));
    const slips = new Map<EventId, readonly LogEvent[]>();
    const waiting = own.map(({ id }) => id);
    for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
      if (slips.has(id)) continue;
      const found = await this.#at(index.slipsOf(id));
      slips.set(id, found);
      waiting.push(...found.map((slip) => slip.id));
    }
    return withSlips(own, (id) => slips.get(id) ?? []);
  }

  async parked(): Promise<readonly LogEvent[]> {
    return readOwnLines(await this.#parked.linesAt(0, this.#parked.index.size));
  }

  async head(): Promise<Cursor> {
    return this.#main.index.size;
  }

  async close(): Promise<void> {
    await this.#working;
    await this.#main.close();
    await this.#parked.close();
    await this.#unlock();
  }

  async #at(numbers: readonly Cursor[]): Promise<LogEvent[]> {
    const lines = await Promise.all(numbers.map((number) => this.#main.linesAt(number - 1, number)));
    return readOwnLines(lines.flat());
  }

  async #work(): Promise<void> {
    while (this.#waiting.length > 0) {
      const group = this.#waiting;
      this.#waiting = [];
      await this.#write(group);
    }
    this.#working = null;
  }

  /** One sync for all that wait; nobody is answered before it. */
  async #write(group: readonly Waiting[]): Promise<void> {
    try {
      const sifted = await this.#sift(group);
      await this.#parked.write(await this.#newlyParked(sifted));
      await this.#main.write(sifted.map(({ fresh }) => fresh));
      group.forEach(({ resolve }, at) => {
        resolve(appendedOf(sifted[at]));
      });
    } catch (error) {
      for (const { reject } of group) reject(diskFailure(error));
    }
  }

  async #sift(group: readonly Waiting[]): Promise<Sifted[]> {
    const ids = new Set(group.flatMap(({ events }) => events.map(({ id }) => id)));
    const held = await this.#main.held(ids);
    return group.map(({ events }) => {
      const sifted = sift(events, held);
      for (const { event, line } of sifted.fresh) held.set(event.id, line);
      return sifted;
    });
  }

  async #newlyParked(sifted: readonly Sifted[]): Promise<Entry[][]> {
    const clashes = sifted.flatMap((one) => one.clashes);
    if (clashes.length === 0) return [];
    const here = new Set(await this.#parked.linesAt(0, this.#parked.index.size));
    return [[...new Map(clashes.map((entry) => [entry.line, entry])).values()].filter(({ line }) => !here.has(line))];
  }
}

/** One file of lines with its index. */
class Part {
  readonly index: LineIndex;
  readonly #file: FileHandle;
  readonly #sealer: Sealer;
  #broken: LogFailure | null = null;

  constructor({ file, index, sealer }: OpenedFile) {
    this.#file = file;
    this.index = index;
    this.#sealer = sealer;
  }

  /** The lines after one arrival up to another, without the marks of their writings. */
  async linesAt(after: Cursor, until: Cursor): Promise<string[]> {
    if (until <= after) return [];
    const { from, to } = this.index.span(after, until);
    const bytes = Buffer.alloc(to - from);
    for (let filled = 0; filled < bytes.length; ) {
      const { bytesRead } = await this.#file.read(bytes, filled, bytes.length - filled, from + filled);
      if (bytesRead === 0) throw new LogFailure(problem('storage-failed', { why: 'the file became shorter' }));
      filled += bytesRead;
    }
    return bytes
      .toString('utf8')
      .split('\n')
      .map((line) => line.trimEnd());
  }

  /** The stored lines of those ids that are taken. */
  async held(ids: Iterable<EventId>): Promise<Map<EventId, string>> {
    const taken = [...ids].flatMap((id) => {
      const number = this.index.numberOf(id);
      return number === undefined ? [] : [{ id, number }];
    });
    const lines = await Promise.all(taken.map(({ number }) => this.linesAt(number - 1, number)));
    return new Map(taken.map(({ id }, at) => [id, lines[at]?.[0] ?? '']));
  }

  /** Appends batches and waits for the disk; when that fails the file is cut back to what it was. */
  async write(batches: readonly (readonly Entry[])[]): Promise<void> {
    if (this.#broken !== null) throw this.#broken;
    const lines = batches.flatMap((batch) => batch.map(({ line }, at) => line + (at + 1 < batch.length ? MORE : '')));
    if (lines.length === 0) return;
    const bytes = Buffer.from(`${lines.join('\n')}\n`);
    try {
      await this.#file.appendFile(bytes);
      await this.#file.datasync();
    } catch (error) {
      await this.#cutBack();
      throw error;
    }
    for (const line of lines) this.index.add(line, Buffer.byteLength(line) + 1);
    await this.#sealer.written(bytes, lines.length);
  }

  async close(): Promise<void> {
    await this.#sealer.seal();
    await this.#file.close();
  }

  async #cutBack(): Promise<void> {
    try {
      await this.#file.truncate(this.index.bytes);
      await this.#file.sync();
    } catch (error) {
      // What stands behind the last confirmed line is unknown now, so nothing may be put after it.
      this.#broken = diskFailure(error);
    }
  }
}

function sizeOf({ from, to }: { readonly from: number; readonly to: number }): number {
  return to - from;
}

function appendedOf(sifted: Sifted | undefined): Appended {
  if (sifted === undefined) return { stored: 0, known: 0, clashes: [] };
  return { stored: sifted.fresh.length, known: sifted.known, clashes: sifted.clashes.map(({ event }) => event.id) };
}
