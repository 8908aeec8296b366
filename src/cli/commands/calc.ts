import { type Given, onlyWord } from '../args.ts';
import { KINDS } from '../calc/kinds.ts';
import { answerLines } from '../calc/stream.ts';
import type { Command, ExitCode } from '../command.ts';
import { type Io, warn } from '../io.ts';
import { refusal } from '../refused.ts';

const HELP = `tubwright calc KIND < cases.ndjson > answers.ndjson

Reads one JSON case a line and writes one JSON answer a line, in order. A bad case answers
{"error":{"code","message","path"}} on its line, the rest still run, and the exit code is then 1.
Fields that are not known are passed over. docs/calc.md tells each formula and its source.

${KINDS.map((kind) => kind.help).join('\n\n')}`;

/** The core's pure functions from outside. */
export const calc: Command = {
  help: HELP,
  options: {},
  run: runCalc,
};

async function runCalc(given: Given, io: Io): Promise<ExitCode> {
  const name = onlyWord(given, 'KIND');
  const kind = KINDS.find((one) => one.name === name);
  if (kind === undefined) throw refusal('calc-unknown', { kind: name, known: KINDS.map((one) => one.name).join(', ') });
  const { cases, errors } = await answerLines(kind, io);
  if (errors > 0) warn(io, `${errors} of ${cases} cases could not be answered; each says why on its own line.`);
  return errors > 0 ? 1 : 0;
}
