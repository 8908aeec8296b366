import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { addDays, type Day, type Id, type LogEvent, sayId } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { type RunningApp, startApp } from './site.ts';

/** An animal of the small site. */
export interface Tame {
  readonly id: Id;
  readonly name: string;
  /** The id as it stands on the card. */
  readonly display: string;
}

/** The real day, since a site that is no demo stands on it. */
export const TODAY = new Date().toISOString().slice(0, 10) as Day;
/** A day so many days ago. */
export const ago = (days: number): Day => addDays(TODAY, -days);

const [ROOM, RACK] = [idOf(1), idOf(2)];
const TUBS = [3, 4, 5, 6, 7, 8, 9, 10].map(idOf);
/** Moss's tub, and one that nobody lives in. */
export const TAKEN_TUB = idOf(3);
export const FREE_TUB = idOf(10);
const tame = (n: number, name: string): Tame => ({ id: idOf(n), name, display: sayId(idOf(n)).replace(' ', '-') });

/** The animals of the small site: all weighed lately and due; Fern regurgitated a month ago, Tansy ate last a fortnight ago. */
export const MOSS = tame(11, 'Moss');
export const BRACKEN = tame(12, 'Bracken');
export const CLOVER = tame(13, 'Clover');
export const FERN = tame(14, 'Fern');
export const SORREL = tame(15, 'Sorrel');
export const YARROW = tame(16, 'Yarrow');
export const TANSY = tame(17, 'Tansy');
const ALL = [MOSS, BRACKEN, CLOVER, FERN, SORREL, YARROW, TANSY];

type Rows = Parameters<typeof eventsOf>[0];

/** A rack with an animal in each tub, and three months of its log. */
export function smallLog(): LogEvent[] {
  const rows: Rows = [
    [ago(90), 'site-named', [], { name: 'Small House', timeZone: 'Etc/UTC', host: 'tubs.example' }],
    [ago(90), 'place-added', [ROOM], { placeKind: 'room', name: 'Room 1', walk: 1 }],
    [ago(90), 'place-added', [RACK], { placeKind: 'rack', name: 'Rack 1', parent: ROOM, walk: 1 }],
    ...TUBS.map((tub, at): Rows[number] => {
      const tubIsNamed = { placeKind: 'tub', name: `1-0${at + 1}`, parent: RACK, walk: at + 1 };
      return [ago(90), 'place-added', [tub], tubIsNamed];
    }),
    ...ALL.flatMap(({ id, name }, at): Rows[number][] => [
      [ago(60), 'animal-added', [id], { species: 'Python regius', name, sex: at % 2 === 0 ? 'female' : 'male' }],
      [ago(59), 'animal-moved', [id], { to: TUBS[at] }],
      [ago(10), 'animal-weighed', [id], { weightG: 900 + at }],
      [
        ago(id === TANSY.id ? 13 : 9),
        'prey-offered',
        [id],
        { prey: 'rat-small', count: 1, totalG: 80, outcome: 'taken' },
      ],
    ]),
    [ago(30), 'regurgitation-seen', [FERN.id]],
  ];
  return eventsOf([...rows].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}

/** A folder with the small site's log in it as a file and as a hub's own. */
export interface SmallSite {
  readonly folder: string;
  readonly file: string;
  /** Starts the hub on it; with a port, where an earlier one was. */
  start(port?: string): Promise<RunningApp>;
  clear(): void;
}

/** Lays the small site out for one test file; `clear` takes it away. */
export async function laySmallSite(): Promise<SmallSite> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-small-'));
  const [file, data] = [join(folder, 'small.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(smallLog()));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The small site was not taken in: ${taken.err}`);
  return {
    folder,
    file,
    start: (port = '0') => startApp(['--data', data, '--port', port]),
    clear: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }),
  };
}

/** The words on an open record's card, on one line and with plain blanks. */
export async function cardWords(page: Page): Promise<string> {
  return ((await page.getByRole('article').first().textContent()) ?? '').replace(/\s+/g, ' ').replaceAll('\u2060', '');
}

/** Opens a record at the address that its card's code gives. */
export async function openRecord(page: Page, app: RunningApp, { id, name }: Pick<Tame, 'id' | 'name'>): Promise<void> {
  await page.goto(`${app.url}/${id}`);
  await page.getByRole('heading', { name }).first().waitFor();
}

/** Types an id on the Scan screen, as from a card that nobody can scan any more. */
export async function typeId(page: Page, text: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Id on the card' }).fill(text);
  await page.getByRole('button', { name: 'Open' }).click();
}
