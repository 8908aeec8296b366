import { type HandOver, type Id, sayDay } from '../../src/core/index.ts';
import type { CodeMark, Mark } from '../layout/marks.ts';
import { type Bench, type PagePiece, paragraph } from '../pack/pieces.ts';
import { qrPayload } from '../qr/payload.ts';
import { moduleMm, OFFICE_600, snapMm } from '../qr/profiles.ts';
import { darkRectangles } from '../qr/rectangles.ts';
import { QUIET_MODULES, qrSymbol } from '../qr/symbol.ts';

/** The code with its quiet zone: as large as on a card, so that a phone reads it from the same distance. */
const BLOCK_MM = 27;

/** Where the body begins on the page, since a code’s dots are set by the page. */
export interface BodyCorner {
  readonly leftMm: number;
  readonly topMm: number;
}

/** Who the sheet is about, with the code that opens the record, and whose sheet it is. */
export function headPiece(sheet: HandOver, bench: Bench, corner: BodyCorner, host: string | null): PagePiece {
  const code = codeMark(sheet.id, bench.widthMm, corner, host);
  const beside: Bench = { ...bench, widthMm: code.xMm - code.moduleMm * QUIET_MODULES - 1 };
  const lines = [
    paragraph('Hand-over sheet', beside, { sizePt: 10, gapMm: 0 }),
    paragraph(sheet.called, beside, { sizePt: 22, cut: 'bold', gapMm: 0.5 }),
    paragraph(sheet.species, beside, { sizePt: 12, gapMm: 0.5 }),
    paragraph(sheet.display, beside, { sizePt: 15, cut: 'bold', gapMm: 1 }),
    paragraph(`${sheet.site}, ${sayDay(sheet.on)}`, beside, { sizePt: 10, gapMm: 1.5 }),
  ];
  const words = stacked(lines);
  const codeEnd = code.yMm + code.size * code.moduleMm + code.moduleMm * QUIET_MODULES;
  return { heightMm: Math.max(words.heightMm, codeEnd), marks: [...words.marks, code] };
}

/** Strips one below the other as one strip. */
export function stacked(pieces: readonly PagePiece[]): PagePiece {
  const marks: Mark[] = [];
  let heightMm = 0;
  for (const piece of pieces) {
    for (const mark of piece.marks) marks.push({ ...mark, yMm: mark.yMm + heightMm });
    heightMm += piece.heightMm;
  }
  return { heightMm, marks };
}

/** The code of an id at the right of a page’s body, on the printer’s dots. */
export function codeMark(id: Id, widthMm: number, { leftMm, topMm }: BodyCorner, host: string | null): CodeMark {
  const payload = qrPayload(id, host ?? undefined);
  const symbol = qrSymbol(payload);
  const module = moduleMm(symbol.size, BLOCK_MM, OFFICE_600);
  const right = widthMm - symbol.size * module;
  return {
    kind: 'code',
    xMm: snapMm(leftMm + right, OFFICE_600) - leftMm,
    yMm: snapMm(topMm, OFFICE_600) - topMm,
    moduleMm: module,
    size: symbol.size,
    insetModules: 0,
    rectangles: darkRectangles(symbol),
    opens: { id, payload },
  };
}
