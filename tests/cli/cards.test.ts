import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Manifest, stockById } from '../../print/index.ts';
import { cardContent, type Day, foldFacility, type Id } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { ASH, BRACKEN, eventsOf, FERN, idOf, MOSS, ON, SITE_ROWS, STRAY, siteEvents, TUB } from './sampleSite.ts';
import { freshFolder, tubwright } from './tubwright.ts';

const folder = freshFolder();
const path = (name: string) => join(folder, name);
const site = path('site.ndjson');
beforeAll(() => writeFileSync(site, writeLog(siteEvents())));

interface Printed {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
  readonly pdf: Buffer;
  readonly manifest: Manifest;
}

async function cards(name: string, ...more: string[]): Promise<Printed> {
  const [pdf, manifest] = [path(`${name}.pdf`), path(`${name}.json`)];
  const fixed = ['cards', '--site', site, '--on', ON, '--stock', 'a4-85x54', '--out', pdf, '--manifest', manifest];
  const ran = await tubwright([...fixed, ...more]);
  return { ...ran, pdf: readFileSync(pdf), manifest: JSON.parse(readFileSync(manifest, 'utf8')) };
}

const idsOf = ({ manifest }: Printed) => manifest.pieces.map((piece) => piece.id);

describe('cards', () => {
  it('prints the living in walking order, with a manifest of the form of the contract', async () => {
    const printed = await cards('all', '--only', 'all');
    expect([printed.code, printed.err]).toEqual([0, '']);
    expect(idsOf(printed)).toEqual([MOSS, BRACKEN, FERN, STRAY]);
    const { manifest } = printed;
    expect(Object.keys(manifest)).toEqual(['stock', 'pages', 'pieces', 'left', 'sha256']);
    expect(manifest).toMatchObject({ stock: 'a4-85x54', pages: [{ widthMm: 210, heightMm: 297 }], left: [] });
    expect(manifest.pieces[0]).toMatchObject({
      kind: 'card',
      payload: `HTTPS://TUBS.EXAMPLE/${MOSS}`,
      page: 1,
      boxMm: [15, 13.5, 85, 54],
      symbology: 'qr',
      lines: expect.arrayContaining(['Moss', 'Due Tue 24 Nov 2026']),
      back: false,
    });
  });

  it('gives the hash of the very bytes that it wrote, and says what it did in a line', async () => {
    const { pdf, manifest, out } = await cards('hash', '--only', 'all');
    const sha256 = createHash('sha256').update(pdf).digest('hex');
    expect(manifest.sha256).toBe(sha256);
    expect(out).toBe(`hash.pdf: 4 cards, 1 page of a4-85x54, sha256 ${sha256}\n`);
  });

  it('gives the same bytes for the same site, date and stock', async () => {
    const [first, second] = [await cards('one', '--only', 'all'), await cards('two', '--only', 'all')];
    expect(first.pdf.equals(second.pdf)).toBe(true);
    expect(first.manifest).toEqual(second.manifest);
  });

  it('prints only what is out of date where nothing else is asked for', async () => {
    const facility = foldFacility(siteEvents());
    const moss = facility.animals.get(MOSS);
    if (moss === undefined) throw new Error('Moss is gone');
    const { revision } = cardContent(facility, moss, ON as Day);
    const rows = [...SITE_ROWS, [ON, 'card-printed', [MOSS], { revision, stock: 'a4-85x54' }] as const];
    const printed = path('printed.ndjson');
    writeFileSync(printed, writeLog(eventsOf(rows)));
    expect(idsOf(await cards('stale', '--site', printed))).toEqual([BRACKEN, FERN, STRAY]);
  });

  it('prints an empty sheet and says so when nothing is out of date', async () => {
    const empty = path('empty.ndjson');
    writeFileSync(empty, writeLog(eventsOf(SITE_ROWS.slice(0, 6))));
    const { code, err, manifest } = await cards('none', '--site', empty);
    expect([code, manifest.pieces, manifest.pages.length]).toEqual([0, [], 1]);
    expect(err).toMatch(/No card is out of date, so the sheet is empty/);
  });

  it('prints the cards asked for and names every other', async () => {
    const stranger = idOf(99);
    const printed = await cards('some', '--only', `${FERN},${MOSS},${FERN},${ASH},${stranger},${TUB},12345678,moss`);
    expect(idsOf(printed)).toEqual([MOSS, FERN]);
    expect(printed.manifest.left).toEqual([
      { id: ASH, why: expect.stringMatching(/^This animal left the site on 22 Nov 2026 \(died\)\./) },
      { id: stranger, why: expect.stringMatching(/is sound, but this site has no record of it/) },
      { id: TUB, why: expect.stringMatching(/is Rack 1 · 1-01, not an animal/) },
      { id: '12345678', why: expect.stringMatching(/its check letter does not fit/) },
      { id: 'moss', why: expect.stringMatching(/is not a Tubwright id/) },
    ]);
    expect(printed.code).toBe(1);
    expect(printed.err).toMatch(/^not printed: moss: /m);
    expect(printed.err).toMatch(/^5 cards asked for and not printed; the manifest names them\.$/m);
  });

  it('names a card that does not fit on the stock, and prints the rest', async () => {
    const long = eventsOf([[ON, 'animal-named', [MOSS], { name: 'W'.repeat(80) }]], 60);
    const wide = path('wide.ndjson');
    writeFileSync(wide, writeLog([...siteEvents(), ...long]));
    const printed = await cards('wide', '--site', wide, '--only', 'all', '--stock', 'letter-66.67x25.4');
    expect(printed.code).toBe(1);
    expect(printed.manifest.left).toContainEqual({
      id: MOSS,
      why: expect.stringMatching(/does not fit on letter-66\.67x25\.4/),
    });
  });

  it('begins at the first free label, and can lay cards for cut stacks', async () => {
    const { manifest } = await cards('first', '--only', 'all', '--first', '9', '--order', 'walk');
    expect(manifest.pieces.map((piece) => piece.page)).toEqual([1, 1, 2, 2]);
    const stacked = await cards('stack', '--only', 'all', '--first', '9', '--order', 'stack');
    expect(stacked.manifest.pieces.map((piece) => piece.boxMm)).not.toEqual(
      manifest.pieces.map((piece) => piece.boxMm),
    );
  });

  it('sets codes on the dots of the printer that is named', async () => {
    const { manifest } = await cards('thermal', '--only', MOSS, '--stock', 'card-85x54', '--printer', 'thermal-8mm');
    const [x = 0, y = 0] = manifest.pieces[0]?.symbolMm ?? [];
    expect([x * 8, y * 8].map((dots) => Math.abs(dots - Math.round(dots)) < 1e-3)).toEqual([true, true]);
  });

  it('prints of a hub’s folder as of its log', async () => {
    mkdirSync(path('hub'));
    writeFileSync(
      path('hub/events.ndjson'),
      writeLog(siteEvents()).split('\n').slice(0, -2).join('\n').replace(/ $/, '\n'),
    );
    const [hub, file] = [
      await cards('hub', '--site', path('hub'), '--only', 'all'),
      await cards('file', '--only', 'all'),
    ];
    expect(hub.pdf.equals(file.pdf)).toBe(true);
  });

  it.each([
    [['--stock', 'a3'], /There is no stock “a3”\. Take one of: a4-85x54, /],
    [['--printer', 'loom'], /There is no printer “loom”\. Take one of: office-600, thermal-203/],
    [['--order', 'random'], /--order cannot be “random”\. Give one of walk, stack/],
    [['--first', '0'], /--first cannot be “0”/],
    [['--first', '11'], /Stock a4-85x54 has no label 11\. Give the first free label as a whole number from 1 to 10/],
    [['--site', 'no-such.ndjson'], /There is no no-such\.ndjson/],
    [['--out', path('same'), '--manifest', path('same')], /two files would have this name/],
    [['--manifest', folder], /cannot be written: it is a folder/],
    [['--manifest', path('no-such/x.json')], /cannot be written: the folder is missing/],
  ])('refuses %j in words and writes neither file', async (more, words) => {
    const names = ['--out', path('refused.pdf'), '--manifest', path('refused.json')];
    const ran = await tubwright(['cards', '--site', site, '--on', ON, '--stock', 'a4-85x54', ...names, ...more]);
    expect([ran.code, ran.out]).toEqual([1, '']);
    expect(ran.err).toMatch(words);
    expect([existsSync(path('refused.pdf')), existsSync(path('refused.json'))]).toEqual([false, false]);
    expect(readdirSync(folder).filter((name) => name.endsWith('.new'))).toEqual([]);
  });

  it('knows every stock that print knows', () => {
    expect(stockById('a4-85x54').ok).toBe(true);
    expect((MOSS as Id).length).toBe(8);
  });
});
