import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  labelBox,
  layLabelFaces,
  OFFICE_600,
  openTypeface,
  PRINTERS,
  type PrinterProfile,
  PT_MM,
  printPieces,
  QUIET_MODULES,
  STOCKS,
  type Stock,
  stockById,
  type TextMark,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { askedLabels, type EventId, type LabelContent, type LabelLine, type Payload } from '../../src/core/index.ts';
import { added, day, eventId, type Line, site, weighed } from '../core/log.ts';
import { onDay } from './cards.ts';
import { withFile } from './paper.ts';
import {
  drawnPages,
  expectCodesWhereTheyStand,
  expectSoundFile,
  expectWordsWhereTheyBelong,
  readingOf,
  SHEET_MARGIN,
} from './readBack.ts';

const fonts = await loadFonts();
const measure = openTypeface(fonts);
const printedOn = onDay('2026-03-12');
const ID: EventId = eventId(50);
const PAPER: Payload<'prescription-written'> = {
  ...{
    drug: 'as the vet wrote it',
    prescriber: 'Dr Linnet Sallowfield',
    route: 'by injection',
    everyHours: 48,
    count: 6,
  },
  amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
  ...{ startsOn: '2026-03-09', recheckOn: '2026-03-24', validUntil: '2026-06-01', withholdFood: true, lot: 'B 7' },
};
const paper = (more: Partial<typeof PAPER> = {}): Line => [
  '2026-03-09',
  'prescription-written',
  { ...PAPER, ...more },
  { n: 50 },
];
const given: Line = ['2026-03-09', 'dose-given', { prescription: ID, ml: 0.53 }];
const house = (weighedOn: string, ...lines: readonly Line[]) =>
  site(added({ name: 'Ångström Żubrówka', number: '21-007', sex: 'female' }), weighed(weighedOn, 1065), ...lines);
const LONG: Partial<typeof PAPER> = {
  amount: { by: 'volume', ml: 10.6 },
  route: 'by stomach tube',
  everyHours: 12,
  count: 30,
};
const of = (what: 'treatment' | 'tube', ...site_: Parameters<typeof house>): LabelContent => {
  const [label] = askedLabels(house(...site_), what, null, day('2026-03-12')).labels;
  if (label === undefined) throw new RangeError('no label');
  return label;
};
const CARD = of('treatment', '2026-03-08', paper(), given);
const STALE = of('treatment', '2026-01-08', paper());
const COURSE = of('treatment', '2026-03-08', paper(LONG));
const TUBE = of(
  'tube',
  '2026-03-08',
  ['2026-03-01', 'animal-measured', { lengthMm: 950, of: 'snout-vent' }],
  paper(LONG),
);
const LABELS = [CARD, STALE, COURSE, TUBE];
/** The papers on which all of them stand whole. */
const LARGE = ['a4-105x148', 'roll-100x150', 'roll-100x100'];

function faces(label: LabelContent, stockId: string, more = {}) {
  const stock = stockById(stockId);
  if (!stock.ok) throw new RangeError(stock.problem.message);
  return layLabelFaces(label, { stock: stock.value, printer: OFFICE_600, measure, printedOn, ...more });
}
const texts = (marks: readonly { readonly kind: string }[]) =>
  marks.filter((mark): mark is TextMark => mark.kind === 'text');

