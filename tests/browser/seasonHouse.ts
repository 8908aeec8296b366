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

/** An animal of the house in season. */
interface InSeason extends Tame {
  readonly sex: 'male' | 'female';
  readonly code: string | null;
  readonly weightG: number;
  readonly species: string;
}

let next = 240;

function animal(name: string, sex: InSeason['sex'], code: string | null = null, weightG = 1600): InSeason {
  const id = idOf(next++);
  return { id, name, display: sayId(id).replace(' ', '-'), sex, code, weightG, species: 'Python regius' };
}

/** Males: with a female now, ready, at rest; a light one and one that waits for the vet stay out of a plan. */
export const ALDER = animal('Alder', 'male', 'cln/cln');
export const BEECH = animal('Beech', 'male', 'cln/+');
export const CEDAR = animal('Cedar', 'male', 'Spi/+');
export const DWARF = animal('Dwarf', 'male', 'cln/+', 400);
export const ELDER = animal('Elder', 'male');
/** Females, each a step further than the one before. */
export const FERN = animal('Fern', 'female', 'cln/+');
export const GORSE = animal('Gorse', 'female', 'cln/+');
export const HEATH = animal('Heath', 'female');
export const IVY = animal('Ivy', 'female');
export const JUNIPER = animal('Juniper', 'female');
export const KALE = animal('Kale', 'female');
export const LARCH = animal('Larch', 'female');
/** Nobody was with these two; Poppy and Beech are full sister and brother, out of Maple by Alder. */
export const MAPLE = animal('Maple', 'female', 'Pas/+; Spi/+');
export const POPPY = animal('Poppy', 'female', 'cln/+');
/** Corn snakes. */
export const NETTLE = { ...animal('Nettle', 'female', 'amel/+', 500), species: 'Pantherophis guttatus' };
export const OAT = { ...animal('Oat', 'male', 'amel/+', 500), species: 'Pantherophis guttatus' };

const ALL = [
  ...[ALDER, BEECH, CEDAR, DWARF, ELDER, FERN, GORSE, HEATH],
  ...[IVY, JUNIPER, KALE, LARCH, MAPLE, POPPY, NETTLE, OAT],
];

/** Kale’s eggs in the incubator. */
export const CLUTCH = idOf(290);
/** Larch’s, hatched with a Pastel that neither parent can have given by its record. */
export const ODD_CLUTCH = idOf(291);
const EARLIER = [idOf(292), idOf(293)] as const;
const ODD_YOUNG = [idOf(294), idOf(295), idOf(296)];

type Rows = Parameters<typeof eventsOf>[0];
type Row = Rows[number];

function visit(female: InSeason, male: InSeason, daysAgo: number, nights = 2): readonly Row[] {
  const both: readonly Id[] = [female.id, male.id];
  const began: Row = [ago(daysAgo), 'pairing-started', both];
  return daysAgo < nights ? [began] : [began, [ago(daysAgo - nights), 'pairing-ended', both]];
}

function lock(female: InSeason, male: InSeason, daysAgo: number): Row {
  return [ago(daysAgo), 'lock-seen', [female.id, male.id]];
}

/** What happened to the females, by days before today. */
const SEASON: readonly Row[] = [
  ...visit(FERN, ALDER, 1),
  ...visit(GORSE, BEECH, 30),
  lock(GORSE, BEECH, 29),
  ...visit(HEATH, CEDAR, 40),
  ...visit(HEATH, CEDAR, 5),
  [ago(19), 'follicles-measured', [HEATH.id], { largestMm: 24 }],
  ...visit(IVY, CEDAR, 60),
  lock(IVY, CEDAR, 59),
  [ago(25), 'ovulation-seen', [IVY.id]],
  ...visit(JUNIPER, BEECH, 80),
  [ago(44), 'ovulation-seen', [JUNIPER.id]],
  [ago(26), 'pre-lay-shed-seen', [JUNIPER.id]],
  ...visit(KALE, ALDER, 150),
  lock(KALE, ALDER, 149),
  [ago(110), 'ovulation-seen', [KALE.id]],
  [ago(92), 'pre-lay-shed-seen', [KALE.id]],
  [ago(62), 'clutch-laid', [KALE.id, CLUTCH], { clutch: CLUTCH, eggs: 7, slugs: 1, clutchG: 600, sire: ALDER.id }],
  [ago(62), 'clutch-incubated', [CLUTCH], { setC: 31.5 }],
  ...visit(LARCH, BEECH, 170),
  [ago(75), 'clutch-laid', [LARCH.id, ODD_CLUTCH], { clutch: ODD_CLUTCH, eggs: 3, slugs: 0, sire: BEECH.id }],
  [ago(12), 'clutch-hatched', [ODD_CLUTCH], { hatched: 3 }],
  ...visit(NETTLE, OAT, 20),
  lock(NETTLE, OAT, 19),
];

/** Two clutches of the year before: with this season’s two the site has a mean of its own, (7 + 8 + 7 + 3) / 4. */
const BEFORE: readonly Row[] = [JUNIPER, IVY].flatMap((female, at): readonly Row[] => {
  const clutch = EARLIER[at] ?? CLUTCH;
  return [
    ...visit(female, ALDER, 440),
    [ago(420), 'ovulation-seen', [female.id]],
    [ago(403), 'pre-lay-shed-seen', [female.id]],
    [ago(373), 'clutch-laid', [female.id, clutch], { clutch, eggs: 7 + at, slugs: 0, sire: ALDER.id }],
    [ago(313), 'clutch-hatched', [clutch], { hatched: 7 }],
  ];
});

const YOUNG: readonly Row[] = ODD_YOUNG.flatMap((id, at): readonly Row[] => {
  const parents = { dam: LARCH.id, sire: BEECH.id, clutch: ODD_CLUTCH };
  const facts = { species: 'Python regius', sex: 'unsexed', hatchedOn: ago(12), number: `Y-${at + 1}`, ...parents };
  return [
    [ago(12), 'animal-added', [id], facts],
    [ago(12), 'traits-set', [id], { code: at === 0 ? 'Pas/+' : 'wt' }],
  ];
});

/** The log of a house in the middle of its season. */
export function seasonLog(): LogEvent[] {
  const rows: Rows = [
    [ago(460), 'site-named', [], { name: 'Season House', timeZone: 'Etc/UTC', host: 'season.example' }],
    ...ALL.map(({ id, name, sex, species }): Row => [ago(450), 'animal-added', [id], { species, name, sex }]),
    ...ALL.flatMap(({ id, code }): readonly Row[] => (code === null ? [] : [[ago(449), 'traits-set', [id], { code }]])),
    ...[BEECH, POPPY].map(({ id }): Row => [ago(448), 'parents-set', [id], { sire: ALDER.id, dam: MAPLE.id }]),
    ...ALL.map(({ id, weightG }): Row => [ago(7), 'animal-weighed', [id], { weightG }]),
    [ago(4), 'hold-placed', [ELDER.id], { reason: 'vet', words: 'a swelling behind the jaw' }],
    ...BEFORE,
    ...SEASON,
    ...YOUNG,
  ];
  return eventsOf([...rows].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}

/** Lays a house out as a hub's own data; `clear` takes it away. */
export async function laySeasonHouse(
  log: readonly LogEvent[] = seasonLog(),
): Promise<{ readonly data: string; clear(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-season-'));
  const [file, data] = [join(folder, 'season.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(log));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The house in season was not taken in: ${taken.err}`);
  return { data, clear: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
