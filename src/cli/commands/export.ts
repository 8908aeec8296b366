import type { LogEvent } from '../../core/index.ts';
import { nodeSha256 } from '../../store/file/index.ts';
import { logPieces } from '../../store/index.ts';
import { type Given, needed, noWords, oneOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { writeWhole } from '../files.ts';
import { type Io, say } from '../io.ts';
import { progress } from '../progress.ts';
import { soundEvents } from '../site.ts';

const HELP = `tubwright export --site FILE|DIR --out FILE [--format ndjson]

Writes every event as NDJSON, one event a line, with a seal as the last line: whoever gets the file can prove with
\`tubwright check\` that nothing is missing and nothing was changed. Written whole or not at all; a file that is not sound
is not passed on. The same events give the same bytes.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder
  --out FILE       the file to write
  --format ndjson  the only format so far`;

/** A log as a sealed file. Named for what it does; `export` is a word of the language. */
export const exportLog: Command = {
  help: HELP,
  options: { site: 'text', out: 'text', format: 'text' },
  run: runExport,
};

async function runExport(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const out = needed(given, 'out');
  oneOf(given, 'format', ['ndjson']);
  const events = await soundEvents(needed(given, 'site'), io);
  await writeSealed(out, events, io);
  say(io, `${out}: ${events.length} events, sealed`);
  return 0;
}

/** Writes a sealed file whole or not at all. Refusals: `file-unwritable`. */
export async function writeSealed(path: string, events: readonly LogEvent[], io: Io): Promise<void> {
  const bar = progress(io, `writing ${path}`);
  let done = 0;
  const counted = function* () {
    for (const event of events) {
      bar.at(done / events.length);
      done += 1;
      yield event;
    }
  };
  try {
    await writeWhole([{ path, pieces: logPieces(counted(), nodeSha256()) }]);
  } finally {
    bar.end();
  }
}
