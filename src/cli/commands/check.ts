import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import {
  type Facility,
  foldFacility,
  type LogEvent,
  type Problem,
  problem,
  sayId,
  sayNumber,
} from '../../core/index.ts';
import { checkFile, type Soundness } from '../../store/file/index.ts';
import { readLog } from '../../store/index.ts';
import { type Given, onlyWord } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { type Findings, findings } from '../findings.ts';
import { type Io, say, warn } from '../io.ts';
import { inWords } from '../refused.ts';
import { type ReadLog, readLogFile } from '../site.ts';

const HELP = `tubwright check FILE|DIR [--json]

Proves a log sound. Not sound, with exit code 1: a line that is broken, a file that was cut, anything changed after it
was sealed, two different events with one id. Worth knowing, but sound: kinds of event that a newer program wrote,
ids that no event has added, slips whose event is not in the file, numbers of a device that are missing. A file
without a seal can be whole without anything proving it; \`tubwright export\` seals.

  --json  {"file","sound","seal":"sealed"|"partly"|"unsealed","events","animals","places","devices",
          "problems":[{"code","message","remedy"}],"notes":[…]}`;

/** Is a file sound? */
export const check: Command = {
  help: HELP,
  options: { json: 'bare' },
  run: runCheck,
};

async function runCheck(given: Given, io: Io): Promise<ExitCode> {
  const log = await readLogFile(onlyWord(given, 'FILE'), io);
  const proof = await proofOf(log);
  const facility = foldFacility(log.events);
  const found = findings([...log.events, ...proof.parked], facility);
  const problems = [...proof.problems, ...found.clashes];
  const sound = problems.length === 0;
  const counts = countsOf(log.events, facility);
  if (given.bare.has('json')) {
    say(io, JSON.stringify({ file: log.file, sound, seal: proof.seal, ...counts, problems, notes: notesOf(found) }));
  } else sayFindings(io, log.file, counts, [`seal: ${SEAL_WORDS[proof.seal]}`, ...notesOf(found)]);
  for (const one of problems) warn(io, inWords(one));
  if (!given.bare.has('json')) say(io, sound ? 'sound' : `not sound: ${problems.length} found`);
  return sound ? 0 : 1;
}

interface Proof {
  readonly seal: Soundness['proof'];
  readonly problems: readonly Problem[];
  /** Newcomers that a hub has put aside because their id was taken. */
  readonly parked: readonly LogEvent[];
}

async function proofOf(log: ReadLog): Promise<Proof> {
  const { file, ofHub } = log;
  // Only a hub's file has its seals beside it; every other was read through already.
  const { proof: seal, problems } = existsSync(`${file}.seals`) ? await checkFile(file) : ownProof(log);
  const isEmpty = !ofHub && log.events.length === 0 && seal === 'unsealed' && problems.length === 0;
  const parked = ofHub ? await readFile(`${file}.parked`, 'utf8').catch(() => '') : '';
  return {
    seal,
    problems: isEmpty ? [problem('file-cut', { line: 1, sound: 0 })] : problems,
    parked: readLog(parked).events,
  };
}

function ownProof({ sealed, problems }: ReadLog): Pick<Soundness, 'proof' | 'problems'> {
  return { proof: sealed ? 'sealed' : 'unsealed', problems };
}

interface Counts {
  readonly events: number;
  readonly animals: number;
  readonly places: number;
  readonly devices: number;
}

function countsOf(events: readonly LogEvent[], { animals, places }: Facility): Counts {
  const devices = new Set(events.map((event) => event.device)).size;
  return { events: events.length, animals: animals.size, places: places.size, devices };
}

function sayFindings(io: Io, file: string, counts: Counts, lines: readonly string[]): void {
  const said = Object.entries(counts).map(([what, number]) => `${sayNumber(number)} ${what}`);
  say(io, `${file}: ${said.join(', ')}`);
  for (const line of lines) say(io, line);
}

const SEAL_WORDS = {
  sealed: 'fits, so nothing is missing and nothing was changed',
  partly: 'fits as far as it goes; a hub seals its log piece by piece',
  unsealed: 'none that proves that the file is whole',
} as const satisfies Record<Soundness['proof'], string>;

function notesOf({ unknown, strangers, loose, twice, missing }: Findings): readonly string[] {
  return [
    ...[...unknown].map(
      ([kind, count]) => `${count} × “${kind}”: a kind that this program does not know; kept and passed on`,
    ),
    ...[...strangers].map(
      ([id, count]) => `${sayId(id)}: ${count} events about it, none that adds it; its beginning may not have arrived`,
    ),
    ...(loose > 0 ? [`${loose} slips correct events that are not in this file`] : []),
    ...(twice > 0 ? [`${twice} events stand here twice, letter for letter; they count once`] : []),
    ...[...missing].map(
      ([device, count]) => `device ${device}: ${count} of its numbers are missing; they may not have arrived`,
    ),
  ];
}
