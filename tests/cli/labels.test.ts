import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Manifest } from '../../print/index.ts';
import { STAMPS } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { drawnPages, expectCodesWhereTheyStand, expectSoundFile } from '../print/readBack.ts';
import { BRACKEN, eventsOf, FERN, idOf, LOT, MOSS, ON, SITE_ROWS, siteEvents, TUB } from './sampleSite.ts';
import { freshFolder, tubwright } from './tubwright.ts';

const folder = freshFolder();
const path = (name: string) => join(folder, name);
const site = path('site.ndjson');
const [CLUTCH, OLD] = [idOf(31), idOf(32)];
beforeAll(() => {
  const laid = eventsOf(
    [
      ['2025-05-01', 'clutch-laid', [FERN, OLD], { clutch: OLD, eggs: 4 }],
      ['2025-07-01', 'clutch-hatched', [OLD], { hatched: 4 }],
      ['2026-11-01', 'clutch-laid', [FERN, CLUTCH], { clutch: CLUTCH, eggs: 6, sire: MOSS }],
      ['2026-11-10', 'egg-candled', [CLUTCH], { egg: 5, state: 'lost' }],
    ],
    80,
  );
  writeFileSync(site, writeLog([...siteEvents(), ...laid]));
});

async function labels(name: string, ...more: string[]) {
  const [pdf, manifest] = [path(`${name}.pdf`), path(`${name}.json`)];
  const fixed = ['labels', '--site', site, '--on', ON, '--stock', 'a4-85x54', '--out', pdf, '--manifest', manifest];
  const ran = await tubwright([...fixed, ...more]);
  const read = JSON.parse(readFileSync(manifest, 'utf8')) as Manifest;
  return { ...ran, path: pdf, pdf: readFileSync(pdf), manifest: read };
}

const firstLines = ({ manifest }: { readonly manifest: Manifest }) => manifest.pieces.map(({ lines }) => lines[0]);

