import {
  type PackAnimal,
  type PackCleaning,
  type PackLook,
  sayDayShort,
  sayGrams,
  sayLength,
} from '../../src/core/index.ts';
import type { Column, TableCell } from './pieces.ts';

/** One table of an animal’s part: its title, columns and rows, and what is to be known of it. */
export interface Section {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly TableCell[])[];
  readonly note?: string;
}

const DAY: Column = { words: 'day', share: 16 };
const BY: Column = { words: 'by', share: 24 };

/** Every table of an animal, also those without a row. */
export function sectionsOf(animal: PackAnimal): readonly Section[] {
  return [feeds(animal), weights(animal), lengths(animal), treatments(animal), looks(animal), ...others(animal)];
}

function feeds({ feeds: rows }: PackAnimal): Section {
  return {
    title: 'Feeds',
    columns: [DAY, { words: 'offered', share: 32 }, figures('grams', 12), { words: 'outcome', share: 16 }, BY],
    rows: rows.map(({ day, prey, count, totalG, taken, by }) => [
      sayDayShort(day),
      `${count} × ${prey}`,
      totalG === null ? '' : sayGrams(totalG),
      taken ? 'taken' : { says: 'refused', cut: 'bold' },
      by,
    ]),
  };
}

function weights({ weights: rows }: PackAnimal): Section {
  return {
    title: 'Weights',
    columns: [DAY, figures('weight', 14), { words: 'note', share: 46 }, BY],
    rows: rows.map(({ day, weightG, doubted, by }) => [
      sayDayShort(day),
      sayGrams(weightG),
      doubted ? 'asked about and confirmed' : '',
      by,
    ]),
  };
}

function lengths({ lengths: rows }: PackAnimal): Section {
  return {
    title: 'Lengths',
    columns: [DAY, figures('length', 14), { words: 'note', share: 46 }, BY],
    rows: rows.map(({ day, lengthMm, of, guessed, by }) => [
      sayDayShort(day),
      sayLength(lengthMm),
      guessed ? `${of}, guessed` : of,
      by,
    ]),
  };
}

function treatments({ treatments: rows }: PackAnimal): Section {
  return {
    title: 'Health and treatment',
    columns: [DAY, { words: 'what', share: 15 }, { words: 'in full', share: 45 }, BY],
    rows: rows.map(({ day, what, words, by }) => [sayDayShort(day), what, words, by]),
  };
}

function looks({ looks: rows }: PackAnimal): Section {
  return {
    title: 'Health looks',
    columns: [{ words: 'when', share: 16 }, { words: 'what', share: 15 }, { words: 'days, or in full', share: 45 }, BY],
    rows: lookRows(rows),
  };
}

function others({ moves, notes, papers, skipped, cleaning }: PackAnimal): readonly Section[] {
  return [
    {
      title: 'Moves',
      columns: [DAY, { words: 'to', share: 60 }, BY],
      rows: moves.map(({ day, where, by }) => [sayDayShort(day), where, by]),
    },
    {
      title: 'Notes',
      columns: [DAY, { words: 'words', share: 60 }, BY],
      rows: notes.map(({ day, words, by }) => [sayDayShort(day), words, by]),
    },
    {
      title: 'Photographed papers',
      columns: [DAY, { words: 'belongs to', share: 32 }, { words: 'words', share: 28 }, BY],
      rows: papers.map(({ day, of, words, by }) => [sayDayShort(day), of, words, by]),
      note: 'The pictures are not printed here: they stand on the record, under these days.',
    },
    {
      title: 'Skipped on purpose',
      columns: [DAY, { words: 'task', share: 18 }, { words: 'where', share: 17 }, { words: 'why', share: 25 }, BY],
      rows: skipped.map(({ day, task, where, why, by }) => [sayDayShort(day), task, where, why, by]),
    },
    {
      title: 'Cleaning and water',
      columns: [
        { words: 'month', share: 12 },
        { words: 'what', share: 17 },
        { words: 'days of the month', share: 30 },
        { words: 'where', share: 17 },
        BY,
      ],
      rows: cleaningRows(cleaning),
    },
  ];
}

function figures(words: string, share: number): Column {
  return { words, share, align: 'end' };
}

/** Cleaning is told by the month, each day of it named: one line a day would fill pages that nobody reads. */
function cleaningRows(cleaning: readonly PackCleaning[]): Section['rows'] {
  const months = byMonth(cleaning, ({ what, where }) => `${what}\u0000${where}`);
  return months.map(({ first, days, by }) => [sayMonth(first), first.what, days, first.where, by]);
}

/** So are the looks that found it well; one that did not stands for itself, with its words. */
function lookRows(looks: readonly PackLook[]): Section['rows'] {
  const rows = byMonth(looks, (look) => (look.well && look.words === '' ? 'well' : `${look.day}\u0000${look.words}`));
  return rows.map(({ first, days, by }) => {
    if (first.well && first.words === '') return [sayMonth(first), 'looked well', days, by];
    const what: TableCell = first.well ? 'looked well' : { says: 'look again', cut: 'bold' };
    return [sayDayShort(first.day), what, first.words, by];
  });
}

interface Month<T> {
  readonly first: T;
  readonly days: string;
  readonly by: string;
}

function byMonth<T extends { readonly day: PackLook['day']; readonly by: string }>(
  rows: readonly T[],
  keyOf: (row: T) => string,
): readonly Month<T>[] {
  const months = new Map<string, { readonly first: T; readonly days: Set<string>; readonly by: Set<string> }>();
  for (const row of rows) {
    const key = `${row.day.slice(0, 7)}\u0000${keyOf(row)}`;
    const month = months.get(key) ?? { first: row, days: new Set<string>(), by: new Set<string>() };
    months.set(key, month);
    month.days.add(String(Number(row.day.slice(8))));
    month.by.add(row.by);
  }
  return [...months.values()].map(({ first, days, by }) => ({
    first,
    days: [...days].join(', '),
    by: [...by].join(', '),
  }));
}

function sayMonth({ day }: { readonly day: PackLook['day'] }): string {
  return sayDayShort(day).replace(/^\d+ /, '');
}
