import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { sayId } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { readPage, run } from '../print/paper.ts';
import { expectSoundFile } from '../print/readBack.ts';
import { ASH, eventsOf, MOSS, ON, SITE_ROWS, STRAY, TUB } from './sampleSite.ts';
import { freshFolder, tubwright } from './tubwright.ts';

const folder = freshFolder();
const site = join(folder, 'site.ndjson');
const out = join(folder, 'sheet.pdf');
beforeAll(() => {
  const named = ['2026-11-02', 'animal-named', [STRAY], { name: '日 Stray' }] as const;
  const from = ['2026-11-02', 'origin-set', [MOSS], { source: 'Reed Farm', licence: 'L 12' }] as const;
  writeFileSync(site, writeLog(eventsOf([...SITE_ROWS, named, from])));
});

const handOver = (id: string, ...more: string[]) =>
  tubwright(['hand-over', '--site', site, '--on', ON, '--id', id, '--out', out, ...more]);

describe('hand-over', () => {
  it('makes a sound sheet whose words and code are found on the paper', async () => {
    expect(await handOver(sayId(MOSS))).toEqual({
      code: 0,
      out: `sheet.pdf: Moss, ${sayId(MOSS)}, 2 pages\n`,
      err: '',
    });
    expectSoundFile(out);
    const text = run('pdftotext', '-layout', out, '-');
    for (const words of ['Hand-over sheet', 'Moss', 'Sample House', '17 Nov 2026', 'Salmonella', 'Received by'])
      expect(text).toContain(words);
    expect(text).not.toContain('Reed Farm');
    expect((await readPage(out, 1, 150)).map((code) => code.text)).toEqual([`HTTPS://TUBS.EXAMPLE/${MOSS}`]);
  });
  it('tells the source where that is asked for', async () => {
    expect((await handOver(MOSS, '--source')).code).toBe(0);
    expect(run('pdftotext', '-layout', out, '-')).toMatch(/From +Reed Farm/);
  });
  it('gives the same bytes each time, and others on other paper', async () => {
    await handOver(MOSS);
    const first = readFileSync(out);
    await handOver(MOSS);
    expect(readFileSync(out).equals(first)).toBe(true);
    await handOver(MOSS, '--paper', 'letter');
    expect(readFileSync(out).equals(first)).toBe(false);
  });
  it('works for one that has left, and says so', async () => {
    expect((await handOver(ASH)).code).toBe(0);
    expect(run('pdftotext', '-layout', out, '-')).toMatch(/Died +22 Nov 2026/);
  });
  it('names the signs that the type lacks, and is then not all done', async () => {
    const { code, err } = await handOver(STRAY);
    expect([code, err]).toEqual([1, expect.stringMatching(/^The type has no sign for 日; they stand on the paper/)]);
    expect(run('pdftotext', '-layout', out, '-')).toContain('U+65E5');
  });
  const refused: readonly [string, readonly string[], RegExp][] = [
    ['no id', [], /^--id is missing\. See `tubwright hand-over --help`\./],
    ['a word that is no id', ['--id', 'moss'], /^“moss” is not a Tubwright id\./],
    ['a place', ['--id', TUB], /is Rack 1 · 1-01, not an animal\. A hand-over sheet is for one animal/],
    ['a stranger', ['--id', '0000042K'], /is sound, but this site has no record of it/],
    ['another paper', ['--id', MOSS, '--paper', 'a5'], /^--paper cannot be “a5”\. Give one of a4, letter/],
  ];
  it.each(refused)('%s is refused in words, and nothing is written', async (_, more, words) => {
    const none = join(folder, 'none.pdf');
    const ran = await tubwright(['hand-over', '--site', site, '--on', ON, '--out', none, ...more]);
    expect([ran.code, ran.out]).toEqual([1, '']);
    expect(ran.err).toMatch(words);
    expect(() => readFileSync(none)).toThrow();
  });
});