describe('labels', () => {
  it('prints every place in walking order, each with its kind in the manifest', async () => {
    const printed = await labels('places', '--what', 'place');
    expect([printed.code, printed.err]).toEqual([0, '']);
    expect(firstLines(printed)).toEqual(['Room 1', 'Rack 1', '1-01', '1-02', '1-03']);
    expect(new Set(printed.manifest.pieces.map(({ kind }) => kind))).toEqual(new Set(['place']));
    const [, , tub] = printed.manifest.pieces;
    expect(tub).toMatchObject({ id: TUB, payload: `HTTPS://TUBS.EXAMPLE/${TUB}`, symbology: 'qr', back: false });
    expect(tub?.lines).toEqual(['1-01', 'Room 1 · Rack 1', `${TUB.slice(0, 4)}-${TUB.slice(4)}`, 'tub']);
  });

  it('gives codes that read back, in a sound file, with the hash of its bytes', async () => {
    const printed = await labels('tags', '--what', 'clutch', '--only', `${CLUTCH},${OLD}`);
    expectSoundFile(printed.path);
    expectCodesWhereTheyStand(await drawnPages(printed.path, printed.manifest), printed.manifest);
    const sha256 = createHash('sha256').update(printed.pdf).digest('hex');
    expect(printed.manifest.sha256).toBe(sha256);
    expect(printed.out).toBe(`tags.pdf: 2 labels, 1 page of a4-85x54, sha256 ${sha256}\n`);
    expect(printed.manifest.pieces[0]?.lines).toEqual(expect.arrayContaining(['laid 1 Nov 2026', '6 eggs, 5 left']));
  });

  it('takes the clutches that still lie where none is asked for', async () => {
    const { manifest } = await labels('lying', '--what', 'clutch');
    expect(manifest.pieces.map(({ id }) => id)).toEqual([CLUTCH]);
  });

  it('marks the eggs that nobody has seen fail, or the one that is asked for', async () => {
    expect(firstLines(await labels('eggs', '--what', 'egg'))).toEqual(['1', '2', '3', '4', '6']);
    const one = await labels('egg', '--what', 'egg', '--only', `${CLUTCH}/5`, '--stock', 'roll-40x15');
    expect(firstLines(one)).toEqual(['5']);
    expect(one.manifest.pages).toEqual([{ widthMm: 40, heightMm: 15 }]);
  });

  it('prints the card of a pair for the female’s tub, and says what is no pair', async () => {
    const { manifest, code, err } = await labels('pair', '--what', 'pairing', '--only', `${MOSS}/${FERN},${MOSS}`);
    expect(manifest.pieces[0]).toMatchObject({ kind: 'pairing', payload: `HTTPS://TUBS.EXAMPLE/${FERN}` });
    expect(manifest.pieces[0]?.lines).toContain('0.1 Fern × 1.0 Moss');
    expect(manifest.pieces[0]?.lines).toContain('1.0: no traits written');
    expect([code, manifest.left.map(({ id }) => id)]).toEqual([1, [MOSS]]);
    expect(err).toContain('is no pair');
  });

  it('prints a label for each lot in the freezer, with its last day and the hygiene', async () => {
    const { manifest } = await labels('lots', '--what', 'lot');
    expect(manifest.pieces).toMatchObject([{ kind: 'lot', payload: `HTTPS://TUBS.EXAMPLE/${LOT}` }]);
    const [, ...lines] = manifest.pieces[0]?.lines ?? [];
    expect(lines.slice(0, 2)).toEqual(['small rat', 'use by 4 Jan 2027 (assumed)']);
    expect(lines.join(' ')).toContain('Thawed prey is never refrozen.');
  });

  it('prints the stamp sheet and the code for typing scanners', async () => {
    const stamps = await labels('stamps', '--what', 'stamps');
    expect(stamps.manifest.pieces.map(({ payload }) => payload)).toEqual(
      STAMPS.map(({ id }) => `STAMP:${id.toUpperCase()}`),
    );
    const test = await labels('test', '--what', 'layout-test');
    expect(test.manifest.pieces.map(({ kind, payload }) => [kind, payload])).toEqual([
      ['layout-test', 'LAYOUT:YZ-QW/0123'],
    ]);
  });

  it('prints the card of a treatment under way and its tube sheet, and why there is none of another', async () => {
    const treated = path('treated.ndjson');
    const written = {
      ...{ drug: 'as the vet wrote it', prescriber: 'Dr Linnet Sallowfield', route: 'by stomach tube', everyHours: 24 },
      ...{ amount: { by: 'volume', ml: 10 }, count: 20, startsOn: ON },
    };
    const rows = eventsOf(
      [
        [ON, 'animal-weighed', [FERN], { weightG: 1480 }],
        [ON, 'prescription-written', [FERN], written],
      ],
      80,
    );
    writeFileSync(treated, writeLog([...siteEvents(), ...rows]));
    const card = await labels('treatment', '--what', 'treatment', '--site', treated, '--stock', 'a4-105x148');
    expect([card.code, card.err]).toEqual([0, '']);
    expect(card.manifest.pieces.map(({ kind, payload, back }) => [kind, payload, back])).toEqual([
      ['treatment', `HTTPS://TUBS.EXAMPLE/${FERN}`, false],
      ['treatment', `HTTPS://TUBS.EXAMPLE/${FERN}`, true],
    ]);
    expect(card.out).toMatch(/1 label, 1 further face, 1 page of a4-105x148/);
    for (const { lines } of card.manifest.pieces)
      expect(lines.join(' ')).toMatch(/Arithmetic only.* Under treatment, not for sale/);
    expect(card.manifest.pieces[0]?.lines).toContain('10 mL');
    const tube = await labels(
      'tube',
      '--what',
      'tube',
      '--site',
      treated,
      '--stock',
      'roll-100x150',
      '--only',
      `${FERN}/1`,
    );
    expect(tube.manifest.pieces[0]?.lines.join(' ')).toMatch(
      /2–3 mL of water .*depth mark.*Only people whom the vet has trained/,
    );
    const none = await labels('untreated', '--what', 'treatment', '--site', treated, '--only', `${MOSS},${FERN}/2`);
    expect([none.code, none.manifest.left.map(({ id }) => id)]).toEqual([1, [MOSS, `${FERN}/2`]]);
    expect(none.err).toContain('has no prescription under way');
  });

  it('gives the same bytes a second time', async () => {
    const [one, two] = [await labels('one', '--what', 'clutch'), await labels('two', '--what', 'clutch')];
    expect(one.pdf.equals(two.pdf)).toBe(true);
    expect(one.manifest).toEqual(two.manifest);
  });

  it('names what it cannot print, and prints the rest', async () => {
    const stranger = idOf(99);
    const printed = await labels('some', '--what', 'place', '--only', `${TUB},${BRACKEN},${stranger},tub`);
    expect(firstLines(printed)).toEqual(['1-01']);
    expect(printed.manifest.left).toEqual([
      { id: 'tub', why: expect.stringMatching(/is not a Tubwright id/) },
      { id: BRACKEN, why: expect.stringMatching(/is Bracken, not a place/) },
      { id: stranger, why: expect.stringMatching(/this site has no record of it/) },
    ]);
    expect(printed.code).toBe(1);
    expect(printed.err).toMatch(/^3 labels asked for and not printed; the manifest names them\.$/m);
    const unfit = await labels('unfit', '--what', 'clutch', '--stock', 'roll-40x15');
    expect(unfit.manifest.left).toEqual([{ id: CLUTCH, why: expect.stringMatching(/does not fit on roll-40x15/) }]);
  });

  it('prints an empty sheet and says so where the site has nothing of the kind', async () => {
    const empty = path('empty.ndjson');
    writeFileSync(empty, writeLog(eventsOf(SITE_ROWS)));
    const { code, err, manifest } = await labels('none', '--what', 'egg', '--site', empty);
    expect([code, manifest.pieces, manifest.pages.length]).toEqual([0, [], 1]);
    expect(err).toMatch(/There is nothing of this kind at the site, so the sheet is empty/);
  });

  it.each([
    [[], /^--what is missing\. See `tubwright labels --help`/],
    [['--what', 'hats'], /--what cannot be “hats”\. Give one of place, clutch, egg, .*, lot, stamps, layout-test/],
    [['--what', 'layout-test', '--only', 'x'], /there is one layout-test code, so it takes no --only/],
    [['--what', 'stamps', '--stock', 'a3'], /There is no stock “a3”\. Take one of: a4-85x54, /],
    [['--what', 'stamps', '--first', '11'], /Stock a4-85x54 has no label 11/],
    [['--what', 'stamps', '--printer', 'loom'], /There is no printer “loom”/],
  ])('refuses %j in words and writes neither file', async (more, words) => {
    const names = ['--out', path('refused.pdf'), '--manifest', path('refused.json')];
    const ran = await tubwright(['labels', '--site', site, '--on', ON, '--stock', 'a4-85x54', ...names, ...more]);
    expect([ran.code, ran.out]).toEqual([1, '']);
    expect(ran.err).toMatch(words);
    expect([existsSync(path('refused.pdf')), existsSync(path('refused.json'))]).toEqual([false, false]);
  });
});
