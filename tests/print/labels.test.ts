import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  EAN_MODULES,
  EAN_QUIET,
  type Face,
  type LabelSetting,
  layLabel,
  type ManifestPiece,
  moduleMm,
  OFFICE_600,
  openTypeface,
  PRINTERS,
  PT_MM,
  printPieces,
  QUIET_MODULES,
  STOCKS,
  stockById,
  type TextMark,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import {
  askedLabels,
  askedSheet,
  clutchTag,
  LABEL_KINDS,
  type LabelContent,
  type LabelKind,
  type LabelLine,
  stampSheet,
} from '../../src/core/index.ts';
import { added, CLUTCH, DAM, day, id, type Line, LOT, RACK, SIRE, site, TUB } from '../core/log.ts';
import { cardOf, onDay, USUAL } from './cards.ts';

const fonts = await loadFonts();
const measure = openTypeface(fonts);
const printedOn = onDay('2026-05-10');
const [OLD, ROOM, BARE] = [id(31), id(9), id(21)];
const LINES: readonly Line[] = [
  ['2025-01-01', 'place-added', { placeKind: 'room', name: 'Long Room', walk: 1 }, { subjects: [ROOM] }],
  [
    '2025-01-01',
    'place-added',
    { placeKind: 'rack', name: 'Quarantine rack', walk: 3, parent: ROOM },
    { subjects: [RACK] },
  ],
  ['2025-01-01', 'place-added', { placeKind: 'tub', name: 'Q-14', walk: 14, parent: RACK }, { subjects: [TUB] }],
  added({ name: 'Ångström Żubrówka', number: '21-007', sex: 'female' }, { subjects: [DAM] }),
  added({ name: 'Kestrel', sex: 'male' }, { subjects: [SIRE] }),
  ['2025-02-01', 'traits-set', { code: 'cln/cln; Pst/+' }, { subjects: [DAM] }],
  ['2025-02-01', 'traits-set', { code: 'cln/+; pie/+; Spi/+' }, { subjects: [SIRE] }],
  ['2025-05-01', 'clutch-laid', { clutch: OLD, eggs: 5, sire: SIRE }, { subjects: [DAM, OLD] }],
  ['2025-06-30', 'clutch-hatched', { hatched: 5 }, { subjects: [OLD] }],
  ['2026-05-01', 'clutch-laid', { clutch: CLUTCH, eggs: 12, slugs: 1, sire: SIRE }, { subjects: [DAM, CLUTCH] }],
  ['2026-05-01', 'clutch-incubated', { place: TUB, setC: 31.5 }, { subjects: [CLUTCH, TUB] }],
  [
    '2026-04-01',
    'lot-received',
    {
      prey: 'rat-weaned',
      eachG: [35, 60],
      count: 250,
      useBy: '2027-02-01',
      source: 'Saltpan Feeders, the warehouse at the old lock',
      topical: 'dusted with calcium without vitamin D3',
    },
    { subjects: [LOT] },
  ],
  ['2026-04-02', 'lot-received', { prey: 'mouse-pinky', eachG: [1, 3], count: 1000 }, { subjects: [BARE] }],
];
const facility = site(...LINES);
const all = (['place', 'clutch', 'lot', 'stamps', 'layout-test'] as const).flatMap(
  (sheet) => askedLabels(facility, sheet, null, day('2026-05-10')).labels,
);
const eggs = askedLabels(facility, 'egg', `${CLUTCH}/1,${CLUTCH}/12`, day('2026-05-10')).labels;
const tags = askedLabels(facility, 'clutch', OLD, day('2026-05-10')).labels;
const pairs = askedLabels(facility, 'pairing', `${SIRE}/${DAM}`, day('2026-05-10')).labels;
const LABELS: readonly LabelContent[] = [...all, ...eggs, ...tags, ...pairs];
/** Pages of their own take time: of what looks alike, these are enough on single labels. */
const FEW = LABELS.filter(({ kind }, at) => kind !== 'stamp' || at % 3 === 0);

/** What is too much for the smallest labels, all of it or in part; dots that are coarse need larger codes. */
const UNFIT: Readonly<Record<string, readonly LabelKind[]>> = {
  'a4-38.1x21.2': ['clutch', 'layout-test', 'lot', 'pairing', 'place'],
  'letter-66.67x25.4': ['lot'],
  'roll-50x25': ['clutch', 'lot'],
  'roll-70x25': ['lot'],
  'roll-50x25 thermal-203': ['clutch', 'lot', 'pairing'],
  'roll-50x25 thermal-8mm': ['clutch', 'lot', 'pairing'],
  'roll-57x32 thermal-203': ['lot'],
  'roll-70x25 thermal-8mm': ['clutch', 'lot'],
  'roll-40x15': ['clutch', 'lot', 'pairing', 'place', 'stamp'],
  'roll-40x15 thermal-8mm': ['clutch', 'layout-test', 'lot', 'pairing', 'place', 'stamp'],
};

