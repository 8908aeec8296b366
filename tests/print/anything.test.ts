import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BoxMm,
  checkStock,
  drawPieces,
  labelBox,
  labelsPerPage,
  layPieces,
  openTypeface,
  type PieceJob,
  PRINTERS,
  PT_MM,
  printPieces,
  recording,
  STOCKS,
  type Stock,
  type TextMark,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import type { CardContent, Forms, LabelContent } from '../../src/core/index.ts';
import { words } from './anyWords.ts';
import { CROWDED, cardOf, FLAGS, type LineRow, onDay, SPARSE, USUAL } from './cards.ts';

const fonts = await loadFonts();
const measure = openTypeface(fonts);
const printedOn = onDay('2026-11-25');

/** Stocks as people type them, and worse: overlapping, off the page, without margins, a stamp's size, a wall's, nonsense. */
const length = (most: number) =>
  fc.oneof(
    { weight: 9, arbitrary: fc.integer({ min: 1, max: most * 10 }).map((tenths) => tenths / 10) },
    { weight: 1, arbitrary: fc.constantFrom(0, -3, 0.01, Number.NaN, Number.POSITIVE_INFINITY, 1e9) },
  );
const typedStock: fc.Arbitrary<Stock> = fc.record({
  id: fc.constant('own-any'),
  name: fc.constant('any'),
  pageWidthMm: length(300),
  pageHeightMm: length(420),
  labelWidthMm: length(150),
  labelHeightMm: length(120),
  columns: fc.integer({ min: 0, max: 4 }),
  rows: fc.integer({ min: 0, max: 9 }),
  firstXMm: fc.oneof(fc.constant(0), length(20)),
  firstYMm: fc.oneof(fc.constant(0), length(20)),
  pitchXMm: length(150),
  pitchYMm: length(120),
  printerInsetMm: fc.constantFrom(0, 1.5, 5, 30),
});
/** Labels that fill their page, from the size of a stamp to that of a wall: these are sound. */
const fittedStock: fc.Arbitrary<Stock> = fc
  .record({
    columns: fc.integer({ min: 1, max: 4 }),
    rows: fc.integer({ min: 1, max: 8 }),
    width: fc.integer({ min: 8, max: 140 }),
    height: fc.integer({ min: 8, max: 110 }),
    gap: fc.constantFrom(0, 0, 2.5),
    margin: fc.constantFrom(0, 4, 12.7),
  })
  .map(({ columns, rows, width, height, gap, margin }) => ({
    ...{ id: 'own-fitted', name: 'fitted', columns, rows, labelWidthMm: width, labelHeightMm: height },
    ...{ firstXMm: margin, firstYMm: margin, pitchXMm: width + gap, pitchYMm: height + gap, printerInsetMm: 5 },
    pageWidthMm: 2 * margin + columns * (width + gap) - gap,
    pageHeightMm: 2 * margin + rows * (height + gap) - gap,
  }));
const anyStock = fc.oneof(
  { weight: 2, arbitrary: typedStock },
  { weight: 4, arbitrary: fittedStock },
  { weight: 4, arbitrary: fc.constantFrom<Stock>(...STOCKS) },
);

const forms = fc
  .record({ long: words(9), medium: words(4), short: words(2) })
  .chain((all) => fc.constantFrom(all, { long: all.short, medium: all.short, short: all.short }));
const SLOTS = [
  'name',
  'species',
  'traitCode',
  'traitWords',
  'dates',
  'weight',
  'feed',
  'due',
  'pairings',
  'place',
] as const;
const row = fc
  .record({ slot: fc.constantFrom(...SLOTS), rank: fc.integer({ min: 1, max: 4 }), strong: fc.boolean(), forms })
  .map(({ slot, rank, strong, forms: { long, medium, short } }): LineRow => [slot, rank, strong, long, medium, short]);
