import { mkdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { PACK_PAPERS, type PackPaper, type PrintedDocument, printPack } from '../../../print/index.ts';
import { loadFonts } from '../../../print/node/index.ts';
import {
  COUNTRY_PROFILES,
  type CountryProfile,
  type Day,
  type Id,
  type LogEvent,
  type Pack,
  type PackChoice,
  type PackLeft,
  packFiles,
  packOf,
  parseId,
  profileById,
  profileOfSite,
} from '../../core/index.ts';
import { dayOf, type Given, needed, noWords, oneOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { type NewFile, writeWhole } from '../files.ts';
import { type Io, say, warn } from '../io.ts';
import { progress } from '../progress.ts';
import { inWords, orRefuse, Refused, refusal, systemWords } from '../refused.ts';
import { warnOfSigns } from '../signs.ts';
import { foldedSite, soundEvents } from '../site.ts';

const HELP = `tubwright pack --site FILE|DIR [--on DATE] [--only ID,…|--rack ID] [--profile NAME] [--paper a4|letter]
               [--out X.pdf] [--csv DIR]

The inspector's pack: for each animal what the profile asks for, feeds, weights, lengths, treatments, looks, moves, notes,
papers, skipped tasks and cleaning of the three years before a day, as a PDF and as one CSV file a table. It reads the log and writes nothing into it. The same
site, date and choice give the same bytes. All files are written whole or not at all.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder
  --on DATE        the last day that is told of, such as 2026-11-25 (default: today at the site)
  --only ID,ID,…   these animals, also such as left the site (default: all that were here in those years)
  --rack ID        the animals of a place: a rack, a room, a tub, and whatever stands in it
  --profile NAME   whose rules it follows (default: what the site picked, else plain)
${COUNTRY_PROFILES.map(({ id, name }) => `                   ${id}: ${name}`).join('\n')}
  --paper PAPER    a4 (default) or letter
  --out X.pdf      the PDF
  --csv DIR        the folder for the CSV files; it is made if it is missing

Give --out, --csv or both. The profiles are no legal advice: your licence and local authority decide.`;

/** The inspector's pack. */
export const pack: Command = {
  help: HELP,
  options: {
    site: 'text',
    on: 'text',
    only: 'text',
    rack: 'text',
    profile: 'text',
    paper: 'text',
    out: 'text',
    csv: 'text',
  },
  run: runPack,
};

async function runPack(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const [out, csv] = [given.texts['out'], given.texts['csv']];
  if (out === undefined && csv === undefined)
    throw refusal('option-missing', { command: 'pack', option: '--out or --csv' });
  const paper = oneOf(given, 'paper', Object.keys(PACK_PAPERS) as PackPaper[]) ?? 'a4';
  const picked = given.texts['profile'] === undefined ? null : orRefuse(profileById(given.texts['profile']));
  const { choice, left } = choiceOf(given);
  const day = dayOf(given, 'on');
  const events = await soundEvents(needed(given, 'site'), io);
  const made = make(events, { choice, picked, day }, io);
  const whole = { ...made, left: [...left, ...made.left] };
  const printed = out === undefined ? null : await print(whole, paper, io);
  const tables = csv === undefined ? [] : await tablesIn(csv, whole);
  await writeWhole([
    ...(printed === null || out === undefined ? [] : [{ path: out, pieces: [printed.pdf] }]),
    ...tables,
  ]);
  return report(whole, { out, printed, csv, files: tables.length }, io);
}

interface Asked {
  readonly choice: PackChoice;
  readonly picked: CountryProfile | null;
  readonly day: Day | null;
}

function make(events: readonly LogEvent[], { choice, picked, day }: Asked, io: Io): Pack {
  const { facility, on } = foldedSite(events, day, io);
  const profile = picked ?? profileOfSite(facility.site.rules.countryProfile);
  return orRefuse(packOf(events, { choice, on, profile }));
}

/** What was asked for; ids that are none are named with what is wrong. Refusals: `option-wrong`, `not-an-id`, `check-failed`. */
function choiceOf(given: Given): { readonly choice: PackChoice; readonly left: readonly PackLeft[] } {
  const [only, rack] = [given.texts['only'], given.texts['rack']];
  if (only !== undefined && rack !== undefined)
    throw refusal('option-wrong', { command: 'pack', why: '--only and --rack exclude each other' });
  if (rack !== undefined) return { choice: { of: 'place', place: orRefuse(parseId(rack)).id }, left: [] };
  if (only === undefined) return { choice: { of: 'all' }, left: [] };
  const ids: Id[] = [];
  const left: PackLeft[] = [];
  for (const text of only.split(',').map((word) => word.trim())) {
    const read = parseId(text);
    if (read.ok) ids.push(read.value.id);
    else left.push({ id: text, problem: read.problem });
  }
  const [first] = left;
  if (ids.length === 0 && first !== undefined) throw new Refused([first.problem]);
  return { choice: { of: 'only', ids }, left };
}

async function print(whole: Pack, paper: PackPaper, io: Io) {
  const bar = progress(io, 'setting the pack');
  try {
    return await printPack({ pack: whole, paper, fonts: await loadFonts(), onProgress: bar.at });
  } finally {
    bar.end();
  }
}

async function tablesIn(folder: string, whole: Pack): Promise<readonly NewFile[]> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw refusal('file-unwritable', { file: folder, why: systemWords(error) });
  }
  return packFiles(whole).map(({ name, text }) => ({ path: join(folder, name), pieces: [text] }));
}

interface Written {
  readonly out: string | undefined;
  readonly printed: PrintedDocument | null;
  readonly csv: string | undefined;
  readonly files: number;
}

function report({ animals, left, from, on, profile }: Pack, { out, printed, csv, files }: Written, io: Io): ExitCode {
  const what = `${count(animals.length, 'animal')}, ${from} to ${on}, profile ${profile.id}`;
  if (out !== undefined) say(io, `${basename(out)}: ${what}, ${count(printed?.manifest.pages.length ?? 0, 'page')}`);
  if (csv !== undefined) say(io, `${basename(csv)}: ${out === undefined ? `${what}, ` : ''}${count(files, 'table')}`);
  for (const { id, problem } of left) warn(io, `not in the pack: ${id}: ${inWords(problem)}`);
  const signs = warnOfSigns(printed?.missing ?? [], io);
  return left.length > 0 ? 1 : signs;
}

function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`;
}
