import type { Cut } from '../layout/marks.ts';
import { type Measure, PT_MM, type Reading } from '../layout/measure.ts';
import { type Container, type FontFile, openContainer } from './container.ts';

/** The bytes of the two cuts as TrueType files. WOFF2 would be embedded whole, so it is not taken. */
export interface FontBytes {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** One cut: which glyph a sign has, and how far it advances in parts of the size. */
export interface CutFace {
  readonly font: FontFile;
  readonly glyph: (codePoint: number) => CutGlyph | null;
}

/** A glyph's number in the font file, and its advance in parts of the size. */
export interface CutGlyph {
  readonly number: number;
  readonly advance: number;
}

/** Both cuts, ready to measure and to draw. */
export interface Typeface extends Measure {
  readonly cuts: Readonly<Record<Cut, CutFace>>;
}

/** The descent of the family's lower-case letters, in parts of the size (seen in its `p`). */
const DESCENT = 0.21;
/** Texts that are kept measured: most lines of a run repeat (species, feeds, days), but a run may be long. */
const MOST_READINGS = 4000;
/** Marks of texts that were seen once; two texts may share one, which costs nothing but memory. */
const SEEN_MARKS = 1 << 16;

/** Reads the two cuts with the reader inside pdfkit, so that what is measured is what is embedded. */
export function openTypeface(fonts: FontBytes): Typeface {
  const shelf = openContainer();
  const cuts = { regular: openCut(shelf, fonts.regular), bold: openCut(shelf, fonts.bold) };
  const { font } = cuts.bold;
  const readings = { regular: new Map<string, Reading>(), bold: new Map<string, Reading>() };
  const isAgain = seenBefore();
  return {
    cuts,
    capHeight: font.capHeight / font.unitsPerEm,
    descent: DESCENT,
    read(text, cut) {
      const known = readings[cut].get(text);
      if (known) return known;
      const made = readText(printable(text), cuts[cut]);
      if (!isAgain(text)) return made;
      if (readings[cut].size >= MOST_READINGS) readings[cut].clear();
      readings[cut].set(text, made);
      return made;
    },
  };
}

/** Whether a text was asked for before: ids and revisions never are, and keeping them would fill the memory of a long run. */
function seenBefore(): (text: string) => boolean {
  const marks = new Uint8Array(SEEN_MARKS);
  return (text) => {
    let hash = text.length;
    for (let at = 0; at < text.length; at++) hash = (Math.imul(hash, 31) + text.charCodeAt(at)) | 0;
    const mark = (hash ^ (hash >>> 16)) & (SEEN_MARKS - 1);
    const isAgain = marks[mark] === 1;
    marks[mark] = 1;
    return isAgain;
  };
}

function openCut(shelf: Container, bytes: Uint8Array): CutFace {
  const { font } = shelf.font(bytes)._font;
  const known = new Map<number, CutGlyph | null>();
  const look = (codePoint: number): CutGlyph | null => {
    if (!font.hasGlyphForCodePoint(codePoint)) return null;
    const { id, advanceWidth } = font.glyphForCodePoint(codePoint);
    return { number: id, advance: advanceWidth / font.unitsPerEm };
  };
  return {
    font,
    glyph(codePoint) {
      const found = known.get(codePoint);
      if (found !== undefined) return found;
      const made = look(codePoint);
      known.set(codePoint, made);
      return made;
    },
  };
}

function readText(text: string, cut: CutFace): Reading {
  let advance = 0;
  const missing = new Set<string>();
  for (const sign of text) {
    const glyph = cut.glyph(sign.codePointAt(0) ?? 0);
    if (glyph) advance += glyph.advance;
    else missing.add(sign);
  }
  return { text, widthAtOnePt: advance * PT_MM, missing: [...missing] };
}

function printable(text: string): string {
  return text
    .normalize('NFC')
    .replace(/[\s\u00ad]+/g, ' ')
    .trim();
}
