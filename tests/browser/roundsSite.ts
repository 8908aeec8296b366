import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { LogEvent } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { type RunningApp, startApp } from './site.ts';
import { ago } from './smallSite.ts';

export const [ROOM, RACK, HALL] = [idOf(301), idOf(302), idOf(303)];
export const TUBS = Array.from({ length: 12 }, (_none, at) => idOf(310 + at));
/** One that nobody opens alone, and one with a filtered pool. */
export const [GUARDED, WET] = [idOf(330), idOf(331)];
export const ANIMALS = [...TUBS, GUARDED, WET].map((_home, at) => idOf(340 + at));

type Rows = Parameters<typeof eventsOf>[0];

/** What a vet wrote for the first animal; its first dose is due today. */
const PAPER = {
  ...{ drug: 'as the vet wrote it', prescriber: 'Dr Linnet Sallowfield', route: 'by injection', withholdFood: false },
  ...{ amount: { by: 'volume', ml: 0.4 }, everyHours: 48, count: 3, startsOn: ago(0) },
};

/** A rack of twelve tubs that all got water three days ago, and a hall of two exhibits; everybody ate four days ago. */
export function roundsLog(): LogEvent[] {
  const homes = [...TUBS, GUARDED, WET];
  const rows: Rows = [
    [
      ago(90),
      'site-named',
      [],
      { name: 'Walking House', timeZone: 'Etc/UTC', host: 'tubs.example', safetyLine: 'Ring the bell first.' },
    ],
    [ago(90), 'keeper-added', [idOf(304)], { name: 'Tilda Marrowby', role: 'keeper' }],
    [ago(90), 'place-added', [ROOM], { placeKind: 'room', name: 'Long Room', walk: 1 }],
    [ago(90), 'place-added', [RACK], { placeKind: 'rack', name: 'Rack 1', parent: ROOM, walk: 1 }],
    [ago(90), 'place-added', [HALL], { placeKind: 'room', name: 'Hall', walk: 2 }],
    ...TUBS.map((tub, at): Rows[number] => [
      ago(90),
      'place-added',
      [tub],
      { placeKind: 'tub', name: `1-${String(at + 1).padStart(2, '0')}`, parent: RACK, walk: at + 1 },
    ]),
    [ago(90), 'place-added', [GUARDED], { placeKind: 'exhibit', name: 'Exhibit Heron', parent: HALL, walk: 1 }],
    [ago(90), 'place-added', [WET], { placeKind: 'exhibit', name: 'Exhibit Teal', parent: HALL, walk: 2 }],
    [ago(89), 'place-set', [GUARDED], { name: 'Exhibit Heron', parent: HALL, walk: 1, twoPeople: true }],
    [
      ago(89),
      'place-set',
      [WET],
      { name: 'Exhibit Teal', parent: HALL, walk: 2, pool: { litres: 240, filtered: true } },
    ],
    ...ANIMALS.flatMap((animal, at): Rows[number][] => [
      [ago(80), 'animal-added', [animal], { species: 'Python regius', name: `Reed ${at + 1}`, sex: 'female' }],
      [ago(79), 'animal-moved', [animal], { to: homes[at] }],
      [ago(10), 'animal-weighed', [animal], { weightG: 800 }],
      [ago(4), 'prey-offered', [animal], { prey: 'rat-small', count: 1, totalG: 80, outcome: 'taken' }],
    ]),
    ...[9, 6, 3].map((days): Rows[number] => [ago(days), 'water-changed', [RACK, ...TUBS], {}]),
    [ago(2), 'prescription-written', [ANIMALS[0] ?? ROOM], PAPER],
    [ago(8), 'pool-served', [WET], { work: 'part', percent: 25 }],
    [ago(1), 'health-looked', [...homes], { well: true }],
  ];
  return eventsOf([...rows].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}

/** Starts a hub on that house; `clear` takes its folder away. */
export async function openRoundsHouse(): Promise<{ readonly app: RunningApp; clear(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-rounds-'));
  const [file, data] = [join(folder, 'rounds.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(roundsLog()));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The house was not taken in: ${taken.err}`);
  const app = await startApp(['--data', data]);
  return { app, clear: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
