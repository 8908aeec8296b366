import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays, type Day, type Id, type LogEvent, sayId } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import type { Tame } from './smallSite.ts';

export const TODAY = new Date().toISOString().slice(0, 10) as Day;
/** A day so many days ago. */
export const ago = (days: number): Day => addDays(TODAY, -days);

interface Bred extends Tame {
  readonly sex: 'male' | 'female';
  readonly code: string;
  readonly species: string;
}

let next = 140;

function bred(name: string, sex: Bred['sex'], code: string, species = 'Python regius'): Bred {
  const id = idOf(next++);
  return { id, name, display: sayId(id).replace(' ', '-'), sex, code, species };
}

/** Two double hets, with nothing written of their season. */
export const HERON = bred('Heron', 'male', 'alb/+; pie/+');
export const WREN = bred('Wren', 'female', 'alb/+; pie/+');
/** Her clutch of seven by Plover is about to hatch; both are het Clown with two chances in three. */
export const RAVEN = bred('Raven', 'female', '[cln 2:3]/+');
export const PLOVER = bred('Plover', 'male', '[cln 2:3]/+');
/** Her clutch has no sire written: she was with Heron and with Lark. */
export const SWIFT = bred('Swift', 'female', 'alb/+');
export const LARK = bred('Lark', 'male', 'alb/alb');
/** She was with Crow, who was sold since, in the season before this one only. */
export const DOVE = bred('Dove', 'female', 'wt');
export const CROW = bred('Crow', 'male', 'wt');
/** Nobody was ever with her. */
export const LINNET = bred('Linnet', 'female', 'wt');
/** Live-bearers: she was with him this season. */
export const GULL = bred('Gull', 'female', 'wt', 'Boa imperator');
export const TERN = bred('Tern', 'male', 'wt', 'Boa imperator');
/** She lies with him now. */
export const TEAL = bred('Teal', 'female', 'wt');
export const SNIPE = bred('Snipe', 'male', 'wt');

const ALL = [HERON, WREN, RAVEN, PLOVER, SWIFT, LARK, DOVE, CROW, LINNET, GULL, TERN, TEAL, SNIPE];

const [ROOM, RACK, INCUBATOR] = [idOf(131), idOf(132), idOf(133)];
/** Two shelves of the incubator. */
export const [SHELF, HIGHER_SHELF] = [idOf(134), idOf(135)];
/** Raven's clutch and Swift's. */
export const RAVENS_CLUTCH = idOf(170);
export const SWIFTS_CLUTCH = idOf(171);

type Rows = Parameters<typeof eventsOf>[0];

const paired = (days: number, dam: Id, sire: Id): Rows[number] => [ago(days), 'pairing-started', [dam, sire]];
const apart = (days: number, dam: Id, sire: Id): Rows[number] => [ago(days), 'pairing-ended', [dam, sire]];

/** The log of a house in its season. */
export function seasonLog(): LogEvent[] {
  const rows: Rows = [
    [ago(500), 'site-named', [], { name: 'Season House', timeZone: 'Etc/UTC', host: 'season.example' }],
    [ago(500), 'place-added', [ROOM], { placeKind: 'room', name: 'Room 1', walk: 1 }],
    [ago(500), 'place-added', [RACK], { placeKind: 'rack', name: 'Rack 1', parent: ROOM, walk: 1 }],
    [ago(500), 'place-added', [INCUBATOR], { placeKind: 'incubator', name: 'Incubator 1', parent: ROOM, walk: 2 }],
    [ago(500), 'place-added', [SHELF], { placeKind: 'shelf', name: 'Shelf 1', parent: INCUBATOR, walk: 1 }],
    [ago(500), 'place-added', [HIGHER_SHELF], { placeKind: 'shelf', name: 'Shelf 2', parent: INCUBATOR, walk: 2 }],
    ...ALL.map(({ id, name, sex, species }, at): Rows[number] => [
      ago(480),
      'animal-added',
      [id],
      { species, name, sex, number: `24-0${at + 10}` },
    ]),
    ...ALL.map(({ id, code }): Rows[number] => [ago(479), 'traits-set', [id], { code }]),
    ...ALL.map(({ id }, at): Rows[number] => [ago(5), 'animal-weighed', [id], { weightG: 1400 + 30 * at }]),
    paired(340, DOVE.id, CROW.id),
    apart(335, DOVE.id, CROW.id),
    [ago(200), 'animal-left', [CROW.id], { how: 'sold' }],
    paired(130, RAVEN.id, PLOVER.id),
    [ago(129), 'lock-seen', [RAVEN.id, PLOVER.id]],
    apart(127, RAVEN.id, PLOVER.id),
    [ago(110), 'ovulation-seen', [RAVEN.id]],
    [ago(92), 'pre-lay-shed-seen', [RAVEN.id]],
    [
      ago(62),
      'clutch-laid',
      [RAVEN.id, RAVENS_CLUTCH],
      { clutch: RAVENS_CLUTCH, eggs: 7, slugs: 1, clutchG: 602, damG: 1290, sire: PLOVER.id },
    ],
    [ago(62), 'clutch-incubated', [RAVENS_CLUTCH, SHELF], { place: SHELF, setC: 31.5 }],
    ...[61, 55, 48, 40, 33, 26, 18, 11, 4].map((days, at): Rows[number] => [
      ago(days),
      'incubation-read',
      [RAVENS_CLUTCH],
      { tempC: [31.4, 31.6, 31.5, 31.1, 31.5, 31.6, 31.7, 31.5, 31.4][at], humidityPercent: 90 + (at % 3) },
    ]),
    ...[1, 2, 3, 4].map((egg): Rows[number] => [ago(48), 'egg-candled', [RAVENS_CLUTCH], { egg, state: 'good' }]),
    [ago(48), 'egg-candled', [RAVENS_CLUTCH], { egg: 5, state: 'lost' }],
    paired(80, SWIFT.id, LARK.id),
    apart(77, SWIFT.id, LARK.id),
    paired(70, SWIFT.id, HERON.id),
    apart(67, SWIFT.id, HERON.id),
    [ago(1), 'clutch-laid', [SWIFT.id, SWIFTS_CLUTCH], { clutch: SWIFTS_CLUTCH, eggs: 4 }],
    paired(150, GULL.id, TERN.id),
    apart(146, GULL.id, TERN.id),
    [ago(110), 'ovulation-seen', [GULL.id]],
    paired(3, TEAL.id, SNIPE.id),
  ];
  return eventsOf([...rows].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}

/** Lays the house out as a hub's own data; `clear` takes it away. */
export async function laySeasonHouse(): Promise<{ readonly folder: string; readonly data: string; clear(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-season-'));
  const [file, data] = [join(folder, 'season.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(seasonLog()));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The season's house was not taken in: ${taken.err}`);
  return { folder, data, clear: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
