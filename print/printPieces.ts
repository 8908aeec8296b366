import {
  type CardContent,
  type CardLine,
  type Day,
  type LabelContent,
  ok,
  type Problem,
  type Result,
} from '../src/core/index.ts';
import type { Drawing } from './drawing/drawing.ts';
import { pdfDrawing } from './drawing/pdf.ts';
import { rulerMarks } from './drawing/ruler.ts';
import { type FontBytes, openTypeface } from './drawing/typeface.ts';
import { type Face, layCard } from './layout/card.ts';
import { type CodeRoom, cardFrame, type Frame } from './layout/frame.ts';
import { layLabel } from './layout/label.ts';
import type { Measure } from './layout/measure.ts';
import type { LeftOut, Manifest, ManifestPiece, PieceKind } from './manifest.ts';
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

/** Anything that goes on a label of a stock. */
export type PieceToPrint = { readonly card: CardToPrint } | { readonly label: LabelContent };

/** On what, and how. */
export interface Paper {
  readonly stock: Stock;
  readonly printer?: PrinterProfile | undefined;
  /** The first free label of a used sheet, from 1. */
  readonly first?: number | undefined;
  readonly order?: Order | undefined;
  /** The site's own host, for codes that a phone's camera can follow. */
  readonly host?: string | undefined;
  readonly printedOn: Day;
}

/** What to print, on what, and how. Pieces come in the order in which they are put up. */
export interface PieceJob extends Paper {
  readonly pieces: readonly PieceToPrint[];
}

/** What makes a file of a job. */
export interface PdfMaking {
  readonly fonts: FontBytes;
  readonly compress?: boolean | undefined;
  /** Taken instead of the platform's. */
  readonly sha256?: Sha256 | undefined;
}

