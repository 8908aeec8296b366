import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Fate, Planted } from './simulated.ts';
import { type Act, acts, fates, lateAcknowledgement, lateReply, live } from './world.ts';

describe('devices and hub', () => {
  const log = { do: 'log', device: 0, count: 4 } as const;
  const sync = { do: 'sync', device: 0 } as const;

  test('come to the same log after loss, repetition, delay, full disks and restored backups', async () => {
    await fc.assert(
      fc.asyncProperty(acts, fates, fc.scheduler(), async (steps, given, scheduler) => {
        expect(await live(steps, given, scheduler)).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  }, 120_000);

  test.each<[string, readonly Act[], readonly Fate[]]>([
    ['nothing', [], ['well']],
    ['one event', [log], ['well']],
    ['a lost acknowledgement', [log, sync], ['well', 'reply lost']],
    ['two tabs of one device that pull at once', [log, sync, sync], ['well']],
    ['a restore while a push is under way', [log, sync, { do: 'pass', steps: 3 }, { do: 'restore' }], ['well']],
  ])('with %s', async (_what, steps, given) => {
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), async (scheduler) => {
        expect(await live(steps, given, scheduler)).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });

  test('with a page that arrives late, from before a restored backup', async () => {
    expect(await lateReply('none')).toEqual([]);
    expect(await lateReply('stale page accepted')).not.toEqual([]);
  });

  test('with an acknowledgement that arrives late, from before a restored backup', async () => {
    expect(await lateAcknowledgement('none')).toEqual([]);
    expect(await lateAcknowledgement('stale acknowledgement accepted')).not.toEqual([]);
  });

  const restored: readonly Act[] = [
    log,
    sync,
    { do: 'pass', steps: 60 },
    { do: 'restore' },
    { do: 'log', device: 1, count: 5 },
    { do: 'sync', device: 1 },
  ];
  test.each<[Planted, readonly Act[], readonly Fate[]]>([
    ['outbox cleared on sending', [log, sync], ['well', 'request lost']],
    ['old epoch kept after a restore', restored, ['well']],
    ['acknowledged before it is stored', [log, sync], ['well', 'hub full']],
    ['cursor moved without its events', [log, sync, log], ['well']],
    ['hub stores twice', [log, sync], ['well', 'twice']],
  ])('would not, were the fault “%s” in them', async (planted, steps, given) => {
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), async (scheduler) => {
        expect(await live(steps, given, scheduler, planted)).not.toEqual([]);
      }),
      { numRuns: 20 },
    );
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), async (scheduler) => {
        expect(await live(steps, given, scheduler)).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });
});
