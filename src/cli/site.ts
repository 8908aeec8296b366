import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { StringDecoder } from 'node:string_decoder';
import { type Day, type Facility, foldFacility, type LogEvent, type Problem, problem } from '../core/index.ts';
import { nodeSha256 } from '../store/file/index.ts';
import { type LogReading, logReader, MORE, readLine } from '../store/index.ts';
import { dayOf, type Given, needed } from './args.ts';
import type { Io } from './io.ts';
import { progress } from './progress.ts';
import { codeOf, Refused, refusal, systemWords } from './refused.ts';
import { dayIn } from './today.ts';

/** A log as it was read, with its file and whether a hub may still be writing it. */
export interface ReadLog extends LogReading {
  readonly file: string;
  readonly ofHub: boolean;
}

/** A site as it was known on a day. */
export interface Site {
  readonly facility: Facility;
  readonly on: Day;
}

/** More lines than this nobody reads; `check` shows them all. */
const MOST_SAID = 5;

/** Reads the site of `--site` as known on the day of `--on`, or today. Refusals: those of {@link soundEvents}, `zone-unknown`. */
export async function openSite(given: Given, io: Io): Promise<Site> {
  const path = needed(given, 'site');
  const asked = dayOf(given, 'on');
  return foldedSite(await soundEvents(path, io), asked, io);
}

/** The site of these events as known on that day, or today. Refusals: `zone-unknown`. */
export function foldedSite(events: readonly LogEvent[], asked: Day | null, io: Io): Site {
  const on = asked ?? dayIn(zoneOf(events), io.now());
  return { facility: foldFacility(events.filter((event) => event.day <= on)), on };
}

/** Every event of a file or a hub's folder. Refusals: `file-missing`, `file-unreadable`, `site-unsound` with what is wrong. */
export async function soundEvents(path: string, io: Io): Promise<readonly LogEvent[]> {
  const { events, problems, file, ofHub } = await readLogFile(path, io);
  // What a running hub is just writing is not confirmed to anybody yet; a file that was copied is whole or broken.
  const wrong = ofHub ? problems.filter((one) => one.code !== 'file-cut') : problems;
  if (wrong.length > 0) throw new Refused([...firstOf(wrong), problem('site-unsound', { file })]);
  return events;
}

/** Reads a log, sound or not. Refusals: `file-missing`, `file-unreadable`. */
export async function readLogFile(path: string, io: Io): Promise<ReadLog> {
  const { file, ofHub, bytes } = await locate(path);
  const bar = progress(io, `reading ${basename(file)}`);
  const reader = logReader(nodeSha256());
  const end = new PlainEnd();
  const decoder = new StringDecoder('utf8');
  const events: LogEvent[] = [];
  const take = (text: string): void => {
    for (const event of reader.push(text)) events.push(event);
    end.push(text);
  };
  let read = 0;
  try {
    for await (const piece of createReadStream(file, { highWaterMark: 1 << 18 })) {
      take(decoder.write(piece as Buffer));
      read += (piece as Buffer).length;
      bar.at(read / bytes);
    }
    take(decoder.end());
  } catch (error) {
    throw refusal('file-unreadable', { path: file, why: systemWords(error) });
  } finally {
    bar.end();
  }
  for (const event of reader.push(end.missing())) events.push(event);
  const { events: last, problems, sealed } = reader.end();
  return { events: [...events, ...last], problems, sealed, file, ofHub };
}

/**
 * Files of other programs often lack the newline after the last line. Ours never do, and mark the lines that more
 * follows: where lines stand before it, none is marked and the last one is whole, only the newline is missing.
 */
class PlainEnd {
  #rest = '';
  #marked = false;
  #begun = false;

  push(text: string): void {
    const all = this.#rest + text;
    this.#marked ||= all.includes(`${MORE}\n`);
    this.#begun ||= all.includes('\n');
    this.#rest = all.slice(all.lastIndexOf('\n') + 1);
  }

  /** What to add at the end. */
  missing(): string {
    const isPlain = this.#begun && !this.#marked;
    return isPlain && readLine(this.#rest).ok ? '\n' : '';
  }
}

async function locate(path: string): Promise<{ file: string; ofHub: boolean; bytes: number }> {
  const found = await sizeOf(path);
  if (!found.isDirectory()) return { file: path, ofHub: false, bytes: found.size };
  // A single file is read without loading the hub.
  const { EVENTS_FILE } = await import('../hub/index.ts');
  const file = join(path, EVENTS_FILE);
  return { file, ofHub: true, bytes: (await sizeOf(file)).size };
}

async function sizeOf(path: string) {
  try {
    return await stat(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') throw refusal('file-missing', { file: path });
    throw refusal('file-unreadable', { path, why: systemWords(error) });
  }
}

function zoneOf(events: readonly LogEvent[]): string {
  return foldFacility(events.filter((event) => event.subjects.length === 0)).site.timeZone;
}

function firstOf(problems: readonly Problem[]): readonly Problem[] {
  return problems.slice(0, MOST_SAID);
}
