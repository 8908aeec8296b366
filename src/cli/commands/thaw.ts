import { type DueLine, dueList, isToFeed, sayAnimal, sayPrey, type ThawLine, thawList } from '../../core/index.ts';
import { type Given, noWords } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { type Io, say, warn } from '../io.ts';
import { openSite } from '../site.ts';
import { alignedRows } from '../table.ts';

const HELP = `tubwright thaw --site FILE|DIR [--on DATE] [--json]

What to take out of the freezer for the animals to be fed on that day: what is needed, and that with 5 % to spare
(common practice, no source). Held animals are left out; animals for which no meal can be worked out are named.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder
  --on DATE        the day of feeding, such as 2026-11-25 (default: today at the site)
  --json           one JSON array; an item is {"prey","name","needed","thaw","inFreezer":number|null,"animals"}

Refused thawed prey is for the same session only, never refrozen. Freezing does not kill germs: wash your hands.`;

/** What to thaw. */
export const thaw: Command = {
  help: HELP,
  options: { site: 'text', on: 'text', json: 'bare' },
  run: runThaw,
};

async function runThaw(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const { facility, on } = await openSite(given, io);
  const lines = thawList(facility, on);
  if (given.bare.has('json')) say(io, JSON.stringify(lines.map((line) => ({ name: sayPrey(line.prey), ...line }))));
  else if (lines.length === 0) say(io, `Nothing to thaw for ${on}: no animal is to be fed.`);
  else for (const row of alignedRows([TITLES, ...lines.map(cells)])) say(io, row);
  for (const line of lines.filter(isShort)) warn(io, shortWords(line));
  for (const line of dueList(facility, on).filter(isUncounted)) warn(io, uncountedWords(line));
  return 0;
}

const TITLES = ['prey', 'needed', 'thaw', 'in freezer', 'animals'];

function cells(line: ThawLine): readonly string[] {
  const { prey, needed, thaw: out, inFreezer, animals } = line;
  return [
    sayPrey(prey),
    String(needed),
    String(out),
    inFreezer === null ? 'not counted' : String(inFreezer),
    String(animals),
  ];
}

function isShort(line: ThawLine): boolean {
  return line.inFreezer !== null && line.inFreezer < line.thaw;
}

function shortWords({ prey, thaw: out, inFreezer }: ThawLine): string {
  return `${sayPrey(prey)}: ${out} wanted, ${inFreezer} in the freezer by the last count. Count again, or plan other prey.`;
}

function isUncounted(line: DueLine): boolean {
  return isToFeed(line) && line.meal === null;
}

function uncountedWords({ animal, problem }: DueLine): string {
  return `${sayAnimal(animal)} is to be fed but not counted here. ${problem?.message ?? ''} ${problem?.remedy ?? ''}`.trim();
}
