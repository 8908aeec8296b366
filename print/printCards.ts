import type { CardContent, CardLine, Day, Problem } from '../src/core/index.ts';
import type { Drawing } from './drawing/drawing.ts';
import { pdfDrawing } from './drawing/pdf.ts';
import { rulerMarks } from './drawing/ruler.ts';
import { type FontBytes, openTypeface } from './drawing/typeface.ts';
import { type Face, layCard } from './layout/card.ts';
import { type CodeRoom, cardFrame, type Frame } from './layout/frame.ts';
import type { Measure } from './layout/measure.ts';
import type { LeftOut, Manifest, ManifestPiece } from './manifest.ts';
import { breathe, hex, platformSha256, type Sha256 } from './platform.ts';
import { qrPayload } from './qr/payload.ts';
import { OFFICE_600, type PrinterProfile, snapMm } from './qr/profiles.ts';
import { darkRectangles } from './qr/rectangles.ts';
import { type QrSymbol, qrSymbol } from './qr/symbol.ts';
import { ownSha256 } from './sha256.ts';
import { type Order, type Slot, slots } from './stocks/slots.ts';
import { type BoxMm, checkStock, type Stock } from './stocks/stock.ts';

/** A card to print; `place` stands on it when the content has no line for the place. */
export interface CardToPrint {
  readonly content: CardContent;
  readonly place?: string | undefined;
}

/** What to print, on what, and how. Cards come in walking order. */
export interface CardJob {
  readonly cards: readonly CardToPrint[];
  readonly stock: Stock;
  readonly printer?: PrinterProfile | undefined;
  /** The first free label of a used sheet, from 1. */
  readonly first?: number | undefined;
  readonly order?: Order | undefined;
  /** The site's own host, for codes that a phone's camera can follow. */
  readonly host?: string | undefined;
  readonly printedOn: Day;
}

/** A face ready for a label. */
export interface LaidFace {
  readonly content: CardContent;
  readonly face: Face;
  readonly code: CodeRoom;
  readonly symbol: QrSymbol;
}

/** Faces on their slots, and what was left out. */
export interface LaidJob {
  readonly faces: readonly (LaidFace & { readonly slot: Slot })[];
  readonly pageCount: number;
  readonly left: readonly LeftOut[];
}

const CARDS_A_BREATH = 200;

/** Sets every card and gives each face its label; a card that cannot be printed whole is left out and named. */
export async function layCards(job: CardJob, measure: Measure): Promise<LaidJob> {
  const sound = checkStock(job.stock);
  if (!sound.ok) return nothing(job, sound.problem);
  const faces: LaidFace[] = [];
  const left: LeftOut[] = [];
  const frameFor = frames(job);
  for (const [at, card] of job.cards.entries()) {
    const content = withPlace(card);
    const symbol = qrSymbol(qrPayload(content.id, job.host));
    const frame = frameFor(symbol.size);
    const laid = layCard(content, { frame, measure, printedOn: job.printedOn, stockId: job.stock.id });
    if (laid.ok) for (const face of laid.value) faces.push({ content, face, code: frame.code, symbol });
    else left.push({ id: content.id, why: inWords(laid.problem) });
    if (at % CARDS_A_BREATH === CARDS_A_BREATH - 1) await breathe();
  }
  const places = slots(job.stock, faces.length, job);
  if (!places.ok) return nothing(job, places.problem);
  const placed = faces.flatMap((face, at) => (places.value[at] ? [{ ...face, slot: places.value[at] }] : []));
  return { faces: placed, pageCount: placed.reduce((most, { slot }) => Math.max(most, slot.page), 1), left };
}

/** Draws laid cards page by page; gives back the pieces in the cards' order. */
export function drawCards(laid: LaidJob, job: CardJob, measure: Measure, drawing: Drawing): readonly ManifestPiece[] {
  const { stock, printer = OFFICE_600 } = job;
  const pages: (typeof laid.faces)[number][][] = Array.from({ length: laid.pageCount }, () => []);
  const pieces = new Map<LaidFace, ManifestPiece>();
  for (const face of laid.faces) pages[face.slot.page - 1]?.push(face);
  for (const [at, faces] of pages.entries()) {
    drawing.beginPage({ widthMm: stock.pageWidthMm, heightMm: stock.pageHeightMm });
    drawing.put(rulerMarks(stock, at + 1, pages.length, measure), 0, 0);
    for (const face of faces) pieces.set(face, drawFace(face, printer, drawing));
    drawing.endPage();
  }
  return laid.faces.flatMap((face) => pieces.get(face) ?? []);
}

