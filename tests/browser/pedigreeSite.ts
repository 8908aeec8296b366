import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Id, LogEvent } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventIdOf, eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { type RunningApp, startApp } from './site.ts';
import { ago } from './smallSite.ts';

type Row = readonly [name: string, sex: 'male' | 'female', sire: string | null, dam: string | null, code?: string];

/** Three generations of full siblings; the textbook’s pedigree; a grandparent that nobody knows; a possible het and two mates. */
const ROWS: readonly Row[] = [
  ['Alder', 'male', null, null],
  ['Birch', 'female', null, null],
  ['Cedar', 'male', 'Alder', 'Birch'],
  ['Daisy', 'female', 'Alder', 'Birch'],
  ['Elm', 'male', 'Cedar', 'Daisy'],
  ['Fir', 'female', 'Cedar', 'Daisy'],
  ['Gorse', 'female', 'Elm', 'Fir'],
  // Mrode, Linear Models for the Prediction of Animal Breeding Values, Table 2.1 (from memory): sire × dam.
  ['One', 'male', null, null],
  ['Two', 'female', null, null],
  ['Three', 'female', 'One', 'Two'],
  ['Four', 'male', 'One', null],
  ['Five', 'male', 'Four', 'Three'],
  ['Six', 'female', 'Five', 'Two'],
  ['Juniper', 'male', 'Alder', null],
  ['Ivy', 'female', 'Juniper', 'Daisy'],
  ['Knot', 'male', null, null],
  ['Lark', 'male', null, null],
  ['Moss', 'male', null, null, '[cln 2:3]/+'],
  ['Nettle', 'female', null, null, 'cln/cln'],
  ['Oak', 'female', null, null, 'cln/+'],
  ['Plum', 'female', null, null, 'cln/+; pie/pie'],
  ['Quince', 'female', null, null, 'cln/cln; Spi/+'],
  ['Rue', 'female', null, null, 'cln/cln'],
  ['Sloe', 'male', null, null, 'cln/cln'],
];

/** The id of an animal of the site. */
export function idNamed(name: string): Id {
  return idOf(ROWS.findIndex(([one]) => one === name) + 1);
}

/** What one device wrote. */
function firstLog(): LogEvent[] {
  return eventsOf([
    [ago(90), 'site-named', [], { name: 'Small House', timeZone: 'Etc/UTC', host: 'tubs.example' }],
    ...ROWS.map(([name, sex, sire, dam], at): Parameters<typeof eventsOf>[0][number] => {
      const parents = { ...(sire && { sire: idNamed(sire) }), ...(dam && { dam: idNamed(dam) }) };
      const hatchedOn = ago(80 - at);
      return [
        hatchedOn,
        'animal-added',
        [idNamed(name)],
        { species: 'Python regius', name, sex, hatchedOn, ...parents },
      ];
    }),
    ...ROWS.flatMap(([name, , , , code]): Parameters<typeof eventsOf>[0][number][] =>
      code === undefined ? [] : [[ago(20), 'traits-set', [idNamed(name)], { code }]],
    ),
    [ago(15), 'animal-left', [idNamed('Rue')], { how: 'sold' }],
    [ago(12), 'hold-placed', [idNamed('Nettle')], { reason: 'vet', words: 'wheezes' }],
    [ago(10), 'parents-set', [idNamed('Knot')], { sire: idNamed('Lark') }],
  ]);
}

/** What another device wrote without knowing it: together they make a ring, which neither could have written alone. */
function otherLog(): LogEvent[] {
  const [made] = eventsOf([[ago(10), 'parents-set', [idNamed('Lark')], { sire: idNamed('Knot') }]], 900);
  return made === undefined ? [] : [{ ...made, id: eventIdOf(900), device: 10, seq: 1 }];
}

/** The hub on both logs; `stop` takes everything away. */
export async function startPedigreeSite(): Promise<RunningApp> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-pedigree-'));
  const data = join(folder, 'data');
  for (const [name, log] of [['first', firstLog()] as const, ['other', otherLog()] as const]) {
    const file = join(folder, `${name}.ndjson`);
    writeFileSync(file, writeLog(log));
    const taken = await tubwright(['import', file, '--into', data]);
    if (taken.code !== 0) throw new Error(`The log was not taken in: ${taken.err}`);
  }
  const app = await startApp(['--data', data]);
  return {
    url: app.url,
    async stop() {
      await app.stop();
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
