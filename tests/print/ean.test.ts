import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BarMark,
  EAN_MODULES,
  EAN_QUIET,
  eanBars,
  eanMarks,
  eanModules,
  eanSize,
  OFFICE_600,
  openTypeface,
  PRINTERS,
  type PrinterProfile,
  pdfDrawing,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { readGtin } from '../../src/core/index.ts';
import { onDay } from './cards.ts';
import { cairoRaster, RENDERERS } from './dots.ts';
import { type Raster, rastersOf, readRaster, withFile, wordsOf } from './paper.ts';

const measure = openTypeface(await loadFonts());
/** Source: GS1's pages on the check digit, through the project's notes. */
const PUBLISHED = ['6291041500213', '7300011000017', '8904000210037', '0036000291452'] as const;
/** Numbers of our own, with every digit on either side, and each first digit, which only the left half's sets tell. */
const ALL = [
  ...PUBLISHED,
  ...Array.from({ length: 10 }, (_none, first) =>
    whole(`${first}04${String(first * 123_456_789 + 987_654_321).slice(-9)}`),
  ),
];

function whole(body: string): string {
  const read = readGtin(body);
  if (!read.ok) throw new RangeError(body);
  return read.value.full.padStart(13, '0');
}

interface Drawn {
  readonly pdf: Uint8Array;
  readonly bars: readonly BarMark[];
}

/** Bar codes one below the other on one page, from the place of each block on. */
async function drawn(
  digits: readonly string[],
  printer: PrinterProfile,
  moduleMm = eanModules(printer)[0] ?? 0.33,
): Promise<Drawn> {
  const drawing = pdfDrawing(measure);
  const size = eanSize(moduleMm, 18, measure);
  const [widthMm, heightMm] = [80, digits.length * 30].map(
    (mm) => Math.ceil(mm * printer.dotsPerMm) / printer.dotsPerMm,
  ) as [number, number];
  drawing.beginPage({ widthMm, heightMm });
  const marks = digits.map((one, at) => eanMarks(one, size, { xMm: 3.3, yMm: at * 30 + 2.2 }, { printer, measure }));
  for (const block of marks) drawing.put(block, 0, 0);
  drawing.endPage();
  const pdf = await drawing.finish({ title: 'bars', on: onDay('2026-11-25'), content: digits.join() });
  return { pdf, bars: marks.flat().flatMap((mark) => (mark.kind === 'bar' ? [mark] : [])) };
}

describe('the bars', () => {
  test('are 30 and 95 modules wide, with the guards at both ends and in the middle', () => {
    for (const digits of ALL) {
      const bars = eanBars(digits);
      expect(bars).toHaveLength(30);
      expect(bars.filter(({ guard }) => guard).map(({ at }) => at)).toEqual([0, 2, 46, 48, 92, 94]);
      const last = bars.at(-1);
      expect((last?.at ?? 0) + (last?.width ?? 0)).toBe(EAN_MODULES);
    }
  });

  test('law: no bar or space is wider than four modules', () => {
    void fc.assert(
      fc.property(fc.stringMatching(/^\d{13}$/), (digits) => {
        const bars = eanBars(digits);
        for (const [at, bar] of bars.entries()) {
          const next = bars[at + 1];
          expect(bar.width).toBeLessThanOrEqual(4);
          if (next !== undefined) expect(next.at - bar.at - bar.width).toBeLessThanOrEqual(4);
        }
      }),
    );
  });

  test('of anything but thirteen digits are a bug', () => {
    expect(() => eanBars('123')).toThrow(RangeError);
  });
});

