import type { Day } from '../../src/core/index.ts';
import type { Mark } from '../layout/marks.ts';
import { breathe, joined } from '../platform.ts';
import type { Drawing, PageSize } from './drawing.ts';
import { pdfFile } from './pdfFile.ts';
import type { Typeface } from './typeface.ts';

/** How the file is made; `on` becomes its date, since a clock would make every file differ. */
export interface PdfChoice {
  readonly title: string;
  readonly on: Day;
  /** What the file says, in any words that differ when it does: the file's id is made from it. */
  readonly content: string;
  readonly compress?: boolean | undefined;
}

/** A back end that gathers pages, and writes them into a file at the end. For long runs see {@link pdfFile}. */
export interface PdfDrawing extends Drawing {
  readonly pages: readonly DrawnPage[];
  finish(choice: PdfChoice): Promise<Uint8Array>;
}

/** A page with what was put on it, and where. */
export interface DrawnPage extends PageSize {
  readonly puts: readonly (readonly [marks: readonly Mark[], xMm: number, yMm: number])[];
}

/** Pages between two pauses. */
const PAGES_A_BREATH = 20;

/** An empty PDF in that type. */
export function pdfDrawing(typeface: Typeface): PdfDrawing {
  const pages: DrawnPage[] = [];
  let size: PageSize = { widthMm: 0, heightMm: 0 };
  let puts: DrawnPage['puts'][number][] = [];
  return {
    pages,
    beginPage(next) {
      size = next;
      puts = [];
    },
    put(marks, xMm, yMm) {
      puts.push([marks, xMm, yMm]);
    },
    endPage() {
      pages.push({ ...size, puts });
    },
    finish: (choice) => writePages(pages, typeface, choice),
  };
}

async function writePages(
  pages: readonly DrawnPage[],
  typeface: Typeface,
  { title, on, content, compress }: PdfChoice,
): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  const file = pdfFile(typeface, { title, on, compress, onBytes: (bytes) => chunks.push(bytes) });
  for (const [at, page] of pages.entries()) {
    file.beginPage(page);
    for (const [marks, xMm, yMm] of page.puts) file.put(marks, xMm, yMm);
    file.endPage();
    if (at % PAGES_A_BREATH === PAGES_A_BREATH - 1) await breathe();
  }
  await file.finish({ content, total: String(pages.length) });
  return joined(chunks);
}
