import { type Day, dayNumber, fingerprint } from '../../src/core/index.ts';
import { PT_MM } from '../layout/measure.ts';
import { breathe, utf8 } from '../platform.ts';
import { type Container, openContainer, type Reference } from './container.ts';
import type { Drawing, PageSize } from './drawing.ts';
import { type CutCodes, glyphCodes } from './glyphCodes.ts';
import { MILLIMETRES, operatorsOf } from './operators.ts';
import type { CutFace, Typeface } from './typeface.ts';

/** A finished page: its size in mm and its operators. */
export interface PdfPage extends PageSize {
  readonly operators: string;
}

/** How the file is made; `on` becomes its date, since a clock would make every file differ. */
export interface PdfChoice {
  readonly title: string;
  readonly on: Day;
  /** What the file says, in any words that differ when it does: the file's id is made from it. */
  readonly content: string;
  readonly compress?: boolean | undefined;
}

/** A back end that gathers one string of operators a page, and writes them into a file at the end. */
export interface PdfDrawing extends Drawing {
  readonly pages: readonly PdfPage[];
  finish(choice: PdfChoice): Promise<Uint8Array>;
}

const DAY_MS = 86_400_000;
/** Pages between two pauses: about 200 cards. */
const PAGES_A_BREATH = 20;

/** An empty PDF in that type. */
export function pdfDrawing(typeface: Typeface): PdfDrawing {
  const codes = glyphCodes(typeface);
  const pages: PdfPage[] = [];
  let size: PageSize = { widthMm: 0, heightMm: 0 };
  let operators = '';
  return {
    pages,
    beginPage(next) {
      size = next;
      operators = MILLIMETRES;
    },
    put(marks, xMm, yMm) {
      operators += operatorsOf(marks, xMm, yMm, codes);
    },
    endPage() {
      pages.push({ ...size, operators });
    },
    finish: (choice) => writePdf(pages, [codes.regular, codes.bold], typeface, choice),
  };
}

/** pdfkit as a container: it numbers, packs and closes; what stands on the pages is ours. */
async function writePdf(
  pages: readonly PdfPage[],
  [regular, bold]: readonly [CutCodes, CutCodes],
  typeface: Typeface,
  choice: PdfChoice,
): Promise<Uint8Array> {
  const doc = openContainer({
    compress: choice.compress ?? true,
    pdfVersion: '1.7',
    lang: 'en',
    info: {
      Title: choice.title,
      Creator: 'Tubwright',
      // The file's /ID is made from this block alone, so the content has to have a part in it.
      Keywords: fingerprint(choice.content),
      CreationDate: new Date(dayNumber(choice.on) * DAY_MS),
    },
  });
  const bytes = collect(doc);
  // "Fit to page" is what most often makes printed cards the wrong size; viewers that obey this do not offer it first.
  doc._root.data['ViewerPreferences'] = doc.ref({ PrintScaling: 'None' });
  const fonts = [
    [regular.name.slice(1), embed(doc, typeface.cuts.regular, regular)],
    [bold.name.slice(1), embed(doc, typeface.cuts.bold, bold)],
  ] as const;
  for (const [at, page] of pages.entries()) {
    doc.addPage({ size: [page.widthMm / PT_MM, page.heightMm / PT_MM], margin: 0 });
    for (const [name, font] of fonts) if (page.operators.includes(`/${name} `)) doc.page.fonts[name] = font;
    doc.addContent(utf8(page.operators));
    if (at % PAGES_A_BREATH === PAGES_A_BREATH - 1) await breathe();
  }
  doc.end();
  return bytes;
}

/** Gives pdfkit's subset the glyphs in our order, so that its codes are the ones already written on the pages. */
function embed(doc: Container, face: CutFace, codes: CutCodes): Reference {
  const font = doc.font(face.font)._font;
  const dictionary = font.ref();
  for (const [at, glyph] of codes.used.entries()) {
    const code = font.subset.includeGlyph(glyph.number);
    if (code !== at + 1) throw new RangeError(`glyph ${glyph.number} got code ${code}, not ${at + 1}`);
    font.widths[code] = glyph.advance * 1000;
    font.unicode[code] = [glyph.codePoint];
  }
  return dictionary;
}

function collect(doc: Container): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk) => chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => resolve(joined(chunks)));
  });
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((length, chunk) => length + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