const anyCard = fc.oneof(
  fc.record({ rows: fc.array(row, { maxLength: 8 }), flags: fc.subarray([...FLAGS]) }),
  fc.constantFrom(...[SPARSE, USUAL, CROWDED].map((rows) => ({ rows, flags: FLAGS.slice(0, 2) }))),
);
const anyLabel = fc.record({
  kind: fc.constantFrom('place' as const, 'clutch' as const, 'egg' as const, 'pairing' as const, 'stamp' as const),
  lines: fc.array(
    fc.record({
      slot: fc.constantFrom('main' as const, 'id' as const, 'body' as const, 'small' as const),
      strong: fc.boolean(),
      forms,
    }),
    { minLength: 1, maxLength: 5 },
  ),
});
const anyJob = fc
  .record({
    stock: anyStock,
    printer: fc.constantFrom(...PRINTERS),
    cards: fc.array(anyCard, { maxLength: 4 }),
    labels: fc.array(anyLabel, { maxLength: 3 }),
    first: fc.constantFrom(undefined, 1, 2, 40),
    order: fc.constantFrom(undefined, 'stack' as const),
    flip: fc.constantFrom(undefined, undefined, 'long' as const, 'short' as const),
    cutMarks: fc.boolean(),
    host: fc.constantFrom(undefined, 'tubs.example'),
  })
  .map(({ cards, labels, ...paper }): PieceJob => {
    const contents: readonly CardContent[] = cards.map(({ rows, flags }, n) => cardOf(n, rows, flags));
    const others = labels.map(
      ({ kind, lines }, n): LabelContent => ({
        kind,
        id: `label-${n}`,
        called: `label ${n}`,
        code: { says: 'text', text: `STAMP:${n}` },
        lines: lines.map(({ forms: all, ...line }) => ({ ...line, ...all })),
        revision: 'abcd',
      }),
    );
    return {
      ...paper,
      printedOn,
      pieces: [...contents.map((content) => ({ card: { content } })), ...others.map((label) => ({ label }))],
    };
  });

function contentsOf({ pieces }: PieceJob): readonly (CardContent | LabelContent)[] {
  return pieces.map((piece) => ('card' in piece ? piece.card.content : piece.label));
}

async function laid(job: PieceJob) {
  const paper = recording();
  const found = await layPieces(job, measure);
  const pieces = drawPieces(found, job, measure, paper);
  return { ...found, pieces, pages: paper.pages };
}

describe('laws for any paper and any words', () => {
  test('every piece is printed or left out with its reason, and on unsound paper all are left out', async () => {
    let [printed, left] = [0, 0];
    await fc.assert(
      fc.asyncProperty(anyJob, async (job) => {
        const found = await laid(job);
        for (const { id } of contentsOf(job)) {
          const isPrinted = found.pieces.some((piece) => piece.id === id);
          const reasons = found.left.filter((one) => one.id === id);
          expect([id, isPrinted, reasons.length]).toEqual([id, isPrinted, isPrinted ? 0 : 1]);
          for (const { why } of reasons) expect(why).toMatch(/\. .+/);
          if (isPrinted) printed++;
          else left++;
        }
        if (!checkStock(job.stock).ok) expect(found.pieces).toEqual([]);
      }),
      { numRuns: 250 },
    );
    expect([printed > 60, left > 60]).toEqual([true, true]);
  });

  test('no two pieces of a page overlap, and none leaves it', async () => {
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(anyJob, async (job) => {
        const { pieces, pages } = await laid(job);
        for (const [at, { page, boxMm }] of pieces.entries()) {
          const size = pages[page - 1] ?? { widthMm: 0, heightMm: 0 };
          expect(isInside(boxMm, [0, 0, size.widthMm, size.heightMm])).toBe(true);
          for (const other of pieces.slice(at + 1))
            if (other.page === page) expect(areApart(boxMm, other.boxMm)).toBe(true);
          seen++;
        }
      }),
      { numRuns: 150 },
    );
    expect(seen).toBeGreaterThan(60);
  });

  test('texts stand on their label, apart from each other, and what is said is said whole', async () => {
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(anyJob, async (job) => {
        const { faces } = await layPieces(job, measure);
        for (const { face } of faces) {
          const texts = face.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
          const boxes = texts.map(inkOf);
          seen += boxes.length;
          for (const [at, box] of boxes.entries()) {
            expect(isInside(box, [0, 0, job.stock.labelWidthMm, job.stock.labelHeightMm])).toBe(true);
            for (const other of boxes.slice(at + 1)) expect(areApart(box, other)).toBe(true);
          }
        }
        for (const content of contentsOf(job)) {
          const mine = faces.filter(({ id }) => id === content.id);
          if (mine.length === 0) continue;
          const said = mine
            .flatMap(({ face }) => face.lines)
            .join(' ')
            .replaceAll(' ', '');
          const rows = mine.flatMap(({ face }) => face.lines);
          for (const line of content.lines) expect(isSaid(line, rows, said)).toBe(true);
        }
      }),
      { numRuns: 200 },
    );
    expect(seen).toBeGreaterThan(500);
  });

  test('a sign that the type lacks is named, never printed as a box and never dropped silently', async () => {
    let named = 0;
    await fc.assert(
      fc.asyncProperty(anyJob, async (job) => {
        const { faces, left, warnings } = await layPieces(job, measure);
        for (const { face } of faces)
          for (const mark of face.marks)
            if (mark.kind === 'text') expect(measure.read(mark.text, mark.cut).missing).toEqual([]);
        for (const content of contentsOf(job)) {
          const lacking = content.lines.filter((line) =>
            FORM_NAMES.every((form) => missingIn(line[form], line.strong).length > 0),
          );
          const words = [...left, ...warnings]
            .filter(({ id }) => id === content.id)
            .map(({ why }) => why)
            .join(' ');
          // Paper that holds nothing, or a label too small, is reason enough.
          if (lacking.length === 0 || !faces.some(({ id }) => id === content.id)) continue;
          for (const line of lacking)
            for (const sign of missingIn(line.long, line.strong)) expect(words).toContain(`U+${hexOf(sign)}`);
          named++;
        }
      }),
      { numRuns: 300 },
    );
    expect(named).toBeGreaterThan(10);
  });

  test('a file is made of anything, with as many pages as its table says', async () => {
    await fc.assert(
      fc.asyncProperty(anyJob, async (job) => {
        const { pdf, manifest } = await printPieces({ ...job, fonts, compress: false });
        const text = Buffer.from(pdf).toString('latin1');
        expect(text.match(/\/Type \/Page\n/g)).toHaveLength(manifest.pages.length);
        expect(text).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 40 },
    );
  });
});

