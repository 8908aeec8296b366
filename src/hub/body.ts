import type { IncomingMessage } from 'node:http';
import { type Problem, problem } from '../core/index.ts';

/** The largest message that is read. */
export const MOST_BYTES = 1_000_000;
/** An honest message is a list of events, and those are at most 32 levels deep. */
const DEEPEST = 40;

/** Why a body was not read, with the HTTP status that says so. */
export interface Unread {
  readonly ok: false;
  readonly status: 400 | 413 | 415;
  readonly problem: Problem;
}

/** A body, or why there is none. */
export type Body = { readonly ok: true; readonly value: unknown } | Unread;

/** The JSON of a request's body, which is read no further than it may be long. */
export async function readBody(request: IncomingMessage): Promise<Body> {
  const { 'content-type': type = '', 'content-encoding': encoding, 'content-length': length } = request.headers;
  if (!/^application\/json\b/i.test(type)) return unread(415, 'it is not application/json');
  // A packed body could unfold without end; devices send plain ones.
  if (encoding !== undefined && encoding !== 'identity') return unread(415, 'it is packed');
  if (Number(length ?? 0) > MOST_BYTES) return tooLarge();
  const pieces: Buffer[] = [];
  let bytes = 0;
  for await (const piece of request) {
    bytes += (piece as Buffer).length;
    if (bytes > MOST_BYTES) return tooLarge();
    pieces.push(piece as Buffer);
  }
  return parse(Buffer.concat(pieces).toString('utf8'));
}

function parse(text: string): Body {
  if (depthOf(text) > DEEPEST) return unread(400, `it is nested deeper than ${DEEPEST} levels`);
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return unread(400, 'it is not JSON');
  }
}

/** The deepest level of brackets outside of strings, found before anything is built from the text. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    if (quoted) {
      if (sign === '\\') at += 1;
      else if (sign === '"') quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === '{' || sign === '[') deepest = Math.max(deepest, ++depth);
    else if (sign === '}' || sign === ']') depth -= 1;
  }
  return deepest;
}

function unread(status: 400 | 415, why: string): Unread {
  return { ok: false, status, problem: problem('message-malformed', { why }) };
}

function tooLarge(): Unread {
  return { ok: false, status: 413, problem: problem('message-too-large', { most: MOST_BYTES }) };
}
