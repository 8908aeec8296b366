import { type Forms, type Problem, problem } from '../../src/core/index.ts';
import type { Cut } from './marks.ts';
import type { Measure } from './measure.ts';

/**
 * So many signs of a text may stand as their numbers. A name with a picture in it is still that name, and its card comes
 * out with a word about it; a whole name in a script that the type lacks would be a row of numbers that nobody reads.
 */
const MOST_SPELLED = 8;
/** Signs without a look of their own: joiners, marks of direction, variants. They are named, and nothing is put for them. */
const UNSEEN = /[\p{Cf}\p{Cc}\p{Variation_Selector}]/u;

/** A text in signs that the type has; any other stands as its number, U+65E5. Null where that would be most of it. */
export function spellOut(text: string, missing: readonly string[]): string | null {
  const lacking = new Set(missing);
  let count = 0;
  const signs = [...text].map((sign) => {
    if (!lacking.has(sign)) return sign;
    if (UNSEEN.test(sign)) return '';
    count++;
    return ` ${numberOf(sign)} `;
  });
  return count > MOST_SPELLED ? null : signs.join('');
}

/** The signs with their numbers, as a sentence names them: `日 (U+65E5)`. */
export function nameSigns(signs: Iterable<string>): string {
  return [...new Set(signs)]
    .map((sign) => (UNSEEN.test(sign) ? numberOf(sign) : `${sign} (${numberOf(sign)})`))
    .join(' ');
}

/** The Unicode number of a sign. */
export function numberOf(sign: string): string {
  return `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}

/** A line's words with the cut that they are set in. */
export interface CutForms {
  readonly forms: Forms;
  readonly cut: Cut;
}

/**
 * Rule PRINT-SPELL: what is printed otherwise than it was written, because no form of a line has all its signs in the
 * type; null when all is printed as written.
 */
export function spelled(what: string, lines: readonly CutForms[], measure: Measure): Problem | null {
  const missing = lines.flatMap(({ forms, cut }) => {
    const { text: first, missing: lacking } = measure.read(forms.long, cut);
    if (first !== '' && lacking.length === 0) return [];
    const readings = [forms.long, forms.medium, forms.short].map((form) => measure.read(form, cut));
    const isClean = readings.some(({ text, missing: gone }) => text !== '' && gone.length === 0);
    return isClean ? [] : readings.flatMap(({ missing: gone }) => gone);
  });
  return missing.length === 0 ? null : problem('glyph-spelled', { glyphs: nameSigns(missing), what });
}