describe('sizes', () => {
  // Source: GS1 General Specifications through the project's notes: 37.29 mm wide at 0.33 mm, 80 to 200 %, rims of 11 and 7.
  test('are those of the specifications at 0.33 mm', () => {
    expect(eanSize(0.33, 22.85, measure).widthMm).toBeCloseTo(37.29, 2);
    expect(EAN_QUIET).toEqual({ left: 11, right: 7 });
  });

  test.each([
    ['office-600', 8, 0.339],
    ['thermal-203', 3, 0.375],
    ['thermal-8mm', 3, 0.375],
    ['thermal-300', 4, 0.339],
    ['thermal-12mm', 5, 0.417],
  ])('%s takes %i dots a module first, and none outside 80 to 200 %%', (id, dots, mm) => {
    const printer = PRINTERS.find((one) => one.id === id) ?? OFFICE_600;
    const modules = eanModules(printer);
    expect(Math.round((modules[0] ?? 0) * printer.dotsPerMm)).toBe(dots);
    expect(modules[0]).toBeCloseTo(mm, 3);
    for (const module of modules) {
      expect(module).toBeGreaterThanOrEqual(0.8 * 0.33 - 1e-9);
      expect(module).toBeLessThanOrEqual(2 * 0.33 + 1e-9);
    }
  });
});

describe.each(PRINTERS.map((printer) => [printer.id, printer] as const))('on paper, %s', (_id, printer) => {
  test('another program reads every number at 150 dots per inch, and its digits stand below', async () => {
    const { pdf } = await drawn(ALL, printer);
    await withFile(pdf, async (path) => {
      const [raster] = rastersOf(path, 150);
      const read = raster === undefined ? [] : await readRaster(raster, ['EAN13']);
      expect(read.map(({ text }) => text).sort()).toEqual([...ALL].sort());
      const words = wordsOf(path, 1).map(({ text }) => text);
      expect(words.sort()).toEqual(ALL.flatMap((one) => [one.slice(0, 1), one.slice(1, 7), one.slice(7)]).sort());
    });
  });
});

const THERMAL = PRINTERS.filter(({ insetDots }) => insetDots > 0);

describe.each(THERMAL.map((printer) => [printer.id, printer] as const))('bars for %s', (_id, printer) => {
  test.each(Object.entries(RENDERERS))('come out in %s with no dot too many or too few', async (_name, render) => {
    const { pdf, bars } = await drawn(PUBLISHED, printer);
    await withFile(pdf, (path) => {
      const [raster] = render(path, printer);
      for (const bar of bars) expect(raster && dotsOf(raster, bar)).toEqual(expectedDots(bar, printer));
    });
  });
});

test('a bar code at 100 % is as wide as drawn to a hundredth of a millimetre', async () => {
  const { pdf, bars } = await drawn(PUBLISHED.slice(0, 1), OFFICE_600, 0.33);
  const [bar] = bars;
  await withFile(pdf, (path) => {
    const raster = cairoRaster(path, 600);
    const row = Math.round(((bar?.yMm ?? 0) + 5) * raster.dotsPerMm) * raster.width;
    const dark = Array.from(raster.grey.subarray(row, row + raster.width), (grey) => 1 - grey / 255);
    const first = dark.findIndex((one) => one > 0.01);
    const last = dark.findLastIndex((one) => one > 0.01);
    const widthMm = (last - first + 1 - (1 - (dark[first] ?? 0)) - (1 - (dark[last] ?? 0))) / raster.dotsPerMm;
    expect(Math.abs(widthMm - EAN_MODULES * 0.33)).toBeLessThan(0.01);
  });
});

/** Dark and light dots across the middle of the bars, from a module left of them to a module right of them. */
function dotsOf({ grey, width, dotsPerMm }: Raster, bar: BarMark): string {
  const row = Math.round((bar.yMm + bar.heightMm / 2) * dotsPerMm) * width;
  const dots = (mm: number) => Math.round(mm * dotsPerMm);
  const [from, to] = [dots(bar.xMm - bar.moduleMm), dots(bar.xMm + (EAN_MODULES + 1) * bar.moduleMm)];
  return Array.from(grey.subarray(row + from, row + to), (value) => (value < 128 ? '#' : '.')).join('');
}

function expectedDots(bar: BarMark, { dotsPerMm }: PrinterProfile): string {
  const dots = Math.round(bar.moduleMm * dotsPerMm);
  const modules = Array.from({ length: EAN_MODULES + 2 }, () => '.');
  for (const { at, width } of eanBars(bar.digits)) modules.fill('#', at + 1, at + 1 + width);
  return modules.map((module) => module.repeat(dots)).join('');
}
