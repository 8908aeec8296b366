import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  calibrationFor,
  calibrationFrom,
  calibrationPayload,
  checkCalibration,
  checkStock,
  crossA,
  findPrinter,
  findStock,
  OFFICE_600,
  PRINTERS,
  parsePaperMm,
  placing,
  printCalibration,
  printersOf,
  readCalibrationPayload,
  rulersOf,
  STOCKS,
  type Stock,
  sayPaperMm,
  stockById,
  stocksOf,
  takesCards,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { NO_PAPER, type PaperRecord, type Payload } from '../../src/core/index.ts';
import { onDay } from './cards.ts';
import { readPage, withFile } from './paper.ts';

const fonts = await loadFonts();
const DAY = onDay('2026-11-26');

function ours(id: string): Stock {
  const found = stockById(id);
  if (!found.ok) throw new RangeError(found.problem.message);
  return found.value;
}
const A4 = ours('a4-63.5x38.1');
const [, THERMAL_203] = PRINTERS;

const OWN: Payload<'own-stock-set'> = {
  ...{ stock: 'own-freezer-67x25', name: 'Freezer', typedIn: 'inch', pageWidthMm: 215.9, pageHeightMm: 279.4 },
  ...{ labelWidthMm: 66.675, labelHeightMm: 25.4, columns: 3, rows: 10, firstXMm: 3.9688, firstYMm: 12.7 },
  ...{ pitchXMm: 70.6438, pitchYMm: 25.4, printerInsetMm: 4 },
};
const DESK: Payload<'own-printer-set'> = { printer: 'own-desk-203', name: 'Desk', dotsPerMm: 8, insetDots: 0.25 };
const PAPER: PaperRecord = {
  ...NO_PAPER,
  stocks: [OWN, { ...OWN, stock: 'own-broken', pitchXMm: 60 }],
  printers: [DESK],
  calibrations: [
    {
      ...{ printer: 'own-desk-203', stock: 'a4-85x54', offsetXMm: 0.8, offsetYMm: -0.3, scaleX: 1.002, scaleY: 1 },
      day: DAY,
    },
  ],
};

describe('a length of paper as it is typed', () => {
  // 1 inch is 25.4 mm exactly (international inch of 1959).
  test.each([
    ['85', 'mm', 85],
    ['85,5 mm', 'mm', 85.5],
    [' .5 ', 'mm', 0.5],
    ['6.6cm', 'mm', 66],
    ['2 5/8"', 'mm', 66.675],
    ['2 5/8', 'inch', 66.675],
    ['2-5/8', 'inch', 66.675],
    ['5/32', 'inch', 3.9688],
    ['1', 'inch', 25.4],
    ['1 in', 'mm', 25.4],
    ['25.4 mm', 'inch', 25.4],
    ['-0.8', 'mm', -0.8],
    ['−0,8', 'mm', -0.8],
    ['0', 'mm', 0],
    ['-0', 'mm', 0],
  ] as const)('%s in %s is %s mm', (text, unit, mm) => {
    expect(parsePaperMm(text, unit)).toEqual({ ok: true, value: mm });
  });

  test.each([
    ['', 'not-a-number'],
    ['wide', 'not-a-number'],
    ['1.2.3', 'not-a-number'],
    ['1/0', 'not-a-number'],
    ['3 ft', 'unit-missing'],
  ])('“%s” is refused', (text, code) => {
    const read = parsePaperMm(text, 'mm');
    expect(read.ok ? 'read' : read.problem.code).toBe(code);
  });

  test('law: what is said is read as the same length, to a hundredth of a mm', () => {
    const length = fc.integer({ min: -1_000_000, max: 20_000_000 }).map((parts) => parts / 10_000);
    void fc.assert(
      fc.property(length, fc.constantFrom('mm' as const, 'inch' as const), (mm, unit) => {
        const read = parsePaperMm(sayPaperMm(mm, unit), unit);
        expect(read.ok ? Math.abs(read.value - mm) : 1).toBeLessThanOrEqual(0.00501);
      }),
    );
  });
});

