import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { DEMO_HOST, DEMO_TODAY } from '../../demo-data/index.ts';
import type { Manifest } from '../../print/index.ts';
import {
  drawnPages,
  expectCodesWhereTheyStand,
  expectSoundFile,
  expectWordsWhereTheyBelong,
  SHEET_MARGIN,
} from '../print/readBack.ts';
import { freshFolder, type Ran, tubwright } from './tubwright.ts';

const folder = freshFolder();
const at = (name: string): string => join(folder, name);

function printed(name: string): Promise<Ran> {
  const site = ['--site', 'demo-data/site.ndjson', '--on', DEMO_TODAY, '--only', 'all', '--stock', 'a4-85x54'];
  return tubwright(['cards', ...site, '--out', at(`${name}.pdf`), '--manifest', at(`${name}.json`)]);
}

describe('the cards of the whole demo facility', () => {
  let manifest: Manifest;
  beforeAll(async () => {
    expect((await printed('first')).code).toBe(0);
    manifest = JSON.parse(readFileSync(at('first.json'), 'utf8')) as Manifest;
  });

  it('are more than 500, each with the site’s own address, and none is left out', () => {
    expect(manifest.left).toEqual([]);
    expect(new Set(manifest.pieces.map(({ id }) => id)).size).toBeGreaterThan(500);
    for (const { id, payload } of manifest.pieces) expect(payload).toBe(`HTTPS://${DEMO_HOST}/${id}`);
  });

  it('read back from every page with zxing-wasm, corners within 0.15 mm', async () => {
    expectCodesWhereTheyStand(await drawnPages(at('first.pdf'), manifest), manifest);
  });

  it('have all their words inside their boxes, in embedded type, in a sound file', () => {
    expectSoundFile(at('first.pdf'));
    expectWordsWhereTheyBelong(at('first.pdf'), manifest, SHEET_MARGIN);
  });

  it('are the same bytes on a second run', async () => {
    expect((await printed('second')).code).toBe(0);
    expect(readFileSync(at('second.pdf')).equals(readFileSync(at('first.pdf')))).toBe(true);
    expect(readFileSync(at('second.json')).equals(readFileSync(at('first.json')))).toBe(true);
  });
});
