import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Manifest, type ManifestPiece, printPieces, STOCKS, type Stock } from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import type { Batch } from '../../src/app/press/batch.ts';
import { piecesOf } from '../../src/app/press/batch.ts';
import { documentFault, faultProblem, labelAt, sayReadBack } from '../../src/app/press/readBackWords.ts';
import {
  batchOfRun,
  cameOutDrafts,
  laidDrafts,
  laidRun,
  markedBy,
  openRuns,
  relaidRun,
  restFrom,
  sayPages,
  sayRun,
  thingsOn,
} from '../../src/app/press/runs.ts';
import { askedTags, type EventDraft, type Facility, type LabelContent, type LaidRun } from '../../src/core/index.ts';
import { added, day, id, type Line, site } from '../core/log.ts';

const TODAY = day('2026-03-12');
const onSite = { subjects: [] };
const PAPER = { run: 'r1', stock: 'card-85x54' };
const ANIMALS = [1, 2, 3, 4, 5].map((n) => id(n));
const HOUSE: readonly Line[] = ANIMALS.flatMap((animal, at): Line[] => [
  added({ name: `Reed ${at}`, sex: 'female' }, { subjects: [animal] }),
]);
const fonts = await loadFonts();

const batchAt = (facility: Facility, ids: readonly string[] = ANIMALS): Batch =>
  batchOfRun(facility, 'card', ids, TODAY);

function stockOf(wanted: string): Stock {
  const stock = STOCKS.find((one) => one.id === wanted);
  if (!stock) throw new RangeError(wanted);
  return stock;
}

async function printed(batch: Batch, pages?: readonly [number, number]): Promise<Manifest> {
  const job = { pieces: piecesOf(batch), stock: stockOf(PAPER.stock), printedOn: TODAY, fonts };
  return (await printPieces(pages ? { ...job, pages } : job)).manifest;
}

async function laid(facility: Facility = site(...HOUSE)): Promise<LaidRun> {
  const batch = batchAt(facility);
  const run = laidRun(batch, await printed(batch), PAPER);
  if (run === null) throw new RangeError('nothing laid');
  return run;
}

const runLines = (run: LaidRun, toPage: number): readonly Line[] => [
  ['2026-03-10', 'run-laid', run, onSite],
  ['2026-03-10', 'run-printed', { run: run.run, toPage }, onSite],
];
const subjects = (drafts: readonly EventDraft[]) => drafts.map((draft) => draft.subjects[0]);

describe('PRINT-RESUME: a run', () => {
  it('knows the last page of each card and what it said', async () => {
    const run = await laid();
    expect([run.what, run.ids, run.lastPages, run.pages]).toEqual(['card', ANIMALS, [1, 2, 3, 4, 5], 5]);
    expect(new Set(run.revisions).size).toBe(5);
  });
  it('that was printed to a page marks what stands up to it and no more', async () => {
    const run = await laid();
    const drafts = cameOutDrafts(run, { after: 0, toPage: 2, day: TODAY });
    expect(drafts.map(({ kind }) => kind)).toEqual(['run-printed', 'card-printed', 'card-printed']);
    expect(subjects(drafts.slice(1))).toEqual(ANIMALS.slice(0, 2));
    expect(drafts[1]?.payload).toEqual({ revision: run.revisions[0], stock: PAPER.stock });
    expect(thingsOn(run, 0, 2)).toBe(2);
  });
  it('is open until all of it came out, and says how far it is and what changed since', async () => {
    const run = await laid();
    const at = (toPage: number, ...more: readonly Line[]) =>
      openRuns(site(...HOUSE, ...runLines(run, toPage), ...more), TODAY);
    expect(at(0).map(sayRun)).toEqual(['Tub cards on card-85x54: no page of 5 printed yet']);
    expect(at(3).map(sayRun)).toEqual(['Tub cards on card-85x54: printed to page 3 of 5']);
    const said = at(3, ['2026-03-11', 'animal-weighed', { weightG: 900 }, { subjects: [ANIMALS[0] ?? id(1)] }]);
    expect(said.map(sayRun)).toEqual(['Tub cards on card-85x54: printed to page 3 of 5; 1 card has changed since']);
    expect(said[0]?.progress).toMatchObject({ stale: [ANIMALS[0]], changed: [], pages: [4, 5] });
    expect(at(5)).toEqual([]);
  });
  it('is closed by a keeper who is done with it', async () => {
    const run = await laid();
    const done: Line = ['2026-03-11', 'run-printed', { run: 'r1', toPage: 2, done: true }, onSite];
    expect(openRuns(site(...HOUSE, ...runLines(run, 2), done), TODAY)).toEqual([]);
  });
  it('of which the rest is made again keeps what is on paper and takes the new words of the rest', async () => {
    const run = await laid();
    const lines: readonly Line[] = [0, 4].map(
      (at): Line => ['2026-03-11', 'animal-weighed', { weightG: 900 }, { subjects: [ANIMALS[at] ?? id(1)] }],
    );
    const batch = batchAt(site(...HOUSE, ...lines));
    const again = relaidRun(run, batch, await printed(batch, [3, 5]));
    expect(again?.revisions.map((one, at) => one === run.revisions[at])).toEqual([true, true, true, true, false]);
    expect(again?.lastPages).toEqual(run.lastPages);
  });
  it('does not fit its old pages once a card of it is gone', async () => {
    const run = await laid();
    const gone: Line = ['2026-03-11', 'animal-left', { how: 'sold' }, { subjects: [ANIMALS[1] ?? id(2)] }];
    const batch = batchAt(site(...HOUSE, gone), run.ids);
    expect(relaidRun(run, batch, await printed(batch, [3, 4]))).toBeNull();
  });
  it('of nothing is none', async () => {
    const batch = batchAt(site(), []);
    expect(laidRun(batch, await printed(batch), PAPER)).toBeNull();
  });
  it('of tags asks again for as many copies, and marks each ware once with their number', () => {
    const [mug, cup] = [id(40), id(41)];
    const ware = (item: typeof mug, name: string, count: number): readonly Line[] => [
      ['2026-03-01', 'ware-set', { name, priceMinor: 900 }, { subjects: [item] }],
      ['2026-03-02', 'item-stocked', { count }, { subjects: [item] }],
    ];
    const shop = site(...ware(mug, 'Mug', 3), ...ware(cup, 'Cup', 1));
    const { labels } = askedTags(shop, 'ware', `${mug}/3,${cup}/1`);
    const batch: Batch = { what: 'ware', labels };
    const manifest = { pages: [SIZE, SIZE], pieces: labels.map((label, at) => pieceOf(label, at < 2 ? 1 : 2)) };
    const run = laidRun(batch, manifest, PAPER);
    expect(run).toMatchObject({ ids: [`${mug}/3`, `${cup}/1`], lastPages: [2, 2] });
    const again = batchOfRun(shop, 'ware', run?.ids ?? [], TODAY);
    expect(again.what !== 'card' && again.labels.map(({ id: one }) => one)).toEqual([mug, mug, mug, cup]);
    expect(run && markedBy(run, { after: 0, toPage: 1, day: TODAY })).toEqual([]);
    expect(run && markedBy(run, { after: 1, toPage: 2, day: TODAY }).map(({ payload }) => payload)).toMatchObject([
      { copies: 3 },
      { copies: 1 },
    ]);
  });
});

