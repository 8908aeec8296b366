import type { Cut } from '../layout/marks.ts';
import type { CutFace, CutGlyph, Typeface } from './typeface.ts';

/** A sign that was used: what the embedded font needs to know of it. */
export interface UsedGlyph extends CutGlyph {
  readonly codePoint: number;
}

/** One cut's codes in the document: numbers from 1 in the order of first use, as four hexadecimal digits. */
export interface CutCodes {
  /** The font's name in page content. */
  readonly name: string;
  encode(text: string): string;
  readonly used: readonly UsedGlyph[];
}

/** The codes of both cuts. */
export type GlyphCodes = Readonly<Record<Cut, CutCodes>>;

/** Fresh codes for one document. */
export function glyphCodes(typeface: Typeface): GlyphCodes {
  return { regular: cutCodes('/F1', typeface.cuts.regular), bold: cutCodes('/F2', typeface.cuts.bold) };
}

function cutCodes(name: string, face: CutFace): CutCodes {
  const used: UsedGlyph[] = [];
  const byGlyph = new Map<number, string>();
  const byCodePoint = new Map<number, string>();
  const give = (codePoint: number): string => {
    const glyph = face.glyph(codePoint);
    if (glyph === null) return '';
    const known = byGlyph.get(glyph.number);
    if (known === undefined) used.push({ ...glyph, codePoint });
    const code = known ?? used.length.toString(16).padStart(4, '0');
    byGlyph.set(glyph.number, code);
    byCodePoint.set(codePoint, code);
    return code;
  };
  return {
    name,
    used,
    encode(text) {
      let codes = '';
      for (let at = 0; at < text.length; at++) {
        const codePoint = text.codePointAt(at) ?? 0;
        if (codePoint > 0xffff) at++;
        codes += byCodePoint.get(codePoint) ?? give(codePoint);
      }
      return codes;
    },
  };
}
