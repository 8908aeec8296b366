import { createHash } from 'node:crypto';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  drawPieces,
  layCards,
  openTypeface,
  ownSha256,
  printCards,
  recording,
  STOCKS,
  stockById,
} from '../../print/index.ts';
import { loadFonts, sha256 } from '../../print/node/index.ts';
import { CROWDED, cardOf, FLAGS, onDay, SPARSE, USUAL } from './cards.ts';
import { run, withFile } from './paper.ts';

const fonts = await loadFonts();
const printedOn = onDay('2026-11-25');
const [stock] = STOCKS;
if (!stock) throw new RangeError('no stock');
const cards = Array.from({ length: 13 }, (_none, n) => ({
  content: cardOf(n, n % 3 ? USUAL : CROWDED, FLAGS.slice(0, n % 4)),
}));
const job = { cards, stock, printedOn, fonts };
const hexOf = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');

describe('the same job', () => {
  test.each([true, false])(
    'gives the same bytes (compressed: %s), and the manifest has their hash',
    async (compress) => {
      const [one, two] = [await printCards({ ...job, compress }), await printCards({ ...job, compress, sha256 })];
      expect(hexOf(one.pdf)).toBe(hexOf(two.pdf));
      expect(one.manifest).toEqual(two.manifest);
      expect(one.manifest.sha256).toBe(createHash('sha256').update(one.pdf).digest('hex'));
    },
  );

  test('a card with another name, or another day, gives another file id', async () => {
    const id = async (change: Partial<typeof job>) => {
      const { pdf } = await printCards({ ...job, ...change, compress: false });
      return /\/ID \[<([0-9a-f]+)>/.exec(Buffer.from(pdf).toString('latin1'))?.[1];
    };
    const first = await id({});
    expect(first).toMatch(/^[0-9a-f]{32}$/);
    expect(await id({})).toBe(first);
    expect(await id({ cards: [{ content: cardOf(0, SPARSE) }, ...cards.slice(1)] })).not.toBe(first);
    expect(await id({ printedOn: onDay('2026-11-26') })).not.toBe(first);
  });
});

describe('the file', () => {
  test('asks viewers not to scale it, and has the sheet’s size', async () => {
    const { pdf, manifest } = await printCards(job);
    await withFile(pdf, (path) => {
      const info = run('pdfinfo', path);
      expect(info).toMatch(/Page size: +595\.2\d+ x 841\.\d+ pts \(A4\)/);
      expect(run('qpdf', '--json', '--json-key=qpdf', path)).toContain('"/PrintScaling": "/None"');
    });
    expect(manifest.pages[0]).toEqual({ widthMm: 210, heightMm: 297 });
  });

  test('has a ruler of 100 mm on each sheet, outside the labels', async () => {
    const paper = recording();
    const type = openTypeface(fonts);
    drawPieces(await layCards(job, type), job, type, paper);
    for (const page of paper.pages) {
      const line = page.marks.find((mark) => mark.kind === 'rule' && mark.widthMm === 100);
      expect(line?.yMm).toBeGreaterThan(283.5);
      expect(page.marks.some((mark) => mark.kind === 'text' && mark.text.startsWith('print at 100 %'))).toBe(true);
    }
  });
});

describe('what cannot be printed', () => {
  test('is named with its reason, and the rest is printed', async () => {
    const bad = cardOf(50, [['name', 1, true, 'まるいちいさなへびちゃん']]);
    const { manifest } = await printCards({ ...job, cards: [{ content: bad }, ...cards] });
    expect(manifest.left).toEqual([{ id: bad.id, why: expect.stringContaining('no sign for ま (U+307E)') }]);
    expect(manifest.pieces.filter(({ back }) => !back)).toHaveLength(cards.length);
  });

  test.each([
    ['a first label that the sheet lacks', { first: 11 }, 'has no label 11'],
    ['a stock whose labels overlap', { stock: { ...stock, pitchXMm: 10 } }, 'overlap'],
  ])('%s: nothing is printed, and every card says why', async (_what, change, why) => {
    const { pdf, manifest } = await printCards({ ...job, ...change });
    expect(manifest.pieces).toEqual([]);
    expect(manifest.left).toHaveLength(cards.length);
    for (const left of manifest.left) expect(left.why).toContain(why);
    await withFile(pdf, (path) => expect(run('qpdf', '--check', path)).toContain('No syntax'));
  });

  test('no cards give one empty sheet and an empty list', async () => {
    const { manifest } = await printCards({ ...job, cards: [] });
    expect([manifest.pieces, manifest.left, manifest.pages.length]).toEqual([[], [], 1]);
  });
});

describe('order', () => {
  test('a second face comes right after its first', async () => {
    const { manifest } = await printCards({ ...job, order: 'stack' });
    for (const [at, piece] of manifest.pieces.entries())
      if (piece.back) expect(manifest.pieces[at - 1]?.id).toBe(piece.id);
  });

  test('cards start at the first free label of a used sheet', async () => {
    const { manifest } = await printCards({ ...job, first: 4 });
    expect(manifest.pieces[0]?.boxMm).toEqual([110, 67.5, 85, 54]);
  });

  test('the place is printed when the content has none', async () => {
    const { manifest } = await printCards({
      ...job,
      cards: [{ content: cardOf(1, SPARSE), place: 'Rack 4 · Tub 17' }],
    });
    expect(manifest.pieces[0]?.lines).toContain('Rack 4 · Tub 17');
  });

  test('a single card fills its own page', async () => {
    const single = stockById('card-70x52');
    if (!single.ok) throw new RangeError(single.problem.message);
    const { manifest } = await printCards({ ...job, cards: cards.slice(1, 3), stock: single.value });
    expect(manifest.pages).toHaveLength(manifest.pieces.length);
    for (const page of manifest.pages) expect(page).toEqual({ widthMm: 70, heightMm: 52 });
  });
});

describe('the own SHA-256', () => {
  // Source: FIPS 180-2, appendix B.1 and B.2, and the empty message of NIST's example values.
  test.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of “%s” is the published value', async (text, digest) => {
    expect(hexOf(await ownSha256(new TextEncoder().encode(text)))).toBe(digest);
  });

  test('law: it is Node’s', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
        expect(await ownSha256(bytes)).toEqual(await sha256(bytes));
      }),
    );
  });
});
