import { describe, expect, test } from 'vitest';
import { PRINTERS, printCards, stockById } from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { CROWDED, cardOf, FLAGS, onDay, SPARSE, USUAL } from './cards.ts';
import { withFile } from './paper.ts';
import { expectCodesWhereTheyStand, expectSoundFile, expectWordsWhereTheyBelong, SHEET_MARGIN } from './readBack.ts';

const fonts = await loadFonts();
const CARDS = Array.from({ length: 24 }, (_none, n) => {
  const lines = [SPARSE, USUAL, CROWDED, USUAL][n % 4] ?? SPARSE;
  return { content: cardOf(n, lines, FLAGS.slice(0, n % 5)) };
});

const RUNS = [
  ['a4-85x54', 'tubs.example', 'office-600'],
  ['a4-70x52', undefined, 'office-600'],
  ['letter-88.9x50.8', 'tubs.example', 'office-600'],
  ['a4-70x50.8', undefined, 'office-600'],
  ['card-85x54', 'tubs.example', 'thermal-203'],
  ['card-70x52', undefined, 'thermal-300'],
  ['card-85x54', undefined, 'thermal-8mm'],
] as const;

describe.each(RUNS)('cards on %s, host %s, printer %s', async (stockId, host, printerId) => {
  const stock = stockById(stockId);
  if (!stock.ok) throw new RangeError(stock.problem.message);
  const printer = PRINTERS.find(({ id }) => id === printerId);
  // A page each takes its time; every kind of card is among the first eight.
  const cards = stockId.startsWith('card-') ? CARDS.slice(0, 8) : CARDS;
  const job = { cards, stock: stock.value, printer, host, printedOn: onDay('2026-11-25'), fonts };
  const { pdf, manifest } = await printCards(job);

  test('every card is printed', () => {
    expect(manifest.left).toEqual([]);
    expect(new Set(manifest.pieces.map(({ id }) => id)).size).toBe(cards.length);
  });

  test('the file is sound and brings its own type', async () => {
    await withFile(pdf, expectSoundFile);
  });

  test('every code reads as the manifest says, where it says', async () => {
    await withFile(pdf, (path) => expectCodesWhereTheyStand(path, manifest));
  });

  test('every word stands on its card and outside the quiet zone, and none is missing', async () => {
    const margin = stockId.startsWith('card-') ? /^$/ : SHEET_MARGIN;
    await withFile(pdf, (path) => expectWordsWhereTheyBelong(path, manifest, margin));
  });
});
