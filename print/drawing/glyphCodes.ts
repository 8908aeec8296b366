import type { Cut } from '../layout/marks.ts';
import type { CutFace, CutGlyph, Typeface } from './typeface.ts';

/** A sign that was used: what the embedded font needs to know of it. */
export interface UsedGlyph extends CutGlyph {
  readonly codePoint: number;
}

/** One cut's codes in the document: numbers from 1 in the order of first use, each as two bytes of a literal string. */
export interface CutCodes {
  /** The font's name in page content. */
  readonly name: string;
  /** The text as a string of page content, in brackets. */
  readonly encode: (text: string) => string;
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
    const code = known ?? `${byte(used.length >> 8)}${byte(used.length & 0xff)}`;
    byGlyph.set(glyph.number, code);
    byCodePoint.set(codePoint, code);
    return code;
  };
  return {
    name,
    used,
    encode(text) {
      let codes = '(';
      for (let at = 0; at < text.length; at++) {
        const codePoint = text.codePointAt(at) ?? 0;
        if (codePoint > 0xffff) at++;
        codes += byCodePoint.get(codePoint) ?? give(codePoint);
      }
      return `${codes})`;
    },
  };
}

const BACKSLASH = 0x5c;
/** Brackets and backslashes end or change a literal string, and a bare carriage return is read as a line feed. */
const SPECIAL: readonly number[] = [0x28, 0x29, BACKSLASH];
const RETURN = 0x0d;
const ASCII = 0x80;

/** One byte in a literal string (ISO 32000-1, 7.3.4.2), in signs that are one byte in UTF-8 too. */
function byte(value: number): string {
  if (value === RETURN) return '\\r';
  if (value >= ASCII) return `\\${value.toString(8)}`;
  const sign = String.fromCharCode(value);
  return SPECIAL.includes(value) ? `\\${sign}` : sign;
}
