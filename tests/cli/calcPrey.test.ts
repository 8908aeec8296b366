import { beforeAll, describe, expect, it } from 'vitest';
import { type Answers, answersOf, type Row, wrong } from './answers.ts';

const BASE = { species: 'Python regius', massG: 900, massDate: '2026-11-01', on: '2026-11-25' };
const UNKNOWN = { ...BASE, species: 'Anilius scytale' };
const says = (words: RegExp) => expect.arrayContaining([expect.stringMatching(words)]);

/** The bands are those of docs/calc.md (common practice, no source): 900 g eat 7–12 %, 63–108 g. */
const ROWS: readonly Row[] = [
  ['the plan’s grams', BASE, { prey: 'rat-small', count: 1, gramsEach: [60, 100], mealG: [63, 108], percent: [7, 12] }],
  ['case does not matter', { ...BASE, species: 'python REGIUS' }, { prey: 'rat-small' }],
  [
    'what it took last',
    { ...BASE, massG: 100, lastMeals: ['mouse-hopper'] },
    { prey: 'mouse-hopper', why: says(/took last/) },
  ],
  [
    'a refused meal does not count',
    { ...BASE, massG: 100, lastMeals: [{ prey: 'mouse-hopper', outcome: 'refused' }] },
    { prey: 'rat-fuzzy' },
  ],
  [
    'nor one that was not taken',
    { ...BASE, massG: 100, lastMeals: [{ prey: 'mouse-hopper', taken: false }] },
    { prey: 'rat-fuzzy' },
  ],
  [
    'days say which was last',
    {
      ...BASE,
      massG: 100,
      lastMeals: [
        { prey: 'rat-fuzzy', day: '2026-10-01' },
        { prey: 'mouse-hopper', date: '2026-11-01' },
      ],
    },
    { prey: 'mouse-hopper' },
  ],
  [
    'prey at hand of its own weight',
    { ...BASE, stock: [{ prey: 'quail-chick', grams: [70, 90], count: 4 }] },
    { prey: 'quail-chick', count: 1, gramsEach: [70, 90] },
  ],
  [
    'what is used up is not at hand',
    {
      ...BASE,
      stock: [
        { prey: 'rat-small', count: 0 },
        { prey: 'rat-pup', count: 9 },
      ],
    },
    { prey: 'rat-pup', count: 3 },
  ],
  [
    'too little at hand is said',
    { ...BASE, stock: [{ prey: 'mouse-adult', count: 1 }] },
    { count: 1, warnings: says(/less than the planned/) },
  ],
  ['an old weight is said', { ...BASE, massDate: '2026-08-01' }, { warnings: says(/116 days old/) }],
  [
    'a weight of tomorrow is said',
    { ...BASE, massDate: '2026-11-26' },
    { warnings: says(/dated 1 days after 2026-11-25/) },
  ],
  ['the keeper’s own percent', { ...BASE, plan: { percent: [2, 4] } }, { mealG: [18, 36], percent: [2, 4] }],
  ['one figure for both', { ...BASE, plan: { percent: 5 } }, { mealG: [45, 45] }],
  [
    'the keeper’s own prey and count',
    { ...BASE, plan: { prey: 'mouse-adult', count: 3 } },
    { prey: 'mouse-adult', count: 3 },
  ],
  [
    'a species that only the keeper knows',
    { ...UNKNOWN, plan: { percent: [10, 12] } },
    { mealG: [90, 108], why: says(/keeper’s own percent$/) },
  ],
  ['an unknown species', UNKNOWN, wrong('species-unknown', 'species', /Give the keeper’s own plan/)],
  [
    'an unknown species with half a plan',
    { ...UNKNOWN, plan: { prey: 'rat-small', count: 1 } },
    wrong('species-unknown', 'species'),
  ],
  ['no weight', { ...BASE, massG: undefined }, wrong('case-malformed', 'massG', /a number is wanted/)],
  ['a weight of 0', { ...BASE, massG: 0 }, wrong('not-positive', 'massG', /must be more than 0/)],
  ['a weight below 0', { ...BASE, massG: -5 }, wrong('not-positive', 'massG')],
  [
    'an endless weight',
    '{"species":"Python regius","massG":1e999,"massDate":"2026-11-01","on":"2026-11-25"}',
    wrong('not-finite', 'massG'),
  ],
  [
    'a weight that is no number',
    '{"species":"Python regius","massG":NaN,"massDate":"2026-11-01","on":"2026-11-25"}',
    wrong('case-malformed', '', /not JSON/),
  ],
  ['a weight in words', { ...BASE, massG: '900' }, wrong('case-malformed', 'massG')],
  ['a weight that no snake has', { ...BASE, massG: 2e6 }, wrong('weight-impossible', 'massG')],
  [
    'a date of another country',
    { ...BASE, massDate: '01.11.2026' },
    wrong('date-malformed', 'massDate', /“01.11.2026” is not a date/),
  ],
  ['a day that is not', { ...BASE, on: '2026-02-29' }, wrong('date-malformed', 'on')],
  ['no day', { ...BASE, on: undefined }, wrong('case-malformed', 'on')],
  [
    'prey that nobody knows the weight of',
    { ...BASE, stock: [{ prey: 'quail-chick', count: 4 }] },
    wrong('prey-unknown', 'stock.0.prey'),
  ],
  [
    'grams from high to low',
    { ...BASE, stock: [{ prey: 'rat-pup', grams: [90, 60] }] },
    wrong('case-malformed', 'stock.0.grams', /low first/),
  ],
  ['an empty freezer', { ...BASE, stock: [] }, wrong('freezer-empty', 'stock', /There is no prey at hand/)],
  [
    'a plan from high to low',
    { ...BASE, plan: { percent: [10, 5] } },
    wrong('plan-malformed', 'plan', /from high to low/),
  ],
  ['a plan of more than all of it', { ...BASE, plan: { percent: 101 } }, wrong('plan-malformed', 'plan', /0 to 100/)],
  ['a plan of half days', { ...BASE, plan: { everyDays: 2.5 } }, wrong('plan-malformed', 'plan', /whole numbers/)],
  ['fixed prey that nobody knows', { ...BASE, plan: { prey: 'moon-rat' } }, wrong('prey-unknown', 'plan.prey')],
  ['a meal without prey', { ...BASE, lastMeals: [{ grams: 3 }] }, wrong('case-malformed', 'lastMeals.0.prey')],
  [
    'a meal on no day',
    { ...BASE, lastMeals: [{ prey: 'rat-pup', day: 'Monday' }] },
    wrong('date-malformed', 'lastMeals.0'),
  ],
];

describe('calc prey', () => {
  let ran: Answers;
  beforeAll(async () => {
    ran = await answersOf(
      'prey',
      ROWS.map(([, given]) => given),
    );
  });

  it('answers every line in order', () => {
    expect([ran.code, ran.answers.length]).toEqual([1, ROWS.length]);
  });

  it.each(ROWS.map(([name, , answer], at) => [name, at, answer] as const))('%s', (_name, at, answer) => {
    expect(ran.answers[at]).toMatchObject(answer);
  });

  it('has the fields of the contract and no others', () => {
    const fields = ['prey', 'count', 'gramsEach', 'mealG', 'percent', 'warnings', 'why'];
    expect(Object.keys(ran.answers[0] as object)).toEqual(fields);
  });
});
