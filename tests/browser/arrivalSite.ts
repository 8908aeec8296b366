import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sayId } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { ago, MOSS, smallLog } from './smallSite.ts';

const Q_RACK = idOf(40);
/** A tub of the quarantine rack. */
export const Q_TUB = idOf(41);
export const Q_TUB_DISPLAY = sayId(Q_TUB);

/** The small site with a quarantine rack, and Moss under treatment since yesterday; `clear` takes it away. */
export async function layArrivalSite(): Promise<{ readonly folder: string; readonly data: string; clear(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-arrival-'));
  const [file, data] = [join(folder, 'site.ndjson'), join(folder, 'data')];
  const paper = {
    ...{ drug: 'as the vet wrote it', prescriber: 'Dr Linnet Sallowfield', amount: { by: 'volume', ml: 0.2 } },
    ...{ route: 'by mouth', everyHours: 24, count: 9, startsOn: ago(1) },
  };
  const more = eventsOf(
    [
      [ago(80), 'place-added', [Q_RACK], { placeKind: 'quarantine', name: 'Quarantine rack', walk: 9 }],
      [ago(80), 'place-added', [Q_TUB], { placeKind: 'tub', name: 'Q-1', parent: Q_RACK, walk: 1 }],
      [ago(1), 'prescription-written', [MOSS.id], paper],
    ],
    300,
  );
  writeFileSync(file, writeLog([...smallLog(), ...more]));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The house was not taken in: ${taken.err}`);
  return { folder, data, clear: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