describe('PRINT-RESUME: a run of 10,000 cards on single labels', () => {
  const MANY = 10_000;
  const long: LaidRun = {
    ...PAPER,
    what: 'card',
    ids: Array.from({ length: MANY }, (_none, n) => id(n)),
    revisions: Array.from({ length: MANY }, (_none, n) => `v${n}`),
    lastPages: Array.from({ length: MANY }, (_none, n) => n + 1),
    pages: MANY,
  };
  const laying = (run: LaidRun, before?: LaidRun): readonly Line[] =>
    laidDrafts(run, TODAY, before).map(({ payload }): Line => ['2026-03-10', 'run-laid', payload as never, onSite]);
  const toPage = (page: number, done?: boolean): Line => {
    return ['2026-03-11', 'run-printed', { run: 'r1', toPage: page, ...(done && { done }) }, onSite];
  };
  it('is laid in two events, and is one run, at any page and until it is done', () => {
    const lines = laying(long);
    expect(lines.length).toBe(2);
    const at = (...more: readonly Line[]) => openRuns(site(...lines, ...more), TODAY);
    expect(at().map(({ record }) => record)).toMatchObject([{ ...long, parts: 2, printedTo: 0 }]);
    expect(at(toPage(7012))[0]?.progress).toMatchObject({ pages: [7013, MANY] });
    expect(at(toPage(7012)).map(sayRun)[0]).toMatch(/^Tub cards on card-85x54: printed to page 7,012 of 10,000;/);
    expect([at(toPage(MANY)), at(toPage(12, true))]).toEqual([[], []]);
  });
  it('marks what stands on its pages, across the seam of its parts', () => {
    const [run] = openRuns(site(...laying(long)), TODAY);
    const marked = run ? markedBy(run.record, { after: 4990, toPage: 5010, day: TODAY }) : [];
    expect(subjects(marked)).toEqual(long.ids.slice(4990, 5010));
  });
  it('is laid again only in the part of which a card says something else', () => {
    const [run] = openRuns(site(...laying(long)), TODAY);
    const again = { ...long, parts: 2, revisions: long.revisions.with(8000, 'anew') };
    expect(laidDrafts(again, TODAY, run?.record).map(({ payload }) => payload)).toMatchObject([{ part: [2, 2] }]);
    expect(laidDrafts(long, TODAY, run?.record)).toEqual([]);
    const [then] = openRuns(site(...laying(long), ...laying(again, long)), TODAY);
    expect(then?.record).toMatchObject(again);
  });
  it('of which a part is missing cannot be taken up yet', () => {
    expect(openRuns(site(...laying(long).slice(1)), TODAY)).toEqual([]);
  });
});

