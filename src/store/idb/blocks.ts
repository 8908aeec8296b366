import { type EventId, type LogEvent, SITE } from '../../core/index.ts';
import type { Cursor } from '../eventLog.ts';
import { correctedBy } from '../line.ts';
import { addTo } from '../slips.ts';
import type { Block, HistRecord } from './schema.ts';
import type { TailEntry } from './tail.ts';
import type { Reading, Writing } from './transact.ts';

/** A block takes no more once it has this many; one subject has one record in each block. */
export const BLOCK_EVENTS = 100_000;
/** Where slips are kept too whose corrected event was not seen among their own subjects. */
export const STRAY_SLIPS = '~slips';
const ID_LENGTH = 36;

/** The key of every block, lowest first, with the block. */
export async function allBlocks(tx: Reading): Promise<readonly (readonly [key: number, block: Block])[]> {
  const room = tx.objectStore('blocks');
  const [keys, blocks] = await Promise.all([room.getAllKeys(), room.getAll()]);
  return blocks.map((block, at) => [keys[at] ?? at, block] as const);
}

/** Where the given ids are packed away, by id: block and arrival. */
export function placesIn(
  blocks: readonly (readonly [number, Block])[],
  ids: readonly EventId[],
): Map<EventId, { readonly block: number; readonly number: Cursor }> {
  const places = new Map<EventId, { block: number; number: Cursor }>();
  for (const [key, block] of blocks) {
    const likely = ids.filter((id) => block.least <= id && id <= block.most);
    if (likely.length === 0) continue;
    const order = orderOf(block);
    for (const id of likely) {
      const at = order.get(id);
      if (at !== undefined) places.set(id, { block: key, number: block.first + at });
    }
  }
  return places;
}

/** One subject's lines in one block, by arrival. */
export async function linesOf(tx: Reading, block: number, home: string): Promise<Map<Cursor, string>> {
  const record = await tx.objectStore('hist').get([block, home]);
  return new Map(record === undefined ? [] : pairs(record));
}

/** All lines of a block in the order of arrival, each once. */
export async function linesOfBlock(tx: Reading, key: number, block: Block): Promise<readonly string[]> {
  const records = await tx.objectStore('hist').getAll(IDBKeyRange.bound([key], [key, []]));
  const lines = new Array<string>(block.last - block.first + 1).fill('');
  for (const record of records) {
    for (const [number, line] of pairs(record)) lines[number - block.first] = line;
  }
  return lines;
}

/** Packs lines behind the last block or into a new one. */
export async function pack(tx: Writing, entries: readonly TailEntry[]): Promise<void> {
  const [first] = entries;
  if (first === undefined) return;
  const open = (await allBlocks(tx)).at(-1);
  const full = open === undefined || open[1].last - open[1].first + 1 >= BLOCK_EVENTS;
  const key = full ? (open?.[0] ?? 0) + 1 : open[0];
  await putRecords(tx, key, entries);
  await tx.objectStore('blocks').put(grown(full ? null : open[1], entries), key);
}

/** The record keys of an event: each subject, or the site where it has none. */
export function homesOf(event: LogEvent | undefined): readonly string[] {
  return event === undefined || event.subjects.length === 0 ? [SITE] : [...new Set<string>(event.subjects)];
}

async function putRecords(tx: Writing, key: number, entries: readonly TailEntry[]): Promise<void> {
  const room = tx.objectStore('hist');
  const homes = byHome(entries);
  await Promise.all(
    [...homes].map(async ([home, added]) => {
      const before = await room.get([key, home]);
      await room.put(joined(before, added), [key, home]);
    }),
  );
}

function byHome(entries: readonly TailEntry[]): Map<string, TailEntry[]> {
  const homes = new Map<string, TailEntry[]>();
  const owners = new Map(entries.map(({ event }) => [event?.id, new Set(homesOf(event))]));
  for (const entry of entries) {
    const own = homesOf(entry.event);
    for (const home of own) addTo(homes, home, entry);
    const corrected = entry.event === undefined ? null : correctedBy(entry.event);
    if (corrected === null) continue;
    // A slip found beside its event under all of that event's subjects is no stray; anything less sure is kept twice.
    const wanted = owners.get(corrected);
    if (wanted === undefined || [...wanted].some((home) => !own.includes(home))) addTo(homes, STRAY_SLIPS, entry);
  }
  return homes;
}

function joined(before: HistRecord | undefined, added: readonly TailEntry[]): HistRecord {
  const text = added.map(({ line }) => line).join('\n');
  const numbers = added.map(({ number }) => number);
  return before === undefined
    ? { numbers, text }
    : { numbers: [...before.numbers, ...numbers], text: `${before.text}\n${text}` };
}

function grown(open: Block | null, entries: readonly TailEntry[]): Block {
  // A rotten line has no id; its place is held by blanks, which no id equals.
  const added = entries.map(({ event }) => event?.id ?? ' '.repeat(ID_LENGTH));
  const sound = added.filter((id) => id.trim() !== '').sort();
  const ends = [...sound.slice(0, 1), ...sound.slice(-1), ...(open === null ? [] : [open.least, open.most])].sort();
  return {
    first: open?.first ?? entries[0]?.number ?? 1,
    last: entries.at(-1)?.number ?? 0,
    ids: (open?.ids ?? '') + added.join(''),
    least: ends[0] ?? '',
    most: ends.at(-1) ?? '',
  };
}

function orderOf({ ids }: Block): Map<string, number> {
  const order = new Map<string, number>();
  for (let at = 0; at * ID_LENGTH < ids.length; at++) order.set(ids.slice(at * ID_LENGTH, (at + 1) * ID_LENGTH), at);
  return order;
}

function pairs({ numbers, text }: HistRecord): [Cursor, string][] {
  return text.split('\n').map((line, at) => [numbers[at] ?? 0, line]);
}
