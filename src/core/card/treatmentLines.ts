import { type AnimalRecord, lastWeight, type PrescriptionRecord, sayAnimal, saySex } from '../animal/index.ts';
import {
  isYoung,
  sayCourse,
  sayEvery,
  sayPaperDays,
  type Treatment,
  weightFor,
  weightGoodUntil,
} from '../care/index.ts';
import { addDays, type Day, daysBetween, laterDay, sayDay, sayDayShort } from '../days.ts';
import { sayId } from '../ids.ts';
import type { Problem } from '../problems.ts';
import { sayGrams } from '../units.ts';
import { speciesForms } from './card.ts';
import type { Forms } from './content.ts';
import { type LabelLine, labelLine } from './label.ts';

/** The columns of the lines that are signed for each dose, and the same where paper is narrow; the first is printed, the rest are for the pen. */
export const SIGN_COLUMNS = {
  whole: ['dose', 'date', 'time', 'mL', 'given by', 'second'],
  close: ['dose', 'date, time', 'mL', 'given by', 'second'],
} as const;
/** A paper has lines for so many doses; the rest come with the next one, when the weight is newer too. */
export const MOST_SIGN_LINES = 12;

const FLAG: Forms = {
  long: 'Under treatment, not for sale',
  medium: 'Treatment, not for sale',
  short: 'TREATMENT, NOT FOR SALE',
};

/** Who it is: id, name, sex and species. */
export function animalLines(animal: AnimalRecord): readonly LabelLine[] {
  const both = animal.name !== null && animal.number !== null;
  const species = speciesForms(animal.species);
  const sex = saySex(animal.sex);
  return [
    labelLine('id', true, sayId(animal.id)),
    labelLine('main', true, {
      long: both ? `${animal.name} · ${animal.number}` : sayAnimal(animal),
      medium: sayAnimal(animal),
      short: animal.number ?? sayAnimal(animal),
    }),
    labelLine('body', false, {
      long: `${sex} ${species.long}`,
      medium: `${sex} ${species.medium}`,
      short: `${sex} ${species.short}`,
    }),
  ];
}

/** The flag that the law asks for in writing where an animal under treatment is kept (England 2018/486, Sch. 3). */
export function flagLine(): LabelLine {
  return labelLine('flag', true, FLAG);
}

/** Why there is no volume, in the place of one. */
export function noVolumeLine({ message, remedy }: Problem): LabelLine {
  return labelLine('body', true, `No volume. ${message} ${remedy}`);
}

/** The weight behind a volume, and until when it carries one; a fixed volume hangs on none. They never part from the volume. */
export function weightLines(animal: AnimalRecord, { record }: Treatment, on: Day): readonly LabelLine[] {
  const weight = weightFor(animal, on);
  if (weight === null) return [labelLine('figure', false, 'no weight yet')];
  const last = lastWeight(animal) === weight ? '' : ' (a later one stands on the record)';
  const plain = `${sayGrams(weight.weightG)}, weighed ${sayDayShort(weight.day)}`;
  if (record.written.amount.by === 'volume') return [labelLine('figure', false, `${plain}${last}`)];
  const until = goodUntil(animal, on);
  return [
    labelLine('figure', false, {
      long: `for ${plain}${last}; good until ${sayDayShort(until)}, then weigh and print anew`,
      medium: `for ${plain}; weigh again after ${sayDayShort(until)}`,
      short: `${plain}; good until ${sayDayShort(until)}`,
    }),
  ];
}

/** How it goes in and how often, from when until when, and how far it has come. */
export function courseLines({ written, given }: PrescriptionRecord): readonly LabelLine[] {
  const from = `from ${sayDay(written.startsOn as Day)}`;
  const last = given.at(-1);
  const before =
    last === undefined ? 'none given yet' : `given before: ${given.length}, last on ${sayDayShort(last.day)}`;
  return [
    labelLine('body', false, `${written.route}, ${sayEvery(written)}`),
    labelLine('body', false, `${sayCourse(written)}, ${from}`),
    labelLine('body', false, before),
    ...(written.withholdFood === true ? [labelLine('body', true, 'No food while it lasts')] : []),
  ];
}

