import type { PieceToPrint } from '../../print/index.ts';
import { askedSheet, type LabelContent, type Payload, PRINT_SHEETS, type PrintSheet } from '../../src/core/index.ts';
import { added, CLUTCH, DAM, day, id, type Line, LOT, RACK, SIRE, site, TUB } from '../core/log.ts';
import { CROWDED, cardOf, FLAGS, SPARSE, USUAL } from './cards.ts';

const [ROOM, BOX, MUG, SHED] = [id(9), id(12), id(40), id(41)];
const ON = day('2026-05-10');
const DAMS = { subjects: [DAM] };
/** By volume twice a day by tube, as the vet wrote it: a treatment card of more than one face, and a tube sheet. */
const PAPER: Payload<'prescription-written'> = {
  ...{ drug: 'as the vet wrote it', prescriber: 'Dr Linnet Sallowfield', route: 'by stomach tube' },
  ...{ amount: { by: 'volume', ml: 10.6 }, everyHours: 12, count: 30, startsOn: '2026-05-09' },
  ...{ recheckOn: '2026-05-24', validUntil: '2026-08-01', withholdFood: true, lot: 'B 7' },
};
const SHOP: readonly Line[] = [
  ['2025-01-01', 'site-named', { name: 'Saltpan House', timeZone: 'Etc/UTC', currency: 'EUR' }, { subjects: [] }],
  ['2025-01-01', 'place-added', { placeKind: 'exhibit', name: 'Glass 2', walk: 9 }, { subjects: [BOX] }],
  ['2026-03-02', 'animal-moved', { to: BOX }, { subjects: [SIRE, BOX] }],
  ['2026-04-01', 'ware-set', { name: 'Mug with the river snake', priceMinor: 1250 }, { subjects: [MUG] }],
  ['2026-04-02', 'item-stocked', { count: 2 }, { subjects: [MUG] }],
  [
    '2026-04-03',
    'shed-item-made',
    { shown: 'Kestrel', species: 'Python regius', shedOn: '2026-04-01', priceMinor: 480, count: 2 },
    { subjects: [SHED] },
  ],
  ['2026-05-01', 'animal-offered', { priceMinor: 45_000, words: 'feeds on thawed rats' }, { subjects: [SIRE] }],
];
const LINES: readonly Line[] = [
  ['2025-01-01', 'place-added', { placeKind: 'room', name: 'Long Room', walk: 1 }, { subjects: [ROOM] }],
  [
    '2025-01-01',
    'place-added',
    { placeKind: 'rack', name: 'Quarantine rack', walk: 3, parent: ROOM },
    { subjects: [RACK] },
  ],
  ['2025-01-01', 'place-added', { placeKind: 'tub', name: 'Q-14', walk: 14, parent: RACK }, { subjects: [TUB] }],
  added({ name: 'Ångström Żubrówka', number: '21-007', sex: 'female' }, { subjects: [DAM] }),
  added({ name: 'Kestrel', sex: 'male' }, { subjects: [SIRE] }),
  ['2025-02-01', 'traits-set', { code: 'cln/cln; Pst/+' }, { subjects: [DAM] }],
  ['2025-02-01', 'traits-set', { code: 'cln/+; pie/+; Spi/+' }, { subjects: [SIRE] }],
  ['2026-04-20', 'pairing-started', {}, { subjects: [DAM, SIRE] }],
  ['2026-05-01', 'clutch-laid', { clutch: CLUTCH, eggs: 12, slugs: 1, sire: SIRE }, { subjects: [DAM, CLUTCH] }],
  ['2026-05-01', 'clutch-incubated', { place: TUB, setC: 31.5 }, { subjects: [CLUTCH, TUB] }],
  ['2026-04-01', 'lot-received', { prey: 'rat-weaned', eachG: [35, 60], count: 250 }, { subjects: [LOT] }],
  ['2026-05-08', 'animal-weighed', { weightG: 1065 }, DAMS],
  ['2026-05-08', 'animal-measured', { lengthMm: 950, of: 'snout-vent' }, DAMS],
  ['2026-05-09', 'prescription-written', PAPER, DAMS],
  ...SHOP,
];
const FACILITY = site(...LINES);
/** Where a sheet has nothing unless it is asked by name. */
const ONLY: Partial<Record<PrintSheet, string>> = { pairing: `${SIRE}/${DAM}`, egg: `${CLUTCH}/1,${CLUTCH}/12` };
/** Of what looks alike so many are enough. */
const MOST = 4;

function sheetOf(sheet: PrintSheet): readonly LabelContent[] {
  return askedSheet(FACILITY, sheet, ONLY[sheet] ?? null, ON).labels.slice(0, MOST);
}

const labels = (contents: readonly LabelContent[]): readonly PieceToPrint[] => contents.map((label) => ({ label }));

/**
 * Everything that is printed, for the tests that read paper back. A new kind joins by one line here, with a few pieces of
 * it; the sheets of labels that can be asked for join by themselves.
 */
export const EVERYTHING: readonly (readonly [what: string, pieces: readonly PieceToPrint[]])[] = [
  ['cards', [SPARSE, USUAL, CROWDED].map((rows, n) => ({ card: { content: cardOf(n, rows, FLAGS.slice(0, n + 1)) } }))],
  ...PRINT_SHEETS.map((sheet) => [sheet, labels(sheetOf(sheet))] as const),
];
