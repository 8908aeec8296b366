import { createHash } from 'node:crypto';
import {
  type CardToPrint,
  drawPieces,
  type LaidJob,
  layPieces,
  openTypeface,
  type PdfMaking,
  type PieceJob,
  pdfDrawing,
  printPieces,
  type Stock,
  stockById,
} from '../../print/index.ts';
import { loadFonts, sha256 } from '../../print/node/index.ts';
import { CROWDED, cardOf, FLAGS, onDay, SPARSE, USUAL } from '../print/cards.ts';
import { picturePdf, plainPdf } from './cardsPlain.ts';
import { handDrawing } from './handPdf.ts';
import { sayCount } from './timing.ts';

const CARDS = 10_000;
const ROUNDS = 3;
const HAND_GOAL = 1.15;
/** The slow ways are tried on fewer cards: each card costs them as much as the one before. */
const SOME_CARDS = 3_000;
const FEW_CARDS = 1_000;
const PLAIN_GOAL = 4;
const PICTURE_GOAL = 20;
const BYTES_GOAL = 420;

type Job = PieceJob & PdfMaking;

/**
 * Cards as PDF, in turns with each limit, by processor time: a file of the same operators put together by hand, pdfkit's
 * own calls, and a picture for each code. All are set by the same layout, and its time counts in each but where it says
 * otherwise: facts on pdfkit's calls are about drawing alone.
 */
export async function benchCards(): Promise<string[]> {
  const [many, some, unlike, few] = [
    await jobOf(CARDS),
    await jobOf(SOME_CARDS),
    await jobOf(SOME_CARDS, unlikeCard),
    await jobOf(FEW_CARDS),
  ];
  const hand = await inTurns(
    () => printed(many),
    () => byHand(many),
  );
  const laid = await laidOf(some);
  const drawing = await inTurns(
    () => drawnByUs(some, laid),
    () => plainPdf(some, laid, some.fonts, openTypeface(some.fonts)),
  );
  const plain = await inTurns(
    () => printed(some),
    () => drawn(some, plainPdf),
  );
  const plainUnlike = await inTurns(
    () => printed(unlike),
    () => drawn(unlike, plainPdf),
  );
  const pictures = await inTurns(
    () => printed(few),
    () => drawn(few, picturePdf),
  );
  const each = (bytes: number, cards: number) => Math.round(bytes / cards);
  return [
    `${sayCount(CARDS)} cards as PDF: ${hand.ratio.toFixed(2)} × a hand-written file of the same operators (goal ${HAND_GOAL}); ${sayCount(Math.round((CARDS / hand.ms) * 1000))} cards/s of processor time`,
    `${(1 / drawing.ratio).toFixed(1)} times as fast as pdfkit’s own calls for cards that are laid out (goal ${PLAIN_GOAL}); with laying them out counted in both, ${(1 / plain.ratio).toFixed(1)} times, and ${(1 / plainUnlike.ratio).toFixed(1)} times where no two cards are alike`,
    `${(1 / pictures.ratio).toFixed(1)} times as fast as a picture a code of 300 dots per inch (goal ${PICTURE_GOAL})`,
    `${each(pictures.bytes, FEW_CARDS)} bytes a card in a file of ${sayCount(FEW_CARDS)}, fonts included (goal ${BYTES_GOAL}), ${each(hand.bytes, CARDS)} in one of ${sayCount(CARDS)}, ${each(plainUnlike.bytes, SOME_CARDS)} where no two are alike; ${each(plain.limitBytes, SOME_CARDS)} by pdfkit’s own calls, ${each(pictures.limitBytes, FEW_CARDS)} with pictures`,
  ];
}

/** So many cards of the bench on sheets of ten. */
export async function jobOf(count: number, card: (n: number) => CardToPrint = cardAt): Promise<Job> {
  const stock = cardStock();
  const pieces = Array.from({ length: count }, (_none, n) => ({ card: card(n) }));
  return { pieces, stock, host: 'tubs.example', printedOn: onDay('2026-11-25'), fonts: await loadFonts(), sha256 };
}

export function cardStock(): Stock {
  const stock = stockById('a4-85x54');
  if (!stock.ok) throw new RangeError(stock.problem.message);
  return stock.value;
}

/** One card in ten crowded with flags, one in five sparse, the rest as usual. */
export function cardAt(n: number): CardToPrint {
  if (n % 10 === 0) return { content: cardOf(n, CROWDED, FLAGS) };
  return { content: n % 5 === 1 ? cardOf(n, SPARSE) : cardOf(n, USUAL, n % 4 === 0 ? FLAGS.slice(3) : []) };
}

