import {
  type CardContent,
  type CardLine,
  fingerprint,
  type LabelContent,
  ok,
  type Problem,
  problem,
  type Result,
} from '../src/core/index.ts';
import { placing } from './calibration/calibration.ts';
import type { Drawing } from './drawing/drawing.ts';
import { type PdfFile, pdfFile } from './drawing/pdfFile.ts';
import { openTypeface } from './drawing/typeface.ts';
import { layCard } from './layout/card.ts';
import { cardFrame, type Frame } from './layout/frame.ts';
import { layLabelFaces } from './layout/label.ts';
import type { Measure } from './layout/measure.ts';
import { spelled } from './layout/spelling.ts';
import {
  type LeftOut,
  type Manifest,
  type ManifestPiece,
  PAGES_LEFT,
  type PartOfRun,
  type Warning,
} from './manifest.ts';
import { breathe, hex, joined, platformSha256 } from './platform.ts';
import { qrPayload } from './qr/payload.ts';
import { OFFICE_600, type PrinterProfile } from './qr/profiles.ts';
import { qrSymbol } from './qr/symbol.ts';
import { drawSide, type Press, pageSize } from './run/drawSide.ts';
import type {
  CardToPrint,
  LaidFace,
  LaidJob,
  Paper,
  PdfMaking,
  PieceJob,
  PieceToPrint,
  PlacedFace,
  SheetSide,
} from './run/job.ts';
import { checkPaper, sheetSides } from './run/sheets.ts';
import { ownSha256 } from './sha256.ts';
import type { Stock } from './stocks/stock.ts';

/** Sets every piece and gives each face its label; a piece that cannot be printed whole is left out and named. */
export async function layPieces(job: PieceJob, measure: Measure): Promise<LaidJob> {
  const told = tidings();
  const faces: PlacedFace[] = [];
  let pageCount = 1;
  for await (const side of sidesOf(job, measure, told)) {
    faces.push(...side.faces);
    pageCount = side.page;
  }
  return { faces: faces.sort((a, b) => a.at - b.at), pageCount, left: told.left, warnings: told.warnings };
}

/** Draws laid pieces page by page; gives them back in their own order. */
export function drawPieces(
  laid: LaidJob,
  paper: Omit<Paper, 'printedOn'>,
  measure: Measure,
  drawing: Drawing,
): readonly ManifestPiece[] {
  const sides = Array.from({ length: laid.pageCount }, (_none, at) => {
    const isBack = paper.flip !== undefined && at % 2 === 1;
    const sheet = paper.flip === undefined ? at + 1 : Math.floor(at / 2) + 1;
    return { page: at + 1, sheet, isBack, faces: [] as PlacedFace[] };
  });
  for (const face of laid.faces) sides[face.slot.page - 1]?.faces.push(face);
  const press = pressOf(paper, measure);
  const pieces: ManifestPiece[] = [];
  for (const side of sides) {
    for (const [at, piece] of drawSide(side, press, drawing).entries()) pieces[side.faces[at]?.at ?? 0] = piece;
    drawing.endPage();
  }
  return pieces;
}

/**
 * Prints pieces: the PDF's bytes and the manifest of what stands where. The same job gives the same bytes. Whatever
 * could not be printed is named in `left`, in words; a job of which nothing could be printed gives one empty sheet.
 */
export async function printPieces(
  job: PieceJob & PdfMaking,
): Promise<{ readonly pdf: Uint8Array; readonly manifest: Manifest }> {
  const chunks: Uint8Array[] = [];
  const pieces: (readonly [at: number, piece: ManifestPiece])[] = [];
  const { pages, left, warnings, part } = await printInto(job, {
    bytes: (bytes) => chunks.push(bytes),
    piece: (piece, at) => pieces.push([at, piece]),
  });
  const pdf = joined(chunks);
  const digest = await (job.sha256 ?? platformSha256() ?? ownSha256)(pdf);
  const inOrder = pieces.sort(([a], [b]) => a - b).map(([, piece]) => piece);
  const { widthMm, heightMm } = pageSize(job.stock, job.printer ?? OFFICE_600);
  const round = (mm: number) => Math.round(mm * 1e4) / 1e4;
  const size = { widthMm: round(widthMm), heightMm: round(heightMm) };
  const manifest: Manifest = {
    stock: job.stock.id,
    pages: Array.from({ length: pages }, () => size),
    pieces: inOrder,
    left,
    ...(warnings.length === 0 ? {} : { warnings }),
    ...(part === null ? {} : { part }),
    sha256: hex(digest),
  };
  return { pdf, manifest };
}

/** Where a run goes that is too long to be kept: its bytes, and each piece's place, as they come. */
export interface PrintSink {
  bytes(bytes: Uint8Array): void;
  /** `at` counts the faces of the run in the order of its pieces. */
  piece(piece: ManifestPiece, at: number): void;
}

/** What is known at the end of a run. */
export interface PrintEnd {
  /** In the file. */
  readonly pages: number;
  /** What the file holds of the run; null for all of it. */
  readonly part: PartOfRun | null;
  readonly left: readonly LeftOut[];
  readonly warnings: readonly Warning[];
}

/**
 * Prints pieces into a sink, see {@link printPieces}: in walking order a run of any length takes no more memory than a
 * short one. Pieces come page by page.
 */
