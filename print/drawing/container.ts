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
  readonly data: Record<string, unknown>;
  end(): void;
}

/** What print uses of pdfkit: the file around the pages, not its ways of drawing. */
export interface Container {
  readonly _root: Reference;
  readonly _font: EmbeddedFont;
  readonly page: { readonly fonts: Record<string, Reference> };
  /** Takes a file's bytes, or a font that was read before. */
  font(source: Uint8Array | FontFile): Container;
  ref(data: Record<string, unknown>): Reference;
  addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): Container;
  addContent(operators: Uint8Array): Container;
  on(event: 'data', listener: (chunk: Uint8Array) => void): Container;
  on(event: 'end', listener: () => void): Container;
  on(event: 'error', listener: (error: unknown) => void): Container;
  end(): void;
}

/** An empty document without pages and fonts; pdfkit's own types leave out the insides that are used here. */
export function openContainer(options: Omit<PDFKit.PDFDocumentOptions, 'font' | 'autoFirstPage'> = {}): Container {
  // A null font keeps pdfkit from loading Helvetica, which is slow and is not embedded.
  const bare = { ...options, autoFirstPage: false, font: null } as unknown as PDFKit.PDFDocumentOptions;
  return new PDFDocument(bare) as unknown as Container;
}
