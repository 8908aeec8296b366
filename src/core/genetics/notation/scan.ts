/** A mark or word of a trait code and the character where it begins, counted from 1. */
export interface Token {
  readonly kind: 'sign' | 'number' | 'mark' | 'space' | 'Y:' | 'Y?' | 'W' | 'other' | 'end';
  readonly text: string;
  readonly at: number;
}

const TOKEN = /([Yy]\s*[:?])|([A-Za-z][A-Za-z0-9]*)|(\d+)|([/;[\]:+-])|(\s+)|([\s\S])/gu;

/** Splits any text into tokens; nothing is refused here. The last token is the end of the text. */
export function scanCode(text: string): readonly Token[] {
  const tokens: Token[] = [];
  for (const found of text.matchAll(TOKEN)) {
    const [whole, onY, sign, number, mark, space] = found;
    const at = found.index + 1;
    if (onY !== undefined) tokens.push({ kind: onY.endsWith(':') ? 'Y:' : 'Y?', text: whole, at });
    else if (sign !== undefined) tokens.push({ kind: /^w$/i.test(sign) ? 'W' : 'sign', text: whole, at });
    else if (number !== undefined) tokens.push({ kind: 'number', text: whole, at });
    else if (mark !== undefined) tokens.push({ kind: 'mark', text: whole, at });
    else tokens.push({ kind: space !== undefined ? 'space' : 'other', text: whole, at });
  }
  tokens.push({ kind: 'end', text: '', at: text.length + 1 });
  return tokens;
}

/** A place in the text while it is being read; spaces are stepped over unless they are asked for. */
export class Reader {
  readonly #tokens: readonly Token[];
  #at = 0;

  constructor(text: string) {
    this.#tokens = scanCode(text);
  }

  /** The next token that is no space. */
  peek(): Token {
    return this.#tokens[this.#skipped()] ?? END;
  }

  next(): Token {
    const token = this.peek();
    this.#at = this.#skipped() + 1;
    return token;
  }

  /** Takes the next token if it is this mark. */
  take(mark: string): boolean {
    const fits = this.peek().kind === 'mark' && this.peek().text === mark;
    if (fits) this.next();
    return fits;
  }

  #skipped(): number {
    return this.#tokens[this.#at]?.kind === 'space' ? this.#at + 1 : this.#at;
  }
}

const END: Token = { kind: 'end', text: '', at: 0 };
