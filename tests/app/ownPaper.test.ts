import { describe, expect, it } from 'vitest';
import { OFFICE_600, STOCKS, type Stock } from '../../print/index.ts';
import {
  calibrationIn,
  type MeasuredText,
  measuredFields,
  sayCalibration,
} from '../../src/app/press/own/calibrationDraft.ts';
import { ownId } from '../../src/app/press/own/ownId.ts';
import { type PrinterText, printerFrom, sayPrinter, textOfPrinter } from '../../src/app/press/own/printerDraft.ts';
import { startOf, textOfStart } from '../../src/app/press/own/starts.ts';
import { inUnit, readLines, type StockText, stockFrom, textOfStock } from '../../src/app/press/own/stockDraft.ts';
import { stockPicture } from '../../src/app/press/own/stockPicture.ts';
import { readPages, sayPages } from '../../src/app/press/pages.ts';
import { jobPaper, laidPaper, nextFirst, rememberedPaper, rememberPaper } from '../../src/app/press/paper.ts';
import { NO_PAPER, type PaperRecord, parseEvent } from '../../src/core/index.ts';
import { day } from '../core/log.ts';

const INCHES: StockText = {
  ...{ name: 'Freezer', unit: 'inch', isRoll: false, pageWidthMm: '8 1/2', pageHeightMm: '11', labelWidthMm: '2 5/8' },
  ...{ labelHeightMm: '1', columns: '3', rows: '10', firstXMm: '5/32', firstYMm: '.5', pitchXMm: '2.78125' },
  ...{ pitchYMm: '1', printerInsetMm: '4 mm' },
};
const SHEET = STOCKS.find(({ id }) => id === 'letter-66.67x25.4') as Stock;
const faults = (more: Partial<StockText>) =>
  stockFrom({ ...INCHES, ...more }, 'own-x').problems.map(({ path, code }) => `${path} ${code}`);

describe('a stock as it is typed', () => {
  it('in inches and fractions is the sheet that the lists of label makers have in mm', () => {
    const { stock } = stockFrom(INCHES, 'own-x');
    expect(stock).toMatchObject({ pageWidthMm: 215.9, labelWidthMm: 66.675, pitchXMm: 70.6438, printerInsetMm: 4 });
    for (const field of ['pageHeightMm', 'labelWidthMm', 'firstXMm', 'firstYMm', 'pitchXMm', 'pitchYMm'] as const)
      expect(Math.abs((stock?.[field] ?? 0) - SHEET[field])).toBeLessThanOrEqual(0.011);
  });

  it.each([
    [{}, []],
    [{ name: '  ' }, ['name text-missing']],
    [{ labelWidthMm: '' }, ['labelWidthMm text-missing']],
    [{ labelWidthMm: 'wide' }, ['labelWidthMm not-a-number']],
    [{ labelWidthMm: '3 ft' }, ['labelWidthMm unit-missing']],
    [{ labelWidthMm: '0' }, ['labelWidthMm paper-length']],
    [{ firstXMm: '-1' }, ['firstXMm paper-length']],
    [{ printerInsetMm: '3' }, ['printerInsetMm paper-length']],
    [{ pageHeightMm: '90' }, ['pageHeightMm paper-length']],
    [{ columns: '0' }, ['columns paper-count']],
    [{ columns: 'two' }, ['columns paper-count']],
    [{ rows: '2.5' }, ['rows paper-count']],
    [{ rows: '101' }, ['rows paper-count']],
    [{ pitchXMm: '2.5' }, ['pitchXMm stock-overlaps']],
    [{ pitchYMm: '.9' }, ['pitchYMm stock-overlaps']],
    [{ firstXMm: '1' }, ['firstXMm stock-off-page']],
    [{ rows: '11' }, ['firstYMm stock-off-page']],
    [{ name: '', columns: 'x', pitchYMm: '' }, ['name text-missing', 'columns paper-count', 'pitchYMm text-missing']],
  ])('%o has the faults %o, each at its line', (more, expected) => {
    expect(faults(more)).toEqual(expected);
    expect(stockFrom({ ...INCHES, ...more }, 'own-x').stock === null).toBe(expected.length > 0);
  });

  it('an overlap is said in the unit that was typed, with the name', () => {
    const [problem] = stockFrom({ ...INCHES, pitchXMm: '2.5' }, 'own-x').problems;
    expect(problem?.message).toBe('The labels of stock Freezer overlap (2.625 in wide, pitch 2.5 in).');
  });

  it('asks for no step where there is one column or one row, and for a label only on a roll', () => {
    const one = stockFrom({ ...INCHES, columns: '1', pitchXMm: 'x' }, 'own-x').stock;
    expect(one).toMatchObject({ columns: 1, pitchXMm: 66.675 });
    const roll = stockFrom(
      { ...INCHES, isRoll: true, pageWidthMm: '', columns: '', printerInsetMm: '0' },
      'own-x',
    ).stock;
    expect(roll).toMatchObject({ pageWidthMm: 66.675, pageHeightMm: 25.4, columns: 1, rows: 1, firstXMm: 0 });
  });

  it('keeps what cannot be read when the unit changes, and converts the rest', () => {
    const metric = inUnit({ ...INCHES, labelHeightMm: 'one' }, 'mm');
    expect(metric).toMatchObject({ unit: 'mm', labelWidthMm: '66.68', labelHeightMm: 'one', printerInsetMm: '4' });
    expect(inUnit(inUnit(INCHES, 'mm'), 'inch')).toMatchObject({ pageWidthMm: '8.5', labelWidthMm: '2.6252' });
  });

  it.each(STOCKS.map((stock) => [stock.id, stock] as const))('a copy of %s begins as it is', (_id, stock) => {
    const { stock: read, problems } = stockFrom(textOfStock(stock, 'mm', 'Copy'), stock.id);
    expect(problems).toEqual([]);
    expect(read).toEqual({ ...stock, name: 'Copy' });
  });

  it('begins with what the address asks for, and with an empty sheet where that is gone', () => {
    expect([startOf({}, []), startOf({ id: 'own-gone' }, []), startOf({ from: 'a4-85x54' }, [])]).toEqual([
      ...['sheet', 'sheet', 'copy a4-85x54'],
    ]);
    expect(textOfStart('own-gone', [])).toEqual(textOfStart('sheet', []));
    expect(textOfStart('copy letter-88.9x50.8', [])).toMatchObject({ unit: 'inch', labelWidthMm: '3.5', name: '' });
  });
});

