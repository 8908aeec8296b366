import { type EventId, fingerprint, type Id, type LogEvent, problem, type SITE, UNENROLLED } from '../../core/index.ts';
import type { DeviceLog, DeviceState, Enrolment, HubPage, Refusal, Snapshot, Unsent } from '../deviceLog.ts';
import { type Appended, type Cursor, LogFailure, type Page } from '../eventLog.ts';
import { correctedBy, readOwnLines } from '../line.ts';
import { addRange, countOf, dropNumbers } from '../ranges.ts';
import { OTHER_CONTENT, sift } from '../sift.ts';
import { bySlipped, withSlips } from '../slips.ts';
import { hearAll, type Stamper, startStamping } from '../stamp.ts';
import { allBlocks, homesOf, linesOf, linesOfBlock, pack, placesIn, STRAY_SLIPS } from './blocks.ts';
import { type Block, type Database, openDatabase, type State } from './schema.ts';
import { putBatch, Tail } from './tail.ts';
import { asFailure, look, type Reading, type Writing, write } from './transact.ts';

/** From this many events on a writing is a bulk and need not wait for the disk itself, only for the system. */
const BULK_EVENTS = 200;

/**
 * The device's log in the browser's database of that name. Any number of tabs may have it open: what must not be
 * handed out twice is read and advanced inside the transaction. Rejects with `storage-failed` if it cannot be opened.
 */
export async function idbLog(name: string): Promise<DeviceLog> {
  try {
    const db = await openDatabase(name);
    await write(db, 'strict', introduce);
    return new IdbLog(db);
  } catch (error) {
    throw asFailure(error);
  }
}

class IdbLog implements DeviceLog {
  readonly #db: Database;
  readonly #tail = new Tail();
  #block: { readonly key: number; readonly last: Cursor; readonly lines: readonly string[] } | null = null;

  constructor(db: Database) {
    this.#db = db;
  }

