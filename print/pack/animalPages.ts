import {
  DOSE_CAUTION,
  type Pack,
  type PackAnimal,
  type PackCleaning,
  type PackField,
  sayDayShort,
  sayGrams,
} from '../../src/core/index.ts';
import { firstDayOf } from '../growth/geometry.ts';
import { drawGrowth } from '../growth/marks.ts';
import { type Bench, type Column, heading, type PagePiece, pairs, paragraph, space, table } from './pieces.ts';

/** One animal’s part of a pack as strips: what the profile asks for first, then the rest, the plot and the tables. */
export function animalPieces(animal: PackAnimal, pack: Pack, bench: Bench): readonly PagePiece[] {
  return [
    paragraph(animal.called, bench, { sizePt: 18, cut: 'bold', gapMm: 0 }),
    paragraph(`${animal.display} · ${says(animal, 'species')} · ${says(animal, 'sex')}`, bench, { sizePt: 11 }),
    ...askedPieces(animal, pack, bench),
    ...growthPieces(animal, pack, bench),
    ...section(
      'Feeds',
      FEEDS,
      animal.feeds.map(({ day, prey, count, totalG, taken, by }) => [
        sayDayShort(day),
        `${count} × ${prey}`,
        totalG === null ? '' : sayGrams(totalG),
        taken ? 'taken' : 'refused',
        by,
      ]),
      bench,
    ),
    ...section(
      'Weights',
      WEIGHTS,
      animal.weights.map(({ day, weightG, doubted, by }) => [
        sayDayShort(day),
        sayGrams(weightG),
        doubted ? 'asked about and confirmed' : '',
        by,
      ]),
      bench,
    ),
    ...section(
      'Health and treatment',
      TREATMENTS,
      animal.treatments.map(({ day, what, words, by }) => [sayDayShort(day), what, words, by]),
      bench,
    ),
    ...(animal.hasDoses ? [paragraph(DOSE_CAUTION, bench, { gapMm: 1.5 })] : []),
    ...section(
      'Moves',
      MOVES,
      animal.moves.map(({ day, where, by }) => [sayDayShort(day), where, by]),
      bench,
    ),
    ...section('Cleaning and water', CLEANING, cleaningRows(animal.cleaning), bench),
  ];
}

const FEEDS: readonly Column[] = [
  { words: 'day', share: 16 },
  { words: 'offered', share: 34 },
  { words: 'grams', share: 12, align: 'end' },
  { words: 'outcome', share: 14 },
  { words: 'by', share: 24 },
];
const WEIGHTS: readonly Column[] = [
  { words: 'day', share: 16 },
  { words: 'weight', share: 14, align: 'end' },
  { words: 'note', share: 46 },
  { words: 'by', share: 24 },
];
const TREATMENTS: readonly Column[] = [
  { words: 'day', share: 16 },
  { words: 'what', share: 15 },
  { words: 'in full', share: 45 },
  { words: 'by', share: 24 },
];
const MOVES: readonly Column[] = [
  { words: 'day', share: 16 },
  { words: 'to', share: 60 },
  { words: 'by', share: 24 },
];
const CLEANING: readonly Column[] = [
  { words: 'month', share: 12 },
  { words: 'what', share: 17 },
  { words: 'days of the month', share: 30 },
  { words: 'where', share: 17 },
  { words: 'by', share: 24 },
];

function section(
  title: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  bench: Bench,
): readonly PagePiece[] {
  const head = heading(title, bench);
  return rows.length === 0 ? [head, paragraph('None recorded.', bench)] : [head, ...table(columns, rows, bench)];
}

/** What the profile asks for, in its order and by its points, then every other field. */
function askedPieces(animal: PackAnimal, { profile }: Pack, bench: Bench): readonly PagePiece[] {
  const asked = new Set(profile.asked.flatMap(({ fields }) => fields));
  const points = profile.asked.map(({ point, asks, fields }) => {
    const answers = fields.map((field) => (fields.length === 1 ? says(animal, field) : labelled(animal, field)));
    return [`${point} ${asks}`.trim(), answers.join('; ')] as const;
  });
  const others = animal.facts
    .filter(({ field }) => !asked.has(field))
    .map(({ label, says: said }) => [label, said] as const);
  return [
    heading(profile.law === null ? 'Record' : `Asked for: ${profile.name}`, bench),
    ...pairs(points, bench),
    heading('Also on record', bench),
    ...pairs(others, bench),
  ];
}

function says(animal: PackAnimal, field: PackField): string {
  return animal.facts.find((fact) => fact.field === field)?.says ?? '';
}

function labelled(animal: PackAnimal, field: PackField): string {
  const fact = animal.facts.find((one) => one.field === field);
  return fact === undefined ? '' : `${fact.label.toLowerCase()}: ${fact.says}`;
}

function growthPieces({ growth }: PackAnimal, { from, on }: Pack, bench: Bench): readonly PagePiece[] {
  const head = heading('Growth', bench);
  if (growth.weights.length === 0) return [head, paragraph('No weighing is recorded.', bench)];
  const drawn = drawGrowth(growth, [firstDayOf(growth, from, on), on], bench.widthMm, bench.measure);
  const plot: PagePiece = {
    heightMm: drawn.heightMm + 1.5,
    marks: drawn.marks.map((mark) => ({ ...mark, yMm: mark.yMm + 1.5 })),
  };
  const gaps = growth.gaps.map(
    ({ from: since, to, days, mostDays }) =>
      `${sayDayShort(since)} to ${sayDayShort(to)} (${days} days; joined are at most ${mostDays})`,
  );
  const words = gaps.length === 0 ? [] : [paragraph(`Not weighed, so not joined: ${gaps.join(', ')}.`, bench)];
  return [head, { ...plot, keeps: words.length > 0 }, ...words, space(1)];
}

/** Cleaning is told by the month, each day of it named: one line a day would fill pages that nobody reads. */
function cleaningRows(cleaning: readonly PackCleaning[]): readonly (readonly string[])[] {
  const months = new Map<string, { readonly first: PackCleaning; readonly days: string[]; readonly by: Set<string> }>();
  for (const one of cleaning) {
    const key = [one.day.slice(0, 7), one.what, one.where].join('\u0000');
    const month = months.get(key) ?? { first: one, days: [], by: new Set<string>() };
    months.set(key, month);
    month.days.push(String(Number(one.day.slice(8))));
    month.by.add(one.by);
  }
  return [...months.values()].map(({ first, days, by }) => [
    sayDayShort(first.day).replace(/^\d+ /, ''),
    first.what,
    days.join(', '),
    first.where,
    [...by].join(', '),
  ]);
}
