import type { Cut } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';
import { numberOf } from '../layout/spelling.ts';

/** One line of a wrapped text, with its width at 1 pt in mm. */
export interface WrappedLine {
  readonly text: string;
  readonly widthAtOnePt: number;
}

/**
 * A text as lines no wider than that, nothing of it left out: words that are too long are broken, and a sign that the
 * type lacks stands as its number, U+65E5. An empty text is one empty line.
 */
export function wrap(
  text: string,
  cut: Cut,
  { widthMm, sizePt, measure }: { readonly widthMm: number; readonly sizePt: number; readonly measure: Measure },
): readonly WrappedLine[] {
  const most = widthMm / sizePt;
  const width = (part: string): number => measure.read(part, cut).widthAtOnePt;
  const whole = measure.read(printable(text, cut, measure), cut);
  if (whole.widthAtOnePt <= most) return [{ text: whole.text, widthAtOnePt: whole.widthAtOnePt }];
  const lines: string[] = [];
  for (const word of whole.text.split(' ').flatMap((one) => pieces(one, most, width))) {
    const last = lines.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && width(joined) <= most) lines[lines.length - 1] = joined;
    else lines.push(word);
  }
  return lines.map((line) => ({ text: line, widthAtOnePt: width(line) }));
}

/** A word in pieces that each fit; a single sign is never broken. */
function pieces(word: string, most: number, width: (part: string) => number): readonly string[] {
  if (width(word) <= most) return [word];
  const found: string[] = [];
  for (const sign of word) {
    const last = found.at(-1);
    if (last !== undefined && width(last + sign) <= most) found[found.length - 1] = last + sign;
    else found.push(sign);
  }
  return found;
}

/** A text in signs that the type has; any other stands as its number. */
export function printable(text: string, cut: Cut, measure: Measure): string {
  const { missing, text: read } = measure.read(text, cut);
  if (missing.length === 0) return read;
  const lacking = new Set(missing);
  return [...read].map((sign) => (lacking.has(sign) ? ` ${numberOf(sign)} ` : sign)).join('');
}
