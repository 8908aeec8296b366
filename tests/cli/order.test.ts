import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, LOT, ON, SITE_ROWS } from './sampleSite.ts';
import { freshFolder, tubwright } from './tubwright.ts';

const folder = freshFolder();
const site = join(folder, 'site.ndjson');
beforeAll(() => writeFileSync(site, writeLog(eventsOf(SITE_ROWS))));

const order = (...more: string[]) => tubwright(['order', '--site', site, '--on', ON, ...more]);

describe('order', () => {
  it('lists classes with figures and reasons, and names who is not counted', async () => {
    const { code, out, err } = await order('--weeks', '8', '--lead', '10', '--json');
    const list = JSON.parse(out);
    expect([code, list.comesOn, list.lastsUntil, list.room]).toEqual([0, '2026-12-05', '2027-01-29', null]);
    const [mice, rats] = list.lines;
    expect(mice).toMatchObject({ prey: 'mouse-adult', name: 'adult mouse', animals: 1, inStock: 0, past: 0 });
    expect(rats).toMatchObject({ prey: 'rat-small', animals: 1, inStock: 1, wanted: rats.toOrder });
    expect(rats.need.mean).toBeGreaterThan(4);
    expect(rats.need.most).toBeGreaterThan(rats.need.mean);
    expect(rats.toOrder).toBe(Math.ceil(rats.need.most * 1.05) - 1);
    expect(list.uncounted).toHaveLength(2);
    expect(err).toMatch(/^Fern is not counted: not fed until somebody says so: wheezes$/m);
    expect(err).toMatch(/^Stray is not counted: There is no feed plan for “Anilius scytale”/m);
  });

  it('is readable on a terminal, cut to the room that there is', async () => {
    const { code, out } = await order('--weeks', '8', '--space', '4');
    expect(code).toBe(0);
    expect(out).toMatch(/^small rat {4}\d+ +\d+ +\d+ +1 +0 +2026-\d\d-\d\d$/m);
    expect(out).toMatch(/wanted, but the freezer has no room for more/);
    expect(out).toMatch(/^3 to order, to come by 25 Nov 2026 and last until 19 Jan 2027; the freezer has room for 3$/m);
    expect(out).toMatch(/never refrozen/);
  });

  it('counts what was thawed and thrown away since the last count', async () => {
    const rows = [
      ['2026-11-20', 'stock-counted', [LOT], { count: 30 }] as const,
      ['2026-11-21', 'lot-used', [LOT], { count: 4 }] as const,
      ['2026-11-22', 'lot-wasted', [LOT], { count: 1, why: 'bag burst' }] as const,
    ];
    const file = join(folder, 'counted.ndjson');
    writeFileSync(file, writeLog(eventsOf([...SITE_ROWS, ...rows])));
    const { out } = await tubwright(['order', '--site', file, '--on', ON, '--weeks', '4', '--json']);
    expect(JSON.parse(out).lines[1]).toMatchObject({ prey: 'rat-small', inStock: 25, toOrder: 0 });
  });

  it('says so when nothing is to be ordered', async () => {
    const empty = join(folder, 'empty.ndjson');
    writeFileSync(empty, writeLog(eventsOf(SITE_ROWS.slice(0, 1))));
    const { code, out } = await tubwright(['order', '--site', empty, '--on', ON, '--weeks', '4']);
    expect([code, out]).toEqual([0, expect.stringMatching(/^Nothing to order: no animal is planned to be fed/)]);
  });
});
