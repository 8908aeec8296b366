import type { PieceToPrint } from '../../print/index.ts';
import { askedLabels, LABEL_SHEETS, type LabelContent, type LabelSheet } from '../../src/core/index.ts';
import { added, CLUTCH, DAM, day, id, type Line, RACK, SIRE, site, TUB } from '../core/log.ts';
import { CROWDED, cardOf, FLAGS, SPARSE, USUAL } from './cards.ts';

const ROOM = id(9);
const ON = day('2026-05-10');
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
];
const FACILITY = site(...LINES);
/** Where a sheet has nothing unless it is asked by name. */
const ONLY: Partial<Record<LabelSheet, string>> = { pairing: `${SIRE}/${DAM}`, egg: `${CLUTCH}/1,${CLUTCH}/12` };
/** Of what looks alike so many are enough. */
const MOST = 4;

function sheetOf(sheet: LabelSheet): readonly LabelContent[] {
  return askedLabels(FACILITY, sheet, ONLY[sheet] ?? null, ON).labels.slice(0, MOST);
}

const labels = (contents: readonly LabelContent[]): readonly PieceToPrint[] => contents.map((label) => ({ label }));

/**
 * Everything that is printed, for the tests that read paper back. A new kind joins by one line here, with a few pieces of
 * it; the sheets of labels that can be asked for join by themselves.
 */
export const EVERYTHING: readonly (readonly [what: string, pieces: readonly PieceToPrint[]])[] = [
  ['cards', [SPARSE, USUAL, CROWDED].map((rows, n) => ({ card: { content: cardOf(n, rows, FLAGS.slice(0, n + 1)) } }))],
  ...LABEL_SHEETS.map((sheet) => [sheet, labels(sheetOf(sheet))] as const),
];
