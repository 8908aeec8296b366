import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  checkStock,
  contentInset,
  labelBox,
  labelsPerPage,
  STOCKS,
  type Stock,
  slots,
  stockById,
} from '../../print/index.ts';

const mm = (max: number) => fc.integer({ min: -20, max: max * 10 }).map((tenths) => tenths / 10);
const anyStock: fc.Arbitrary<Stock> = fc.record({
  id: fc.constant('random'),
  name: fc.constant('random'),
  pageWidthMm: mm(220),
  pageHeightMm: mm(300),
  labelWidthMm: mm(110),
  labelHeightMm: mm(80),
  columns: fc.integer({ min: 0, max: 4 }),
  rows: fc.integer({ min: 0, max: 8 }),
  firstXMm: mm(25),
  firstYMm: mm(25),
  pitchXMm: mm(110),
  pitchYMm: mm(80),
  printerInsetMm: mm(6),
});
const known = fc.constantFrom(...STOCKS);
const SLACK = 0.05;

function must(stock: Stock): Stock {
  const checked = checkStock(stock);
  if (!checked.ok) throw new RangeError(checked.problem.message);
  return checked.value;
}

describe('the stocks', () => {
  test.each(STOCKS.map((stock) => [stock.id, stock] as const))('%s is sound', (id, stock) => {
    expect(checkStock(stock)).toEqual({ ok: true, value: stock });
    expect(stockById(id)).toEqual({ ok: true, value: stock });
  });

  // Label geometry: open label templates as gathered in docs/sources.md; pages: ISO 216 A4, ANSI letter.
  test.each([
    ['a4-85x54', 210, 297, 10, [15, 13.5, 85, 54], [110, 229.5, 85, 54]],
    ['a4-70x52', 210, 297, 10, [23.5, 18.5, 70, 52], [116.5, 226.5, 70, 52]],
    ['letter-88.9x50.8', 215.9, 279.4, 10, [19.05, 12.7, 88.9, 50.8], [107.95, 215.9, 88.9, 50.8]],
    ['card-85x54', 85, 54, 1, [0, 0, 85, 54], [0, 0, 85, 54]],
    ['card-70x52', 70, 52, 1, [0, 0, 70, 52], [0, 0, 70, 52]],
  ])('%s has its first and last label where the sheet has them', (id, width, height, count, first, last) => {
    const found = stockById(id);
    if (!found.ok) throw new RangeError(id);
    const stock = found.value;
    expect([stock.pageWidthMm, stock.pageHeightMm, labelsPerPage(stock)]).toEqual([width, height, count]);
    expect(labelBox(stock, 1)).toEqual(first);
    expect(labelBox(stock, count)).toEqual(last);
  });

  test('an unknown stock is refused with the list of known ones', () => {
    const refused = stockById('a4-1x1');
    expect(refused.ok ? null : [refused.problem.code, refused.problem.remedy.includes('a4-85x54')]).toEqual([
      'stock-unknown',
      true,
    ]);
  });

  test.each([
    ['labels wider than the pitch', { pitchXMm: 80 }, 'stock-overlaps'],
    ['labels higher than the pitch', { pitchYMm: 53 }, 'stock-overlaps'],
    ['a second column off the page', { firstXMm: 31 }, 'stock-off-page'],
    ['a last row off the page', { firstYMm: 28 }, 'stock-off-page'],
    ['a first label left of the page', { firstXMm: -1 }, 'stock-off-page'],
    ['no rows', { rows: 0 }, 'stock-off-page'],
    ['half a column', { columns: 1.5 }, 'stock-off-page'],
    ['a width that is no number', { labelWidthMm: Number.NaN }, 'stock-off-page'],
    ['a pitch that is no number', { pitchXMm: Number.NaN }, 'stock-off-page'],
  ])('%s: refused', (_what, change, code) => {
    const [sheet] = STOCKS;
    const checked = sheet && checkStock({ ...sheet, ...change });
    expect(checked && !checked.ok ? checked.problem.code : 'sound').toBe(code);
  });

  test('labels at the page edge keep their content where the printer reaches', () => {
    const found = stockById('a4-70x50.8');
    expect(found.ok && contentInset(found.value)).toEqual({ left: 5, top: 3, right: 5, bottom: 3 });
  });

  test('law: a stock is refused, or its labels neither overlap nor leave the page', () => {
    let sound = 0;
    void fc.assert(
      fc.property(anyStock, (stock) => {
        if (!checkStock(stock).ok) return;
        sound++;
        const boxes = Array.from({ length: labelsPerPage(stock) }, (_none, at) => labelBox(stock, at + 1));
        for (const [at, [x, y, width, height]] of boxes.entries()) {
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
          expect(x + width).toBeLessThanOrEqual(stock.pageWidthMm + SLACK);
          expect(y + height).toBeLessThanOrEqual(stock.pageHeightMm + SLACK);
          for (const [left, top, across, down] of boxes.slice(at + 1))
            expect(
              x + width <= left + SLACK ||
                left + across <= x + SLACK ||
                y + height <= top + SLACK ||
                top + down <= y + SLACK,
            ).toBe(true);
        }
      }),
      { numRuns: 3000 },
    );
    expect(sound).toBeGreaterThan(20);
  });
});

describe('the slots', () => {
  const [sheet] = STOCKS;

  test('pieces go along the labels from the first free one, then to the next sheet', () => {
    const given = sheet && slots(sheet, 12, { first: 9 });
    const seen = given?.ok ? given.value.map(({ page, label }) => `${page}/${label}`) : [];
    expect(seen).toEqual(['1/9', '1/10', '2/1', '2/2', '2/3', '2/4', '2/5', '2/6', '2/7', '2/8', '2/9', '2/10']);
  });

  test.each([0, 11, 2.5, Number.NaN])('a first label %s is refused', (first) => {
    const given = sheet && slots(sheet, 1, { first });
    expect(given && !given.ok ? given.problem.code : 'sound').toBe('label-unknown');
  });

  test('law: both orders use the same labels, each once', () => {
    void fc.assert(
      fc.property(known, fc.nat(60), fc.nat(), (stock, count, seed) => {
        const first = (seed % labelsPerPage(stock)) + 1;
        const keys = (['walk', 'stack'] as const).map((order) => {
          const given = slots(must(stock), count, { first, order });
          return given.ok ? given.value.map(({ page, label }) => page * 1000 + label).sort((a, b) => a - b) : null;
        });
        expect(keys[0]).toHaveLength(count);
        expect(new Set(keys[0]).size).toBe(count);
        expect(keys[1]).toEqual(keys[0]);
      }),
    );
  });

  test('law: cut the stack, put the piles on each other, and the pieces are in walking order', () => {
    void fc.assert(
      fc.property(known, fc.nat(60), fc.nat(), (stock, count, seed) => {
        const first = (seed % labelsPerPage(stock)) + 1;
        const given = slots(stock, count, { first, order: 'stack' });
        const placed = given.ok ? given.value.map((slot, piece) => ({ ...slot, piece })) : [];
        const piles = Array.from({ length: labelsPerPage(stock) }, (_none, at) =>
          placed.filter(({ label }) => label === at + 1).sort((a, b) => a.page - b.page),
        );
        expect(piles.flat().map(({ piece }) => piece)).toEqual(Array.from({ length: count }, (_none, at) => at));
      }),
    );
  });
});