const FIRST = [
  'Amber',
  'Bracken',
  'Cinder',
  'Dapple',
  'Ember',
  'Fennel',
  'Gorse',
  'Hazel',
  'Iris',
  'Juniper',
  'Kelp',
  'Larch',
];
const LAST = ['of the Lower Shelf', 'Nine', 'from the Long Room', 'the Second', 'Minor', 'at Dusk', 'in Rain'];

/** A card of a herd in which no two are alike: names, weights, days and places of their own. */
export function unlikeCard(n: number): CardToPrint {
  const [day, grams] = [(n % 28) + 1, 300 + ((n * 37) % 4_900)];
  const name = `${FIRST[n % FIRST.length]} ${LAST[n % LAST.length]} ${n}`;
  const weight = `${sayCount(grams)} g on ${day} Nov 2026, +${n % 90} g`;
  const place = `Room ${'ABCDE'[n % 5]} · Rack ${n % 40} · Tub ${(n * 7) % 61}`;
  const rows = USUAL.map((row): typeof row => {
    const [slot, rank, strong] = row;
    if (slot === 'name') return [slot, rank, strong, name, FIRST[n % FIRST.length] ?? name];
    if (slot === 'weight') return [slot, rank, strong, weight, `${sayCount(grams)} g on ${day} Nov`];
    if (slot === 'due') return [slot, rank, strong, `Due ${(n % 27) + 1} Dec 2026`];
    if (slot === 'dates') return [slot, rank, strong, `Hatched ${day} Jul ${2005 + (n % 20)} here`];
    return slot === 'place' ? [slot, rank, strong, place, `${n % 40}-${(n * 7) % 61}`] : row;
  });
  return { content: cardOf(n, rows, n % 4 === 0 ? FLAGS.slice(n % 3) : []) };
}

async function printed(job: Job): Promise<Uint8Array> {
  return (await printPieces(job)).pdf;
}

async function byHand(job: Job): Promise<Uint8Array> {
  const type = openTypeface(job.fonts);
  const paper = handDrawing(type, job.fonts);
  drawPieces(await layPieces(job, type), job, type, paper);
  const pdf = paper.finish();
  createHash('sha256').update(pdf).digest('hex');
  return pdf;
}

function laidOf(job: Job): ReturnType<typeof layPieces> {
  return layPieces(job, openTypeface(job.fonts));
}

/** Marks that are laid out already, to the bytes of a file. */
async function drawnByUs(job: Job, laid: LaidJob): Promise<Uint8Array> {
  const type = openTypeface(job.fonts);
  const drawing = pdfDrawing(type);
  drawPieces(laid, job, type, drawing);
  return drawing.finish({ title: 'Cards', on: job.printedOn, content: String(laid.faces.length) });
}

async function drawn(job: Job, draw: typeof plainPdf): Promise<Uint8Array> {
  const type = openTypeface(job.fonts);
  return draw(job, await layPieces(job, type), job.fonts, type);
}

interface Compared {
  /** Ours in parts of the limit. */
  readonly ratio: number;
  readonly ms: number;
  readonly bytes: number;
  readonly limitBytes: number;
}

/** The least of some rounds, ours and the limit's in turns; a first round of both does not count. */
async function inTurns(ours: () => Promise<Uint8Array>, limit: () => Promise<Uint8Array>): Promise<Compared> {
  let [ms, limitMs] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [bytes, limitBytes] = [0, 0];
  for (let round = 0; round <= ROUNDS; round++) {
    const [one, two] = [await timed(ours), await timed(limit)];
    [bytes, limitBytes] = [one.bytes, two.bytes];
    if (round > 0) [ms, limitMs] = [Math.min(ms, one.ms), Math.min(limitMs, two.ms)];
  }
  return { ratio: ms / limitMs, ms, bytes, limitBytes };
}

/** Processor time and not the clock's: whatever else the machine does must not count. Each turn starts with a clean heap. */
async function timed(work: () => Promise<Uint8Array>): Promise<{ ms: number; bytes: number }> {
  globalThis.gc?.();
  const start = process.cpuUsage();
  const pdf = await work();
  const { user, system } = process.cpuUsage(start);
  return { ms: (user + system) / 1000, bytes: pdf.length };
}
