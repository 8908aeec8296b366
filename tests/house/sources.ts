import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The root of the repository. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

const LEFT_OUT = /(^|\/)(node_modules|dist|out|coverage|\.git)(\/|$)/;

/** The files of a folder of the repository, and of the folders in it, whose names end in one of these; by path. */
export function filesIn(folder: string, ...endings: readonly string[]): ReadonlyMap<string, string> {
  const entries = readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true });
  const paths = entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((path) => !LEFT_OUT.test(path) && endings.some((ending) => path.endsWith(ending)));
  return new Map(paths.sort().map((path) => [path, readText(path)]));
}

/** A file of the repository as text. */
export function readText(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

/** The rows of every table of a Markdown text: cells without their blanks, heads and rules left out. */
export function tableRows(markdown: string): readonly (readonly string[])[] {
  const lines = markdown.split('\n');
  const isRule = (line: string | undefined): boolean => /^\|[\s:|-]+\|$/.test(line ?? '');
  return lines
    .filter((line, at) => line.startsWith('|') && !isRule(line) && !isRule(lines[at + 1]))
    .map((line) =>
      line
        .replace(/^\||\|$/g, '')
        .split(/(?<!\\)\|/)
        .map((cell) => cell.trim().replaceAll('\\|', '|')),
    );
}
