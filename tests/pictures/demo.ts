import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEMO_TODAY } from '../../demo-data/index.ts';
import type { Manifest } from '../../print/index.ts';
import { type AnimalRecord, type Facility, foldFacility, parseEvent } from '../../src/core/index.ts';

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

/** A male and a female of the demo that a pairing can be thought of. */
export interface Pair {
  readonly sire: string;
  readonly dam: string;
}

/** The living ball pythons whose young can differ most: the male and the female with the longest trait codes that hold a possible het. */
export function pairOfHets(): Pair {
  const grown = demoAnimals().filter((one) => one.species === 'Python regius' && one.dam === null);
  const longest = (sex: 'male' | 'female'): string => {
    const [first] = grown
      .filter((one) => one.sex === sex && /\[/.test(one.traits?.code ?? ''))
      .sort((a, b) => (b.traits?.code.length ?? 0) - (a.traits?.code.length ?? 0));
    if (first === undefined) throw new Error(`The demo has no ${sex} with a possible het.`);
    return first.id;
  };
  return { sire: longest('male'), dam: longest('female') };
}

/** A living animal of the demo whose parents are known. */
export function youngWithParents(): string {
  const young = demoAnimals().find((one) => one.sire !== null && one.dam !== null && one.name !== null);
  if (young === undefined) throw new Error('The demo has nobody with two parents.');
  return young.id;
}

/** The clutch of the demo that hatched last. */
export function lastClutch(): string {
  const hatched = [...demoSite().clutches.values()].filter((one) => one.hatchedOn !== null);
  const [last] = hatched.sort((a, b) => ((a.hatchedOn ?? '') > (b.hatchedOn ?? '') ? -1 : 1));
  if (last === undefined) throw new Error('The demo has no clutch that hatched.');
  return last.id;
}

function demoAnimals(): readonly AnimalRecord[] {
  return [...demoSite().animals.values()].filter((one) => one.left === null);
}

function demoSite(): Facility {
  const events = readFileSync(SITE, 'utf8')
    .trim()
    .split('\n')
    .flatMap((line) => {
      const read = parseEvent(JSON.parse(line));
      return read.ok ? [read.value] : [];
    });
  return foldFacility(events);
}

/** What the press made: the PDF and where each card lies on it. */
export interface Printed {
  readonly pdf: string;
  readonly manifest: Manifest;
}

/** Prints something of the demo by its own command line, without the options for site and files; gives the PDF's path. */
export function paperOf(folder: string, name: string, [command = '', ...args]: readonly string[]): string {
  const pdf = join(folder, `${name}.pdf`);
  const manifest = NO_MANIFEST.includes(command) ? [] : ['--manifest', join(folder, `${name}.json`)];
  run([command, '--site', SITE, ...args, '--out', pdf, ...manifest]);
  return pdf;
}

const NO_MANIFEST = ['lists', 'hand-over'];

/** Prints cards of the demo as of its day. */
export function printed(folder: string, name: string, args: readonly string[]): Printed {
  const [pdf, manifest] = [join(folder, `${name}.pdf`), join(folder, `${name}.json`)];
  run(['cards', '--site', SITE, '--on', DEMO_TODAY, ...args, '--out', pdf, '--manifest', manifest]);
  return { pdf, manifest: JSON.parse(readFileSync(manifest, 'utf8')) as Manifest };
}

function run(args: readonly string[]): string {
  return execFileSync(process.execPath, [MAIN, ...args], { encoding: 'utf8', maxBuffer: 2 ** 28 });
}