export async function printInto(job: PieceJob & Omit<PdfMaking, 'sha256'>, sink: PrintSink): Promise<PrintEnd> {
  const measure = openTypeface(job.fonts);
  const told = tidings();
  const title = `${job.pieces.some((piece) => 'label' in piece) ? 'Labels' : 'Cards'} on ${job.stock.id}`;
  const { printedOn: on, compress } = job;
  const file = pdfFile(measure, { title, on, compress, onBytes: sink.bytes });
  const press = pressOf(job, measure);
  const [from, to] = job.pages ?? [1, Number.POSITIVE_INFINITY];
  let content = fingerprint(JSON.stringify([job.stock, press.printer, job.calibration ?? null, job.pages ?? null]));
  let [last, pages] = [0, 0];
  for await (const side of sidesOf(job, measure, told)) {
    last = side.page;
    const isWanted = side.page >= from && side.page <= to;
    // Pages before the wanted ones are drawn too, so that every sign has the code that it has in the whole run.
    if (side.page > to) continue;
    const drawn = drawSide(side, press, file);
    if (!isWanted) {
      file.skipPage();
      continue;
    }
    file.endPage();
    pages++;
    for (const [at, piece] of drawn.entries()) {
      content = fingerprint(`${content}${JSON.stringify(said(piece))}`);
      sink.piece(job.pages ? { ...piece, page: piece.page - from + 1 } : piece, side.faces[at]?.at ?? 0);
    }
    if (pages % PAGES_A_BREATH === 0) await breathe();
  }
  if (pages === 0) blankPage(job, file, told, last);
  const sheets = job.flip === undefined ? last : last / 2;
  await file.finish({ content, total: String(sheets) });
  return {
    pages: Math.max(1, pages),
    part: job.pages ? { from, of: last } : null,
    left: told.left,
    warnings: told.warnings,
  };
}

const PAGES_A_BREATH = 20;

interface Tidings {
  readonly left: LeftOut[];
  readonly warnings: Warning[];
}

function tidings(): Tidings {
  return { left: [], warnings: [] };
}

/** A file needs a page; a run that has none of those asked for says so. */
function blankPage({ stock, printer = OFFICE_600, pages }: PieceJob, file: PdfFile, told: Tidings, last: number): void {
  file.beginPage(pageSize(stock, printer));
  file.endPage();
  const asked = pages ? `${pages[0]}–${pages[1]}` : '';
  told.left.push({ id: `${PAGES_LEFT}${asked}`, why: inWords(problem('page-unknown', { asked, last })) });
}

function pressOf(paper: Omit<Paper, 'printedOn'>, measure: Measure): Press {
  const { stock, printer = OFFICE_600, calibration } = paper;
  return {
    stock,
    printer,
    place: placing(stock, printer, calibration),
    isCalibrated: calibration !== undefined,
    cutMarks: paper.cutMarks ?? false,
    measure,
  };
}

/** The sides of a job's sheets; paper that nothing can be laid on gives one empty side, and leaves every piece out. */
async function* sidesOf(job: PieceJob, measure: Measure, told: Tidings): AsyncGenerator<SheetSide> {
  const sound = checkPaper(job);
  if (sound.ok) return yield* sheetSides(job, laidPieces(job, measure, told));
  const why = inWords(sound.problem);
  for (const piece of job.pieces) told.left.push({ id: idOf(piece), why });
  yield { page: 1, sheet: 1, isBack: false, faces: [] };
}

/** The faces of each piece, one piece after the other; what is left out has none. */
function* laidPieces(job: PieceJob, measure: Measure, told: Tidings): Generator<readonly LaidFace[]> {
  const layOne = layer(job, measure);
  for (const piece of job.pieces) {
    const { id, faces, warnings } = layOne(piece);
    if (!faces.ok) told.left.push({ id, why: inWords(faces.problem) });
    else for (const warning of warnings) told.warnings.push({ id, why: inWords(warning) });
    yield faces.ok ? faces.value : [];
  }
}

interface LaidPiece {
  readonly id: string;
  readonly faces: Result<readonly LaidFace[]>;
  /** What is printed otherwise than it was written. */
  readonly warnings: readonly Problem[];
}

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
    const laid = layLabelFaces(label, { stock, printer, measure, printedOn, host });
    return laid.ok ? ok(laid.value.map((face) => ({ kind: label.kind, id: label.id, ...face }))) : laid;
  };
  return (piece) => {
    const content = 'card' in piece ? withPlace(piece.card) : piece.label;
    const faces = 'kind' in content ? labelFaces(content) : cardFaces(content);
    if (!faces.ok) return { id: content.id, faces, warnings: [] };
    const lacksBar = 'kind' in content && faces.value.some((face) => face.lacksBar);
    const barless = lacksBar ? problem('bar-left-off', { what: content.called, stock: stock.id }) : null;
    const warnings = [spelledIn(content, measure), barless].filter((one) => one !== null);
    return { id: content.id, faces, warnings };
  };
}

function spelledIn(content: CardContent | LabelContent, measure: Measure): Problem | null {
  const lines = content.lines.map((line) => ({
    forms: line,
    cut: line.strong ? ('bold' as const) : ('regular' as const),
  }));
  if ('kind' in content) return spelled(content.called, lines, measure);
  const flags = content.flags.map((flag) => ({ forms: flag, cut: 'bold' as const }));
  return spelled(`card ${content.display}`, [...lines, ...flags], measure);
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

function idOf(piece: PieceToPrint): string {
  return 'card' in piece ? piece.card.content.id : piece.label.id;
}

function inWords(problem: Problem): string {
  return `${problem.message} ${problem.remedy}`;
}