function drawFace(laid: LaidFace & { readonly slot: Slot }, printer: PrinterProfile, drawing: Drawing): ManifestPiece {
  const { content, face, code, symbol, slot } = laid;
  const [x, y] = slot.boxMm;
  const [xMm, yMm] = [snapMm(x + code.xMm, printer), snapMm(y + code.yMm, printer)];
  const { moduleMm, insetModules } = code;
  drawing.put(
    [{ kind: 'code', xMm, yMm, moduleMm, insetModules, size: symbol.size, rectangles: darkRectangles(symbol) }],
    0,
    0,
  );
  drawing.put(face.marks, x, y);
  return {
    kind: 'card',
    id: content.id,
    payload: symbol.payload,
    page: slot.page,
    boxMm: slot.boxMm,
    symbolMm: rounded([xMm, yMm, code.sizeMm, code.sizeMm]),
    symbology: 'qr',
    lines: face.lines,
    form: face.form,
    back: face.back,
  };
}

/**
 * Prints cards: the PDF's bytes and the manifest of what stands where. The same job gives the same bytes. Whatever
 * could not be printed is named in `left`, in words; a job of which nothing could be printed gives one empty sheet.
 */
export async function printCards(
  job: CardJob & {
    readonly fonts: FontBytes;
    readonly compress?: boolean | undefined;
    /** Taken instead of the platform's. */
    readonly sha256?: Sha256 | undefined;
  },
): Promise<{ readonly pdf: Uint8Array; readonly manifest: Manifest }> {
  const typeface = openTypeface(job.fonts);
  const laid = await layCards(job, typeface);
  const drawing = pdfDrawing(typeface);
  const pieces = drawCards(laid, job, typeface, drawing);
  const title = `Cards on ${job.stock.id}`;
  const content = JSON.stringify([job.stock, job.printer ?? OFFICE_600, pieces.map(said)]);
  const pdf = await drawing.finish({ title, on: job.printedOn, content, compress: job.compress });
  const digest = await (job.sha256 ?? platformSha256() ?? ownSha256)(pdf);
  const pages = drawing.pages.map(({ widthMm, heightMm }) => ({ widthMm, heightMm }));
  return { pdf, manifest: { stock: job.stock.id, pages, pieces, left: laid.left, sha256: hex(digest) } };
}

/** Where a piece stands and what it says: all else on it follows from this. */
function said({ page, boxMm, payload, form, lines }: ManifestPiece): readonly unknown[] {
  return [page, boxMm[0], boxMm[1], payload, form, lines];
}

function frames(job: CardJob): (symbolSize: number) => Frame {
  const known = new Map<number, Frame>();
  return (size) => {
    const frame = known.get(size) ?? cardFrame(job.stock, size, job.printer ?? OFFICE_600);
    known.set(size, frame);
    return frame;
  };
}

function withPlace({ content, place }: CardToPrint): CardContent {
  if (!place || content.lines.some((line) => line.slot === 'place')) return content;
  const line: CardLine = { slot: 'place', long: place, medium: place, short: place, strong: false, rank: 2 };
  return { ...content, lines: [...content.lines, line] };
}

function nothing(job: CardJob, problem: Problem): LaidJob {
  return { faces: [], pageCount: 1, left: job.cards.map(({ content }) => ({ id: content.id, why: inWords(problem) })) };
}

function inWords(problem: Problem): string {
  return `${problem.message} ${problem.remedy}`;
}

function rounded([x, y, width, height]: BoxMm): BoxMm {
  const round = (mm: number) => Math.round(mm * 1e4) / 1e4;
  return [round(x), round(y), round(width), round(height)];
}