  append(events: readonly LogEvent[]): Promise<Appended> {
    return write(this.#db, events.length < BULK_EVENTS ? 'strict' : 'relaxed', async (tx) => {
      const state = await this.#state(tx);
      const { appended, head } = await this.#store(tx, state, events);
      await queue(tx, state.head, head);
      await putState(tx, { ...state, head });
      return appended;
    });
  }

  log(nowMs: number, make: (stamp: Stamper) => readonly LogEvent[]): Promise<readonly LogEvent[]> {
    return write(this.#db, 'strict', async (tx) => {
      const state = await this.#state(tx);
      const { stamper, result } = startStamping(state, nowMs);
      const events = make(stamper);
      if (events.length === 0) return events;
      const { head } = await this.#store(tx, state, events);
      await queue(tx, state.head, head);
      await putState(tx, { ...state, ...result(), head });
      return events;
    });
  }

  read(after: Cursor, limit: number): Promise<Page> {
    return look(this.#db, async (tx) => {
      const { head, floor } = await this.#state(tx);
      const [lines, next] = after < floor ? await this.#packed(tx, after, limit) : this.#recent(after, limit);
      return { events: readOwnLines(lines), next: Math.min(next, head), head };
    });
  }

  history(subject: Id | typeof SITE): Promise<readonly LogEvent[]> {
    return look(this.#db, async (tx) => {
      await this.#state(tx);
      const recent = this.#tail.all().flatMap(({ event }) => (event === undefined ? [] : [event]));
      const own = [...(await packedOf(tx, subject)), ...recent.filter((event) => homesOf(event).includes(subject))];
      const strays = [...(await packedOf(tx, STRAY_SLIPS)), ...recent.filter((event) => correctedBy(event) !== null)];
      const slips = bySlipped(strays);
      return withSlips(own, (id) => slips.get(id) ?? []);
    });
  }

  parked(): Promise<readonly LogEvent[]> {
    return look(this.#db, async (tx) => readOwnLines(await tx.objectStore('parked').getAll()));
  }

  head(): Promise<Cursor> {
    return look(this.#db, async (tx) => (await this.#state(tx)).head);
  }

  async close(): Promise<void> {
    this.#db.close();
  }

  async outbox(limit: number): Promise<readonly LogEvent[]> {
    const ranges = await look(this.#db, (tx) => unsentRanges(tx));
    const events: LogEvent[] = [];
    for (const { after, until } of ranges) {
      const room = Math.min(limit - events.length, until - after);
      if (room > 0) events.push(...(await this.#readAll(after, room)));
    }
    return events;
  }

  async unsent(): Promise<Unsent> {
    const [oldest] = await this.outbox(1);
    const ranges = await look(this.#db, (tx) => unsentRanges(tx));
    return { count: countOf(ranges), oldestAt: oldest?.at ?? null };
  }

  clearOutbox(epoch: string | null, ids: readonly EventId[], refused: readonly Refusal[] = []): Promise<void> {
    return write(this.#db, 'relaxed', async (tx) => {
      if ((await this.#state(tx)).epoch !== epoch) return;
      const settled = [...ids, ...refused.map(({ id }) => id)];
      const numbers = await this.#numbersOf(tx, settled);
      await tx.objectStore('outbox').put(dropNumbers(await unsentRanges(tx), numbers), 'unsent');
      await Promise.all(refused.map((refusal) => tx.objectStore('refused').put(refusal, refusal.id)));
    });
  }

  refused(): Promise<readonly Refusal[]> {
    return look(this.#db, (tx) => tx.objectStore('refused').getAll());
  }

  applyPage(page: HubPage, nowMs: number): Promise<'applied' | 'stale'> {
    return write(this.#db, 'relaxed', async (tx) => {
      const state = await this.#state(tx);
      if (page.epoch !== state.epoch || page.after !== state.hubCursor) return 'stale';
      const { head } = await this.#store(tx, state, page.events);
      await putState(tx, { ...state, head, hubCursor: page.next, clock: hearAll(state.clock, page.events, nowMs) });
      return 'applied';
    });
  }

  enrol({ device, site, epoch }: Enrolment): Promise<void> {
    return this.#begin((state) => ({ ...state, number: device, enrolled: true, seq: 0, counter: 0, site, epoch }));
  }

  startEpoch(epoch: string): Promise<void> {
    return this.#begin((state) => ({ ...state, epoch }));
  }

  async device(): Promise<DeviceState> {
    const { head: _head, floor: _floor, ...state } = await look(this.#db, (tx) => this.#state(tx));
    return state;
  }

  readSnapshot(version: number): Promise<Snapshot | null> {
    return look(this.#db, async (tx) => {
      const stored = await tx.objectStore('snap').get('snap');
      if (stored === undefined || stored.version !== version) return null;
      const { hash, ...snapshot } = stored;
      return hash === hashOf(snapshot) ? snapshot : null;
    });
  }

  writeSnapshot(snapshot: Snapshot): Promise<void> {
    const stored = { ...snapshot, hash: hashOf(snapshot) };
    return write(this.#db, 'relaxed', async (tx) => {
      await tx.objectStore('snap').put(stored, 'snap');
    });
  }

  compact(): Promise<number> {
    return write(this.#db, 'relaxed', async (tx) => {
      const state = await this.#state(tx);
      const entries = this.#tail.all();
      await pack(tx, entries);
      await tx.objectStore('tail').delete(IDBKeyRange.upperBound(state.head));
      await putState(tx, { ...state, floor: state.head });
      return entries.length;
    });
  }

  async #state(tx: Reading): Promise<State> {
    const state = await storedState(tx);
    await this.#tail.catchUp(tx, state);
    return state;
  }

  async #store(tx: Writing, state: State, events: readonly LogEvent[]): Promise<{ appended: Appended; head: Cursor }> {
    const { fresh, known, clashes } = sift(events, await this.#held(tx, events));
    const head = await putBatch(tx, state.head, fresh);
    await Promise.all(clashes.map(({ line }) => tx.objectStore('parked').put(line, line)));
    return { appended: { stored: fresh.length, known, clashes: clashes.map(({ event }) => event.id) }, head };
  }

  /** The stored lines of those events whose id is taken. */
  async #held(tx: Reading, events: readonly LogEvent[]): Promise<Map<EventId, string>> {
    const held = new Map<EventId, string>();
    const older = events.filter(({ id }) => {
      const recent = this.#tail.find(id);
      if (recent !== undefined) held.set(id, recent.line);
      return recent === undefined;
    });
    const places = placesIn(
      await allBlocks(tx),
      older.map(({ id }) => id),
    );
    const records = new Map<string, Map<Cursor, string>>();
    for (const event of older) {
      const place = places.get(event.id);
      if (place === undefined) continue;
      // The same event has the same subjects, so a line that is not under the first of them has other content.
      const home = homesOf(event)[0] ?? '';
      const key = `${place.block} ${home}`;
      const lines = records.get(key) ?? (await linesOf(tx, place.block, home));
      records.set(key, lines);
      held.set(event.id, lines.get(place.number) ?? OTHER_CONTENT);
    }
    return held;
  }

  async #numbersOf(tx: Reading, ids: readonly EventId[]): Promise<Cursor[]> {
    const recent = ids.flatMap((id) => this.#tail.find(id)?.number ?? []);
    const older = ids.filter((id) => this.#tail.find(id) === undefined);
    return [...recent, ...[...placesIn(await allBlocks(tx), older).values()].map(({ number }) => number)];
  }

  #recent(after: Cursor, limit: number): readonly [lines: readonly string[], next: Cursor] {
    const entries = this.#tail.after(after, limit);
    return [entries.map(({ line }) => line), entries.at(-1)?.number ?? after];
  }

  /** Reads from the block that holds the next arrival, up to its end. */
  async #packed(tx: Reading, after: Cursor, limit: number): Promise<readonly [readonly string[], Cursor]> {
    const found = (await allBlocks(tx)).find(([, block]) => block.last > after);
    if (found === undefined) return [[], after];
    const [key, block] = found;
    const from = after - block.first + 1;
    const lines = (await this.#linesOf(tx, key, block)).slice(from, from + limit);
    return [lines, after + lines.length];
  }

  async #linesOf(tx: Reading, key: number, block: Block): Promise<readonly string[]> {
    if (this.#block?.key === key && this.#block.last === block.last) return this.#block.lines;
    const lines = await linesOfBlock(tx, key, block);
    this.#block = { key, last: block.last, lines };
    return lines;
  }

  async #readAll(after: Cursor, count: number): Promise<LogEvent[]> {
    const events: LogEvent[] = [];
    for (let cursor = after; cursor < after + count; ) {
      const page = await this.read(cursor, after + count - cursor);
      events.push(...page.events);
      if (page.next === cursor) break;
      cursor = page.next;
    }
    return events;
  }

  #begin(change: (state: State) => State): Promise<void> {
    return write(this.#db, 'strict', async (tx) => {
      const state = await this.#state(tx);
      await tx.objectStore('outbox').put(addRange([], { after: 0, until: state.head }), 'unsent');
      await putState(tx, { ...change(state), hubCursor: 0 });
    });
  }
}

