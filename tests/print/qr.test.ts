import * as fc from 'fast-check';
import encodeQR from 'qr';
import { describe, expect, test } from 'vitest';
import { darkRectangles, moduleMm, PRINTERS, qrPayload, qrSymbol, snapMm } from '../../print/index.ts';
import { encodeQr } from '../../print/qr/symbol.ts';
import { idOf } from './cards.ts';
import { codewordsOf } from './codewords.ts';

const HEX = (bytes: readonly number[]) =>
  bytes.map((byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ');

describe('the symbol', () => {
  // Source: ISO/IEC 18004, Annex I: "01234567" as 1-M, data and error correction codewords, mask 2.
  test('"01234567" in 1-M has the codewords of the standard’s own example', () => {
    const symbol = encodeQr('01234567', 'M', 1);
    expect(HEX(codewordsOf(symbol))).toBe(
      '10 20 0C 56 61 80 EC 11 EC 11 EC 11 EC 11 EC 11 A5 24 D4 C1 ED 36 C7 87 2C 55',
    );
  });

  // Source: ISO/IEC 18004, table 7, alphanumeric capacities: 1-Q 16, 2-M 38, 3-M 61.
  test.each([
    [1, 1, 21],
    [16, 1, 21],
    [17, 2, 25],
    [38, 2, 25],
    [39, 3, 29],
    [61, 3, 29],
    [62, 4, 33],
  ])('%i alphanumeric characters take version %i, %i modules wide', (length, version, size) => {
    const symbol = qrSymbol('A'.repeat(length));
    expect([symbol.version, symbol.size, symbol.modules.length]).toEqual([version, size, size * size]);
  });

  test('another encoder makes the same modules', () => {
    for (const [payload, ecc, version] of [
      [idOf(4), 'quartile', 1],
      [`HTTPS://TUBS.EXAMPLE/${idOf(5)}`, 'medium', 2],
    ] as const) {
      const other = encodeQR(payload, 'raw', { ecc, version, mask: 2, border: 1, encoding: 'alphanumeric' });
      const bare = other.slice(1, -1).map((row) => row.slice(1, -1).map(Number));
      expect(Array.from(qrSymbol(payload).modules)).toEqual(bare.flat());
    }
  });

  test('law: the rectangles cover the dark modules, each once, and nothing else', () => {
    const grid = fc
      .integer({ min: 1, max: 12 })
      .chain((size) =>
        fc
          .array(fc.constantFrom(0, 1), { minLength: size * size, maxLength: size * size })
          .map((cells) => ({ size, modules: Uint8Array.from(cells) })),
      );
    void fc.assert(
      fc.property(grid, (symbol) => {
        const covered = new Uint8Array(symbol.modules.length);
        for (const [x, y, width, height] of darkRectangles(symbol))
          for (let row = y; row < y + height; row++)
            for (let column = x; column < x + width; column++)
              covered[row * symbol.size + column] = (covered[row * symbol.size + column] ?? 0) + 1;
        expect(covered).toEqual(symbol.modules);
      }),
    );
  });
});

describe('the payload', () => {
  const id = idOf(9);

  test.each([
    ['tubs.example', `HTTPS://TUBS.EXAMPLE/${id}`],
    ['a23456789.b1234567.io', `HTTPS://A23456789.B1234567.IO/${id}`],
    ['192.168.1.20:8443', `HTTPS://192.168.1.20:8443/${id}`],
    ['a23456789.b12345678.io', id],
    ['has space.example', id],
    ['under_score.example', id],
    ['köln.example', id],
    ['', id],
  ])('host “%s” gives %s', (host, payload) => {
    expect(qrPayload(id, host)).toBe(payload);
  });

  test('without a host it is the id alone', () => {
    expect(qrPayload(id)).toBe(id);
  });
});

describe('the printer’s dots', () => {
  test.each(PRINTERS.map((printer) => [printer.id, printer] as const))(
    '%s: a module is whole dots, four at least',
    (_id, printer) => {
      for (const size of [21, 25, 29, 57]) {
        const dots = moduleMm(size, 25.2, printer) * printer.dotsPerMm;
        expect(Math.abs(dots - Math.round(dots))).toBeLessThan(1e-9);
        expect(Math.round(dots)).toBeGreaterThanOrEqual(4);
      }
    },
  );

  test('at 203 dots per inch a 2-M symbol has six dots a module and is 18.77 mm wide', () => {
    expect(moduleMm(25, 25.2, PRINTERS[1]) * 25).toBeCloseTo(18.77, 2);
  });

  test('203 per inch and 8 per mm are different grids', () => {
    expect(snapMm(100.06, PRINTERS[1])).not.toBe(snapMm(100.06, PRINTERS[2]));
  });
});
