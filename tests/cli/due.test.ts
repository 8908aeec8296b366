import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeLog } from '../../src/store/index.ts';
import { BRACKEN, eventsOf, FERN, MOSS, ON, SITE_ROWS, STRAY, siteEvents } from './sampleSite.ts';
import { freshFolder, tubwright } from './tubwright.ts';

const folder = freshFolder();
const site = join(folder, 'site.ndjson');
beforeAll(() => writeFileSync(site, writeLog(siteEvents())));

interface Line {
  readonly id: string;
  readonly place: string | null;
  readonly state: string;
  readonly next: string | null;
  readonly hold: { reason: string; until: string | null } | null;
  readonly meal: { prey: string; count: number } | null;
  readonly problem: { code: string } | null;
}

async function dueOn(on: string, ...more: string[]): Promise<Line[]> {
  const { code, out, err } = await tubwright(['due', '--site', site, '--on', on, '--json', ...more]);
  expect([code, err]).toEqual([0, '']);
  return JSON.parse(out);
}

describe('due', () => {
  it('lists the living in walking order, whoever has no place last', async () => {
    const lines = await dueOn(ON);
    expect(lines.map(({ id, place, state }) => [id, place, state])).toEqual([
      [MOSS, 'Rack 1 · 1-01', 'due'],
      [BRACKEN, 'Rack 1 · 1-02', 'hold'],
      [FERN, 'Rack 1 · 1-03', 'vet'],
      [STRAY, null, 'no-plan'],
    ]);
  });

  it('says when, what, and why not', async () => {
    const [moss, bracken, fern, stray] = await dueOn(ON);
    expect(moss).toMatchObject({ next: '2026-11-24', meal: { prey: 'rat-small', count: 1 }, hold: null });
    expect(bracken?.hold).toMatchObject({ until: '2026-12-11' });
    expect(fern).toMatchObject({ next: null, meal: null, hold: { reason: 'wheezes', until: null } });
    expect(stray).toMatchObject({ next: null, problem: { code: 'species-unknown' } });
  });

  it('looks at nothing after the day', async () => {
    const then = (await dueOn('2026-11-19')).map((line) => line.state);
    expect(then).toEqual(['soon', 'soon', 'overdue', 'overdue', 'no-plan']);
    expect(await dueOn('2025-12-31')).toEqual([]);
  });

  it('looks ahead of the last event', async () => {
    expect((await dueOn('2026-12-30'))[0]).toMatchObject({ id: MOSS, state: 'overdue' });
  });

  it('lists the round of another task: homes in walking order, who did it last, and how often', async () => {
    const lines = await dueOn(ON, '--task', 'water');
    expect(lines[0]).toMatchObject({
      task: 'water',
      state: 'due',
      done: null,
      interval: { days: [1, 3], from: 'default' },
    });
    const { out } = await tubwright(['due', '--site', site, '--on', ON, '--task', 'weigh', '--state', 'overdue,due']);
    expect(out).toMatch(/^weighing: \d+ left, \d+ of them overdue, of \d+ listed$/m);
    expect(out).toMatch(/every .* days: /);
  });

  it('keeps to the states that were asked for', async () => {
    expect((await dueOn(ON, '--state', 'vet,hold')).map(({ id }) => id)).toEqual([BRACKEN, FERN]);
  });

  it('is readable on a terminal', async () => {
    const { out } = await tubwright(['due', '--site', site, '--on', ON]);
    expect(out).toMatch(/^Rack 1 · 1-01 {2}\S{9} {2}Moss {5}due {6}2026-11-24 {2}1 × small rat, 60–100 g$/m);
    expect(out).toMatch(/There is no feed plan for “Anilius scytale”\. Give the keeper’s own plan/);
    expect(out).toMatch(/^1 to feed of 4 listed$/m);
  });

  it('takes today of the site’s clock where no day is given', async () => {
    const lines = await tubwright(['due', '--site', site, '--json']);
    const today = await dueOn(new Date().toISOString().slice(0, 10));
    expect(JSON.parse(lines.out)).toEqual(today);
  });

  it('asks for the day where the time zone is unknown', async () => {
    const odd = join(folder, 'odd.ndjson');
    writeFileSync(odd, writeLog(eventsOf([['2026-01-01', 'site-named', [], { name: 'Odd', timeZone: 'Mars/Base' }]])));
    const { code, err } = await tubwright(['due', '--site', odd]);
    expect([code, err]).toEqual([
      1,
      expect.stringMatching(/time zone “Mars\/Base” is not known.*Give the day with --on/),
    ]);
  });

  it('refuses a file that was cut, and says where', async () => {
    const cut = join(folder, 'cut.ndjson');
    writeFileSync(cut, writeLog(siteEvents()).slice(0, 900));
    const { code, out, err } = await tubwright(['due', '--site', cut, '--on', ON]);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(
      /The file ends in the middle of line 4\..*\n.*cut\.ndjson is not sound, so nothing was done with it/,
    );
  });
});

describe('thaw', () => {
  it('counts what is due with 5 % to spare, and says what is short and who is not counted', async () => {
    const rows = [
      ...SITE_ROWS,
      ['2026-11-02', 'feed-plan-set', [STRAY], { percent: [5, 10], everyDays: [7, 14] }] as const,
    ];
    const file = join(folder, 'thaw.ndjson');
    writeFileSync(file, writeLog(eventsOf(rows)));
    const { code, out, err } = await tubwright(['thaw', '--site', file, '--on', ON, '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual([
      { prey: 'rat-small', name: 'small rat', needed: 1, thaw: 2, inFreezer: 1, animals: 1 },
    ]);
    expect(err).toMatch(/^small rat: 2 wanted, 1 in the freezer by the last count\./m);
    expect(err).toMatch(/^Stray is to be fed but not counted here\. There is no weight yet/m);
  });

  it('says so when nothing is to be fed', async () => {
    expect((await tubwright(['thaw', '--site', site, '--on', '2026-01-01'])).out).toMatch(
      /^Nothing to thaw for 2026-01-01/,
    );
  });
});
