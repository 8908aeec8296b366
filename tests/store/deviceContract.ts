import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { LogEvent } from '../../src/core/index.ts';
import type { DeviceLog } from '../../src/store/index.ts';
import { ids, readAll } from './contract.ts';
import type { logHere } from './logHere.ts';
import { animal, event, events, idOf } from './sample.ts';

/** A kind of device log; `logDrafts` calls `log` where the store lives and mints one id first. */
export interface DeviceKind {
  readonly name: string;
  readonly start?: () => Promise<void>;
  readonly stop?: () => Promise<void>;
  readonly open: (place: string) => Promise<DeviceLog>;
  readonly logDrafts: typeof logHere;
  readonly durable: boolean;
}

const NOW = Date.UTC(2026, 2, 9, 9);
let place = 0;

/** What a device's log promises beyond an event log. */
export function deviceContract({ name, start, stop, open, logDrafts, durable }: DeviceKind): void {
  describe(`${name} as a device log`, () => {
    let log: DeviceLog;
    let here: string;
    beforeAll(async () => start?.());
    afterAll(async () => stop?.());
    beforeEach(async () => {
      place += 1;
      here = `device-${place}`;
      log = await open(here);
      return () => log.close();
    });

    test('sequence, clock and minted ids go up and never repeat', async () => {
      const first = await logDrafts(log, NOW, events(0, 2));
      const second = await logDrafts(log, NOW - 5000, [event(2)]);
      const logged = [...first.events, ...second.events];
      expect(logged.map(({ seq }) => seq)).toEqual([1, 2, 3]);
      expect(logged.map(({ clock }) => clock)).toEqual([
        [NOW, 0],
        [NOW, 1],
        [NOW, 2],
      ]);
      expect(first.minted).not.toBe(second.minted);
      expect(await log.device()).toMatchObject({ seq: 3, counter: 2, clock: [NOW, 2], enrolled: false });
      expect(ids(await readAll(log, 10))).toEqual(ids(events(0, 3)));
    });

    test('a writing of nothing spends nothing', async () => {
      await logDrafts(log, NOW, []);
      expect(await log.device()).toMatchObject({ seq: 0, counter: 0, clock: [0, 0] });
    });

    test('what was logged or imported waits in the outbox, what came from the hub does not', async () => {
      await log.startEpoch('e1');
      await logDrafts(log, NOW, [event(1)]);
      await log.append([event(2)]);
      await log.applyPage({ epoch: 'e1', after: 0, events: [event(3)], next: 1 }, NOW);
      await logDrafts(log, NOW, [event(4)]);
      expect(ids(await log.outbox(10))).toEqual(ids([event(1), event(2), event(4)]));
      expect(ids(await log.outbox(2))).toEqual(ids([event(1), event(2)]));
      expect(await log.unsent()).toEqual({ count: 3, oldestAt: event(1).at });
    });

    test('only what was acknowledged leaves the outbox, in any order', async () => {
      await log.append(events(0, 5));
      await log.clearOutbox(null, [idOf(2), idOf(4), idOf(77)]);
      expect(ids(await log.outbox(10))).toEqual(ids([event(0), event(1), event(3)]));
      await log.clearOutbox(null, [idOf(0)], [{ id: idOf(1), code: 'event-malformed' }]);
      expect(ids(await log.outbox(10))).toEqual(ids([event(3)]));
      expect(await log.refused()).toEqual([{ id: idOf(1), code: 'event-malformed' }]);
      expect(await log.head()).toBe(5);
    });

    test('an acknowledgement of another epoch is none', async () => {
      await log.startEpoch('e1');
      await log.append(events(0, 2));
      await log.startEpoch('e2');
      await log.clearOutbox('e1', [idOf(0)], [{ id: idOf(1), code: 'event-malformed' }]);
      expect((await log.unsent()).count).toBe(2);
      expect(await log.refused()).toEqual([]);
    });

    test.each([
      ['of another epoch', { epoch: 'old', after: 0 }],
      ['that leaves a gap', { epoch: 'e1', after: 3 }],
    ])('a page %s is stale and changes nothing', async (_what, { epoch, after }) => {
      await log.startEpoch('e1');
      expect(await log.applyPage({ epoch, after, events: [event(1)], next: after + 1 }, NOW)).toBe('stale');
      expect(await log.head()).toBe(0);
      expect((await log.device()).hubCursor).toBe(0);
    });

    test('a page moves events and cursor together, and comes in once', async () => {
      await log.startEpoch('e1');
      const page = { epoch: 'e1', after: 0, events: events(0, 3), next: 3 };
      expect(await log.applyPage(page, NOW)).toBe('applied');
      expect(await log.applyPage(page, NOW)).toBe('stale');
      expect((await log.device()).hubCursor).toBe(3);
      expect(ids(await readAll(log, 10))).toEqual(ids(events(0, 3)));
    });

    test('the clock follows a heard event, but not one from far in the future', async () => {
      await log.startEpoch('e1');
      const near = event({ n: 1, clock: [NOW + 60_000, 4] });
      const far = event({ n: 2, clock: [NOW + 90_000_000, 0] });
      await log.applyPage({ epoch: 'e1', after: 0, events: [near, far], next: 2 }, NOW);
      expect((await log.device()).clock).toEqual([NOW + 60_000, 5]);
    });

    test('a new epoch puts the cursor back and offers all that is here', async () => {
      await log.startEpoch('e1');
      await log.applyPage({ epoch: 'e1', after: 0, events: events(0, 3), next: 3 }, NOW);
      await logDrafts(log, NOW, [event(5)]);
      await log.clearOutbox('e1', [idOf(5)]);
      await log.startEpoch('e2');
      expect(await log.device()).toMatchObject({ epoch: 'e2', hubCursor: 0 });
      expect(ids(await log.outbox(10))).toEqual(ids([...events(0, 3), event(5)]));
    });

    test('enrolment gives a new number, with ids and sequence of its own', async () => {
      const before = await logDrafts(log, NOW, [event(1)]);
      await log.enrol({ device: 12, site: 'Fernhollow', epoch: 'e1' });
      const after = await logDrafts(log, NOW, [event(2)]);
      expect(after.events[0]).toMatchObject({ device: 12, seq: 1, clock: [NOW, 1] });
      expect(before.events[0]?.device).toBeGreaterThan(1023);
      expect(after.minted).not.toBe(before.minted);
      expect((await log.unsent()).count).toBe(2);
    });

    test('a snapshot comes back as it was, for its own version only', async () => {
      expect(await log.readSnapshot(1)).toBeNull();
      await log.writeSnapshot({ cursor: 7, version: 1, json: '{"a":1}' });
      expect(await log.readSnapshot(1)).toEqual({ cursor: 7, version: 1, json: '{"a":1}' });
      expect(await log.readSnapshot(2)).toBeNull();
    });

    test('packing away changes nothing that can be asked', async () => {
      await log.append(events(0, 30));
      await log.clearOutbox(null, ids(events(0, 10)) as LogEvent['id'][]);
      await log.compact();
      await log.append(events(30, 40));
      expect(ids(await log.outbox(100))).toEqual(ids(events(10, 40)));
      await log.clearOutbox(null, ids(events(10, 35)) as LogEvent['id'][]);
      expect(ids(await log.outbox(100))).toEqual(ids(events(35, 40)));
      expect(ids(await readAll(log, 7))).toEqual(ids(events(0, 40)));
      expect(new Set(ids(await log.history(animal(1))))).toEqual(new Set([1, 8, 15, 22, 29, 36].map(idOf)));
    });

    if (durable)
      test('device number, sequence, clock, cursor and outbox outlive a restart', async () => {
        await log.enrol({ device: 12, site: 'Fernhollow', epoch: 'e1' });
        await logDrafts(log, NOW, events(0, 3));
        await log.applyPage({ epoch: 'e1', after: 0, events: events(5, 7), next: 2 }, NOW);
        const before = await log.device();
        await log.close();
        log = await open(here);
        expect(await log.device()).toEqual(before);
        expect(ids(await log.outbox(10))).toEqual(ids(events(0, 3)));
        expect((await logDrafts(log, NOW - 1, [event(8)])).events[0]).toMatchObject({ seq: 4 });
      });
  });
}
