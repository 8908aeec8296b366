import type { Readable } from 'node:stream';
import { problem, type Result } from '../../core/index.ts';
import { type Io, put } from '../io.ts';
import type { Kind } from './kind.ts';

/** Answers are written in pieces of about this size, so that a long run costs few writes. */
const PIECE = 1 << 16;

/** How many cases came, and how many of them got an error for an answer. */
export interface Tally {
  readonly cases: number;
  readonly errors: number;
}

/** One JSON answer a line for one JSON case a line, in order; blank lines are passed over. */
export async function answerLines(kind: Kind, io: Io): Promise<Tally> {
  let [cases, errors] = [0, 0];
  let ready = '';
  for await (const line of linesOf(io.input)) {
    if (line.trim() === '') continue;
    const answer = await answerLine(kind, line);
    cases += 1;
    if (!answer.ok) errors += 1;
    ready += `${JSON.stringify(answer.ok ? answer.value : errorOf(answer))}\n`;
    if (ready.length < PIECE) continue;
    await put(io.output, ready);
    ready = '';
  }
  await put(io.output, ready);
  return { cases, errors };
}

function answerLine(kind: Kind, line: string): Result<unknown> | Promise<Result<unknown>> {
  let given: unknown;
  try {
    given = JSON.parse(line);
  } catch {
    return { ok: false, problem: problem('case-malformed', { why: 'the line is not JSON' }, '') };
  }
  return kind.answer(given);
}

function errorOf({ problem: said }: Extract<Result<unknown>, { ok: false }>) {
  const { code, message, remedy, path = '' } = said;
  return { error: { code, message: `${message} ${remedy}`, path } };
}

async function* linesOf(input: Readable): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let rest = '';
  for await (const piece of input) {
    const lines = (
      rest + (typeof piece === 'string' ? piece : decoder.decode(piece as Uint8Array, { stream: true }))
    ).split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
  }
  yield rest + decoder.decode();
}
