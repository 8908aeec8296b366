import { type Day, ok, type Result } from '../../src/core/index.ts';
import { pdfDrawing } from '../drawing/pdf.ts';
import { openTypeface } from '../drawing/typeface.ts';
import type { Mark } from '../layout/marks.ts';
import type { Manifest } from '../manifest.ts';
import { hex, platformSha256 } from '../platform.ts';
import { OFFICE_600, type PrinterProfile } from '../qr/profiles.ts';
import type { PdfMaking } from '../run/job.ts';
import { ownSha256 } from '../sha256.ts';
import { checkStock, type Stock } from '../stocks/stock.ts';
import { calibrationPage } from './page.ts';

/** A calibration page to print, always as it is drawn: whatever is known of the printer already is not applied. */
export interface CalibrationPrint extends PdfMaking {
  readonly stock: Stock;
  readonly printer?: PrinterProfile | undefined;
  readonly printedOn: Day;
}

/** The page and its table of contents. The same page gives the same bytes. */
export interface PrintedCalibration {
  readonly pdf: Uint8Array;
  readonly manifest: Manifest;
}

/** Prints the calibration page of a stock and a printer. Errors: `stock-…`, `piece-unfit`. */
export async function printCalibration(job: CalibrationPrint): Promise<Result<PrintedCalibration>> {
  const { stock, printer = OFFICE_600, printedOn, fonts, compress } = job;
  const sound = checkStock(stock);
  if (!sound.ok) return sound;
  const measure = openTypeface(fonts);
  const page = calibrationPage({ stock, printer, measure, printedOn });
  if (!page.ok) return page;
  const { marks, code, symbol, lines } = page.value;
  const drawing = pdfDrawing(measure);
  const size = { widthMm: stock.pageWidthMm, heightMm: stock.pageHeightMm };
  drawing.beginPage(size);
  drawing.put([code, ...marks], 0, 0);
  drawing.endPage();
  const content = JSON.stringify([stock, printer]);
  const pdf = await drawing.finish({
    title: `Calibration of ${printer.id} on ${stock.id}`,
    on: printedOn,
    content,
    compress,
  });
  const digest = await (job.sha256 ?? platformSha256() ?? ownSha256)(pdf);
  const side = code.moduleMm * symbol.size;
  const round = (mm: number) => Math.round(mm * 1e4) / 1e4;
  return ok({
    pdf,
    manifest: {
      stock: stock.id,
      pages: [{ ...size, lines: textsOf(marks) }],
      pieces: [
        {
          kind: 'calibration',
          id: `${stock.id} ${printer.id}`,
          payload: symbol.payload,
          page: 1,
          boxMm: [0, 0, size.widthMm, size.heightMm],
          symbolMm: [round(code.xMm), round(code.yMm), round(side), round(side)],
          symbology: 'qr',
          modules: symbol.size,
          lines,
          form: 'long',
          back: false,
        },
      ],
      left: [],
      sha256: hex(digest),
    },
  });
}

/** In the order in which they are drawn. */
function textsOf(marks: readonly Mark[]): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? mark.text : []));
}