describe('the drawing of a stock', () => {
  const drawn = (more: Partial<StockText>) => {
    const picture = stockPicture(readLines({ ...INCHES, ...more }));
    return picture && [picture.on.length, picture.off.length, picture.overlaps.length];
  };
  it.each([
    ['a sound sheet', {}, [30, 0, 0]],
    ['labels that lie on the next ones across', { pitchXMm: '2.5' }, [30, 0, 20]],
    ['labels that lie on the next ones down', { pitchYMm: '.9' }, [30, 0, 27]],
    ['a column that leaves the page', { firstXMm: '.6' }, [20, 10, 0]],
    ['no label yet', { labelWidthMm: '' }, [0, 0, 0]],
    ['one label while the columns are typed', { columns: '', rows: '' }, [1, 0, 0]],
  ])('shows %s', (_what, more, counts) => {
    expect(drawn(more)).toEqual(counts);
  });
  it('waits for a page', () => {
    expect(drawn({ pageWidthMm: 'x' })).toBeNull();
  });
  it('stays near the page, however far a label leaves it', () => {
    const view = stockPicture(readLines({ ...INCHES, firstXMm: '70' }))?.viewMm ?? [0, 0, 9999, 0];
    expect(view[2]).toBeLessThan(215.9 * 1.6);
  });
});

describe('the id of an own thing', () => {
  it.each([
    ['Freezer', '67x25', [], 'own-freezer-67x25'],
    ['  Ångström & Söhne, the long one ', '85x54', [], 'own-angstrom-sohne-th-85x54'],
    ['日本', '203', [], 'own-203'],
    ['Desk', '203', ['own-desk-203'], 'own-desk-203-2'],
    ['Desk', '203', ['own-desk-203', 'own-desk-203-2'], 'own-desk-203-3'],
  ])('of %s, %s, beside %o is %s', (name, size, taken, id) => {
    expect(ownId(name, size, taken)).toBe(id);
    const read = parseEvent({
      ...{ v: 1, id: '0192a4c4-8f00-7000-8000-000000000001', kind: 'own-printer-set', at: '2026-03-01T12:00:00Z' },
      ...{ day: '2026-03-01', subjects: [], keeper: 'Ada', device: 1, seq: 1, clock: [1, 0] },
      payload: { printer: id, name: 'P', dotsPerMm: 8, insetDots: 0 },
    });
    expect(read.ok).toBe(true);
  });
});