describe.each(STOCKS.map((stock) => [stock.id, stock] as const))(
  'papers of a treatment on %s',
  async (stockId, stock) => {
    const isRoll = stockId.startsWith('roll-');
    const printer = isRoll ? (PRINTERS[1] ?? OFFICE_600) : OFFICE_600;
    const pieces = LABELS.map((label) => ({ label }));
    const job = { pieces, stock, printer, host: 'tubs.example', printedOn, fonts };
    const { pdf, manifest } = await printPieces(job);

    test('each is printed whole or left with its reason', () => {
      const printed = manifest.pieces.filter(({ back }) => !back).length;
      expect(printed + manifest.left.length).toBe(LABELS.length);
      for (const { why } of manifest.left)
        expect(why).toMatch(/^The (treatment card|tube feeding sheet) of .+ does not fit on /);
      if (LARGE.includes(stockId)) expect(manifest.left).toEqual([]);
    });
    test('every face has the id, the flag and the caution', () => {
      for (const { lines } of manifest.pieces) {
        const said = lines.join(' ');
        expect(said).toContain(`${CARD.id.slice(0, 4)}-${CARD.id.slice(4)}`);
        expect(said).toMatch(/not for sale/i);
        expect(said).toMatch(/Arithmetic only/);
        expect(said).toMatch(/stop and call the vet/);
      }
    });
    test('the codes read, the words stand where they belong, and the file is sound', async () => {
      await withFile(pdf, async (path) => {
        if (manifest.pieces.length === 0) return;
        expectSoundFile(path);
        expectCodesWhereTheyStand(await drawnPages(path, manifest), manifest, readingOf(printer));
        const hasRuler = stock.columns * stock.rows > 1 && stock.firstYMm > 5;
        expectWordsWhereTheyBelong(path, manifest, hasRuler ? SHEET_MARGIN : /^$/);
      });
    });
    test('the same bytes come a second time', async () => {
      expect(Buffer.from((await printPieces(job)).pdf).equals(Buffer.from(pdf))).toBe(true);
    });
  },
);

describe('a layout', () => {
  const value = (label: LabelContent, stockId: string) => {
    const laid = faces(label, stockId);
    if (!laid.ok) throw new RangeError(laid.problem.message);
    return laid.value;
  };
  test('stands on one face where there is room, on two where its doses need one, and on more before it gets too small', () => {
    expect([value(CARD, 'a4-105x148').length, value(COURSE, 'a4-105x148').length]).toEqual([1, 2]);
    expect(value(CARD, 'a4-85x54').length).toBeGreaterThan(1);
    expect(value(COURSE, 'a4-105x148').map(({ face }) => face.back)).toEqual([false, true]);
  });
  test('has the volume on its first face, the largest there after none, and all that belongs to it beside it', () => {
    for (const stockId of ['a4-105x148', 'a4-85x54', 'roll-100x100']) {
      const [first] = value(CARD, stockId);
      const said = texts(first?.face.marks ?? []);
      const volume = said.find(({ text }) => text === '0.53 mL');
      expect(volume?.sizePt).toBeGreaterThanOrEqual(16);
      expect(said.map(({ text }) => text).join(' ')).toMatch(
        /exact 0\.5325 mL, 0\.47 % less.* 1 mL syringe.*(good until|weigh again after) 7 Apr 2026/,
      );
    }
  });
  test('never parts a figure from its unit', () => {
    for (const { id } of STOCKS)
      for (const label of LABELS) {
        const laid = faces(label, id);
        if (laid.ok)
          for (const { face } of laid.value)
            for (const { text } of texts(face.marks)) expect(text).not.toMatch(/^(mL|mg|%|cm|g|kg) /);
      }
  });
  test('has room for a hand on each line that is signed', () => {
    for (const { face } of value(COURSE, 'a4-105x148')) {
      const rows = texts(face.marks).filter(({ text }) => / of 30$/.test(text));
      for (const [at, row] of rows.slice(1).entries())
        expect(row.yMm - (rows[at]?.yMm ?? 0)).toBeGreaterThanOrEqual(6.5);
    }
  });
  test('is refused in words where it fits on no face', () => {
    const small = faces(COURSE, 'roll-50x25');
    expect(small.ok ? '' : small.problem.message).toMatch(/^The treatment card of .+ does not fit on roll-50x25\.$/);
  });
});

