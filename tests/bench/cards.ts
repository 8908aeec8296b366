import { createHash } from 'node:crypto';
import { drawPieces, layCards, openTypeface, printCards, stockById } from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { CROWDED, cardOf, FLAGS, onDay, SPARSE, USUAL } from '../print/cards.ts';
import { handDrawing } from './handPdf.ts';

const CARDS = 1000;
const ROUNDS = 9;
const WARM_UP = 3;
const GOAL = 1.3;

/** Cards as PDF against a file of the same operators put together by hand, in turns; the median of the rounds. */
export async function benchCards(): Promise<string[]> {
  const fonts = await loadFonts();
  const stock = stockById('a4-85x54');
  if (!stock.ok) throw new RangeError(stock.problem.message);
  const cards = Array.from({ length: CARDS }, (_none, n) => ({ content: contentOf(n) }));
  const job = { cards, stock: stock.value, host: 'tubs.example', printedOn: onDay('2026-11-25'), fonts };
  const byHand = async () => {
    const type = openTypeface(fonts);
    const paper = handDrawing(type, fonts);
    const pieces = drawPieces(await layCards(job, type), job, type, paper);
    const pdf = paper.finish();
    return { pdf, pieces, sha256: createHash('sha256').update(pdf).digest('hex') };
  };
  const ours: number[] = [];
  const hand: number[] = [];
  let bytes = 0;
  for (let round = 0; round < WARM_UP + ROUNDS; round++) {
    const one = await timed(() => printCards(job));
    const two = await timed(byHand);
    if (round < WARM_UP) continue;
    ours.push(one.ms);
    hand.push(two.ms);
    bytes = one.bytes;
  }
  const ratio = median(ours.map((ms, at) => ms / (hand[at] ?? ms)));
  return [
    `${CARDS} cards as PDF: ${ratio.toFixed(2)} × a hand-written file of the same operators (goal ${GOAL})`,
    `${Math.round((CARDS / median(ours)) * 1000)} cards/s against ${Math.round((CARDS / median(hand)) * 1000)} by hand, of processor time`,
    `${Math.round(bytes / CARDS)} bytes a card, fonts included`,
  ];
}

/** One card in ten crowded with flags, one in five sparse, the rest as usual. */
function contentOf(n: number) {
  if (n % 10 === 0) return cardOf(n, CROWDED, FLAGS);
  return n % 5 === 1 ? cardOf(n, SPARSE) : cardOf(n, USUAL, n % 4 === 0 ? FLAGS.slice(3) : []);
}

/** Processor time and not the clock's: whatever else the machine does must not count. Each turn starts with a clean heap. */
async function timed(work: () => Promise<{ readonly pdf: Uint8Array }>): Promise<{ ms: number; bytes: number }> {
  globalThis.gc?.();
  const start = process.cpuUsage();
  const { pdf } = await work();
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, bytes: pdf.length };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}