/** Draws the device's random number when it is here for the first time. */
async function introduce(tx: Writing): Promise<void> {
  if ((await tx.objectStore('meta').get('state')) !== undefined) return;
  const [bits = 0] = crypto.getRandomValues(new Uint32Array(1));
  const fresh = { enrolled: false, seq: 0, counter: 0, clock: [0, 0], site: null, epoch: null, hubCursor: 0 } as const;
  await putState(tx, { ...fresh, number: bits % UNENROLLED.devices, head: 0, floor: 0 });
}

async function storedState(tx: Reading): Promise<State> {
  const state = await tx.objectStore('meta').get('state');
  if (state === undefined) throw new LogFailure(problem('storage-failed', { why: 'the browser cleared the store' }));
  return state;
}

async function putState(tx: Writing, state: State): Promise<void> {
  await tx.objectStore('meta').put(state, 'state');
}

async function queue(tx: Writing, after: Cursor, until: Cursor): Promise<void> {
  if (after === until) return;
  await tx.objectStore('outbox').put(addRange(await unsentRanges(tx), { after, until }), 'unsent');
}

async function unsentRanges(tx: Reading) {
  return (await tx.objectStore('outbox').get('unsent')) ?? [];
}

async function packedOf(tx: Reading, home: string): Promise<LogEvent[]> {
  const keys = await tx.objectStore('blocks').getAllKeys();
  const lines = await Promise.all(keys.map((key) => linesOf(tx, key, home)));
  return readOwnLines(lines.flatMap((found) => [...found.values()]));
}

function hashOf({ cursor, version, json }: Snapshot): string {
  return fingerprint(`${cursor} ${version} ${json}`);
}
