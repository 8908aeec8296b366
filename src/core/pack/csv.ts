import type { Pack, PackAnimal } from './pack.ts';
import { PACK_FIELDS } from './profiles.ts';

/** A file of the pack. */
export interface PackFile {
  readonly name: string;
  readonly text: string;
}

type Cell = string | number | null;

/**
 * What makes a spreadsheet take a text for a formula: = + - @, their wide forms, a tab or a line break before anything
 * else, and blanks before one of them, since some programs drop those. Such a cell gets an apostrophe before it.
 * Quotes alone do not help: a program takes them off and then reads the formula.
 */
const FORMULA = /^\s*[=+\-@＝＋－＠\t\r\n]/;

/** The tables of a pack as CSV files, one a table; every row names its animal, so that each file stands by itself. */
export function packFiles(pack: Pack): readonly PackFile[] {
  const { animals } = pack;
  const rows = <T>(list: (animal: PackAnimal) => readonly T[], cells: (row: T) => readonly Cell[]) =>
    animals.flatMap((animal) => list(animal).map((row) => [animal.id, animal.called, ...cells(row)]));
  return [
    { name: 'animals.csv', text: csvText([animalHeads(), ...animals.map((animal) => animalCells(pack, animal))]) },
    table(
      'feeds',
      ['day', 'prey', 'count', 'grams', 'outcome', 'by'],
      rows(
        ({ feeds }) => feeds,
        ({ day, prey, count, totalG, taken, by }) => [day, prey, count, totalG, taken ? 'taken' : 'refused', by],
      ),
    ),
    table(
      'weights',
      ['day', 'grams', 'asked_about', 'by'],
      rows(
        ({ weights }) => weights,
        ({ day, weightG, doubted, by }) => [day, weightG, doubted ? 'yes' : 'no', by],
      ),
    ),
    table(
      'lengths',
      ['day', 'millimetres', 'of', 'guessed', 'by'],
      rows(
        ({ lengths }) => lengths,
        ({ day, lengthMm, of, guessed, by }) => [day, lengthMm, of, guessed ? 'yes' : 'no', by],
      ),
    ),
    table(
      'treatments',
      ['day', 'what', 'words', 'by'],
      rows(
        ({ treatments }) => treatments,
        ({ day, what, words, by }) => [day, what, words, by],
      ),
    ),
    table(
      'looks',
      ['day', 'well', 'words', 'by'],
      rows(
        ({ looks }) => looks,
        ({ day, well, words, by }) => [day, well ? 'yes' : 'no', words, by],
      ),
    ),
    table(
      'notes',
      ['day', 'words', 'by'],
      rows(
        ({ notes }) => notes,
        ({ day, words, by }) => [day, words, by],
      ),
    ),
    table(
      'papers',
      ['day', 'belongs_to', 'words', 'by'],
      rows(
        ({ papers }) => papers,
        ({ day, of, words, by }) => [day, of, words, by],
      ),
    ),
    table(
      'skipped',
      ['day', 'task', 'where', 'why', 'by'],
      rows(
        ({ skipped }) => skipped,
        ({ day, task, where, why, by }) => [day, task, where, why, by],
      ),
    ),
    table(
      'cleaning',
      ['day', 'what', 'where', 'by'],
      rows(
        ({ cleaning }) => cleaning,
        ({ day, what, where, by }) => [day, what, where, by],
      ),
    ),
    table(
      'moves',
      ['day', 'to', 'by'],
      rows(
        ({ moves }) => moves,
        ({ day, where, by }) => [day, where, by],
      ),
    ),
  ];
}

function table(name: string, heads: readonly string[], rows: readonly (readonly Cell[])[]): PackFile {
  return { name: `${name}.csv`, text: csvText([['animal', 'called', ...heads], ...rows]) };
}

function animalHeads(): readonly string[] {
  return [...PACK_FIELDS.map((field) => field.replaceAll('-', '_')), 'site', 'profile', 'from', 'on'];
}

function animalCells({ site, profile, from, on }: Pack, { id, facts }: PackAnimal): readonly Cell[] {
  const cells = facts.map(({ field, plain }) => (field === 'id' ? id : plain));
  return [...cells, site, profile.id, from, on];
}

/** Rows as CSV after RFC 4180: CRLF after each, quotes where a cell needs them and doubled within; UTF-8 without a mark. */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

/** A number is a number, below zero too; only texts can be formulas. */
function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}
