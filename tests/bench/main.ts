import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { benchCards } from './cards.ts';
import { benchCardsMemory } from './cardsMemory.ts';
import { benchFold } from './fold.ts';
import { benchForecast } from './forecast.ts';
import { benchGenetics } from './genetics.ts';
import { benchOpen } from './open.ts';
import { benchPlan } from './plan.ts';

const PAGE = 'docs/speed.md';

/** A part by the name that chooses it, its heading, and its work. */
const PARTS = [
  ['open', 'Opening a log', benchOpen],
  ['cards', 'Cards', benchCards],
  ['cards-memory', 'Memory of a long run', benchCardsMemory],
  ['fold', 'Fold and due list', benchFold],
  ['forecast', 'Forecast of prey', benchForecast],
  ['genetics', 'Genetics', benchGenetics],
  ['plan', 'Season plan', benchPlan],
] as const;

/**
 * `npm run bench`: every speed goal as a ratio against a limit measured in the same run; docs/speed.md keeps the last
 * figures. `-- genetics` runs that part alone, `--write` puts what was run into the page and leaves the rest as it was.
 */
async function main(args: readonly string[]): Promise<void> {
  const asked = args.filter((one) => !one.startsWith('--'));
  const names = PARTS.map(([name]) => name);
  const stranger = asked.find((one) => !names.some((name) => name === one));
  if (stranger !== undefined) throw new Error(`There is no bench “${stranger}”. Take one of: ${names.join(', ')}.`);
  const sections = writtenSections();
  for (const [name, title, bench] of PARTS) {
    if (asked.length > 0 && !asked.includes(name)) continue;
    process.stdout.write(`${title}\n`);
    const lines = await bench();
    for (const line of lines) process.stdout.write(`  ${line}\n`);
    sections.set(title, [ranOn(), '', ...lines.map((line) => `- ${line}`)].join('\n'));
  }
  if (args.includes('--write')) writeFileSync(PAGE, `${intro()}${pageOf(sections)}`);
}

/** What the page says under each heading. */
function writtenSections(): Map<string, string> {
  const [, ...sections] = readFileSync(PAGE, 'utf8').split(/^## /m);
  return new Map(
    sections.map((section) => {
      const [title = '', ...rest] = section.split('\n');
      return [title, rest.join('\n').trim()] as const;
    }),
  );
}

function pageOf(sections: ReadonlyMap<string, string>): string {
  const known = PARTS.flatMap(([, title]) => {
    const text = sections.get(title);
    return text === undefined ? [] : [`## ${title}\n\n${text}\n`];
  });
  return known.join('\n');
}

function ranOn(): string {
  const day = new Date().toISOString().slice(0, 10);
  return `Last run: ${day}, Node ${process.versions.node}, ${cpus().length} cores.`;
}

function intro(): string {
  return [
    '# Speed',
    '',
    'Written by `npm run bench -- --write`: ratios against a limit that was measured in the same run, so that a slow machine does not matter.',
    '`npm run bench -- genetics --write` runs one part and leaves the others as they were.',
    '',
    '',
  ].join('\n');
}

await main(process.argv.slice(2));
