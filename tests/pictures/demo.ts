import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEMO_TODAY } from '../../demo-data/index.ts';
import type { Manifest } from '../../print/index.ts';

/** The built program; the pictures are taken from the folder of the repository, as npm runs them. */
export const MAIN = 'dist/src/cli/main.js';
const SITE = 'demo-data/site.ndjson';

/** An animal of the demo that is due on its day. */
export interface Due {
  readonly id: string;
  readonly name: string;
}

interface DueJson {
  readonly id: string;
  readonly animal: string;
  readonly next: string;
  readonly state: string;
  readonly meal: { readonly warnings: readonly string[] } | null;
}

/** Who comes due on the demo's day with a fresh weight, in walking order; at least four. */
export function walkOfToday(): readonly [Due, Due, Due, Due] {
  const lines = JSON.parse(run(['due', '--site', SITE, '--on', DEMO_TODAY, '--state', 'due', '--json'])) as DueJson[];
  const due = lines.filter((line) => line.meal?.warnings.length === 0 && line.next === DEMO_TODAY);
  const [a, b, c, d] = due.map(({ id, animal }) => ({ id, name: animal }));
  if (!a || !b || !c || !d) throw new Error('The demo has fewer than four animals due on its day.');
  return [a, b, c, d];
}

/** The first animal of the demo in that state on its day. */
export function firstIn(state: 'hold' | 'vet'): Due {
  const args = ['due', '--site', SITE, '--on', DEMO_TODAY, '--state', state, '--json'];
  const [line] = JSON.parse(run(args)) as DueJson[];
  if (line === undefined) throw new Error(`The demo has nobody in the state ${state}.`);
  return { id: line.id, name: line.animal };
}

/** What the press made: the PDF and where each card lies on it. */
export interface Printed {
  readonly pdf: string;
  readonly manifest: Manifest;
}

/** Prints cards of the demo as of its day. */
export function printed(folder: string, name: string, args: readonly string[]): Printed {
  const [pdf, manifest] = [join(folder, `${name}.pdf`), join(folder, `${name}.json`)];
  run(['cards', '--site', SITE, '--on', DEMO_TODAY, ...args, '--out', pdf, '--manifest', manifest]);
  return { pdf, manifest: JSON.parse(readFileSync(manifest, 'utf8')) as Manifest };
}

function run(args: readonly string[]): string {
  return execFileSync(process.execPath, [MAIN, ...args], { encoding: 'utf8', maxBuffer: 2 ** 28 });
}
