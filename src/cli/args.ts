import { parseArgs } from 'node:util';
import { type Day, parseDay } from '../core/index.ts';
import { codeOf, orRefuse, refusal } from './refused.ts';

/** The options that a command takes: with a text behind them, or bare. */
export type Options = Readonly<Record<string, 'text' | 'bare'>>;

/** What stands on the command line. */
export interface Given {
  readonly command: string;
  readonly texts: Readonly<Record<string, string | undefined>>;
  readonly bare: ReadonlySet<string>;
  readonly words: readonly string[];
}

/** Reads a command's options; `words` are what stands between them. Refusals: `option-wrong`. */
export function readArgs(command: string, args: readonly string[], options: Options): Given {
  const all: Options = { ...options, help: 'bare' };
  const config = Object.fromEntries(
    Object.entries(all).map(([name, takes]) => [name, { type: takes === 'text' ? 'string' : 'boolean' } as const]),
  );
  try {
    const { values, positionals } = parseArgs({ args: [...args], options: config, allowPositionals: true });
    const entries = Object.entries(values);
    return {
      command,
      texts: Object.fromEntries(entries.flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : []))),
      bare: new Set(entries.filter(([, value]) => value === true).map(([name]) => name)),
      words: positionals,
    };
  } catch (error) {
    throw refusal('option-wrong', { command, why: argWords(error, options) });
  }
}

/** The text of an option that must be there. Refusals: `option-missing`. */
export function needed(given: Given, option: string): string {
  const text = given.texts[option];
  if (text === undefined || text === '')
    throw refusal('option-missing', { command: given.command, option: `--${option}` });
  return text;
}

/** The one word that a command takes, such as a file. Refusals: `option-missing`, `option-wrong`. */
export function onlyWord(given: Given, name: string): string {
  const [word, more] = given.words;
  if (word === undefined) throw refusal('option-missing', { command: given.command, option: name });
  if (more !== undefined)
    throw refusal('option-wrong', { command: given.command, why: `“${more}” is one word too many` });
  return word;
}

/** Refuses words where a command takes options only. */
export function noWords(given: Given): void {
  const [word] = given.words;
  if (word !== undefined)
    throw refusal('option-wrong', { command: given.command, why: `“${word}” has no option before it` });
}

/** The day of an option, or null if it is not there. Refusals: `date-malformed`. */
export function dayOf(given: Given, option: string): Day | null {
  const text = given.texts[option];
  return text === undefined ? null : orRefuse(parseDay(text));
}

/** A whole number from `least` to `most`; undefined if the option is not there. Refusals: `option-value`. */
export function wholeOf(given: Given, option: string, [least, most]: readonly [number, number]): number | undefined {
  const text = given.texts[option];
  if (text === undefined) return undefined;
  const value = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw refusal('option-value', { option: `--${option}`, text, wanted: `a whole number from ${least} to ${most}` });
}

/** One of a few words; undefined if the option is not there. Refusals: `option-value`. */
export function oneOf<T extends string>(given: Given, option: string, allowed: readonly T[]): T | undefined {
  const text = given.texts[option];
  if (text === undefined) return undefined;
  const found = allowed.find((one) => one === text);
  if (found !== undefined) return found;
  throw refusal('option-value', { option: `--${option}`, text, wanted: `one of ${allowed.join(', ')}` });
}

function argWords(error: unknown, options: Options): string {
  const said = error instanceof Error ? error.message : String(error);
  const named = /'(--?[^' ]+)/.exec(said)?.[1] ?? '';
  const known = Object.keys(options).map((name) => `--${name}`);
  if (codeOf(error) === 'ERR_PARSE_ARGS_UNKNOWN_OPTION')
    return `there is no ${named}; there are ${[...known, '--help'].join(', ')}`;
  if (options[named.replace(/^-+/, '')] === 'text') return `${named} needs a value behind it`;
  return `${named} takes no value`;
}