/**
 * Every stock as an office printer has it, and the rolls as thermal printers do. That all of it reads back from paper is
 * shown in chain.test.ts.
 */
const RUNS = [
  ...STOCKS.map((stock, at) => ({
    stock,
    printer: OFFICE_600,
    host: at % 2 === 0 ? 'tubs.example' : undefined,
  })),
  ...STOCKS.filter(({ id: stockId }) => stockId.startsWith('roll-')).map((stock, at) => ({
    stock,
    printer: PRINTERS[1 + (at % 3)] ?? OFFICE_600,
    host: at % 2 === 0 ? undefined : 'tubs.example',
  })),
].map((run) => [run.stock.id, run.printer.id, run.host, run] as const);

describe.each(RUNS)('labels on %s, printer %s, host %s', async (stockId, _printer, host, { stock, printer }) => {
  const isSheet = stock.columns * stock.rows > 1;
  const labels = isSheet ? LABELS : FEW;
  const job = { pieces: labels.map((label) => ({ label })), stock, printer, host, printedOn, fonts };
  const { manifest } = await printPieces(job);

  test('each is printed or left with its reason, and only what is too much for the label is left', () => {
    expect(manifest.pieces.length + manifest.left.length).toBe(labels.length);
    for (const { why } of manifest.left) expect(why).toMatch(/^The .+ does not fit on .+\. Take a larger stock/);
    const kinds = new Set(labels.filter((label) => !isPrinted(label, manifest.pieces)).map(({ kind }) => kind));
    const unfit = UNFIT[`${stockId} ${printer.id}`] ?? UNFIT[stockId] ?? [];
    expect([...kinds].sort()).toEqual([...unfit].sort());
  });
});

/** The marks of a clutch's eggs share its id, so the first line tells them apart. */
function isPrinted({ kind, id: labelId, lines }: LabelContent, pieces: readonly ManifestPiece[]): boolean {
  const first = lines[0]?.long.split(' ')[0] ?? '';
  return pieces.some((piece) => piece.kind === kind && piece.id === labelId && piece.lines[0]?.startsWith(first));
}

function lay(label: LabelContent, stockId: string, more: Partial<LabelSetting> = {}) {
  const stock = stockById(stockId);
  if (!stock.ok) throw new RangeError(stock.problem.message);
  return layLabel(label, { stock: stock.value, printer: OFFICE_600, measure, printedOn, ...more });
}

function laid(label: LabelContent | undefined, stockId: string, more: Partial<LabelSetting> = {}) {
  if (label === undefined) throw new RangeError('no such label');
  const result = lay(label, stockId, more);
  if (!result.ok) throw new RangeError(result.problem.message);
  return result.value;
}

function texts(face: Face): readonly TextMark[] {
  return face.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
}

const [tag] = LABELS.filter(({ kind }) => kind === 'clutch');
const [egg] = eggs;

describe('a layout', () => {
  test('has shorter words on a smaller label, and never smaller ones than can be read', () => {
    const forms = ['roll-100x150', 'roll-57x32'].map((stockId) => laid(tag, stockId).face.form);
    expect(forms).toEqual(['long', 'short']);
    for (const { id: stockId } of STOCKS)
      for (const label of LABELS) {
        const result = lay(label, stockId);
        if (result.ok) for (const { sizePt } of texts(result.value.face)) expect(sizePt).toBeGreaterThanOrEqual(7);
      }
  });

  test('prints the number of an egg largest, at 18 pt or more', () => {
    for (const stockId of ['roll-40x15', 'a4-38.1x21.2', 'roll-100x150']) {
      const [number, mark] = texts(laid(egg, stockId, { printer: PRINTERS[1] }).face);
      expect([number?.text, mark?.text]).toEqual(['1', `${CLUTCH.slice(0, 4)}-${CLUTCH.slice(4)}`]);
      expect(number?.sizePt).toBeGreaterThanOrEqual(18);
    }
  });

  test('takes the bare id where the site’s address makes the code too large for the label', () => {
    const payload = (stockId: string) =>
      laid(egg, stockId, { printer: PRINTERS[1], host: 'tubs.example' }).symbol.payload;
    expect([payload('roll-50x25'), payload('roll-40x15')]).toEqual([`HTTPS://TUBS.EXAMPLE/${CLUTCH}`, CLUTCH]);
  });

  test('stands under its code on a label that is high, and beside it on one that is wide', () => {
    const below = (stockId: string) => {
      const { code, face } = laid(egg, stockId);
      return texts(face).every(({ yMm }) => yMm > code.belowMm);
    };
    expect([below('roll-100x150'), below('roll-70x25')]).toEqual([true, false]);
  });

  test('has the codes of a wall sheet at 25 mm or more, readable at arm’s length', () => {
    for (const stamp of stampSheet()) expect(laid(stamp, 'a4-85x54').code.sizeMm).toBeGreaterThan(25);
  });

  test('of a clutch tag says when it was printed and of what revision, of a place label not', () => {
    expect(laid(tag, 'a4-85x54').face.lines.at(-1)).toMatch(/^printed 10 May 2026 · rev \w{4}$/);
    expect(laid(LABELS[0], 'a4-85x54').face.lines.join()).not.toContain('printed');
  });
});

