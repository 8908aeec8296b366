import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type LineFault,
  OFFICE_600,
  openTypeface,
  PACK_PAPERS,
  type PackPaper,
  PRINTERS,
  type PrintedDocument,
  printCalibration,
  printHandOver,
  printLists,
  printPack,
  readBack,
  STOCKS,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { printable } from '../../print/pack/wrap.ts';
import { openDecoder } from '../../scanner/decode/index.ts';
import { handOver, type ListSheet, packOf, profileById, rackSheet, saleListSheet } from '../../src/core/index.ts';
import { added, day, fed, id, type Line, log, RACK, REX, site, value } from '../core/log.ts';
import { words } from './anyWords.ts';
import { readPage, run, withFile, wordsByPage } from './paper.ts';
import { expectSoundFile } from './readBack.ts';

const ON = day('2026-11-25');
const DPI = 150;
const MARGIN_MM = 10;
const fonts = await loadFonts();
const typeface = openTypeface(fonts);
const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
const decoder = await openDecoder({ binary: new Uint8Array(wasm).buffer });
const look = async (picture: { data: Uint8ClampedArray; width: number; height: number }) =>
  (await decoder.frame(picture, 0, 4)).map(({ text }) => text);

/** A rack of 70 tubs, each with an animal, every other one on offer: lists of several pages. */
const CROWD = 70;
const LINES: readonly Line[] = [
  [
    '2025-01-01',
    'site-named',
    { name: 'House of Reeds', timeZone: 'Etc/UTC', host: 'tubs.example', currency: 'EUR' },
    { subjects: [] },
  ],
  ['2025-01-01', 'place-added', { placeKind: 'rack', name: 'Long wall', walk: 1 }, { subjects: [RACK] }],
  added({ name: 'Żółw Ångström-Éclair of the Lower Shelf' }),
  ['2025-01-02', 'animal-moved', { to: RACK }],
  fed('2026-11-20'),
  ...Array.from({ length: CROWD }, (_none, at): readonly Line[] => {
    const who = { subjects: [id(100 + at)] };
    return [
      added({ name: `Animal ${at}`, sex: at % 2 === 0 ? 'female' : 'male' }, who),
      ['2025-01-02', 'animal-moved', { to: RACK }, who],
      ['2026-11-01', 'animal-offered', { priceMinor: 18_000 + at }, who],
    ];
  }).flat(),
];
const facility = site(...LINES);
const history = log(...LINES);
const host = facility.site.host;
const rack = facility.places.get(RACK) ?? expect.fail();
const animal = facility.animals.get(REX) ?? expect.fail();

type Make = (paper: PackPaper, compress?: boolean) => Promise<PrintedDocument>;
const sheets = { rack: rackSheet(facility, rack, ON), sale: saleListSheet(facility, ON) };
const profile = value(profileById('plain'));
const DOCUMENTS: readonly (readonly [name: string, codes: number, make: Make])[] = [
  [
    'rack sheets',
    2,
    (paper, compress) => printLists({ sheets: [sheets.rack, sheets.rack], paper, fonts, host, compress }),
  ],
  ['a sale list', 0, (paper, compress) => printLists({ sheets: [sheets.sale], paper, fonts, host, compress })],
  ['no list', 0, (paper, compress) => printLists({ sheets: [], paper, fonts, host, compress })],
  [
    'a hand-over sheet',
    1,
    (paper, compress) => {
      const sheet = handOver({ facility, animal, history, on: ON, tellsSource: true });
      return printHandOver({ sheet, paper, fonts, host, compress });
    },
  ],
  [
    'an inspector’s pack',
    0,
    (paper, compress) => {
      const pack = value(packOf(history, { choice: { of: 'only', ids: [REX] }, on: ON, profile }));
      return printPack({ pack, paper, fonts, compress });
    },
  ],
];
const CASES = DOCUMENTS.flatMap(([name, codes, make]) =>
  (Object.keys(PACK_PAPERS) as PackPaper[]).map((paper) => ({ name, paper, codes, make })),
);

const plain = (text: string): string => text.replace(/\s+/g, '');
const read = ({ pdf, manifest }: Pick<PrintedDocument, 'pdf' | 'manifest'>) =>
  readBack(pdf, manifest, OFFICE_600, { look });

