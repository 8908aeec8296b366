import { describe, expect, test } from 'vitest';
import {
  type BoxMm,
  drawPieces,
  type Flip,
  labelBox,
  labelsPerPage,
  layPieces,
  mirrored,
  openTypeface,
  type PieceJob,
  printPieces,
  type RuleMark,
  recording,
  STOCKS,
  type Stock,
  stockById,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { CROWDED, cardOf, onDay, USUAL } from './cards.ts';

const fonts = await loadFonts();
const measure = openTypeface(fonts);
const printedOn = onDay('2026-11-26');

function ours(id: string): Stock {
  const found = stockById(id);
  if (!found.ok) throw new RangeError(found.problem.message);
  return found.value;
}

/** Every third card needs a second face on these labels. */
const more = Array.from({ length: 10 }, (_none, n) => ['pairings', 3, false, `Pairing ${n}: long words`] as const);
const pieces = Array.from({ length: 23 }, (_none, n) => ({
  card: { content: cardOf(n, n % 3 === 0 ? [...CROWDED, ...more] : USUAL) },
}));
const HIGH = ours('a4-85x54');
/** The same kind of sheet, wider than high. */
const WIDE: Stock = {
  ...{ id: 'own-wide', name: 'wide', pageWidthMm: 297, pageHeightMm: 210, labelWidthMm: 85, labelHeightMm: 54 },
  ...{ columns: 3, rows: 3, firstXMm: 10, firstYMm: 17, pitchXMm: 90, pitchYMm: 58, printerInsetMm: 5 },
};
const job = (stock: Stock, rest: Partial<PieceJob> = {}): PieceJob => ({ stock, pieces, printedOn, ...rest });
const made = async (of: PieceJob) => (await printPieces({ ...of, fonts })).manifest;

describe('two-sided', () => {
  /** The place on the sheet, seen from its front, of what stands in a box of its back. */
  const throughSheet = ([x, y, width, height]: BoxMm, stock: Stock, hinge: 'upright' | 'level'): BoxMm =>
    hinge === 'upright'
      ? [stock.pageWidthMm - x - width, y, width, height]
      : [x, stock.pageHeightMm - y - height, width, height];

  // A sheet that is turned like a page of a book has an upright hinge, one that is turned like a calendar's a level one.
  test.each([
    ['high', HIGH, 'long', 'upright'],
    ['high', HIGH, 'short', 'level'],
    ['wide', WIDE, 'long', 'level'],
    ['wide', WIDE, 'short', 'upright'],
  ] as const)('on a %s sheet backs land behind their fronts over the %s edge', async (_shape, stock, flip, hinge) => {
    const { pieces: printed, pages } = await made(job(stock, { flip }));
    const backs = printed.filter(({ back }) => back);
    expect(backs.length).toBeGreaterThan(5);
    for (const back of backs) {
      const front = printed.find(({ id, back: isBack }) => id === back.id && !isBack);
      expect([back.page % 2, front?.page]).toEqual([0, back.page - 1]);
      for (const [at, mm] of throughSheet(back.boxMm, stock, hinge).entries())
        expect(mm).toBeCloseTo(front?.boxMm[at] ?? Number.NaN, 3);
    }
    expect(pages).toHaveLength(2 * Math.ceil(pieces.length / labelsPerPage(stock)));
  });

  test.each(['long', 'short'] as const)('turned over the %s edge twice, every label is where it was', (flip: Flip) => {
    for (const stock of [...STOCKS, WIDE])
      for (let label = 1; label <= labelsPerPage(stock); label++) {
        const box = labelBox(stock, label);
        for (const [at, mm] of mirrored(mirrored(box, stock, flip), stock, flip).entries())
          expect(mm).toBeCloseTo(box[at] ?? Number.NaN, 2);
      }
  });

  test('without it a second face has a label of its own, and every page is a front', async () => {
    const { pieces: printed } = await made(job(HIGH));
    const spots = printed.map(({ page, boxMm }) => `${page} ${boxMm}`);
    expect(new Set(spots).size).toBe(printed.length);
    expect(printed.some(({ page, back }) => back && page % 2 === 1)).toBe(true);
  });
});

describe('PRINT-CUT: cut marks', () => {
  const rules = async (stock: Stock, cutMarks: boolean): Promise<readonly RuleMark[]> => {
    const paper = recording();
    const bare = job(stock, { cutMarks, pieces: [] });
    drawPieces(await layPieces(bare, measure), bare, measure, paper);
    return (paper.pages[0]?.marks ?? []).filter((mark): mark is RuleMark => mark.kind === 'rule');
  };
  const keyOf = ({ xMm, yMm, widthMm, heightMm }: RuleMark) => [xMm, yMm, widthMm, heightMm].join();
  const added = async (stock: Stock) => {
    const without = new Set((await rules(stock, false)).map(keyOf));
    return (await rules(stock, true)).filter((mark) => !without.has(keyOf(mark)));
  };

  test.each([...STOCKS, WIDE].map((stock) => [stock.id, stock] as const))(
    'on %s they touch no label and stay where the printer reaches',
    async (_id, stock) => {
      const SLACK = 0.2;
      for (const { xMm, yMm, widthMm, heightMm } of await added(stock)) {
        const inset = stock.printerInsetMm - SLACK;
        expect(Math.min(xMm, yMm)).toBeGreaterThanOrEqual(
          Math.min(inset, stock.firstXMm - SLACK, stock.firstYMm - SLACK),
        );
        for (let label = 1; label <= labelsPerPage(stock); label++) {
          const [left, top, width, height] = labelBox(stock, label);
          const isApart =
            xMm + widthMm <= left + SLACK ||
            left + width <= xMm + SLACK ||
            yMm + heightMm <= top + SLACK ||
            top + height <= yMm + SLACK;
          expect(isApart).toBe(true);
        }
      }
    },
  );

  test('at every line to cut along there is one in each margin that is wide enough', async () => {
    const upright = (await added(HIGH)).filter(({ widthMm, heightMm }) => heightMm > widthMm);
    const lines = [15, 100, 110, 195];
    for (const x of lines) {
      const here = upright.filter(({ xMm, widthMm }) => Math.abs(xMm + widthMm / 2 - x) < 0.15);
      expect([x, here.length]).toEqual([x, 2]);
    }
    expect(upright).toHaveLength(2 * lines.length);
  });
});

describe('only certain pages', () => {
  test.each([
    ['walk', undefined],
    ['stack', undefined],
    ['walk', 'long'],
  ] as const)('they stand as in the whole run (%s, flip %s)', async (order, flip) => {
    const whole = await made(job(HIGH, { order, flip }));
    const part = await made(job(HIGH, { order, flip, pages: [2, 3] }));
    const wanted = whole.pieces.filter(({ page }) => page === 2 || page === 3);
    expect(wanted.length).toBeGreaterThan(3);
    expect(part.pieces).toEqual(wanted.map((piece) => ({ ...piece, page: piece.page - 1 })));
    expect([part.pages.length, part.part]).toEqual([2, { from: 2, of: whole.pages.length }]);
  });

  test('pages that the run does not have are named, and nothing is on the paper', async () => {
    const { pieces: printed, left } = await made(job(HIGH, { pages: [8, 9] }));
    expect(printed).toEqual([]);
    expect(left.at(-1)?.why).toMatch(/The run has no page 8–9: its last one is \d/);
  });
});