describe('PRINT-BAR: the bar code of a ware', () => {
  const MUG = id(40);
  const shop = site(['2026-04-01', 'ware-set', { name: 'Mug', priceMinor: 900 }, { subjects: [MUG] }]);
  const [mug] = askedSheet(shop, 'ware', `${MUG}/1`, day('2026-05-10')).labels;
  const bars = (stockId: string, more = {}) => {
    const { face, code, lacksBar } = laid(mug, stockId, more);
    return { bar: face.marks.find((mark) => mark.kind === 'bar'), code, lacksBar };
  };
  test.each(['a4-63.5x38.1', 'a4-85x54', 'roll-90x40', 'roll-75x48'])(
    'stands on %s, clear of the square code',
    (stockId) => {
      for (const printer of PRINTERS) {
        const { bar, code, lacksBar } = bars(stockId, { printer });
        if (bar === undefined) expect([printer.id, lacksBar]).toEqual([printer.id, true]);
        else {
          const right = bar.xMm + (EAN_MODULES + EAN_QUIET.right) * bar.moduleMm;
          expect(right <= code.besideMm || bar.yMm >= code.belowMm).toBe(true);
          expect(bar.xMm - EAN_QUIET.left * bar.moduleMm).toBeGreaterThan(0);
        }
      }
    },
  );
  test('has no room on a small label, which then says so and has all words and the square code', async () => {
    const small = bars('a4-38.1x21.2');
    expect([small.bar, small.lacksBar]).toEqual([undefined, true]);
    const stock = stockById('a4-38.1x21.2');
    if (!stock.ok || mug === undefined) throw new RangeError('no stock');
    const { manifest } = await printPieces({ pieces: [{ label: mug }], stock: stock.value, printedOn, fonts });
    expect(manifest.warnings?.[0]?.why).toMatch(/has no room for its bar code on a4-38.1x21.2/);
    expect(manifest.pieces[0]?.lines).toContain('Mug');
  });
});

describe('what cannot be printed', () => {
  const named = (name: string): LabelContent => {
    const rows: readonly Line[] = [
      ['2025-01-01', 'place-added', { placeKind: 'tub', name, walk: 1 }, { subjects: [TUB] }],
    ];
    const [label] = askedLabels(site(...rows), 'place', null, day('2026-05-10')).labels;
    if (label === undefined) throw new RangeError('no label');
    return label;
  };
  test.each([
    ['日本語'.repeat(3), 'glyph-missing', 'The type has no sign for 日 (U+65E5) 本 (U+672C) 語 (U+8A9E).'],
    ['W'.repeat(60), 'piece-unfit', `The place label ${'W'.repeat(60)} does not fit on a4-63.5x38.1.`],
  ])('a place called %s is refused in words', (name, code, words) => {
    const result = lay(named(name), 'a4-63.5x38.1');
    expect(result.ok ? null : [result.problem.code, result.problem.message]).toEqual([code, words]);
  });

  test('is named, and cards and labels of one run stand on the same sheet', async () => {
    const [stock] = STOCKS;
    if (stock === undefined) throw new RangeError('no stock');
    const pieces = [
      { label: named('日本語'.repeat(3)) },
      { card: { content: cardOf(1, USUAL) } },
      ...LABELS.map((label) => ({ label })),
    ];
    const { manifest } = await printPieces({ pieces, stock, printedOn, fonts });
    expect(manifest.left).toEqual([{ id: TUB, why: expect.stringContaining('no sign for 日 (U+65E5) 本') }]);
    expect(manifest.pieces[0]?.kind).toBe('card');
    expect(new Set(manifest.pieces.map(({ kind }) => kind)).size).toBe(
      new Set(LABELS.map(({ kind }) => kind)).size + 1,
    );
  });
});

