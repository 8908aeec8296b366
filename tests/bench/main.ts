import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { benchCards } from './cards.ts';
import { benchFold } from './fold.ts';

/** `npm run bench`: every speed goal as a ratio against a limit measured in the same run; docs/speed.md keeps the last figures. */
async function main(): Promise<void> {
  const parts = [
    ['Cards', benchCards],
    ['Fold and due list', benchFold],
  ] as const;
  const text: string[] = [];
  for (const [title, bench] of parts) {
    process.stdout.write(`${title}\n`);
    const lines = await bench();
    for (const line of lines) process.stdout.write(`  ${line}\n`);
    text.push(`## ${title}`, '', ...lines.map((line) => `- ${line}`), '');
  }
  if (process.argv.includes('--write')) writeFileSync('docs/speed.md', `${intro()}${text.join('\n')}`);
}

function intro(): string {
  const day = new Date().toISOString().slice(0, 10);
  return [
    '# Speed',
    '',
    'Written by `npm run bench -- --write`: ratios against a limit that was measured in the same run, so that a slow machine does not matter.',
    `Last run: ${day}, Node ${process.versions.node}, ${cpus().length} cores.`,
    '',
    '',
  ].join('\n');
}

await main();
