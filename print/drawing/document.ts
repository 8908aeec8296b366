import type { CodeMark, Mark } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';
import type { Manifest, ManifestPiece, PieceKind } from '../manifest.ts';
import { hex, platformSha256 } from '../platform.ts';
import { ownSha256 } from '../sha256.ts';
import type { DrawnPage, PdfChoice, PdfDrawing } from './pdf.ts';

/** Whole pages that are nobody's labels: the PDF, what stands where, and the signs that the type lacks, which stand as their numbers. */
export interface PrintedDocument {
  readonly pdf: Uint8Array;
  readonly manifest: Manifest;
  readonly missing: readonly string[];
}

/** Ends a document: its bytes, and the table of contents of what was put on its pages. `paper` stands in the place of the stock. */
export async function finishDocument(
  drawing: PdfDrawing,
  { paper, kind, ...choice }: PdfChoice & { readonly paper: string; readonly kind: PieceKind },
): Promise<Omit<PrintedDocument, 'missing'>> {
  const pdf = await drawing.finish(choice);
  const digest = await (platformSha256() ?? ownSha256)(pdf);
  const pages = drawing.pages.map((page) => {
    const { widthMm, heightMm } = page;
    return { widthMm, heightMm, lines: linesOf(page) };
  });
  const pieces = drawing.pages.flatMap((page, at) => codesOf(page, at + 1, kind));
  return { pdf, manifest: { stock: paper, pages, pieces, left: [], sha256: hex(digest) } };
}

/** Every text, in the order in which it is drawn. */
function linesOf({ puts }: DrawnPage): readonly string[] {
  return puts.flatMap(([marks]) =>
    marks.flatMap((mark) => (mark.kind === 'text' && mark.text !== '' ? mark.text : [])),
  );
}

function codesOf({ puts, widthMm, heightMm }: DrawnPage, page: number, kind: PieceKind): readonly ManifestPiece[] {
  const codes = puts.flatMap(([marks, x, y]) => marks.filter(isCode).map((mark) => [mark, x, y] as const));
  return codes.flatMap(([{ opens, xMm, yMm, size, moduleMm }, x, y]) => {
    if (opens === undefined) return [];
    const side = rounded(size * moduleMm);
    return {
      kind,
      ...opens,
      page,
      boxMm: [0, 0, widthMm, heightMm],
      symbolMm: [rounded(xMm + x), rounded(yMm + y), side, side],
      symbology: 'qr',
      modules: size,
      lines: linesOf({ puts, widthMm, heightMm }),
      form: 'long',
      back: false,
    } as const;
  });
}

function isCode(mark: Mark): mark is CodeMark {
  return mark.kind === 'code';
}

function rounded(mm: number): number {
  return Math.round(mm * 1e4) / 1e4;
}

/** A measure that keeps in mind which signs it was asked for and does not have. */
export function noting<M extends Measure>(measure: M): { readonly measure: M; missing(): readonly string[] } {
  const lacking = new Set<string>();
  const read: Measure['read'] = (text, cut) => {
    const reading = measure.read(text, cut);
    for (const sign of reading.missing) lacking.add(sign);
    return reading;
  };
  return { measure: { ...measure, read }, missing: () => [...lacking] };
}