describe.each(CASES)('PRINT-READBACK: $name on $paper', ({ paper, codes, make }) => {
  const made = make(paper);
  it('is read back whole from its own pages: codes and every line', async () => {
    const { manifest } = await made;
    const back = await read(await made);
    const lines = manifest.pages.reduce((sum, page) => sum + (page.lines?.length ?? 0), 0);
    expect(back).toEqual({ codes, bars: 0, lines, faults: [] });
  });
  it('says in its table of contents the words that Poppler finds, page by page', async () => {
    const { pdf, manifest } = await made;
    await withFile(pdf, (path) => {
      const pages = wordsByPage(path);
      expect(pages).toHaveLength(manifest.pages.length);
      for (const [at, words] of pages.entries()) {
        const wanted = (manifest.pages[at]?.lines ?? []).flatMap((line) => line.split(' ')).filter(Boolean);
        expect(words.map(({ text }) => text).sort()).toEqual(wanted.sort());
      }
    });
  });
  it('is a file without faults, whose words lie inside the margins', async () => {
    const { pdf } = await made;
    const { widthMm, heightMm } = PACK_PAPERS[paper];
    await withFile(pdf, (path) => {
      expect(run('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found');
      for (const { text, box } of wordsByPage(path).flat()) {
        expect(Math.min(box[0], widthMm - box[2]), text).toBeGreaterThan(MARGIN_MM);
        expect(Math.min(box[1], heightMm - box[3]), text).toBeGreaterThan(MARGIN_MM / 2);
      }
    });
  });
  it('has its codes where the table says, read by a program that did not draw them', async () => {
    const { pdf, manifest } = await made;
    await withFile(pdf, async (path) => {
      for (const { page, payload, symbolMm } of manifest.pieces) {
        const [code] = await readPage(path, page, DPI);
        const [x = 0, y = 0] = code?.corners[0] ?? [];
        expect([code?.text, Math.hypot(x - symbolMm[0], y - symbolMm[1]) < 0.15]).toEqual([payload, true]);
      }
    });
  });
});

describe('lists', () => {
  it('go on over several pages, with both cuts embedded', async () => {
    const made = await printLists({ sheets: [sheets.rack, sheets.sale], paper: 'a4', fonts, host });
    expect(made.manifest.pages.length).toBeGreaterThan(3);
    await withFile(made.pdf, expectSoundFile);
  });
  it('name the signs that the type lacks, which stand as their numbers', async () => {
    const sheet = { ...sheets.rack, title: '日 rack' };
    const made = await printLists({ sheets: [sheet], paper: 'a4', fonts, host });
    expect(made.missing).toEqual(['日']);
    expect(made.manifest.pages[0]?.lines?.join(' ')).toContain('U+65E5');
    expect((await read(made)).faults).toEqual([]);
  });
});

describe('PRINT-READBACK: a calibration page', () => {
  it.each(STOCKS.flatMap((stock) => PRINTERS.map((printer) => ({ stock, printer }))))(
    'of $printer.id on $stock.id is read back with every line, or refused',
    async ({ stock, printer }) => {
      const made = await printCalibration({ stock, printer, printedOn: ON, fonts });
      if (!made.ok) return expect(made.problem.code).toBe('piece-unfit');
      const back = await readBack(made.value.pdf, made.value.manifest, printer, { look });
      const { lines } = made.value.manifest.pieces[0] ?? expect.fail();
      expect(back).toEqual({ codes: 1, bars: 0, lines: lines.length, faults: [] });
    },
  );
});

/** Both lists with texts of every kind in their cells, heads and notes, long ones too. */
const anySheet = fc.constantFrom(sheets.rack, sheets.sale).chain((sheet) => {
  const row = fc.array(words(8), { minLength: sheet.columns.length, maxLength: sheet.columns.length });
  const notes = fc.array(words(40), { maxLength: 3 });
  return fc
    .record({ rows: fc.array(row, { maxLength: 40 }), notes, title: words(8), under: words(8) })
    .map((any): ListSheet => ({ ...sheet, ...any }));
});

/** What is read of a text on paper: blanks are the paper's, and a sign that the type lacks is its number. */
function asPrinted(text: string, cut: 'regular' | 'bold'): string {
  return plain(printable(text, cut, typeface));
}

/** How often each sign stands in a text. */
function signsOf(text: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const sign of plain(text)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
  return counts;
}

describe('a list of any words', () => {
  it('says all of them on its pages, none of them cut, none beside the page', async () => {
    const law = fc.asyncProperty(anySheet, fc.constantFrom<PackPaper>('a4', 'letter'), async (sheet, paper) => {
      const made = await printLists({ sheets: [sheet], paper, fonts, host, compress: false });
      expect((await read(made)).faults).toEqual([]);
      const said = signsOf(made.manifest.pages.flatMap(({ lines = [] }) => lines).join(''));
      const bold = [sheet.title, ...sheet.columns.map((one) => one.words)].map((text) => asPrinted(text, 'bold'));
      const regular = [sheet.under, ...sheet.notes, ...sheet.rows.flat()].map((text) => asPrinted(text, 'regular'));
      // A cell that is longer than a page goes on in the next row, so its words need not stand in one piece.
      for (const [sign, count] of signsOf([...bold, ...regular].join('')))
        expect(said.get(sign) ?? 0, sign).toBeGreaterThanOrEqual(count);
    });
    await fc.assert(law, { numRuns: 30 });
  });
});

/** A plain file, changed byte for byte without another length: the places of its objects still hold. */
async function spoiled(change: (text: string) => string): Promise<readonly LineFault[]> {
  const { pdf, manifest } = await printLists({ sheets: [sheets.sale], paper: 'a4', fonts, host, compress: false });
  const text = Buffer.from(pdf).toString('latin1');
  const changed = change(text);
  if (changed.length !== text.length || changed === text) throw new RangeError('the file was not spoiled');
  const { faults } = await read({ pdf: new Uint8Array(Buffer.from(changed, 'latin1')), manifest });
  return faults.map((fault) => (fault.what === 'line' ? fault : expect.fail()));
}

describe('a spoiled document', () => {
  it('names the line that is lost, and no other', async () => {
    const faults = await spoiled((text) =>
      text.replace(/\([^)]{4,}\)Tj/, (run) => `()Tj${' '.repeat(run.length - 4)}`),
    );
    expect(faults).toMatchObject([{ what: 'line', page: 1, line: `Animals on offer, House of Reeds` }]);
  });
  it('names a line that says something else', async () => {
    // The table of signs takes another letter for one of them, as a damaged type would.
    const faults = await spoiled((text) => text.replace('<0041>', '<0042>'));
    expect(faults.length).toBeGreaterThan(CROWD);
    for (const { line, read: said } of faults) expect(said?.replaceAll('B', 'A')).toBe(line.replaceAll('B', 'A'));
  });
  it('names a line that does not lie on its page whole', async () => {
    const faults = await spoiled((text) => text.replace('q 1 0 0 1 14 18 cm', 'q 1 0 0 1 99 18 cm'));
    expect(faults.length).toBeGreaterThan(10);
    for (const { page, read: said } of faults) expect([page, said]).toEqual([1, null]);
  });
});
