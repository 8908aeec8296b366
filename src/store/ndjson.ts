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

/**
 * Reads a whole file; nothing sound is lost, whatever stands between. `hash` is as in {@link logReader}. Problems: `line-broken`,
 * `file-cut`, `file-edited`.
 */
export function readLog(text: string, hash?: Sha256): LogReading {
  const reader = logReader(hash);
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

/** Lines are hashed so many letters at a time: each on its own takes several times as long, all at once twice the memory. */
const HASHED_AT_ONCE = 1 << 16;

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
    const all = this.#rest + text;
    const events: LogEvent[] = [];
    let from = 0;
    let unhashed = 0;
    for (let end = all.indexOf('\n'); end >= 0; end = all.indexOf('\n', from)) {
      const seal = this.#take(all.slice(from, end), events);
      if (seal !== null || from - unhashed > HASHED_AT_ONCE) {
        this.#hash.update(utf8(all.slice(unhashed, from)));
        unhashed = seal === null ? from : end + 1;
      }
      if (seal !== null) this.#check(seal);
      from = end + 1;
    }
    this.#hash.update(utf8(all.slice(unhashed, from)));
    this.#rest = all.slice(from);
    return events;
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
    const events: LogEvent[] = [];
    const whole = parseJson(line).ok;
    const seal = whole ? this.#take(line, events) : null;
    if (seal !== null) this.#check(seal);
    this.#say(problem('file-cut', { line: whole ? this.#line : this.#line + 1, sound: this.#events }));
    return events;
  }

  /** Takes in a line without its newline, and adds its event; a seal is given back, for what stands before it is to be hashed first. */
  #take(line: string, events: LogEvent[]): Seal | null {
    this.#line += 1;
    if (this.#seal === 'fits') this.#edited(`line ${this.#line} stands after the seal`);
    const data = parseJson(line);
    const seal = data.ok ? sealOf(data.value) : null;
    if (seal !== null) return seal;
    this.#more = line.endsWith(MORE);
    if (!data.ok && line.trim() === '') return null;
    const event = data.ok ? readEvent(data.value) : data;
    if (event.ok) {
      this.#events += 1;
      events.push(event.value);
      return null;
    }
    this.#say(problem('line-broken', { line: this.#line, why: whyOf(event.problem) }, `line ${this.#line}`));
    return null;
  }

  #check(seal: Seal): void {
    this.#more = false;
    const fits = seal.sha256 === this.#hash.hex() && seal.events === this.#events;
    this.#seal = fits ? 'fits' : 'wrong';
    if (!fits) this.#edited(`its seal is for ${seal.events} events with another content; ${this.#events} were read`);
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
