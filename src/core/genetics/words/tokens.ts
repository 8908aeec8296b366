/** A word, mark, chance or trade-code piece of a text in trade words, and where it begins (from 1). */
export type Token =
  | { readonly kind: 'word' | 'comma' | 'slash'; readonly text: string; readonly at: number }
  | { readonly kind: 'aside' | 'code'; readonly text: string; readonly at: number }
  | { readonly kind: 'chance'; readonly text: string; readonly at: number; readonly p: number; readonly q: number };

const TOKEN =
  /(\d{1,3}(?:[.,]\d{1,3})?)\s*(?:%|percent\b)|(\d{1,6})\s+in\s+(\d{1,6})\b|\(([^()]*)\)|([,;])|(\/)|([^\s,;/&()-]+)/giu;

/** Splits a text; a part between commas that is written in the trait code stays whole. */
export function tokensOf(text: string, isSign: (word: string) => boolean): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  for (const part of text.split(/(;|,(?!\d))/)) {
    if (looksLikeCode(part, isSign)) tokens.push({ kind: 'code', text: part.trim(), at: at + 1 + part.search(/\S/) });
    else for (const found of part.matchAll(TOKEN)) tokens.push(tokenOf(found, at));
    at += part.length;
  }
  return tokens;
}

function tokenOf(found: RegExpMatchArray, before: number): Token {
  const [text, percent, p, q, aside, comma, slash] = found;
  const at = before + (found.index ?? 0) + 1;
  if (percent !== undefined) return { kind: 'chance', text, at, ...ratioOf(percent) };
  if (p !== undefined && q !== undefined) return { kind: 'chance', text, at, p: Number(p), q: Number(q) };
  if (aside !== undefined) return { kind: 'aside', text: aside.trim().toLowerCase(), at };
  if (comma !== undefined) return { kind: 'comma', text, at };
  if (slash !== undefined) return { kind: 'slash', text, at };
  return { kind: 'word', text, at };
}

/** Percents as the trade rounds them: 66 or 67 is 2/3, 33 is 1/3, all others as they stand. */
function ratioOf(percent: string): { readonly p: number; readonly q: number } {
  const figure = percent.replace(',', '.');
  if (/^(?:66(?:\.[67]\d*)?|67)$/.test(figure)) return { p: 2, q: 3 };
  if (/^33(?:\.3\d*)?$/.test(figure)) return { p: 1, q: 3 };
  const digits = figure.split('.')[1]?.length ?? 0;
  return { p: Math.round(Number(figure) * 10 ** digits), q: 100 * 10 ** digits };
}

const CODE_MARKS = /\[|\/\s*(?:[+\-[]|[Yy]\s*[:?]|[Ww]\s*$)|^\s*[+-]/;

function looksLikeCode(part: string, isSign: (word: string) => boolean): boolean {
  if (CODE_MARKS.test(part)) return true;
  const [first = '', second, ...more] = part.split('/').map((side) => side.trim());
  return second !== undefined && more.length === 0 && isSign(first) && isSign(second);
}