describe('laws', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abcdefgÅÉŻñ0123456789-/+·'), minLength: 1, maxLength: 12 });
  const words = (most: number) => fc.array(word, { minLength: 1, maxLength: most }).map((parts) => parts.join(' '));
  const slot = fc.constantFrom('main', 'id', 'body', 'small', 'figure', 'flag', 'caution', 'sign' as const);
  const line: fc.Arbitrary<LabelLine> = fc.record({
    slot,
    strong: fc.boolean(),
    long: words(8),
    medium: words(4),
    short: word,
  });
  const anyLabel = fc.array(line, { minLength: 1, maxLength: 14 }).map(
    (lines): LabelContent => ({
      ...{ kind: 'treatment', id: 'x', called: 'label', code: { says: 'text', text: 'STAMP:MOVED' }, revision: 'abcd' },
      lines,
    }),
  );
  const anyPaper = fc.record({ stock: fc.constantFrom(...STOCKS), printer: fc.constantFrom(...PRINTERS) });
  const ink = ({ xMm, yMm, widthMm, sizePt }: TextMark) => ({
    ...{ left: xMm, right: xMm + widthMm, top: yMm - measure.capHeight * sizePt * PT_MM, bottom: yMm },
  });

  // The last figure of this one was lost once: with the true number of faces in it, the small print took another row.
  const same = (slot: LabelLine['slot'], long: string): LabelLine => ({
    slot,
    strong: false,
    long,
    medium: 'a',
    short: 'a',
  });
  const ONCE_LOST = [
    {
      ...{ kind: 'treatment', id: 'x', called: 'label', code: { says: 'text', text: 'STAMP:MOVED' }, revision: 'abcd' },
      lines: [
        ...[same('caution', 'a'), same('sign', 'a'), { ...same('figure', 'a'), strong: true }],
        { ...same('figure', '1a'), medium: '0 a', short: '8a' },
        ...[same('flag', 'a aa aa'), { ...same('flag', '+0cÉÉab3·a·'), strong: true }, same('sign', 'a')],
      ],
    },
    { stock: STOCKS.find(({ id }) => id === 'roll-75x48'), printer: PRINTERS.find(({ id }) => id === 'thermal-12mm') },
  ] as [LabelContent, { stock: Stock; printer: PrinterProfile }];

  test('every line is printed whole on some face, in 7 pt or more, and nothing touches anything', () => {
    let printed = 0;
    void fc.assert(
      fc.property(anyLabel, anyPaper, (label, { stock, printer }) => {
        const laid = layLabelFaces(label, { stock, printer, measure, printedOn });
        if (!laid.ok) return;
        printed++;
        const said = laid.value
          .map(({ face }) => face.lines.join(''))
          .join('')
          .replaceAll(' ', '');
        const each = laid.value
          .flatMap(({ face }) => face.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
          .join('')
          .replaceAll(' ', '');
        for (const { long, medium, short } of label.lines)
          expect(
            [long, medium, short].some((text) => [said, each].some((all) => all.includes(text.replaceAll(' ', '')))),
          ).toBe(true);
        for (const { face, code } of laid.value) {
          const boxes = texts(face.marks).map(ink);
          const quiet = code.moduleMm * QUIET_MODULES;
          for (const { sizePt } of texts(face.marks)) expect(sizePt).toBeGreaterThanOrEqual(7);
          for (const [at, box] of boxes.entries()) {
            expect(box.left >= 1.4 && box.right <= stock.labelWidthMm - 1.4).toBe(true);
            expect(box.top >= 1 && box.bottom <= stock.labelHeightMm - 1).toBe(true);
            expect(box.right <= code.xMm - quiet || box.top >= code.yMm + code.sizeMm + quiet - 0.5).toBe(true);
            for (const other of boxes.slice(at + 1))
              expect(
                box.right <= other.left ||
                  other.right <= box.left ||
                  box.bottom <= other.top ||
                  other.bottom <= box.top,
              ).toBe(true);
          }
        }
      }),
      { numRuns: 300, examples: [ONCE_LOST] },
    );
    expect(printed).toBeGreaterThan(60);
  });
  test('a sheet cut in four is A4 halved twice, to the mm below (ISO 216 calls that A6; from memory)', () => {
    const stock = stockById('a4-105x148');
    expect(stock.ok && [stock.value.pageWidthMm, stock.value.pageHeightMm, labelBox(stock.value, 4)]).toEqual([
      210,
      297,
      [105, 148.5, 105, 148],
    ]);
  });
});
