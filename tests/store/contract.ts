import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type LogEvent, SITE } from '../../src/core/index.ts';
import { type EventLog, eventLine } from '../../src/store/index.ts';
import { animal, event, events, slip } from './sample.ts';

/** A kind of store: how a fresh one is opened, and the same one once more after it was closed. */
export interface Kind {
  readonly name: string;
  /** Starts what the kind needs, such as a browser. */
  readonly start?: () => Promise<void>;
  readonly stop?: () => Promise<void>;
  readonly open: (place: string) => Promise<EventLog>;
  /** False for stores that end with the program. */
  readonly durable: boolean;
}

let place = 0;

/** The invariants of `EventLog`, the same for every store, on the real engine. */
export function contract({ name, start, stop, open, durable }: Kind): void {
  describe(`${name} as an event log`, () => {
    let log: EventLog;
    let here: string;
    beforeAll(async () => start?.());
    afterAll(async () => stop?.());
    beforeEach(async () => {
      place += 1;
      here = `log-${place}`;
      log = await open(here);
      return () => log.close();
    });

    test('an empty log has nothing', async () => {
      expect(await log.head()).toBe(0);
      expect(await log.read(0, 10)).toEqual({ events: [], next: 0, head: 0 });
      expect(await log.history(animal(1))).toEqual([]);
    });

    test('what is appended is read in the order of arrival', async () => {
      expect(await log.append([event(3), event(1)])).toEqual({ stored: 2, known: 0, clashes: [] });
      await log.append([event(2)]);
      expect(await log.read(0, 10)).toEqual({ events: [event(3), event(1), event(2)], next: 3, head: 3 });
    });

    test('an empty batch changes nothing', async () => {
      expect(await log.append([])).toEqual({ stored: 0, known: 0, clashes: [] });
      expect(await log.head()).toBe(0);
    });

    test('the same event is stored once, in one batch and in two', async () => {
      expect(await log.append([event(1), event(1)])).toEqual({ stored: 1, known: 1, clashes: [] });
      expect(await log.append([event(1), event(2)])).toEqual({ stored: 1, known: 1, clashes: [] });
      expect((await log.read(0, 10)).events).toEqual([event(1), event(2)]);
    });

    test('key order does not make an event another', async () => {
      await log.append([event({ n: 1, kind: 'lot-weighed', payload: { a: 1, b: 2 } })]);
      const again = event({ n: 1, kind: 'lot-weighed', payload: { b: 2, a: 1 } });
      expect(await log.append([again])).toEqual({ stored: 0, known: 1, clashes: [] });
    });

    test.each([
      ['another weight', event({ n: 1, payload: { weightG: 7 } })],
      ['another animal', event({ n: 1, subjects: [animal(5)] })],
      ['another kind', event({ n: 1, kind: 'opaque-seen', payload: {} })],
    ])('the same id with %s is parked, once, and the first stays', async (_what, other) => {
      await log.append([event(1)]);
      expect(await log.append([other, event(2)])).toEqual({ stored: 1, known: 0, clashes: [other.id] });
      expect((await log.append([other])).clashes).toEqual([other.id]);
      expect(await log.parked()).toEqual([other]);
      expect((await log.read(0, 10)).events).toEqual([event(1), event(2)]);
    });

    test('pages of any size give the same order without gap or repetition', async () => {
      for (let n = 0; n < 60; n += 7) await log.append(events(n, Math.min(n + 7, 60)));
      for (const limit of [1, 4, 7, 59, 1000]) {
        expect(ids(await readAll(log, limit))).toEqual(ids(events(0, 60)));
      }
    });

    test('a page beyond the end is empty and says where the end is', async () => {
      await log.append(events(0, 3));
      expect(await log.read(3, 10)).toEqual({ events: [], next: 3, head: 3 });
    });

    test('a history holds the events of its subject only, also when it comes second', async () => {
      const both = event({ n: 50, kind: 'pairing-started', payload: {}, subjects: [animal(1), animal(2)] });
      await log.append([...events(0, 14), both]);
      expect(ids(await log.history(animal(2)))).toEqual(ids([event(2), event(9), both]));
      expect(ids(await log.history(animal(1)))).toEqual(ids([event(1), event(8), both]));
    });

    test('a history holds slips that name another subject, and slips of slips, wherever they arrive', async () => {
      const stray = slip(20, 1, [animal(6)]);
      const again = slip(21, 20, [animal(5)]);
      await log.append([again]);
      await log.append([stray]);
      await log.append([event(1)]);
      expect(ids(await log.history(animal(1)))).toEqual(ids([event(1), stray, again]));
      expect(ids(await log.history(animal(3)))).toEqual([]);
    });

    test('an event without a subject is kept', async () => {
      await log.append([event({ n: 1, subjects: [] })]);
      expect((await log.append([event({ n: 1, subjects: [] })])).known).toBe(1);
      expect((await log.read(0, 10)).events).toEqual([event({ n: 1, subjects: [] })]);
    });

    test('the site itself has a history: the events without a subject, and the slips that correct them', async () => {
      const [own, other] = [event({ n: 40, subjects: [] }), event({ n: 41, subjects: [] })];
      const back = slip(42, 40, []);
      const stray = slip(43, 41, [animal(6)]);
      await log.append([...events(0, 9), own, back, stray]);
      await log.append([other]);
      expect(new Set(ids(await log.history(SITE)))).toEqual(new Set(ids([own, other, back, stray])));
      expect(ids(await log.history(animal(1)))).toEqual(ids([event(1), event(8)]));
    });

    test('an unknown kind comes back letter for letter', async () => {
      const strange = event({ n: 1, kind: 'moon-seen', payload: { phase: ['full', 1.5, null], '__proto__ ': 1 } });
      await log.append([strange]);
      expect((await log.read(0, 10)).events.map(eventLine)).toEqual([eventLine(strange)]);
      expect((await log.history(animal(1))).map(eventLine)).toEqual([eventLine(strange)]);
    });

    test('appends at the same time are all stored, each once', async () => {
      const batches = Array.from({ length: 20 }, (_, at) => [event(at), event(at + 1)]);
      const done = await Promise.all(batches.map((batch) => log.append(batch)));
      expect(done.reduce((sum, { stored }) => sum + stored, 0)).toBe(21);
      expect(new Set(ids(await readAll(log, 5))).size).toBe(21);
      expect(await log.head()).toBe(21);
    });

    if (durable)
      test('a log that is opened again has all it had', async () => {
        await log.append(events(0, 9));
        await log.append([event({ n: 3, payload: { weightG: 1 } })]);
        await log.close();
        log = await open(here);
        expect(ids(await readAll(log, 4))).toEqual(ids(events(0, 9)));
        expect(await log.parked()).toEqual([event({ n: 3, payload: { weightG: 1 } })]);
        expect(await log.append([event(4)])).toEqual({ stored: 0, known: 1, clashes: [] });
        expect(ids(await log.history(animal(1)))).toEqual(ids([event(1), event(8)]));
      });
  });
}

/** Reads page by page to the end. */
export async function readAll(log: EventLog, limit: number): Promise<LogEvent[]> {
  const read: LogEvent[] = [];
  for (let after = 0; ; ) {
    const page = await log.read(after, limit);
    if (page.next === after) return read;
    read.push(...page.events);
    after = page.next;
  }
}

/** The ids, in the order given. */
export function ids(list: readonly LogEvent[]): string[] {
  return list.map(({ id }) => id);
}
