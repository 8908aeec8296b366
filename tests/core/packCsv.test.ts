import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText, packFiles, packOf, profileOfSite } from '../../src/core/index.ts';
import { added, day, type Line, log, value } from './log.ts';
import { readCsv } from './readCsv.ts';

/** What spreadsheets take for a formula or a command at the start of a cell; CR, LF and tab let one slip in behind them. */
const BEGINS = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠', ' =', '  @', '\u00a0='];
const sign = fc.constantFrom(...BEGINS, '"', ',', '\r\n', '""', "'", ';', 'a', '日', '🐍', ' ');
const anyText = fc.oneof(
  fc.array(sign, { minLength: 1, maxLength: 12 }).map((signs) => signs.join('')),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 }),
);
const isFormula = (cell: string): boolean => /^\s*[=+\-@＝＋－＠\t\r\n]/.test(cell);

// RFC 4180, 2 (read in a mirror): CRLF after each record, the same number of fields in each, quotes doubled within quotes.
describe('CSV after RFC 4180', () => {
  it('comes back as it was written, whatever stands in a cell, but for the apostrophe before a formula', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyText, anyText), { minLength: 1, maxLength: 5 }), (rows) => {
        const read = readCsv(csvText(rows));
        expect(read).toHaveLength(rows.length);
        for (const [at, row] of rows.entries())
          for (const [cell, text] of row.entries()) expect([text, `'${text}`]).toContain(read[at]?.[cell]);
      }),
      { numRuns: 1000 },
    );
  });
  it('never gives a spreadsheet a cell that it would work out', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const [[cell = ''] = []] = readCsv(csvText([[text]]));
        expect(isFormula(cell), JSON.stringify(cell)).toBe(false);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('the tables of a pack', () => {
  it('are whole and safe whatever a keeper wrote', () => {
    const words = anyText.filter((text) => text.trim() !== '');
    fc.assert(
      fc.property(words, words, words, (name, note, to) => {
        const lines: readonly Line[] = [
          added({ name, source: to }),
          ['2026-01-01', 'note-made', { words: note }],
          ['2026-01-02', 'vet-cleared', { by: name, words: note }],
          ['2026-01-03', 'origin-set', { source: to, licence: note, papers: name }],
          ['2026-01-04', 'animal-left', { how: 'sold', to, cause: note }],
        ];
        const pack = value(
          packOf(log(...lines), { choice: { of: 'all' }, on: day('2026-11-25'), profile: profileOfSite(null) }),
        );
        for (const { name: file, text } of packFiles(pack)) {
          const [heads = [], ...rows] = readCsv(text);
          for (const row of rows) {
            expect(row.length, file).toBe(heads.length);
            for (const cell of row) expect(isFormula(cell), `${file}: ${JSON.stringify(cell)}`).toBe(false);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});
