import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Where a program is on the path; undefined when it is not. */
export function findProgram(program: string): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.map((folder) => join(folder, program)).find((path) => existsSync(path));
}
