import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays, type Day, type LogEvent, sayId } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import type { Tame } from './smallSite.ts';

const TODAY = new Date().toISOString().slice(0, 10) as Day;
const ago = (days: number): Day => addDays(TODAY, -days);

/** An animal of the breeding house, with the traits that its record holds. */
interface Bred extends Tame {
  readonly sex: 'male' | 'female' | 'unsexed';
  readonly code: string | null;
  readonly species: string;
}

let next = 40;

function bred(name: string, sex: Bred['sex'], code: string | null, species = 'Python regius'): Bred {
  const id = idOf(next++);
  return { id, name, display: sayId(id).replace(' ', '-'), sex, code, species };
}

const DOUBLE_HET = 'pie/+; alb/+';
/** Two that are het for the same two recessive traits, unrelated as far as anybody knows. */
export const ALDER = bred('Alder', 'male', DOUBLE_HET);
export const BIRCH = bred('Birch', 'female', DOUBLE_HET);
/** Two that are het Clown with two chances in three. */
export const CEDAR = bred('Cedar', 'male', '[cln 2:3]/+');
export const DAISY = bred('Daisy', 'female', '[cln 2:3]/+');
/** Two Spiders: two copies are taken as lethal, and the animals wobble. */
export const ELDER = bred('Elder', 'male', 'Spi/+');
export const FERN = bred('Fern', 'female', 'Spi/+');
/** Ten visible traits, one copy of each: 3^10 looks of the young. */
const MANY = 'Pas/+; Enc/+; Ghi/+; Odr/+; Leo/+; Mah/+; Spo/+; Wom/+; Cal/+; Des/+';
export const GORSE = bred('Gorse', 'male', MANY);
export const HEATHER = bred('Heather', 'female', MANY);
export const IVY = bred('Ivy', 'unsexed', 'pie/+');
/** A corn snake; one that was sold; one that waits for the vet; one whose code no table knows; full brother and sister. */
export const JUNIPER = bred('Juniper', 'female', 'amel/+', 'Pantherophis guttatus');
export const KESTREL = bred('Kestrel', 'female', null);
export const LARCH = bred('Larch', 'male', null);
export const MAPLE = bred('Maple', 'female', 'nosuch/+');
export const NETTLE = bred('Nettle', 'male', 'pie/+');
export const OLIVE = bred('Olive', 'female', null);

const ALL = [
  ...[ALDER, BIRCH, CEDAR, DAISY, ELDER, FERN, GORSE, HEATHER, IVY],
  ...[JUNIPER, KESTREL, LARCH, MAPLE, NETTLE, OLIVE],
];

/** The log of a small house that breeds: two months old, everybody weighed a week ago. */
export function breedingLog(): LogEvent[] {
  const [room, rack] = [idOf(31), idOf(32)];
  const rows: Parameters<typeof eventsOf>[0] = [
    [ago(90), 'site-named', [], { name: 'Breeding House', timeZone: 'Etc/UTC', host: 'pairs.example' }],
    [ago(90), 'place-added', [room], { placeKind: 'room', name: 'Room 1', walk: 1 }],
    [ago(90), 'place-added', [rack], { placeKind: 'rack', name: 'Rack 1', parent: room, walk: 1 }],
    ...ALL.map(({ id, name, sex, species }) => [ago(60), 'animal-added', [id], { species, name, sex }] as const),
    ...ALL.flatMap(({ id, code }) => (code === null ? [] : [[ago(59), 'traits-set', [id], { code }] as const])),
    ...[NETTLE, OLIVE].map(({ id }) => [ago(58), 'parents-set', [id], { sire: ALDER.id, dam: BIRCH.id }] as const),
    ...ALL.map(({ id }, at) => [ago(7), 'animal-weighed', [id], { weightG: 1100 + 40 * at }] as const),
    [ago(5), 'animal-left', [KESTREL.id], { how: 'sold' }],
    [ago(4), 'hold-placed', [LARCH.id], { reason: 'vet', words: 'a swelling behind the jaw' }],
  ];
  return eventsOf(rows);
}

/** Lays the house out as a hub's own data; `clear` takes it away. */
export async function layBreedingHouse(): Promise<{ readonly data: string; clear(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-pairs-'));
  const [file, data] = [join(folder, 'pairs.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(breedingLog()));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The breeding house was not taken in: ${taken.err}`);
  return { data, clear: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