describe('a printer as it is typed', () => {
  const TEXT: PrinterText = { name: 'Desk', dots: '203', per: 'inch', insetDots: '0.25' };
  const of = (more: Partial<PrinterText>) => printerFrom({ ...TEXT, ...more }, 'own-p');

  it.each([
    ['203', 'inch', 203 / 25.4],
    ['203.2', 'inch', 8],
    ['304,8', 'inch', 12],
    ['8', 'mm', 8],
  ] as const)('%s dots per %s are %s per mm', (dots, per, dotsPerMm) => {
    expect(of({ dots, per }).printer?.dotsPerMm).toBeCloseTo(dotsPerMm, 12);
  });

  it.each([
    [{ dots: '10' }, 'dots printer-dots', '10 dots per inch'],
    [{ dots: '9000' }, 'dots printer-dots', '9000 dots per inch'],
    [{ dots: '3', per: 'mm' as const }, 'dots printer-dots', '3 dots per mm'],
    [{ dots: 'many' }, 'dots not-a-number', 'many'],
    [{ dots: '' }, 'dots text-missing', 'number of dots'],
    [{ insetDots: '2' }, 'insetDots printer-inset', '2 dots'],
    [{ insetDots: '-1' }, 'insetDots not-a-number', '-1'],
    [{ name: '' }, 'name text-missing', 'name'],
  ])('%o is refused at its line', (more, expected, words) => {
    const { printer, problems } = of(more);
    expect([printer, problems.map(({ path, code }) => `${path} ${code}`)]).toEqual([null, [expected]]);
    expect(problems[0]?.message).toContain(words);
  });

  it('says what its dots mean, and is shown as it was typed', () => {
    const { printer } = of({ dots: '203.2' });
    if (printer === null) throw new RangeError('refused');
    expect(sayPrinter(printer)).toBe(
      'One dot is 0.125 mm. A tub card’s code has 6 dots to a square and is 18.75 mm wide.',
    );
    expect(textOfPrinter(printer)).toEqual({ ...TEXT, dots: '203.2' });
  });
});

describe('the figures off a calibration page', () => {
  const [stock] = STOCKS as readonly [Stock];
  const GIVEN: MeasuredText = { rightMm: '0.8', downMm: '-0,3', acrossMm: '100.2', alongMm: '100' };
  const of = (more: Partial<MeasuredText>) => calibrationIn({ ...GIVEN, ...more }, stock, OFFICE_600);

  it('make a calibration', () => {
    expect(of({})).toEqual({
      calibration: { offsetXMm: 0.8, offsetYMm: -0.3, scaleX: 1.002, scaleY: 1 },
      problems: [],
    });
  });

  it.each([
    [{ rightMm: '30' }, ['rightMm calibration-wrong']],
    [{ downMm: 'low' }, ['downMm not-a-number']],
    [{ acrossMm: '' }, ['acrossMm text-missing']],
    [{ alongMm: '94' }, []],
    [{ alongMm: '80' }, ['alongMm calibration-wrong']],
    [{ rightMm: '', downMm: '' }, ['rightMm text-missing', 'downMm text-missing']],
  ])('%o has the faults %o, each at its figure', (more, expected) => {
    expect(of(more).problems.map(({ path, code }) => `${path} ${code}`)).toEqual(expected);
  });

  it('are asked for as far as the paper has rulers', () => {
    const low = STOCKS.find(({ id }) => id === 'roll-40x15') as Stock;
    expect(measuredFields(stock)).toEqual(['rightMm', 'downMm', 'acrossMm', 'alongMm']);
    expect(measuredFields(low)).toEqual(['rightMm', 'downMm', 'acrossMm']);
  });

  const CLOSER = 'labels side by side are set that much closer together; what is on them keeps its size.';
  const APART = 'labels above each other are set that much further apart; what is on them keeps its size.';
  it.each([
    [
      [0, 0, 1, 1],
      ['The page came out in its place: nothing moves.', 'Its lengths are right.'],
    ],
    [
      [0.8, -0.3, 1, 1],
      [
        'It came out 0.8 mm too far right and 0.3 mm too high: everything moves 0.8 mm left and 0.3 mm down.',
        'Its lengths are right.',
      ],
    ],
    [
      [-1, 0.5, 1.002, 0.998],
      [
        'It came out 1 mm too far left and 0.5 mm too low: everything moves 1 mm right and 0.5 mm up.',
        `It came out 0.2 % larger across: ${CLOSER}`,
        `It came out 0.2 % smaller down: ${APART}`,
      ],
    ],
  ])('%o are said in words', ([offsetXMm = 0, offsetYMm = 0, scaleX = 1, scaleY = 1], words) => {
    expect(sayCalibration({ offsetXMm, offsetYMm, scaleX, scaleY })).toEqual(words);
  });
});

