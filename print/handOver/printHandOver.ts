import { type HandOver, sayDayShort } from '../../src/core/index.ts';
import { finishDocument, noting, type PrintedDocument } from '../drawing/document.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { pdfDrawing } from '../drawing/pdf.ts';
import { type FontBytes, openTypeface } from '../drawing/typeface.ts';
import type { Measure } from '../layout/measure.ts';
import { flow, type PageBody } from '../pack/flow.ts';
import { PACK_PAPERS, type PackPaper } from '../pack/printPack.ts';
import { runningMarks } from '../pack/running.ts';
import { sheetPieces } from './sheet.ts';

/** A hand-over sheet to print, on what, and the site’s own host for its code. */
export interface HandOverPrint {
  readonly sheet: HandOver;
  readonly paper: PackPaper;
  readonly fonts: FontBytes;
  readonly host: string | null;
  readonly compress?: boolean | undefined;
}

const EDGE_MM = { left: 18, right: 15, top: 19, bottom: 16 } as const;

/** Prints a hand-over sheet: every word of it, on as many pages as it needs. The same sheet, paper and host give the same bytes. */
export async function printHandOver({ sheet, paper, fonts, host, compress }: HandOverPrint): Promise<PrintedDocument> {
  const typeface = openTypeface(fonts);
  const { widthMm, heightMm } = PACK_PAPERS[paper];
  const { measure, missing } = noting(typeface);
  const bench = { widthMm: widthMm - EDGE_MM.left - EDGE_MM.right, measure };
  const corner = { leftMm: EDGE_MM.left, topMm: EDGE_MM.top };
  const pages = flow(sheetPieces(sheet, bench, corner, host), heightMm - EDGE_MM.top - EDGE_MM.bottom);
  const drawing = pdfDrawing(typeface);
  for (const [at, body] of pages.entries())
    drawPage(body, { sheet, paper, at: at + 1, of: pages.length }, measure, drawing);
  const content = JSON.stringify([paper, host, sheet]);
  const title = `Hand-over sheet, ${sheet.called}`;
  const made = await finishDocument(drawing, { paper, kind: 'hand-over', title, on: sheet.on, content, compress });
  return { ...made, missing: missing() };
}

interface PagePlace {
  readonly sheet: HandOver;
  readonly paper: PackPaper;
  readonly at: number;
  readonly of: number;
}

function drawPage(body: PageBody, { sheet, paper, at, of }: PagePlace, measure: Measure, drawing: Drawing): void {
  const size = PACK_PAPERS[paper];
  const [left, right] = [EDGE_MM.left, size.widthMm - EDGE_MM.right];
  const foot = size.heightMm - 9;
  const made = `Made on ${sayDayShort(sheet.on)} from the site’s own log · rev ${sheet.revision.slice(0, 4)}`;
  drawing.beginPage(size);
  drawing.put(body, EDGE_MM.left, EDGE_MM.top);
  drawing.put(
    [
      ...runningMarks([sheet.site, `${sheet.called} · ${sheet.display}`], [left, right], 10, measure),
      { kind: 'rule', xMm: left, yMm: foot - 4.2, widthMm: right - left, heightMm: 0.1 },
      ...runningMarks([made, `page ${at} of ${of}`], [left, right], foot, measure),
    ],
    0,
    0,
  );
  drawing.endPage();
}
