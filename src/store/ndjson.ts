import { type LogEvent, type Problem, problem } from '../core/index.ts';
import { eventLine, parseJson, readEvent } from './line.ts';
import { type Sha256, sha256 } from './sha256.ts';

/**
 * A log as a file: one event a line. A line that ends with a space says that more of the same writing follows, so a
 * file that stops after such a line was cut, even between two lines. What `writeLog` writes ends with a seal, the
 * hash of every byte before it.
 */
export interface LogReading {
  /** Every sound event, before and after whatever is broken. */
  readonly events: readonly LogEvent[];
  readonly problems: readonly Problem[];
  /** True when a seal was there and fits: nothing is missing and nothing was changed. */
  readonly sealed: boolean;
}

/** Reads a file piece by piece, so that a large one need not be in memory at once. */
export interface LogReader {
  /** The events of the lines that are complete by now. */
  push(text: string): readonly LogEvent[];
  /** What is left in the last line, and what is wrong with the file. */
  end(): LogReading;
}

interface Seal {
  readonly events: number;
  readonly sha256: string;
}

/** After a line of which more of the same writing follows; JSON ignores the space. */
export const MORE = ' ';

/** Reads a whole file; nothing sound is lost, whatever stands between. Problems: `line-broken`, `file-cut`, `file-edited`. */
export function readLog(text: string): LogReading {
  const reader = logReader();
  const events = reader.push(text);
  const { events: last, problems, sealed } = reader.end();
  return { events: [...events, ...last], problems, sealed };
}

/** Writes a file with its seal; the same events in the same order give the same bytes. */
export function writeLog(events: readonly LogEvent[]): string {
  return [...logPieces(events)].join('');
}

/** The same piece by piece, about a thousand events each. */
export function* logPieces(events: Iterable<LogEvent>, hash: Sha256 = sha256()): Generator<string> {
  let count = 0;
  let piece = '';
  for (const event of events) {
    piece += `${eventLine(event)}${MORE}\n`;
    count += 1;
    if (count % 1000 !== 0) continue;
    hash.update(utf8(piece));
    yield piece;
    piece = '';
  }
  hash.update(utf8(piece));
  yield `${piece}${JSON.stringify({ seal: { events: count, sha256: hash.hex() } })}\n`;
}

/** A reader at the beginning of a file; `hash` is a fresh one, where there is a faster one than ours. */
export function logReader(hash: Sha256 = sha256()): LogReader {
  return new Reader(hash);
}

class Reader implements LogReader {
  readonly #hash: Sha256;
  readonly #problems: Problem[] = [];
  #rest = '';
  #line = 0;
  #events = 0;
  #more = false;
  #seal: 'none' | 'fits' | 'wrong' = 'none';

  constructor(hash: Sha256) {
    this.#hash = hash;
  }

  push(text: string): readonly LogEvent[] {
    const lines = (this.#rest + text).split('\n');
    this.#rest = lines.pop() ?? '';
    return lines.flatMap((line) => this.#take(line, '\n'));
  }

  end(): LogReading {
    const last = this.#rest;
    this.#rest = '';
    const before = this.#events;
    const events = last === '' ? [] : this.#takeLast(last);
    if (last === '' && this.#more) this.#say(problem('file-cut', { line: this.#line + 1, sound: before }));
    return { events, problems: this.#problems, sealed: this.#seal === 'fits' && this.#problems.length === 0 };
  }

  #takeLast(line: string): LogEvent[] {
    const whole = parseJson(line).ok;
    const events = whole ? this.#take(line, '') : [];
    this.#say(problem('file-cut', { line: whole ? this.#line : this.#line + 1, sound: this.#events }));
    return events;
  }

  #take(line: string, newline: string): LogEvent[] {
    this.#line += 1;
    if (this.#seal === 'fits') this.#edited(`line ${this.#line} stands after the seal`);
    const data = parseJson(line);
    const seal = data.ok ? sealOf(data.value) : null;
    if (seal !== null) return this.#check(seal);
    this.#hash.update(utf8(line + newline));
    this.#more = line.endsWith(MORE);
    if (line.trim() === '') return [];
    const event = data.ok ? readEvent(data.value) : data;
    if (!event.ok) {
      this.#say(problem('line-broken', { line: this.#line, why: whyOf(event.problem) }, `line ${this.#line}`));
      return [];
    }
    this.#events += 1;
    return [event.value];
  }

  #check(seal: Seal): LogEvent[] {
    this.#more = false;
    const fits = seal.sha256 === this.#hash.hex() && seal.events === this.#events;
    this.#seal = fits ? 'fits' : 'wrong';
    if (!fits) this.#edited(`its seal is for ${seal.events} events with another content; ${this.#events} were read`);
    return [];
  }

  #edited(why: string): void {
    this.#seal = 'wrong';
    this.#say(problem('file-edited', { why }));
  }

  #say(said: Problem): void {
    this.#problems.push(said);
  }
}

const encoder = new TextEncoder();

function utf8(text: string): Uint8Array {
  return encoder.encode(text);
}

function whyOf(said: Problem): string {
  return said.message.replace(/^This event cannot be read: /, '').replace(/\.$/, '');
}

function sealOf(data: unknown): Seal | null {
  if (typeof data !== 'object' || data === null || !('seal' in data)) return null;
  const { seal } = data;
  if (typeof seal !== 'object' || seal === null || !('events' in seal) || !('sha256' in seal)) return null;
  const { events, sha256: hash } = seal;
  return typeof events === 'number' && typeof hash === 'string' ? { events, sha256: hash } : null;
}
