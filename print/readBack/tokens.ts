/** An operator of page content. */
export interface Operator {
  readonly operator: string;
}

/** A number, a name with its slash, the bytes of a text, or an operator; brackets of arrays are left out. */
export type Token = number | string | Uint8Array | Operator;

const [OPEN, CLOSE, BACKSLASH, SLASH] = [0x28, 0x29, 0x5c, 0x2f];
const BLANK = 0x20;
const BRACKETS: readonly number[] = [0x5b, 0x5d];
const RETURN = 0x0d;

/** The words of page content as print writes it (ISO 32000-1, 7.2 and 7.3). */
export function* tokens(content: Uint8Array): Generator<Token> {
  let at = 0;
  while (at < content.length) {
    const byte = content[at] ?? BLANK;
    if (byte <= BLANK || BRACKETS.includes(byte)) at++;
    else if (byte === OPEN) {
      const [text, next] = literal(content, at + 1);
      at = next;
      yield text;
    } else {
      const start = at++;
      while (at < content.length && !endsWord(content[at] ?? BLANK)) at++;
      const word = wordOf(content, start, at);
      if (byte === SLASH) yield word;
      else yield Number.isNaN(Number(word)) ? { operator: word } : Number(word);
    }
  }
}

function endsWord(byte: number): boolean {
  return byte <= BLANK || byte === OPEN || byte === SLASH || BRACKETS.includes(byte);
}

function wordOf(content: Uint8Array, from: number, to: number): string {
  let word = '';
  for (let at = from; at < to; at++) word += String.fromCharCode(content[at] ?? BLANK);
  return word;
}

/** The bytes of a literal string (ISO 32000-1, 7.3.4.2), and where what follows begins. */
function literal(content: Uint8Array, from: number): readonly [text: Uint8Array, next: number] {
  const bytes: number[] = [];
  let at = from;
  for (; at < content.length && content[at] !== CLOSE; at++) {
    if (content[at] !== BACKSLASH) {
      bytes.push(content[at] ?? 0);
      continue;
    }
    const octal = /^[0-7]{1,3}/.exec(wordOf(content, at + 1, at + 4))?.[0];
    if (octal !== undefined) bytes.push(Number.parseInt(octal, 8));
    else bytes.push(content[at + 1] === 0x72 ? RETURN : (content[at + 1] ?? 0));
    at += octal?.length ?? 1;
  }
  return [new Uint8Array(bytes), at + 1];
}