/** A face ready for a label. */
export interface LaidFace {
  readonly kind: PieceKind;
  readonly id: string;
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

const PIECES_A_BREATH = 200;

/** Sets every piece and gives each face its label; a piece that cannot be printed whole is left out and named. */
export async function layPieces(job: PieceJob, measure: Measure): Promise<LaidJob> {
  const sound = checkStock(job.stock);
  if (!sound.ok) return nothing(job, sound.problem);
  const faces: LaidFace[] = [];
  const left: LeftOut[] = [];
  const layOne = layer(job, measure);
  for (const [at, piece] of job.pieces.entries()) {
    const laid = layOne(piece);
    if ('problem' in laid) left.push({ id: laid.id, why: inWords(laid.problem) });
    else faces.push(...laid.faces);
    if (at % PIECES_A_BREATH === PIECES_A_BREATH - 1) await breathe();
  }
  const places = slots(job.stock, faces.length, job);
  if (!places.ok) return nothing(job, places.problem);
  const placed = faces.flatMap((face, at) => (places.value[at] ? [{ ...face, slot: places.value[at] }] : []));
  return { faces: placed, pageCount: placed.reduce((most, { slot }) => Math.max(most, slot.page), 1), left };
}

/** Draws laid pieces page by page; gives them back in their own order. */
export function drawPieces(
  laid: LaidJob,
  { stock, printer = OFFICE_600 }: Pick<Paper, 'stock' | 'printer'>,
  measure: Measure,
  drawing: Drawing,
): readonly ManifestPiece[] {
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

/**
 * Prints pieces: the PDF's bytes and the manifest of what stands where. The same job gives the same bytes. Whatever
 * could not be printed is named in `left`, in words; a job of which nothing could be printed gives one empty sheet.
 */
export async function printPieces(
  job: PieceJob & PdfMaking,
): Promise<{ readonly pdf: Uint8Array; readonly manifest: Manifest }> {
  const typeface = openTypeface(job.fonts);
  const laid = await layPieces(job, typeface);
  const drawing = pdfDrawing(typeface);
  const pieces = drawPieces(laid, job, typeface, drawing);
  const title = `${job.pieces.some((piece) => 'label' in piece) ? 'Labels' : 'Cards'} on ${job.stock.id}`;
  const content = JSON.stringify([job.stock, job.printer ?? OFFICE_600, pieces.map(said)]);
  const pdf = await drawing.finish({ title, on: job.printedOn, content, compress: job.compress });
  const digest = await (job.sha256 ?? platformSha256() ?? ownSha256)(pdf);
  const pages = drawing.pages.map(({ widthMm, heightMm }) => ({ widthMm, heightMm }));
  return { pdf, manifest: { stock: job.stock.id, pages, pieces, left: laid.left, sha256: hex(digest) } };
}

type LaidPiece = { readonly faces: readonly LaidFace[] } | { readonly id: string; readonly problem: Problem };

/** Sets one piece after the other; what all cards of a job share is worked out once. */
function layer(job: PieceJob, measure: Measure): (piece: PieceToPrint) => LaidPiece {
  const { stock, printer = OFFICE_600, printedOn, host } = job;
  const frameFor = frames(stock, printer);
  const cardFaces = (content: CardContent): Result<readonly LaidFace[]> => {
    const symbol = qrSymbol(qrPayload(content.id, host));
    const frame = frameFor(symbol.size);
    const laid = layCard(content, { frame, measure, printedOn, stockId: stock.id });
    if (!laid.ok) return laid;
    return ok(laid.value.map((face) => ({ kind: 'card', id: content.id, face, code: frame.code, symbol })));
  };
  const labelFaces = (label: LabelContent): Result<readonly LaidFace[]> => {
    const laid = layLabel(label, { stock, printer, measure, printedOn, host });
    return laid.ok ? ok([{ kind: label.kind, id: label.id, ...laid.value }]) : laid;
  };
  return (piece) => {
    const content = 'card' in piece ? withPlace(piece.card) : piece.label;
    const laid = 'kind' in content ? labelFaces(content) : cardFaces(content);
    return laid.ok ? { faces: laid.value } : { id: content.id, problem: laid.problem };
  };
}

function drawFace(laid: LaidFace & { readonly slot: Slot }, printer: PrinterProfile, drawing: Drawing): ManifestPiece {
  const { kind, id, face, code, symbol, slot } = laid;
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
    kind,
    id,
    payload: symbol.payload,
    page: slot.page,
    boxMm: slot.boxMm,
    symbolMm: rounded([xMm, yMm, code.sizeMm, code.sizeMm]),
    symbology: 'qr',
    modules: symbol.size,
    lines: face.lines,
    form: face.form,
    back: face.back,
  };
}

/** Where a piece stands and what it says: all else on it follows from this. */
function said({ page, boxMm, payload, form, lines }: ManifestPiece): readonly unknown[] {
  return [page, boxMm[0], boxMm[1], payload, form, lines];
}

function frames(stock: Stock, printer: PrinterProfile): (symbolSize: number) => Frame {
  const known = new Map<number, Frame>();
  return (size) => {
    const frame = known.get(size) ?? cardFrame(stock, size, printer);
    known.set(size, frame);
    return frame;
  };
}

function withPlace({ content, place }: CardToPrint): CardContent {
  if (!place || content.lines.some((line) => line.slot === 'place')) return content;
  const line: CardLine = { slot: 'place', long: place, medium: place, short: place, strong: false, rank: 2 };
  return { ...content, lines: [...content.lines, line] };
}

function nothing(job: PieceJob, problem: Problem): LaidJob {
  const ids = job.pieces.map((piece) => ('card' in piece ? piece.card.content.id : piece.label.id));
  return { faces: [], pageCount: 1, left: ids.map((id) => ({ id, why: inWords(problem) })) };
}

function inWords(problem: Problem): string {
  return `${problem.message} ${problem.remedy}`;
}

function rounded([x, y, width, height]: BoxMm): BoxMm {
  const round = (mm: number) => Math.round(mm * 1e4) / 1e4;
  return [round(x), round(y), round(width), round(height)];
}