describe('labels of any stock', () => {
  test('law: lie side by side on their sheet where the stock is sound', () => {
    let sound = 0;
    void fc.assert(
      fc.property(fc.oneof(typedStock, fittedStock), (stock) => {
        if (!checkStock(stock).ok) return;
        sound++;
        const boxes = Array.from({ length: labelsPerPage(stock) }, (_none, at) => labelBox(stock, at + 1));
        for (const [at, box] of boxes.entries())
          for (const other of boxes.slice(at + 1)) expect(areApart(box, other)).toBe(true);
      }),
      { numRuns: 1000 },
    );
    expect(sound).toBeGreaterThan(200);
  });
});

const FORM_NAMES = ['long', 'medium', 'short'] as const;
const SLACK = 0.03;

function missingIn(text: string, strong: boolean): readonly string[] {
  return measure.read(text, strong ? 'bold' : 'regular').missing;
}

function hexOf(sign: string): string {
  return (sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
}

/** From the top of the capitals to the baseline: what may never touch. */
function inkOf({ xMm, yMm, widthMm, sizePt }: TextMark): BoxMm {
  const heightMm = measure.capHeight * sizePt * PT_MM;
  return [xMm, yMm - heightMm, widthMm, heightMm];
}

function isInside([x, y, width, height]: BoxMm, [left, top, across, down]: BoxMm): boolean {
  return (
    x >= left - SLACK && y >= top - SLACK && x + width <= left + across + SLACK && y + height <= top + down + SLACK
  );
}

function areApart([x, y, width, height]: BoxMm, [left, top, across, down]: BoxMm): boolean {
  return (
    x + width <= left + SLACK || left + across <= x + SLACK || y + height <= top + SLACK || top + down <= y + SLACK
  );
}

/** A line stands in one of its forms, on one row or broken over some, with numbers for what the type lacks. */
function isSaid(line: Forms & { readonly strong: boolean }, rows: readonly string[], joined: string): boolean {
  return FORM_NAMES.some((form) => {
    const { text, missing } = measure.read(line[form], line.strong ? 'bold' : 'regular');
    const lacking = new Set(missing);
    const printed = [...text]
      .map((sign) => (lacking.has(sign) ? (UNSEEN.test(sign) ? '' : `U+${hexOf(sign)}`) : sign))
      .join('');
    const bare = printed.replace(/\s/g, '');
    if (bare === '' || joined.includes(bare)) return true;
    let rest = bare;
    for (const one of rows.map((row) => row.replaceAll(' ', '')))
      if (rest.startsWith(one)) rest = rest.slice(one.length);
    return rest === '';
  });
}

const UNSEEN = /[\p{Cf}\p{Cc}\p{Variation_Selector}]/u;