describe('pages of a run as typed', () => {
  it.each([
    ['', null],
    [' 3-7 ', [3, 7]],
    ['3 – 7', [3, 7]],
    ['4', [4, 4]],
    ['7013-10000', [7013, 10_000]],
    ['7-3', 'refused'],
    ['0', 'refused'],
    ['all', 'refused'],
  ])('“%s” is %o', (text, pages) => {
    const read = readPages(text);
    expect(read.ok ? read.value : 'refused').toEqual(pages);
  });
  it('are said as they are typed', () => {
    expect([sayPages(null), sayPages([4, 4]), sayPages([3, 7])]).toEqual(['', '4', '3-7']);
  });
});

describe('the paper that a device remembers', () => {
  const shelf = (start: Readonly<Record<string, string>> = {}) => {
    const kept = new Map(Object.entries(start));
    return {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
    } as unknown as Storage;
  };
  const SITE: PaperRecord = {
    ...NO_PAPER,
    stocks: [
      {
        ...{ stock: 'own-cards', name: 'Cards', typedIn: 'mm', pageWidthMm: 100, pageHeightMm: 60, labelWidthMm: 100 },
        ...{ labelHeightMm: 60, columns: 1, rows: 1, firstXMm: 0, firstYMm: 0, pitchXMm: 100, pitchYMm: 60 },
        printerInsetMm: 1.5,
      },
    ],
    printers: [{ printer: 'own-desk', name: 'Desk', dotsPerMm: 8, insetDots: 0.25 }],
    calibrations: [
      {
        ...{ printer: 'own-desk', stock: 'own-cards', offsetXMm: 1, offsetYMm: 0, scaleX: 1, scaleY: 1 },
        day: day('2026-11-26'),
      },
    ],
  };
  const KEPT = {
    ...{ stock: 'own-cards', printer: 'own-desk', order: 'stack' as const, first: 1, flip: 'short' as const },
    cutMarks: true,
  };

  it('is the same again, by its kind', () => {
    const storage = shelf();
    rememberPaper('card', KEPT, storage);
    expect(rememberedPaper('card', storage)).toEqual(KEPT);
    expect(rememberedPaper('place', storage).stock).toBe('a4-63.5x38.1');
  });

  it('is read from what earlier versions kept', () => {
    const before = rememberedPaper('card', shelf({ press: 'a4-70x52 thermal-203 walk 4' }));
    expect(before).toMatchObject({ stock: 'a4-70x52', printer: 'thermal-203', first: 4, flip: null, cutMarks: false });
  });

  it('is looked up in what the site has now, with its calibration', () => {
    const laid = laidPaper('card', KEPT, [2, 3], SITE);
    expect([laid.stock.name, laid.printer.name, laid.calibration?.offsetXMm]).toEqual(['Cards', 'Desk', 1]);
    expect(jobPaper(laid)).toMatchObject({ flip: 'short', cutMarks: true, pages: [2, 3], order: 'stack' });
    const gone = laidPaper('card', { ...KEPT, first: 40 }, null, NO_PAPER);
    expect([gone.stock.id, gone.printer.id, gone.calibration, gone.first]).toEqual([
      ...['a4-85x54', 'office-600', undefined, 1],
    ]);
  });

  it.each([
    ['the next label', {}, 3, 6],
    ['a new sheet after a full one', {}, 8, 1],
    ['after pages from the first', { pages: [1, 2] as const }, 18, 1],
    ['after pages in the middle, which begin at a whole sheet', { pages: [3, 3] as const }, 7, 8],
    ['a new sheet after a two-sided run, whose faces share labels', { flip: 'long' as const }, 3, 1],
  ])('begins next with %s', (_what, more, pieces, first) => {
    const laid = laidPaper('card', { ...KEPT, stock: 'a4-85x54', flip: null, first: 3 }, null, SITE);
    expect(nextFirst({ ...laid, ...more }, pieces)).toBe(first);
  });
});
