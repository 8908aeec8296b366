import PDFDocument from 'pdfkit';
import qrcode from 'qrcode';
import type { FontBytes } from '../../print/drawing/typeface.ts';
import {
  drawPieces,
  type LaidJob,
  type Mark,
  type Measure,
  type PieceJob,
  PT_MM,
  recording,
} from '../../print/index.ts';

/** Cards as a program draws them that takes a library as it comes: one call a line of text, one path a run of modules. */
export async function plainPdf(job: PieceJob, laid: LaidJob, fonts: FontBytes, measure: Measure): Promise<Uint8Array> {
  return withPdfkit(job, laid, fonts, measure, (doc, mark) => {
    if (mark.kind !== 'code') return;
    const { xMm, yMm, moduleMm, size } = mark;
    const modules = new Uint8Array(size * size);
    for (const [x, y, width, height] of [...(mark.base ?? []), ...mark.rectangles])
      for (let row = y; row < y + height; row++) modules.fill(1, row * size + x, row * size + x + width);
    for (let row = 0; row < size; row++)
      for (let from = 0; from < size; from++) {
        let to = from;
        while (to < size && modules[row * size + to] === 1) to++;
        if (to === from) continue;
        doc.rect(pt(xMm + from * moduleMm), pt(yMm + row * moduleMm), pt((to - from) * moduleMm), pt(moduleMm)).fill();
        from = to;
      }
  });
}

/** Dots of a picture's module: 9 at 0.76 mm are 300 dots per inch, what a picture needs to look sharp on paper. */
const SCALE = 9;

/** The same with each code as a PNG picture. */
export async function picturePdf(
  job: PieceJob,
  laid: LaidJob,
  fonts: FontBytes,
  measure: Measure,
): Promise<Uint8Array> {
  const pictures = new Map<string, Buffer>();
  for (const { symbol } of laid.faces)
    if (!pictures.has(symbol.payload))
      pictures.set(
        symbol.payload,
        await qrcode.toBuffer(symbol.payload, { errorCorrectionLevel: 'M', scale: SCALE, margin: 0 }),
      );
  const payloads = laid.faces.map(({ symbol }) => symbol.payload);
  let at = 0;
  return withPdfkit(job, laid, fonts, measure, (doc, mark) => {
    if (mark.kind !== 'code') return;
    const side = pt(mark.moduleMm * mark.size);
    doc.image(pictures.get(payloads[at++] ?? '') ?? '', pt(mark.xMm), pt(mark.yMm), { width: side, height: side });
  });
}

const pt = (mm: number): number => mm / PT_MM;

async function withPdfkit(
  job: PieceJob,
  laid: LaidJob,
  fonts: FontBytes,
  measure: Measure,
  drawCode: (doc: PDFKit.PDFDocument, mark: Mark) => void,
): Promise<Uint8Array> {
  const doc = new PDFDocument({ autoFirstPage: false, margin: 0 });
  doc.registerFont('regular', Buffer.from(fonts.regular));
  doc.registerFont('bold', Buffer.from(fonts.bold));
  const chunks: Uint8Array[] = [];
  const done = new Promise<void>((resolve) => void doc.on('end', resolve));
  doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const paper = recording();
  drawPieces(laid, job, measure, paper);
  for (const page of paper.pages) {
    doc.addPage({ size: [pt(page.widthMm), pt(page.heightMm)], margin: 0 });
    for (const mark of page.marks) {
      drawCode(doc, mark);
      drawMark(doc, mark, measure);
    }
  }
  doc.end();
  await done;
  return Buffer.concat(chunks);
}

function drawMark(doc: PDFKit.PDFDocument, mark: Mark, measure: Measure): void {
  switch (mark.kind) {
    case 'text': {
      // pdfkit counts from the top of the line and not from the baseline.
      const top = pt(mark.yMm) - mark.sizePt * measure.capHeight;
      doc
        .font(mark.cut)
        .fontSize(mark.sizePt)
        .fillColor(mark.tone === 'paper' ? 'white' : 'black');
      doc.text(mark.text, pt(mark.xMm), top, { lineBreak: false });
      doc.fillColor('black');
      break;
    }
    case 'rule':
      doc.rect(pt(mark.xMm), pt(mark.yMm), pt(mark.widthMm), pt(mark.heightMm)).fill();
      break;
    case 'notch': {
      const [right, bottom] = [mark.xMm + mark.widthMm, mark.yMm + mark.heightMm];
      doc.moveTo(pt(mark.xMm), pt(mark.yMm)).lineTo(pt(right - mark.cutMm), pt(mark.yMm));
      doc
        .lineTo(pt(right), pt(mark.yMm + mark.cutMm))
        .lineTo(pt(right), pt(bottom))
        .lineTo(pt(mark.xMm), pt(bottom))
        .fill();
      break;
    }
    case 'hatch':
      doc.rect(pt(mark.xMm), pt(mark.yMm), pt(mark.widthMm), pt(mark.heightMm)).stroke();
      break;
    default:
      break;
  }
}