describe('the site’s own paper', () => {
  test('own ones stand beside ours, and one that cannot be laid out does not', () => {
    expect(stocksOf(PAPER).map(({ id }) => id)).toEqual([...STOCKS.map(({ id }) => id), OWN.stock]);
    expect(printersOf(PAPER).map(({ id }) => id)).toEqual([...PRINTERS.map(({ id }) => id), DESK.printer]);
  });

  test.each([
    [OWN.stock, 'sound'],
    ['a4-85x54', 'sound'],
    ['own-broken', 'stock-overlaps'],
    ['own-gone', 'stock-unknown'],
  ])('%s is %s', (id, code) => {
    const found = findStock(id, PAPER);
    expect(found.ok ? 'sound' : found.problem.code).toBe(code);
  });

  test('an own printer is found with its dots, and another is refused with the known ones', () => {
    expect(findPrinter(DESK.printer, PAPER)).toEqual({
      ok: true,
      value: { id: DESK.printer, name: 'Desk', dotsPerMm: 8, insetDots: 0.25 },
    });
    const refused = findPrinter('own-gone', PAPER);
    expect(refused.ok ? '' : refused.problem.remedy).toContain(DESK.printer);
  });

  test('a calibration belongs to one printer on one stock', () => {
    const known = { offsetXMm: 0.8, offsetYMm: -0.3, scaleX: 1.002, scaleY: 1 };
    expect(calibrationFor(PAPER, DESK.printer, 'a4-85x54')).toEqual(known);
    expect(calibrationFor(PAPER, DESK.printer, 'a4-70x52')).toBeUndefined();
    expect(calibrationFor(PAPER, OFFICE_600.id, 'a4-85x54')).toBeUndefined();
  });

  test.each([
    [{ pitchXMm: 60 }, 'pitchXMm'],
    [{ pitchYMm: 20 }, 'pitchYMm'],
    [{ firstXMm: 20 }, 'firstXMm'],
    [{ firstYMm: 60 }, 'firstYMm'],
  ])('what is wrong with %o stands at its line', (change, path) => {
    const checked = checkStock({ ...A4, ...change });
    expect(checked.ok ? 'sound' : checked.problem.path).toBe(path);
  });

  test('lengths in a refusal are said as they were typed', () => {
    const checked = checkStock({ ...A4, pitchXMm: 50.8 }, (mm) => `${sayPaperMm(mm, 'inch')} in`);
    expect(checked.ok ? '' : checked.problem.message).toContain('(2.5 in wide, pitch 2 in)');
  });

  // PRINT-CARD-ROOM: which of ours have the room for a card with every line.
  test('PRINT-ROOM: cards go on the labels that have the room, and on no smaller one', () => {
    const ids = STOCKS.filter(takesCards).map(({ id }) => id);
    const sheets = ['a4-85x54', 'a4-105x148', 'a4-70x52', 'letter-88.9x50.8', 'letter-101.6x50.8'];
    expect(ids).toEqual([...sheets, 'card-85x54', 'card-70x52', 'roll-100x150', 'roll-100x100']);
    expect(takesCards({ ...ours('card-85x54'), printerInsetMm: 12 })).toBe(false);
  });
});

