import PDFDocument from 'pdfkit';

/** A glyph in the font file. */
interface Glyph {
  readonly id: number;
  readonly advanceWidth: number;
}

/** The font reader inside pdfkit. */
export interface FontFile {
  readonly unitsPerEm: number;
  readonly capHeight: number;
  hasGlyphForCodePoint(codePoint: number): boolean;
  glyphForCodePoint(codePoint: number): Glyph;
}

/** A font that pdfkit cuts down to its used glyphs and embeds when the document ends. */
interface EmbeddedFont {
  readonly font: FontFile;
  readonly subset: { includeGlyph(glyph: number): number };
  readonly widths: number[];
  readonly unicode: (readonly number[])[];
  ref(): Reference;
}

/** An object of the file. */
export interface Reference {
  /** Emptied once it is written: nothing reads it again, and a long run has thousands. */
  data: Record<string, unknown>;
  write(bytes: Uint8Array): void;
  end(): void;
}

/** What print uses of pdfkit: the file around the pages, not its ways of drawing. */
export interface Container {
  readonly _root: Reference;
  readonly _font: EmbeddedFont;
  /** The file's /ID, and what is written about the file at its end. */
  _id: Uint8Array;
  readonly info: Record<string, unknown>;
  /** Takes a file's bytes, or a font that was read before. */
  font(source: Uint8Array | FontFile): Container;
  ref(data?: Record<string, unknown>): Reference;
  on(event: 'data', listener: (chunk: Uint8Array) => void): Container;
  on(event: 'end', listener: () => void): Container;
  on(event: 'error', listener: (error: unknown) => void): Container;
  end(): void;
}

/** The list of pages in the file. */
export interface PageList {
  readonly Kids: Reference[];
  Count: number;
  /** What pages have that say nothing else. */
  MediaBox?: readonly number[];
  Resources?: Reference;
}

/** An empty document without pages and fonts; pdfkit's own types leave out the insides that are used here. */
export function openContainer(options: Omit<PDFKit.PDFDocumentOptions, 'font' | 'autoFirstPage'> = {}): Container {
  // A null font keeps pdfkit from loading Helvetica, which is slow and is not embedded.
  const bare = { ...options, autoFirstPage: false, font: null } as unknown as PDFKit.PDFDocumentOptions;
  return new PDFDocument(bare) as unknown as Container;
}

/** The pages of a document, as pdfkit keeps them. */
export function pageList(doc: Container): PageList {
  return (doc._root.data['Pages'] as Reference).data as unknown as PageList;
}
