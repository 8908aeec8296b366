import { type Day, dayNumber, fingerprint } from '../../src/core/index.ts';
import { PT_MM } from '../layout/measure.ts';
import { utf8 } from '../platform.ts';
import { type Container, openContainer, pageList, type Reference } from './container.ts';
import type { Drawing, PageSize } from './drawing.ts';
import { type CutCodes, glyphCodes } from './glyphCodes.ts';
import { exact } from './numbers.ts';
import { millimetres, operatorsOf, TOTAL } from './operators.ts';
import type { CutFace, Typeface } from './typeface.ts';

/** How a file is made; `on` becomes its date, since a clock would make every file differ. */
export interface FileChoice {
  readonly title: string;
  readonly on: Day;
  readonly compress?: boolean | undefined;
  /** Takes the file's bytes piece by piece, as they come. */
  readonly onBytes: (bytes: Uint8Array) => void;
}

/** How a file ends. */
export interface FileEnd {
  /** What the file says, in any words that differ when it does: the file's id is made from it. */
  readonly content: string;
  /** What stands where a `total` mark was put. */
  readonly total?: string | undefined;
}

/** A back end that writes each page out when it ends, so that a run of any length keeps one page in mind. */
export interface PdfFile extends Drawing {
  /** Ends a page that is drawn for its signs' codes only and is not in the file. */
  skipPage(): void;
  /** Writes the type and the table of contents; resolves once the last byte was given away. */
  finish(end: FileEnd): Promise<void>;
}

const DAY_MS = 86_400_000;
const ID_BYTES = 16;

/** An empty file in that type. pdfkit is its container: it numbers, packs and closes; what stands on the pages is ours. */
export function pdfFile(typeface: Typeface, choice: FileChoice): PdfFile {
  const codes = glyphCodes(typeface);
  const doc = openContainer({
    compress: choice.compress ?? true,
    pdfVersion: '1.7',
    lang: 'en',
    info: { Title: choice.title, Creator: 'Tubwright', CreationDate: new Date(dayNumber(choice.on) * DAY_MS) },
  });
  const written = new Promise<void>((resolve, reject) => {
    doc.on('data', choice.onBytes);
    doc.on('error', reject);
    doc.on('end', resolve);
  });
  // "Fit to page" is what most often makes printed cards the wrong size; viewers that obey this do not offer it first.
  doc._root.data['ViewerPreferences'] = doc.ref({ PrintScaling: 'None' });
  // One set of resources for all pages: pdfkit's own pages would each bring the same again.
  const resources = doc.ref({});
  pageList(doc).Resources = resources;
  let size: PageSize = { widthMm: 0, heightMm: 0 };
  let operators = '';
  let hasTotal = false;
  return {
    beginPage(next) {
      size = next;
      operators = millimetres(next.heightMm);
    },
    put(marks, xMm, yMm) {
      hasTotal ||= marks.some(({ kind }) => kind === 'total');
      operators += operatorsOf(marks, xMm, yMm, codes);
    },
    endPage() {
      addPage(doc, size, operators);
    },
    skipPage() {
      operators = '';
    },
    finish({ content, total }) {
      const said = hasTotal ? codes.regular.encode(total ?? '') : null;
      const fonts = fontsOf(doc, typeface, [codes.regular, codes.bold]);
      resources.data['Font'] = fonts;
      if (said !== null) resources.data['XObject'] = { [TOTAL.slice(1)]: totalObject(doc, fonts, codes.regular, said) };
      resources.end();
      doc.info['Keywords'] = fingerprint(content);
      // pdfkit made its own when the file was opened, and did not know then what would be in it.
      doc._id = utf8(`${fingerprint(content)}${fingerprint(`${choice.on} ${content}`)}`.slice(0, ID_BYTES));
      doc.end();
      return written;
    },
  };
}

/** Size and resources of most pages are the same, so they stand once, at the list of pages (ISO 32000-1, 7.7.3.4). */
function addPage(doc: Container, size: PageSize, operators: string): void {
  const content = doc.ref();
  content.write(utf8(operators));
  content.end();
  const pages = pageList(doc);
  const box = [0, 0, Number(exact(size.widthMm / PT_MM)), Number(exact(size.heightMm / PT_MM))];
  pages.MediaBox ??= box;
  const page = doc.ref({
    Type: 'Page',
    Parent: doc._root.data['Pages'],
    Contents: content,
    ...(String(box) === String(pages.MediaBox) ? {} : { MediaBox: box }),
  });
  page.end();
  page.data = {};
  pages.Kids.push(page);
  pages.Count++;
}

type Fonts = Readonly<Record<string, Reference>>;

/** The number of sheets at a size of 1: every sheet names it, and it is written when the last one is known. */
function totalObject(doc: Container, fonts: Fonts, { name }: CutCodes, said: string): Reference {
  const form = doc.ref({ Type: 'XObject', Subtype: 'Form', BBox: [0, -1, 10, 1], Resources: { Font: fonts } });
  form.write(utf8(`BT ${name} 1 Tf ${said}Tj ET\n`));
  form.end();
  return form;
}

/** The cuts that were used, by their names in page content. */
function fontsOf(doc: Container, typeface: Typeface, cuts: readonly [regular: CutCodes, bold: CutCodes]): Fonts {
  const faces = [typeface.cuts.regular, typeface.cuts.bold] as const;
  const fonts: Record<string, Reference> = {};
  for (const [at, face] of faces.entries()) {
    const codes = cuts[at];
    if (codes !== undefined && codes.used.length > 0) fonts[codes.name.slice(1)] = embed(doc, face, codes);
  }
  return fonts;
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
