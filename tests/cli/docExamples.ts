import { spawn } from 'node:child_process';
import { readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { begin, ended, freshFolder, MAIN, type Ran, ROOT } from './tubwright.ts';

interface Example {
  readonly command: string;
  readonly output: string;
}

/** Every command of the `console` blocks of a page, with what stands below it. */
export function examplesOf(page: string): Example[] {
  const text = readFileSync(join(ROOT, 'docs', page), 'utf8');
  const blocks = [...text.matchAll(/^```console\n([\s\S]*?)^```$/gm)].map((found) => found[1] ?? '');
  return blocks.flatMap((block) => block.split(/^\$ /m).slice(1).map(exampleOf));
}

function exampleOf(part: string): Example {
  const end = part.includes("<<'END'\n") ? part.indexOf('\nEND\n') + 5 : part.indexOf('\n') + 1;
  return { command: part.slice(0, end).trimEnd(), output: part.slice(end) };
}

/** The output as a pattern: `…` on its own line is any lines, within a line any text; the port is any. */
function patternOf(output: string): RegExp {
  const lines = output
    .trimEnd()
    .split('\n')
    .map((line) => (line === '…' ? '(?:.*\\n)*?' : `${inLine(line)}\\n`));
  return new RegExp(`^${lines.join('')}$`);
}

function inLine(line: string): string {
  return line
    .split('…')
    .map((piece) => piece.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(':8137', ':\\d+'))
    .join('.*');
}

function runExample(command: string, folder: string): Promise<string> {
  return command.includes(' start ') ? startExample(command, folder) : shellExample(command, folder);
}

async function shellExample(command: string, folder: string): Promise<string> {
  const npx = 'npx() { shift; "$NODE" "$MAIN" "$@"; }';
  const env = { ...process.env, NODE: process.execPath, MAIN };
  const child = spawn('bash', ['-c', `${npx}\n${command}`], { cwd: folder, env, stdio: ['ignore', 'pipe', 'pipe'] });
  return both(await ended(child));
}

/** Runs until it says that Ctrl-C closes it, and closes it. */
async function startExample(command: string, folder: string): Promise<string> {
  const child = begin([...command.split(' ').slice(2), '--port', '0'], { cwd: folder });
  child.stdout?.on('data', (piece: string) => {
    if (piece.includes('Ctrl-C')) child.kill('SIGINT');
  });
  return both(await ended(child)).replace('closing …\n', '');
}

function both({ out, err }: Ran): string {
  return out + err;
}

/** Each example of a page of docs/, run as it stands there, in a folder that holds the demo. */
export function runPage(page: string): void {
  const folder = freshFolder();
  beforeAll(() => symlinkSync(join(ROOT, 'demo-data'), join(folder, 'demo-data')));
  describe(`docs/${page}`, () => {
    it.each(examplesOf(page).map(({ command, output }) => [command, output] as const))(
      'shows what happens: %s',
      async (command, output) => {
        expect(await runExample(command, folder)).toMatch(patternOf(output));
      },
    );
  });
}
