import {
  addDays,
  type Day,
  type Milestone,
  type SeasonMark,
  type Stage,
  sayDay,
  sayDayShort,
  speciesOf,
} from '../../core/index.ts';

/** What is drawn for a mark or a stage; a word stands beside it everywhere. */
export type Shape = SeasonMark['kind'] | 'hatched';

/** How the marks are called, in the order in which they come. */
export const SHAPE_WORDS: Readonly<Record<Shape, string>> = {
  paired: 'paired',
  lock: 'lock seen',
  follicles: 'follicles',
  ovulation: 'ovulation',
  'pre-lay shed': 'pre-lay shed',
  laid: 'laying',
  born: 'birth',
  hatched: 'hatching',
};

const STAGE_WORDS: Readonly<Record<Stage, string>> = {
  resting: 'resting',
  paired: 'paired',
  locked: 'lock seen',
  follicles: 'large follicles',
  ovulated: 'ovulated',
  'pre-lay shed': 'pre-lay shed',
  laid: 'laid',
  born: 'young born',
  hatched: 'hatched',
};

/** How far she is, in words. */
export function sayStage(stage: Stage): string {
  return STAGE_WORDS[stage];
}

/** The shape that stands for a stage; a resting female has none. */
export function shapeOf(stage: Stage): Shape | null {
  if (stage === 'resting') return null;
  if (stage === 'locked') return 'lock';
  return stage === 'ovulated' ? 'ovulation' : stage;
}

const MILESTONE_WORDS: Readonly<Record<Milestone, string>> = {
  lock: 'Lock',
  ovulation: 'Ovulation',
  'pre-lay shed': 'Pre-lay shed',
  laid: 'Laying',
  hatched: 'Hatching',
  born: 'Birth',
  'first shed': 'First shed of the young',
};

/** What is waited for, as a title. */
export function sayMilestone(milestone: Milestone): string {
  return MILESTONE_WORDS[milestone];
}

/** `26 Dec – 3 Jan`, `3 – 9 Jan`: a window on one line, the year said nowhere because the chart says it. */
export function sayRange(from: Day, to: Day): string {
  const [first, last] = [from, to].map((day) => sayDayShort(day).replace(/ \d{4}$/, ''));
  if (from === to) return first ?? '';
  const sameMonth = from.slice(0, 7) === to.slice(0, 7);
  return `${sameMonth ? Number(from.slice(8)) : first} – ${last}`;
}

/** Core writes days in its words as ISO text; people read them spoken. */
export function spoken(words: string): string {
  return words.replace(/\b(\d{4}-\d{2}-\d{2})\b/g, (day) => sayDayShort(addDays(day as Day, 0)));
}

/** `Tue 1 Dec`, with the year where it is another one. */
export function sayDayIn(day: Day, today: Day): string {
  return day.slice(0, 4) === today.slice(0, 4) ? sayDay(day).replace(/ \d{4}$/, '') : sayDay(day);
}

/** What the trade calls a species; its own name where no other is known. */
export function sayKind(species: string): string {
  return speciesOf(species)?.tradeName ?? species;
}
