import { beforeAll, describe, expect, it } from 'vitest';
import { PACK_PAPERS, type PackPaper, type PrintedDocument, printHandOver } from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { type HandOver, handOver, sayId } from '../../src/core/index.ts';
import { added, day, fed, type Line, log, REX, refused, site, weighed } from '../core/log.ts';
import { readPage, run, withFile, wordsOf } from './paper.ts';
import { expectSoundFile } from './readBack.ts';

const fonts = await loadFonts();
const DPI = 150;
const WORDS = Array.from({ length: 250 }, (_none, at) => `word${at}`).join(' ');
const LONG_NAME = 'Ångström-Éclair-de-Żubrówka-the-Second-of-the-Lower-Shelf-beside-the-Door';
/** A giant with a long name, a full year, a long word of the vet, and everything else that takes room. */
const CROWDED: readonly Line[] = [
  ['2025-01-01', 'site-named', { name: 'House of Reeds', timeZone: 'Etc/UTC', host: 'tubs.example' }, { subjects: [] }],
  added({ species: 'Malayopython reticulatus', name: LONG_NAME, hatchedOn: '2022-05-05', acquiredOn: '2023-01-01' }),
  ['2025-01-02', 'origin-set', { source: 'Reed & Sons <West>', licence: 'L 12', papers: 'invoice 7' }],
  ['2025-01-02', 'microchip-set', { code: '276098101234567' }],
  ['2025-01-03', 'animal-measured', { lengthMm: 4200, of: 'total' }],
  ...Array.from({ length: 40 }, (_none, at) => {
    const on = new Date(Date.UTC(2026, 0, 1 + 7 * at)).toISOString().slice(0, 10);
    return at % 9 === 4 ? refused(on) : fed(on, 900 + at);
  }),
  ...Array.from({ length: 11 }, (_none, at) => weighed(`2026-${String(at + 1).padStart(2, '0')}-02`, 14_000 + 80 * at)),
  ['2026-09-10', 'vet-cleared', { by: 'Dr Reed', words: WORDS }],
  ['2026-11-20', 'opaque-seen', {}],
];

function sheetOf(lines: readonly Line[]): HandOver {
  const facility = site(...lines);
  const animal = facility.animals.get(REX) ?? expect.fail();
  return handOver({ facility, animal, history: log(...lines), on: day('2026-11-25'), tellsSource: true });
}

/** Blanks and line ends are the paper’s; a text that was wrapped is found again without them. */
const plain = (text: string): string => text.replace(/\s+/g, '');
const print = (sheet: HandOver, paper: PackPaper = 'a4', host: string | null = 'tubs.example') =>
  printHandOver({ sheet, paper, fonts, host });

describe.each(Object.keys(PACK_PAPERS) as PackPaper[])('a hand-over sheet on %s', (paper) => {
  const { widthMm, heightMm } = PACK_PAPERS[paper];
  const sheet = sheetOf(CROWDED);
  let printed: PrintedDocument;
  beforeAll(async () => {
    printed = await print(sheet, paper);
  });
  it('is a sound file with both cuts embedded, of that size', async () => {
    await withFile(printed.pdf, (path) => {
      expectSoundFile(path);
      const [, width = '', height = ''] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(run('pdfinfo', path)) ?? [];
      expect(Number(width) * (25.4 / 72)).toBeCloseTo(widthMm, 1);
      expect(Number(height) * (25.4 / 72)).toBeCloseTo(heightMm, 1);
      expect(Number(/Pages:\s+(\d+)/.exec(run('pdfinfo', path))?.[1])).toBe(printed.manifest.pages.length);
    });
  });
  it('has every word inside the margins, and none on the code', async () => {
    const { pdf, manifest } = printed;
    const pages = manifest.pages.length;
    await withFile(pdf, async (path) => {
      const [code] = await readPage(path, 1, DPI);
      const corners = code?.corners ?? expect.fail('no code was read');
      const [left, top] = corners[0] ?? [0, 0];
      const [right, bottom] = corners[2] ?? [0, 0];
      const quiet = ((right - left) / 25) * 4;
      for (let page = 1; page <= pages; page++) {
        for (const { text, box } of wordsOf(path, page)) {
          const [x, y, toX, toY] = box;
          expect(x, text).toBeGreaterThan(12);
          expect(toX, text).toBeLessThan(widthMm - 12);
          expect(y, text).toBeGreaterThan(5);
          expect(toY, text).toBeLessThan(heightMm - 6);
          const isClear = toX < left - quiet || x > right + quiet || toY < top - quiet || y > bottom + quiet;
          expect(page > 1 || isClear, text).toBe(true);
        }
      }
    });
  });
  it('says every word of the sheet', async () => {
    await withFile(printed.pdf, (path) => {
      const text = plain(run('pdftotext', '-layout', path, '-'));
      const pairs = [...sheet.identity, ...sheet.parents].map(([label]) => label);
      for (const words of [...pairs, LONG_NAME, 'Threepeople:neveralone', 'Handedoverby', 'Receivedby', 'Salmonella'])
        expect(text).toContain(plain(words));
      const inOrder = plain(run('pdftotext', path, '-'));
      for (const { words } of sheet.cautions) expect(inOrder).toContain(plain(words));
      expect(WORDS.split(' ').filter((word) => !text.includes(word))).toEqual([]);
      for (const { totalG } of sheet.offers) expect(text).toContain(`${totalG}g`.replace(/(\d)(\d{3})g/, '$1,$2g'));
    });
  });
  it('has a code that opens the record, read from a raster', async () => {
    await withFile(printed.pdf, async (path) => {
      const codes = await readPage(path, 1, DPI);
      expect(codes.map(({ text }) => text)).toEqual([`HTTPS://TUBS.EXAMPLE/${REX}`]);
    });
  });
  it('is the same bytes each time', async () => {
    const again = await print(sheetOf(CROWDED), paper);
    expect(Buffer.from(again.pdf).equals(printed.pdf)).toBe(true);
  });
});

describe('a hand-over sheet', () => {
  it('of an animal that nobody wrote anything of is one page and says what is missing', async () => {
    const printed = await print(sheetOf([added({ species: 'Pantherophis guttatus' })]), 'a4', null);
    expect([printed.manifest.pages.length, printed.missing]).toEqual([1, []]);
    await withFile(printed.pdf, async (path) => {
      const text = run('pdftotext', '-layout', path, '-');
      for (const words of [
        'none on record',
        'No offer is on record.',
        'No weighing is on record.',
        'Nothing is on record.',
      ])
        expect(text).toContain(words);
      expect((await readPage(path, 1, DPI)).map(({ text: said }) => said)).toEqual([REX]);
    });
  });
  it('names the signs that the type lacks, which stand as their numbers', async () => {
    const printed = await print(sheetOf([added({ name: '日 Rex' })]));
    expect(printed.missing).toEqual(['日']);
    await withFile(printed.pdf, (path) => {
      expect(run('pdftotext', '-layout', path, '-')).toContain('U+65E5');
    });
  });
  it('runs its name and id over every page', async () => {
    const { pdf, manifest } = await print(sheetOf(CROWDED));
    const pages = manifest.pages.length;
    expect(pages).toBeGreaterThan(1);
    await withFile(pdf, (path) => {
      for (let page = 1; page <= pages; page++) {
        const text = run('pdftotext', '-layout', '-f', `${page}`, '-l', `${page}`, path, '-');
        expect(text).toContain(sayId(REX));
        expect(text).toContain(`page ${page} of ${pages}`);
      }
    });
  });
});
