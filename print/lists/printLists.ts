import { type ListSheet, sayDayShort } from '../../src/core/index.ts';
import { finishDocument, noting, type PrintedDocument } from '../drawing/document.ts';
import { pdfDrawing } from '../drawing/pdf.ts';
import { type FontBytes, openTypeface } from '../drawing/typeface.ts';
import { type BodyCorner, codeMark, stacked } from '../handOver/head.ts';
import { flow } from '../pack/flow.ts';
import { type Bench, type PagePiece, paragraph, space, table } from '../pack/pieces.ts';
import { PACK_PAPERS, type PackPaper } from '../pack/printPack.ts';
import { runningMarks } from '../pack/running.ts';

/** Lists to print, on what, and the site’s own host for their codes. */
export interface ListsPrint {
  readonly sheets: readonly ListSheet[];
  readonly paper: PackPaper;
  readonly fonts: FontBytes;
  readonly host: string | null;
  readonly compress?: boolean | undefined;
}

const EDGE_MM = { left: 14, right: 12, top: 18, bottom: 16 } as const;

/** Prints each list on pages of its own, its heads again on each. The same lists, paper and host give the same bytes. */
export async function printLists({ sheets, paper, fonts, host, compress }: ListsPrint): Promise<PrintedDocument> {
  const typeface = openTypeface(fonts);
  const size = PACK_PAPERS[paper];
  const [left, right] = [EDGE_MM.left, size.widthMm - EDGE_MM.right];
  const { measure, missing } = noting(typeface);
  const bench = { widthMm: right - left, measure };
  const drawing = pdfDrawing(typeface);
  for (const sheet of sheets) {
    const corner = { leftMm: EDGE_MM.left, topMm: EDGE_MM.top };
    const bodies = flow(piecesOf(sheet, bench, corner, host), size.heightMm - EDGE_MM.top - EDGE_MM.bottom);
    for (const [at, body] of bodies.entries()) {
      const foot: readonly [string, string] = [
        `Made on ${sayDayShort(sheet.on)} from the site’s own log · rev ${sheet.revision.slice(0, 4)}`,
        `page ${at + 1} of ${bodies.length}`,
      ];
      drawing.beginPage(size);
      drawing.put(body, EDGE_MM.left, EDGE_MM.top);
      drawing.put(runningMarks([sheet.site, sheet.title], [left, right], 10, measure), 0, 0);
      drawing.put(runningMarks(foot, [left, right], size.heightMm - 9, measure), 0, 0);
      drawing.endPage();
    }
  }
  const first = sheets[0];
  if (first === undefined) drawing.beginPage(size);
  if (first === undefined) drawing.endPage();
  const title = first?.title ?? 'No list';
  const on = first?.on ?? NO_DAY;
  const content = JSON.stringify([paper, host, sheets]);
  const made = await finishDocument(drawing, { paper, kind: 'list', title, on, content, compress });
  return { ...made, missing: missing() };
}

/** A file without lists has no day of its own. */
const NO_DAY = '1970-01-01' as ListSheet['on'];

function piecesOf(sheet: ListSheet, bench: Bench, corner: BodyCorner, host: string | null): readonly PagePiece[] {
  return [
    headOf(sheet, bench, corner, host),
    ...sheet.notes.map((note) => paragraph(note, bench, { gapMm: 1 })),
    space(3),
    ...table(sheet.columns, sheet.rows, bench),
  ];
}

function headOf(sheet: ListSheet, bench: Bench, corner: BodyCorner, host: string | null): PagePiece {
  const code = sheet.code === null ? null : codeMark(sheet.code, bench.widthMm, corner, host);
  const beside = code === null ? bench : { ...bench, widthMm: code.xMm - 6 };
  const words = stacked([
    paragraph(sheet.title, beside, { sizePt: 20, cut: 'bold', gapMm: 0 }),
    paragraph(sheet.under, beside, { sizePt: 11, gapMm: 1 }),
  ]);
  if (code === null) return words;
  return { heightMm: Math.max(words.heightMm, code.size * code.moduleMm + 4), marks: [...words.marks, code] };
}