/** Who wrote it, and what else stands on the vet’s paper. */
export function paperLines({ written }: PrescriptionRecord): readonly LabelLine[] {
  const lot = written.lot === undefined ? [] : [`lot ${written.lot}`];
  return [`written by ${written.prescriber}`, ...sayPaperDays(written), ...lot].map((words) =>
    labelLine('body', false, words),
  );
}

/**
 * The next doses as lines to sign: each with its number and, where the interval is whole days, with its day. A day after
 * the weight has become too old says so. At most {@link MOST_SIGN_LINES}, and a line that says how many are left then.
 */
export function signLines(animal: AnimalRecord, { record }: Treatment, on: Day): readonly LabelLine[] {
  const { written, given } = record;
  const days = dueDays(record, on);
  const until = written.amount.by === 'mass' ? goodUntil(animal, on) : null;
  const shown = days.slice(0, MOST_SIGN_LINES);
  const rest = days.length - shown.length;
  return [
    ...(rest > 0
      ? [labelLine('body', false, `the next ${shown.length} of ${days.length} doses; print anew then`)]
      : []),
    ...shown.map((due, at) => signLine({ number: given.length + at + 1, count: written.count, due, on, until })),
  ];
}

interface Sign {
  readonly number: number;
  readonly count: number | undefined;
  /** Null where the interval is hours: then the time of the last one says when. */
  readonly due: Day | null;
  readonly on: Day;
  readonly until: Day | null;
}

function signLine({ number, count, due, on, until }: Sign): LabelLine {
  const which = count === undefined ? `${number}` : `${number} of ${count}`;
  if (due === null) return labelLine('sign', false, { long: which, medium: which, short: `${number}` });
  const isOld = until !== null && due > until;
  const when = due < on ? `was due ${sayDayShort(due)}` : sayDay(due);
  const near = due < on ? `since ${sayNear(due)}` : sayNear(due);
  return labelLine('sign', false, {
    long: `${which} · ${when}${isOld ? ', weigh first' : ''}`,
    medium: `${number} · ${near}${isOld ? ', weigh' : ''}`,
    short: `${number} · ${sayNear(due)}${isOld ? ' !' : ''}`,
  });
}

/** When the doses that are left are due, null for each whose interval is not whole days; none after the last day. */
function dueDays({ written, given }: PrescriptionRecord, on: Day): readonly (Day | null)[] {
  const { everyHours, count, endsOn } = written;
  const every = everyHours / 24;
  const last = given.at(-1)?.day;
  const isDays = Number.isInteger(every);
  const first = last === undefined ? (written.startsOn as Day) : addDays(last, isDays ? every : 0);
  // What is late is given now, and the interval counts from then.
  const from = laterDay(first, on);
  const byCount = count === undefined ? Number.POSITIVE_INFINITY : count - given.length;
  const byEnd = endsOn === undefined ? Number.POSITIVE_INFINITY : dosesUntil(from, endsOn as Day, every);
  const left = Math.max(0, Math.min(byCount, byEnd, MOST_LEFT));
  return Array.from({ length: left }, (_none, at) => {
    if (!isDays) return null;
    return at === 0 ? first : addDays(from, at * every);
  });
}

/** Where a course has an end and no number, so many doses are looked at; nobody prints more. */
const MOST_LEFT = 1000;

function dosesUntil(from: Day, end: Day, everyDays: number): number {
  const days = daysBetween(from, end);
  return days < 0 ? 0 : Math.floor((days + (everyDays < 1 ? 1 - everyDays : 0)) / everyDays + 1e-9) + 1;
}

function goodUntil(animal: AnimalRecord, on: Day): Day {
  const weight = weightFor(animal, on);
  if (weight === null) return on;
  return weightGoodUntil({ massDate: weight.day }, isYoung(animal.species, weight.weightG));
}

function sayNear(day: Day): string {
  return sayDayShort(day).replace(/ \d{4}$/, '');
}