const SIZE = { widthMm: 85, heightMm: 54 };

function pieceOf({ id: label, kind }: LabelContent, page: number): ManifestPiece {
  const box = [0, 0, 10, 10] as const;
  const piece = {
    kind,
    id: label,
    payload: label,
    page,
    boxMm: box,
    symbolMm: box,
    symbology: 'qr',
    modules: 21,
  } as const;
  return { ...piece, lines: [], form: 'long', back: false };
}

describe('law: however a run comes out in parts', () => {
  it('each card is marked once, after its last page and not before', () => {
    void fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 30 }),
        fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 4 }),
        (last, stops) => {
          const run: LaidRun = {
            ...PAPER,
            what: 'card',
            ids: last.map((_page, n) => id(n)),
            revisions: last.map((_page, n) => `v${n}`),
            lastPages: last,
            pages: 9,
          };
          const ends = [...stops, 9].sort((a, b) => a - b);
          const seen: unknown[] = [];
          for (const [at, toPage] of ends.entries()) {
            const marked = markedBy(run, { after: ends[at - 1] ?? 0, toPage, day: TODAY });
            for (const one of subjects(marked)) expect(last[run.ids.indexOf(one ?? '')]).toBeLessThanOrEqual(toPage);
            seen.push(...subjects(marked));
          }
          expect(seen.sort()).toEqual([...run.ids].sort());
        },
      ),
    );
  });
});

describe('words of runs and of reading back', () => {
  it.each([
    [8, 60, 'pages 8 to 60'],
    [7013, 10_000, 'pages 7,013 to 10,000'],
    [60, 60, 'page 60'],
  ])('say from %d to %d as %s', (from, to, said) => {
    expect(sayPages(from, to)).toBe(said);
  });
  it.each([
    [0, undefined, 1],
    [7, undefined, 8],
    [6, 'long', 7],
    [7, 'long', 7],
    [7, 'short', 7],
  ] as const)('begin the rest after page %d, turned over the %s edge, with page %d', (printedTo, flip, from) => {
    expect(restFrom(flip === undefined ? { printedTo } : { printedTo, flip })).toBe(from);
  });
  const piece = pieceOf({ id: 'A', kind: 'place' } as LabelContent, 2);
  const fault = (what: 'code' | 'bar', read: string | null) => ({ piece, what, read });
  const lost = { what: 'line', page: 3, line: 'Moss', read: null } as const;
  it.each([
    [{ codes: 600, bars: 0, lines: 0, faults: [] }, '600 of 600 read back.'],
    [{ codes: 600, bars: 0, lines: 0, faults: [fault('code', null)] }, '599 of 600 read back.'],
    [{ codes: 12, bars: 12, lines: 0, faults: [fault('bar', null)] }, '12 of 12, 11 of 12 bar codes read back.'],
    [{ codes: 1, bars: 0, lines: 1214, faults: [lost] }, '1 of 1 code, 1,213 of 1,214 lines read back.'],
    [{ codes: 0, bars: 0, lines: 40, faults: [] }, '40 of 40 lines read back.'],
    [{ codes: 0, bars: 0, lines: 0, faults: [] }, 'Nothing to read back.'],
  ])('count what read', (read, said) => {
    expect(sayReadBack(read)).toBe(said);
  });
  it.each([
    [lost, 'line-unread', '“Moss” is not on page 3'],
    [{ ...lost, read: 'Mess' }, 'line-misread', '“Moss” on page 3 of the PDF reads as “Mess”'],
    [fault('code', null), 'code-unreadable', 'The code on page 2'],
    [fault('code', 'X'), 'code-misread', 'reads as “X”'],
  ] as const)('say what of a document did not read', (one, code, words) => {
    const said = documentFault(one);
    expect([said.code, said.message]).toEqual([code, expect.stringContaining(words)]);
  });
  const stock = stockOf('a4-85x54');
  it.each([
    [[15, 13.5], 1],
    [[110, 13.5], 2],
    [[15.4, 14], 1],
    [[110, 240], 10],
  ] as const)('find the label at %s mm: %d', (at, label) => {
    expect(labelAt(stock, at)).toBe(label);
  });
  it('name the piece, its page in the run, its label and what to do', () => {
    const where = { of: 'card', name: 'Moss', stock, firstPage: 8 } as const;
    expect(faultProblem(fault('code', null), where)).toMatchObject({
      code: 'piece-unreadable',
      message: 'The code of the card Moss (page 9, label 1) cannot be read from the page as it is drawn.',
    });
    const misread = faultProblem(fault('bar', '123'), where);
    expect(misread.message).toBe(
      'The bar code of the card Moss (page 9, label 1) reads as “123”, which does not belong there.',
    );
    expect(misread.remedy).toMatch(/^Do not use that piece/);
  });
});
