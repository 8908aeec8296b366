import { existsSync } from 'node:fs';
import { extname } from 'node:path';
import { clash, type EventId, type LogEvent } from '../../core/index.ts';
import { openData } from '../../hub/index.ts';
import { type Appended, eventLine } from '../../store/index.ts';
import { type Given, needed, onlyWord } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { isFolder } from '../files.ts';
import { type Io, say, warn } from '../io.ts';
import { inWords } from '../refused.ts';
import { soundEvents } from '../site.ts';
import { writeSealed } from './export.ts';

const HELP = `tubwright import FILE|DIR --into DIR|FILE

Takes in every event that is not there yet. All of it or nothing: a file that is not sound is refused whole. Doing it
again changes nothing. Two different events with one id are both kept, named here, and the exit code is then 1.

  --into DIR   a hub's folder; it is made if it is not there, and no hub may be running on it
  --into FILE  a log, which is sealed anew; a name with an ending, such as .ndjson, makes a file`;

/** Takes a log into another. Named for what it does; `import` is a word of the language. */
export const importLog: Command = {
  help: HELP,
  options: { into: 'text' },
  run: runImport,
};

async function runImport(given: Given, io: Io): Promise<ExitCode> {
  const into = needed(given, 'into');
  const events = await soundEvents(onlyWord(given, 'FILE'), io);
  const { stored, known, clashes } = (await isHub(into))
    ? await intoHub(into, events, io)
    : await intoFile(into, events, io);
  say(io, `${into}: ${stored} new events, ${known} were there already`);
  for (const id of clashes) warn(io, inWords(clash(id)));
  return clashes.length > 0 ? 1 : 0;
}

async function isHub(into: string): Promise<boolean> {
  return existsSync(into) ? isFolder(into) : into.endsWith('/') || extname(into) === '';
}

/** The hub's own way in, so that it also learns which device numbers are taken. */
async function intoHub(folder: string, events: readonly LogEvent[], io: Io): Promise<Appended> {
  const data = await openData({ dataDir: folder });
  try {
    for (const one of data.problems) warn(io, inWords(one));
    return await data.append(events);
  } finally {
    await data.close();
  }
}

async function intoFile(file: string, events: readonly LogEvent[], io: Io): Promise<Appended> {
  const held = existsSync(file) ? await soundEvents(file, io) : [];
  const merged = merge(held, events);
  if (merged.events.length > held.length || !existsSync(file)) await writeSealed(file, merged.events, io);
  return merged;
}

/** Both logs as one, each line once; of two events with one id both stay, the newcomer after the other. */
function merge(
  held: readonly LogEvent[],
  events: readonly LogEvent[],
): Appended & { readonly events: readonly LogEvent[] } {
  const lines = new Set<string>();
  const first = new Map<EventId, string>();
  const all: LogEvent[] = [];
  const clashes = new Set<EventId>();
  const take = (event: LogEvent): boolean => {
    const line = eventLine(event);
    const isNew = !lines.has(line);
    if (first.has(event.id) && first.get(event.id) !== line) clashes.add(event.id);
    else first.set(event.id, line);
    if (isNew) all.push(event);
    lines.add(line);
    return isNew;
  };
  for (const event of held) take(event);
  clashes.clear();
  const taken = events.filter(take).map(({ id }) => id);
  const stored = taken.filter((id) => !clashes.has(id)).length;
  return { events: all, stored, known: events.length - stored - clashes.size, clashes: [...clashes] };
}
