import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays, type LogEvent, sayId } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventIdOf, eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { ago, type Tame, TODAY } from './smallSite.ts';

const tame = (n: number, name: string): Tame => ({ id: idOf(n), name, display: sayId(idOf(n)).replace(' ', '-') });

/** Weighed three days ago and not treated; and one whose weight is ten days old, which is too old for a young animal. */
export const IRIS = tame(61, 'Iris');
export const HAZEL = tame(62, 'Hazel');
/** Under treatment: the second dose of three is due today; and one that got a tenth of what its figures come to. */
export const ROWAN = tame(63, 'Rowan');
export const ASTER = tame(64, 'Aster');
/** Gets its doses into the stomach; gets no food meanwhile; should have had a dose two days ago; sees the vet again soon. */
export const LINDEN = tame(65, 'Linden');
export const BRYONY = tame(66, 'Bryony');
export const SEDGE = tame(67, 'Sedge');
export const TEASEL = tame(68, 'Teasel');
const ALL = [IRIS, HAZEL, ROWAN, ASTER, LINDEN, BRYONY, SEDGE, TEASEL];
const WEIGHTS_G = [1060, 904, 1240, 1060, 1310, 1180, 1420, 1350];

type Rows = Parameters<typeof eventsOf>[0];
const DRUG = 'as the vet wrote it';
const BY_MASS = { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } };
const PAPER = {
  ...{ drug: DRUG, prescriber: 'Dr Linnet Sallowfield', amount: BY_MASS, route: 'by injection' },
  ...{ everyHours: 48, count: 3, withholdFood: false },
};

/** The prescriptions of the log, each with the days on which a dose was given and its volume. */
const COURSES: readonly {
  of: Tame;
  on: number;
  more: object;
  doses: readonly (readonly [days: number, ml: number])[];
}[] = [
  { of: ROWAN, on: 2, more: { recheckOn: addDays(TODAY, 5), lot: 'B 7' }, doses: [[2, 0.62]] },
  {
    of: ASTER,
    on: 4,
    more: {},
    doses: [
      [4, 0.05],
      [2, 0.05],
    ],
  },
  {
    of: LINDEN,
    on: 0,
    more: { route: 'by stomach tube', amount: { by: 'volume', ml: 12 }, everyHours: 24 },
    doses: [],
  },
  { of: BRYONY, on: 1, more: { withholdFood: true, endsOn: addDays(TODAY, 3), everyHours: 24 }, doses: [[1, 0.59]] },
  { of: SEDGE, on: 6, more: { everyHours: 24, count: 5 }, doses: [[4, 0.71]] },
  { of: TEASEL, on: 20, more: { count: 1, recheckOn: addDays(TODAY, 9) }, doses: [[20, 0.68]] },
];

/** The log of a small house with a few animals under treatment. */
export function treatmentLog(): LogEvent[] {
  const [room, rack] = [idOf(51), idOf(52)];
  const tubs = ALL.map((_, at) => idOf(53 + at));
  const rows: Rows = [
    [ago(90), 'site-named', [], { name: 'Small House', timeZone: 'Etc/UTC', host: 'tubs.example' }],
    [ago(90), 'place-added', [room], { placeKind: 'room', name: 'Room 1', walk: 1 }],
    [ago(90), 'place-added', [rack], { placeKind: 'rack', name: 'Rack 1', parent: room, walk: 1 }],
    ...tubs.map((tub, at): Rows[number] => {
      return [ago(90), 'place-added', [tub], { placeKind: 'tub', name: `1-0${at + 1}`, parent: rack, walk: at + 1 }];
    }),
    ...ALL.flatMap(({ id, name }, at): Rows[number][] => [
      [ago(60), 'animal-added', [id], { species: 'Python regius', name, sex: 'male' }],
      [ago(59), 'animal-moved', [id], { to: tubs[at] }],
      [ago(at === 1 ? 10 : 3), 'animal-weighed', [id], { weightG: WEIGHTS_G[at] }],
      [ago(24), 'prey-offered', [id], { prey: 'rat-small', count: 1, totalG: 80, outcome: 'taken' }],
    ]),
  ];
  const papers: Rows = COURSES.map(({ of, on, more }) => [
    ago(on),
    'prescription-written',
    [of.id],
    { ...PAPER, startsOn: ago(on), ...more },
  ]);
  const doses: Rows = COURSES.flatMap(({ of, doses }, at) =>
    doses.map(([days, ml]): Rows[number] => {
      const prescription = eventIdOf(rows.length + 1 + at);
      return [ago(days), 'dose-given', [of.id], { prescription, ml }];
    }),
  );
  return eventsOf([...rows, ...papers, ...doses]);
}

/** Lays the house out as a hub's own data; `clear` takes it away. */
export async function layTreatmentHouse(): Promise<{ readonly data: string; clear(): void }> {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-treated-'));
  const [file, data] = [join(folder, 'treated.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(treatmentLog()));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The house was not taken in: ${taken.err}`);
  return { data, clear: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
