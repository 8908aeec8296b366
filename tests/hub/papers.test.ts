import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  fingerprint,
  foldFacility,
  type Id,
  type LogEvent,
  PAPER_LETTERS,
  parseEvent,
  pictureFault,
  pictureIn,
  toSnapshot,
} from '../../src/core/index.ts';
import { type RunningHub, startHub } from '../../src/hub/index.ts';
import { eventLine, memoryDeviceLog, readLog, writeLog } from '../../src/store/index.ts';
import { exchange, hubOver, LIMITS } from '../../src/sync/index.ts';
import { added, eventId, id, data as lineData, REX, value } from '../core/log.ts';

const PAPERS = 50;
let folder: string;
let hub: RunningHub;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tubwright-papers-'));
  hub = await startHub({ port: 0, dataDir: join(folder, 'data'), appDir: folder });
});
afterAll(async () => {
  await hub.close();
  await rm(folder, { recursive: true, force: true });
});

/** Letters of base 64 that no press makes smaller; they begin as a WebP does. */
function letters(seed: number): string {
  const signs = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
  let [state, text] = [seed + 1, 'UklGR'];
  while (text.length < PAPER_LETTERS) {
    state = (state * 1_103_515_245 + 12_345) % 2 ** 31;
    text += signs[Math.floor(state / 2 ** 16) % 64];
  }
  return text;
}

/** Five animals with ten of the largest papers each. */
const ANIMALS: readonly Id[] = [REX, id(41), id(42), id(43), id(44)];
const EVENTS: readonly LogEvent[] = [
  ...ANIMALS.map((animal, at) => lineData(added({ name: `Animal ${at}` }, { subjects: [animal], n: 1000 + at }), at)),
  ...Array.from({ length: PAPERS }, (_none, at) =>
    lineData(
      [
        '2026-03-09',
        'paper-kept',
        { of: eventId(7), mime: 'image/webp', base64: letters(at), words: `page ${at}` },
        { subjects: [ANIMALS[at % ANIMALS.length] ?? REX], n: 2000 + at },
      ],
      10 + at,
    ),
  ),
].map((one) => value(parseEvent(one)));

async function timed<T>(what: string, run: () => T | Promise<T>): Promise<T> {
  const began = performance.now();
  const made = await run();
  console.log(`${PAPERS} papers of ${PAPER_LETTERS} letters: ${what} ${(performance.now() - began).toFixed(0)} ms`);
  return made;
}

describe('the largest papers that are kept', () => {
  test('fit into one message each, and are sound pictures by their letters', () => {
    for (const event of EVENTS)
      expect(new TextEncoder().encode(eventLine(event)).length).toBeLessThan(LIMITS.pushBytes / 3);
    const [first] = EVENTS.slice(-1);
    const picture = first === undefined ? null : pictureIn(EVENTS, first.id);
    expect(picture?.base64.length).toBe(PAPER_LETTERS);
    expect(picture && pictureFault(picture)).toBeNull();
    expect(picture && pictureFault({ ...picture, base64: `${picture.base64}A` })?.code).toBe('paper-too-large');
  });

  test('travel from one device over the hub to another, whole', async () => {
    const [one, two] = [memoryDeviceLog(1), memoryDeviceLog(2)];
    const parties = { hub: hubOver(fetch, hub.url), name: 'phone', now: () => Date.UTC(2026, 2, 9) };
    await exchange({ ...parties, log: one });
    // What a device logs itself is what it sends; a device that only took them in has nothing to say.
    await one.append(EVENTS);
    const sent = await timed('sent', () => exchange({ ...parties, log: one }));
    expect(sent.ok).toBe(true);
    const got = await timed('fetched', () => exchange({ ...parties, log: two }));
    expect(got.ok && got.value.received).toBe(EVENTS.length);
    const marks = (all: readonly LogEvent[]) => all.map((one) => fingerprint(eventLine(one))).sort();
    expect(marks((await two.read(0, 5000)).events)).toEqual(marks(EVENTS));
    expect((await one.unsent()).count).toBe(0);
    expect((await readFile(join(folder, 'data', 'events.ndjson'), 'utf8')).length).toBeGreaterThan(
      PAPERS * PAPER_LETTERS,
    );
  });

  test('are exported under a seal and read again', async () => {
    const file = await timed('exported', () => writeLog(EVENTS));
    const read = await timed('imported', () => readLog(file));
    expect([read.sealed, read.problems, read.events.length]).toEqual([true, [], EVENTS.length]);
  });

  test('make no record and no snapshot heavier', async () => {
    const facility = await timed('folded', () => foldFacility(EVENTS));
    expect(facility.animals.get(REX)?.papers).toHaveLength(PAPERS / ANIMALS.length);
    expect(facility.animals.get(REX)?.papers[0]).toEqual({
      id: eventId(2000),
      day: '2026-03-09',
      of: eventId(7),
      words: 'page 0',
    });
    const snapshot = await timed('snapshot', () => toSnapshot(facility));
    expect(snapshot.length).toBeLessThan(60_000);
    expect(snapshot).not.toContain('UklGR');
  });
});
