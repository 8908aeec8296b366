import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { readArgs } from './args.ts';
import type { Command, ExitCode } from './command.ts';
import { COMMANDS } from './commands/index.ts';
import { type Io, say, warn } from './io.ts';
import { Refused, refusal } from './refused.ts';
import { packageRoot } from './root.ts';
import { alignedRows } from './table.ts';

// Core is built without a language of its own for what zod finds; people at a terminal get whole words.
z.config(z.locales.en());

/** Runs one command line; whatever is wrong comes in words beside the output, and the code is then not 0. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  try {
    return await dispatch(args, io);
  } catch (error) {
    if (!isSaid(error)) throw error;
    warn(io, error.message);
    return 1;
  }
}

/** A refusal of ours, or a failure of the store or the hub: each has its words already. Anything else is a bug. */
function isSaid(error: unknown): error is Error {
  return error instanceof Refused || (error instanceof Error && 'problem' in error);
}

async function dispatch([name, ...rest]: readonly string[], io: Io): Promise<ExitCode> {
  if (name === '--version') return sayVersion(io);
  if (name === undefined || name === '--help' || name === '-h') return sayHelp(io, name === undefined);
  if (name === 'help') return helpFor(rest[0], io);
  if (rest.includes('--help')) return helpFor(name, io);
  const command = await commandOf(name);
  return command.run(readArgs(name, rest, command.options), io);
}

function commandOf(name: string): Promise<Command> {
  const found = COMMANDS.find((one) => one.name === name);
  if (found !== undefined) return found.load();
  throw refusal('command-unknown', { command: name, known: COMMANDS.map((one) => one.name).join(', ') });
}

async function helpFor(name: string | undefined, io: Io): Promise<ExitCode> {
  if (name === undefined) return sayHelp(io, false);
  say(io, (await commandOf(name)).help);
  return 0;
}

/** Without a command nothing was done, so that is not 0. */
function sayHelp(io: Io, isMissing: boolean): ExitCode {
  const rows = alignedRows(COMMANDS.map(({ name, does }) => [`  ${name}`, does]));
  const lines = ['tubwright COMMAND [options]', '', ...rows, '', '`tubwright COMMAND --help` says more.'];
  for (const line of lines) (isMissing ? warn : say)(io, line);
  return isMissing ? 1 : 0;
}

const packageFields = z.object({ version: z.string() });

async function sayVersion(io: Io): Promise<ExitCode> {
  const text = await readFile(join(packageRoot(), 'package.json'), 'utf8');
  say(io, packageFields.parse(JSON.parse(text)).version);
  return 0;
}
