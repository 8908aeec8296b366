import { DOSE_CAUTION, type Pack, type PackAnimal, type PackField, sayDayShort } from '../../src/core/index.ts';
import { firstDayOf } from '../growth/geometry.ts';
import { drawGrowth } from '../growth/marks.ts';
import {
  type Bench,
  heading,
  type PagePiece,
  type Pair,
  pairs,
  pairsAbreast,
  paragraph,
  space,
  table,
} from './pieces.ts';
import { type Section, sectionsOf } from './sections.ts';

/** One animal’s part of a pack as strips: what the profile asks for first, then the rest, the plot and the tables. */
export function animalPieces(animal: PackAnimal, pack: Pack, bench: Bench): readonly PagePiece[] {
  const sections = sectionsOf(animal);
  const empty = sections.filter(({ rows }) => rows.length === 0).map(({ title }) => title);
  return [
    paragraph(animal.called, bench, { sizePt: 18, cut: 'bold', gapMm: 0 }),
    paragraph(`${animal.display} · ${saysSpecies(animal)} · ${says(animal, 'sex')}`, bench, { sizePt: 11 }),
    ...askedPieces(animal, pack, bench),
    ...growthPieces(animal, pack, bench),
    ...sections.filter(({ rows }) => rows.length > 0).flatMap((section) => sectionPieces(section, animal, bench)),
    ...(empty.length === 0
      ? []
      : [heading('Nothing recorded in these years', bench), paragraph(`${empty.join(' · ')}.`, bench)]),
  ];
}

function sectionPieces(
  { title, columns, rows, note }: Section,
  animal: PackAnimal,
  bench: Bench,
): readonly PagePiece[] {
  return [
    heading(title, bench),
    ...table(columns, rows, bench),
    ...(title === 'Health and treatment' && animal.hasDoses ? [paragraph(DOSE_CAUTION, bench, { gapMm: 1.5 })] : []),
    ...(note === undefined ? [] : [paragraph(note, bench, { gapMm: 1.5 })]),
  ];
}

/** What only some profiles ask for: told where they do, and always in the CSV. */
const ONLY_ASKED: readonly PackField[] = ['owner', 'protocol', 'lacey', 'large-constrictor', 'animals-there'];
/** What an inspector has to see at a glance. */
const LOUD = /^YES:/;

/** What the profile asks for, in its order and by its points, then every other field. */
function askedPieces(animal: PackAnimal, { profile }: Pack, bench: Bench): readonly PagePiece[] {
  const asked = new Set(profile.asked.flatMap(({ fields }) => fields));
  const points = profile.asked.map(({ point, asks, fields }): Pair => {
    const answers = fields.map((field) => (fields.length === 1 ? says(animal, field) : labelled(animal, field, asks)));
    return [`${point} ${asks}`.trim(), loud(joined(answers))];
  });
  const others = animal.facts
    .filter(({ field }) => !asked.has(field) && !ONLY_ASKED.includes(field))
    .map(({ label, says: said }): Pair => [label, loud(said)]);
  return [
    heading(profile.law === null ? 'Record' : `Asked for: ${profile.name}`, bench),
    ...pairs(points, bench),
    heading('Also on record', bench),
    ...pairsAbreast(others, bench),
  ];
}

/** One after the other; after a whole sentence the next begins as one. */
function joined([first = '', ...others]: readonly string[]): string {
  return others.reduce(
    (said, next) =>
      said.endsWith('.') ? `${said} ${next.slice(0, 1).toUpperCase()}${next.slice(1)}` : `${said} · ${next}`,
    first,
  );
}

function loud(words: string): Pair[1] {
  return LOUD.test(words) ? { says: words, cut: 'bold' } : words;
}

function says(animal: PackAnimal, field: PackField): string {
  return animal.facts.find((fact) => fact.field === field)?.says ?? '';
}

/** `Python regius (ball python)`, and the bare name where the trade has none here. */
function saysSpecies(animal: PackAnimal): string {
  const common = animal.facts.find(({ field }) => field === 'common-name');
  const species = says(animal, 'species');
  return common === undefined || !common.isKnown ? species : `${species} (${common.says})`;
}

/** What a field says under its label, but for one that is called what was asked for. */
function labelled(animal: PackAnimal, field: PackField, asks: string): string {
  const fact = animal.facts.find((one) => one.field === field);
  if (fact === undefined) return '';
  return fact.label === asks ? fact.says : `${fact.label.toLowerCase()}: ${fact.says}`;
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