describe('PRINT-CALIBRATE: what is measured on a calibration page', () => {
  const rulers = rulersOf(A4);

  test.each([
    ['in its place', [0, 0, 100, 100], { offsetXMm: 0, offsetYMm: 0, scaleX: 1, scaleY: 1 }],
    ['right and up', [0.8, -0.3, 100, 100], { offsetXMm: 0.8, offsetYMm: -0.3, scaleX: 1, scaleY: 1 }],
    ['too long and too short', [0, 0, 100.2, 99.5], { offsetXMm: 0, offsetYMm: 0, scaleX: 1.002, scaleY: 0.995 }],
    ['at the most', [10, -10, 110, 90], { offsetXMm: 10, offsetYMm: -10, scaleX: 1.1, scaleY: 0.9 }],
  ])('%s makes its calibration', (_what, [rightMm = 0, downMm = 0, acrossMm = 0, alongMm = 0], calibration) => {
    expect(rulers).toEqual({ acrossMm: 100, alongMm: 100 });
    expect(calibrationFrom({ rightMm, downMm, acrossMm, alongMm }, rulers)).toEqual({ ok: true, value: calibration });
  });

  test.each([
    ['30 mm right', [30, 0, 100, 100], 'rightMm'],
    ['11 mm up', [0, -11, 100, 100], 'downMm'],
    ['no number', [Number.NaN, 0, 100, 100], 'rightMm'],
    ['another unit across', [0, 0, 3.94, 100], 'acrossMm'],
    ['a fitted page down', [0, 0, 100, 88], 'alongMm'],
  ])('%s is refused at its figure', (_what, [rightMm = 0, downMm = 0, acrossMm = 0, alongMm = 0], path) => {
    const made = calibrationFrom({ rightMm, downMm, acrossMm, alongMm }, rulers);
    expect(made.ok ? 'made' : [made.problem.code, made.problem.path]).toEqual(['calibration-wrong', path]);
  });

  test('a paper too low for a ruler is asked for none', () => {
    expect(rulersOf(ours('roll-40x15'))).toEqual({ acrossMm: 30, alongMm: null });
    const made = calibrationFrom({ rightMm: 1, downMm: 0, acrossMm: 30, alongMm: null }, rulersOf(ours('roll-40x15')));
    expect(made).toEqual({ ok: true, value: { offsetXMm: 1, offsetYMm: 0, scaleX: 1, scaleY: 1 } });
  });

  test('what would leave the page is refused', () => {
    const full = ours('a4-70x50.8');
    const moved = (offsetXMm: number) => placing(full, OFFICE_600, { offsetXMm, offsetYMm: 0, scaleX: 1, scaleY: 1 });
    expect(checkCalibration(full, moved(-4)).ok).toBe(true);
    const far = checkCalibration(full, moved(-10));
    expect(far.ok ? '' : far.problem.code).toBe('calibration-too-far');
  });

  // PRINT-CALIBRATE: a printer that puts x at a + (x - a) × scale + offset, a being the cross A.
  test('law: on the printer that was measured everything comes out in its place, to half a step of dots', () => {
    const off = fc.integer({ min: -500, max: 500 }).map((hundredths) => hundredths / 100);
    const scale = fc.integer({ min: 9800, max: 10200 }).map((parts) => parts / 10_000);
    const at = fc.integer({ min: 0, max: 2970 }).map((tenths) => tenths / 10);
    void fc.assert(
      fc.property(fc.constantFrom(...PRINTERS), off, off, scale, scale, at, at, (printer, ox, oy, sx, sy, x, y) => {
        const [ax, ay] = crossA(A4);
        const place = placing(A4, printer, { offsetXMm: ox, offsetYMm: oy, scaleX: sx, scaleY: sy });
        const [drawnX, drawnY] = place.at(x, y);
        const step = (printer.dotsPerMm >= 20 ? 4 : 1) / printer.dotsPerMm;
        expect(Math.abs(ax + (drawnX - ax) * sx + ox - x)).toBeLessThanOrEqual((step / 2) * sx + 1e-9);
        expect(Math.abs(ay + (drawnY - ay) * sy + oy - y)).toBeLessThanOrEqual((step / 2) * sy + 1e-9);
        expect(place.acrossMm(100) * sx).toBeCloseTo(100, 9);
      }),
    );
  });
});

describe('the code of a calibration page', () => {
  const ids = [...STOCKS.map(({ id }) => id), OWN.stock];

  test.each(ids)('on %s it names the two, for every printer of ours', (stock) => {
    for (const { id: printer } of PRINTERS)
      expect(readCalibrationPayload(calibrationPayload({ stock, printer }))).toEqual({ stock, printer });
  });

  test.each(['', 'CALIBRATE:', 'CALIBRATE:A4', 'CALIBRATE:A4/', 'CALIBRATE:A 4/P', 'STAMP:A4/P', 'CALIBRATE:A/B/C'])(
    '“%s” names none',
    (text) => {
      expect(readCalibrationPayload(text)).toBeNull();
    },
  );

  test.each([
    [A4, OFFICE_600],
    [ours('roll-57x32'), THERMAL_203],
  ])('it is read off the printed page of $id', async (stock, printer) => {
    const made = await printCalibration({ stock, printer, printedOn: DAY, fonts });
    if (!made.ok) throw new RangeError(made.problem.message);
    const codes = await withFile(made.value.pdf, (path) => readPage(path, 1, 300));
    expect(codes.map(({ text }) => readCalibrationPayload(text))).toEqual([{ stock: stock.id, printer: printer.id }]);
  });
});