describe('laws', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abcdefgÅÉŻñ0123456789-/+·'), minLength: 1, maxLength: 14 });
  const words = (most: number) => fc.array(word, { minLength: 1, maxLength: most }).map((parts) => parts.join(' '));
  const line: fc.Arbitrary<LabelLine> = fc.record({
    slot: fc.constantFrom('main' as const, 'id' as const, 'body' as const, 'small' as const),
    strong: fc.boolean(),
    long: words(9),
    medium: words(4),
    short: word,
  });
  const anyLabel = fc
    .record({ kind: fc.constantFrom(...LABEL_KINDS), lines: fc.array(line, { minLength: 1, maxLength: 9 }) })
    .map(
      (parts): LabelContent => ({
        ...parts,
        id: 'x',
        called: 'label',
        code: { says: 'text', text: 'STAMP:MOVED' },
        revision: 'abcd',
      }),
    );
  const anyPaper = fc.record({ stock: fc.constantFrom(...STOCKS), printer: fc.constantFrom(...PRINTERS) });

  test('a label is left out, or every line of it is printed whole in one of its forms', () => {
    let printed = 0;
    void fc.assert(
      fc.property(anyLabel, anyPaper, (label, paper) => {
        const result = layLabel(label, { ...paper, measure, printedOn });
        if (!result.ok) return;
        printed++;
        const said = result.value.face.lines.join(' ').replaceAll(' ', '');
        const all = texts(result.value.face).map(({ text }) => text);
        for (const { long, medium, short } of label.lines)
          expect([long, medium, short].some((text) => isSaid(text, all, said))).toBe(true);
      }),
      { numRuns: 500 },
    );
    expect(printed).toBeGreaterThan(100);
  });

  test('every text stands inside the label, on no other text and out of the quiet zone, and a module is whole dots', () => {
    let seen = 0;
    void fc.assert(
      fc.property(anyLabel, anyPaper, (label, { stock, printer }) => {
        const result = layLabel(label, { stock, printer, measure, printedOn });
        if (!result.ok) return;
        const { code, face, symbol } = result.value;
        const quiet = code.moduleMm * QUIET_MODULES;
        const dots = code.moduleMm * printer.dotsPerMm;
        expect(Math.abs(dots - Math.round(dots))).toBeLessThan(1e-6);
        expect(code.moduleMm).toBeGreaterThanOrEqual(moduleMm(1, 0, printer));
        expect(code.sizeMm).toBeCloseTo(code.moduleMm * symbol.size, 9);
        const boxes = texts(face).map(inkOf);
        seen += boxes.length;
        for (const [at, box] of boxes.entries()) {
          expect(box.left >= 1.4 && box.right <= stock.labelWidthMm - 1.4).toBe(true);
          expect(box.top >= 1 && box.bottom <= stock.labelHeightMm - 1).toBe(true);
          const clear = box.right <= code.xMm - quiet || box.top >= code.yMm + code.sizeMm + quiet - 0.5;
          expect(clear).toBe(true);
          for (const other of boxes.slice(at + 1))
            expect(
              box.right <= other.left || other.right <= box.left || box.bottom <= other.top || other.bottom <= box.top,
            ).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
    expect(seen).toBeGreaterThan(500);
  });
});

/** A form stands on one row, or broken at blanks on rows that follow each other, with others beside them. */
function isSaid(text: string, rows: readonly string[], joined: string): boolean {
  if (rows.includes(text) || joined.includes(text.replaceAll(' ', ''))) return true;
  let rest = text;
  for (const row of rows) if (rest.startsWith(row)) rest = rest.slice(row.length).trimStart();
  return rest === '';
}

/** From the top of the small letters' ascenders to the baseline: what may never touch. */
function inkOf({ xMm, yMm, widthMm, sizePt }: TextMark) {
  return { left: xMm, right: xMm + widthMm, top: yMm - measure.capHeight * sizePt * PT_MM, bottom: yMm };
}

test('a clutch tag of the same season is the same on another day of printing but for that day', () => {
  const clutch = facility.clutches.get(CLUTCH);
  if (clutch === undefined) throw new RangeError('no clutch');
  const [one, two] = ['2026-05-10', '2026-05-20'].map((on) => clutchTag(facility, clutch, day(on)));
  expect(one?.revision).toBe(two?.revision);
});
