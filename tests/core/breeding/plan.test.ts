import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkPlan,
  MOST_PLAN_PAIRS,
  type PlanPair,
  planModel,
  planText,
  readPlan,
  type SeasonPlanCase,
  unreachableGoals,
  weighPlan,
} from '../../../src/core/index.ts';
import { seasonOf } from './seasons.ts';

const pair = (female: number, male: number, kinship = 0, value = 1, goals: number[] | null = null): PlanPair => [
  female,
  male,
  kinship,
  value,
  goals,
];
const plan = (more: Partial<SeasonPlanCase> = {}): SeasonPlanCase => ({
  females: 3,
  males: 2,
  capPerMale: 2,
  maxMales: 2,
  maleCost: 3,
  meanKinshipLimit: 0.05,
  goalMinExpected: [2],
  pairs: [pair(0, 0, 0.08, 40, [1.5]), pair(1, 0, 0.02, 30, [1]), pair(2, 0, 0, 20, [0.5]), pair(2, 1, 0.01, 25, [0])],
  ...more,
});
const faultOf = (more: Partial<SeasonPlanCase>): readonly (string | undefined)[] => {
  const checked = checkPlan(plan(more));
  return checked.ok ? ['ok'] : [checked.problem.code, checked.problem.path];
};

describe('the check of a season', () => {
  it('lets a sound one through, and an empty one', () => {
    expect(faultOf({})).toEqual(['ok']);
    expect(faultOf({ females: 0, males: 0, pairs: [], goalMinExpected: null, meanKinshipLimit: null })).toEqual(['ok']);
  });
  const wrong: readonly [string, Partial<SeasonPlanCase>, string][] = [
    ['a female that is not there', { pairs: [pair(3, 0)] }, 'pairs.0.0'],
    ['a male that is not there', { pairs: [pair(0, 0), pair(0, -1)] }, 'pairs.1.1'],
    ['half a female', { pairs: [pair(0.5, 0)] }, 'pairs.0.0'],
    ['a kinship in percent', { pairs: [pair(0, 0, 6.25)] }, 'pairs.0.2'],
    ['a kinship that is no number', { pairs: [pair(0, 0, Number.NaN)] }, 'pairs.0.2'],
    ['an endless value', { pairs: [pair(0, 0, 0, Number.POSITIVE_INFINITY)] }, 'pairs.0.3'],
    ['eggs of two goals where there is one', { pairs: [pair(0, 0, 0, 1, [1, 2])] }, 'pairs.0.4'],
    ['eggs below none', { pairs: [pair(0, 0, 0, 1, [-1])] }, 'pairs.0.4.0'],
    ['a pair that stands there twice', { pairs: [pair(0, 1), pair(1, 1), pair(0, 1)] }, 'pairs.2'],
    ['a negative cap', { capPerMale: -1 }, 'capPerMale'],
    ['half a male', { maxMales: 1.5 }, 'maxMales'],
    ['females below none', { females: -3 }, 'females'],
    ['a cost that is no number', { maleCost: Number.NaN }, 'maleCost'],
    ['a limit that is no number', { meanKinshipLimit: Number.NaN }, 'meanKinshipLimit'],
    ['a goal below none', { goalMinExpected: [-2] }, 'goalMinExpected.0'],
  ];
  it.each(wrong)('names %s', (_what, more, path) => {
    expect(faultOf(more)).toEqual(['plan-case', path]);
  });
  it('says what was found and what is wanted', () => {
    const checked = checkPlan(plan({ pairs: [pair(0, 7)] }));
    expect(checked).toMatchObject({
      problem: { message: expect.stringContaining('a male from 0 to 1 is wanted, not 7') },
    });
  });
  it('refuses more pairs than any site has', () => {
    const pairs = Array.from({ length: MOST_PLAN_PAIRS + 1 }, (_none, female) => pair(female, 0));
    expect(faultOf({ females: pairs.length, pairs })[0]).toBe('plan-too-large');
  });
});

describe('goals that nobody can reach', () => {
  it('are those towards which no listed pair gives eggs', () => {
    const pairs = [pair(0, 0, 0, 1, [0, 2, 0]), pair(1, 0, 0, 1, null)];
    expect(unreachableGoals(plan({ goalMinExpected: [1, 1, 0], pairs }))).toEqual([0, 2]);
    expect(unreachableGoals(plan({ goalMinExpected: null, pairs }))).toEqual([]);
  });
});

describe('the program', () => {
  const { columns, rows } = planModel(plan());
  const rowOf = (name: string) => rows.find((row) => row.name === name);
  it('has a column for each pair in its order and then one for each male', () => {
    expect(columns.map(({ name }) => name)).toEqual(['f0m0', 'f1m0', 'f2m0', 'f2m1', 'm0', 'm1']);
    expect(columns.map(({ value }) => value)).toEqual([40, 30, 20, 25, -3, -3]);
  });
  it('holds a female to one male and a male to his cap', () => {
    expect(rowOf('female2')).toMatchObject({
      terms: [
        [2, 1],
        [3, 1],
      ],
      sign: '<=',
      bound: 1,
    });
    expect(rowOf('male0')).toMatchObject({
      terms: [
        [0, 1],
        [1, 1],
        [2, 1],
        [4, -2],
      ],
      sign: '<=',
      bound: 0,
    });
    expect(rowOf('female0')).toBeUndefined();
  });
  it('takes the mean kinship as what lies above the limit, all together', () => {
    expect(rowOf('kinship')?.terms.map(([, over]) => Number(over.toFixed(6)))).toEqual([0.03, -0.03, -0.05, -0.04]);
  });
  it('asks for the eggs of a goal only where it can be reached', () => {
    expect(rowOf('goal0')).toMatchObject({
      terms: [
        [0, 1.5],
        [1, 1],
        [2, 0.5],
      ],
      sign: '>=',
      bound: 2,
    });
    const beyond = planModel(plan({ pairs: [pair(0, 0, 0, 1, [0])] }));
    expect(beyond.rows.some(({ name }) => name.startsWith('goal'))).toBe(false);
  });
  it('leaves males out where they cost nothing and all may be used', () => {
    expect(planModel(plan({ maleCost: 0 })).columns).toHaveLength(4);
    expect(planModel(plan({ maleCost: 0, maxMales: 1 })).columns).toHaveLength(6);
  });
  it('reads in the open text form', () => {
    const text = planText(planModel(plan({ pairs: [pair(0, 0, 0.08, 40, [1.5]), pair(1, 0, 0.02, 30, [1])] })));
    expect(text).toBe(
      [
        'Maximize',
        ' value: + 40 f0m0 + 30 f1m0 - 3 m0',
        'Subject To',
        ' male0: + 1 f0m0 + 1 f1m0 - 2 m0 <= 0',
        ' f0of0: + 1 f0m0 - 1 m0 <= 0',
        ' f1of0: + 1 f1m0 - 1 m0 <= 0',
        ' kinship: + 0.03 f0m0 - 0.030000000000000002 f1m0 <= 0',
        ' goal0: + 1.5 f0m0 + 1 f1m0 >= 2',
        'Binary',
        ' f0m0',
        ' f1m0',
        ' m0',
        'End',
        '',
      ].join('\n'),
    );
  });
});

describe('a plan that was found', () => {
  it('is valued anew, with males, mean kinship and eggs', () => {
    expect(readPlan(plan(), [1, 1, 0, 1, 1, 1])).toEqual({
      ok: true,
      value: {
        value: 89,
        pairs: [
          [0, 0],
          [1, 0],
          [2, 1],
        ],
        malesUsed: 2,
        meanKinship: expect.closeTo(0.11 / 3, 12),
        expected: [2.5],
        unreachableGoals: [],
      },
    });
  });
  it('takes a solver’s near-whole columns as whole, and does not look at what it says of males', () => {
    expect(readPlan(plan(), [1 - 1e-7, 1e-7, 0, 1, 0, 0])).toMatchObject({ ok: false });
    expect(readPlan(plan(), [1 - 1e-7, 1 + 1e-7, -1e-9, 1, 0, 0])).toMatchObject({ value: { value: 89 } });
  });
  const unsound: readonly [string, Partial<SeasonPlanCase>, number[], RegExp][] = [
    ['half a pair', {}, [0.5, 1, 0, 1], /pair 0 is neither/],
    ['a missing column', {}, [1, 1, 0], /pair 3 is neither/],
    ['two pairs for one', {}, [1, 1, 2, 0], /pair 2 is neither/],
    ['a female with two males', {}, [1, 0, 1, 1], /female 2 is paired 2 times/],
    ['a male beyond his cap', {}, [1, 1, 1, 0], /male 0 covers 3 females, at most 2/],
    ['too many males', { maxMales: 1 }, [1, 1, 0, 1], /2 males are used, at most 1/],
    ['kin too near', { meanKinshipLimit: 0.03 }, [1, 1, 0, 1], /mean kinship is 0.036/],
    ['too few eggs', { goalMinExpected: [2.6] }, [1, 1, 0, 1], /goal 0 is at 2.5 eggs, at least 2.6/],
  ];
  it.each(unsound)('is thrown away with %s', (_what, more, columns, words) => {
    expect(readPlan(plan(more), columns)).toMatchObject({
      ok: false,
      problem: { code: 'plan-unsound', message: expect.stringMatching(words) },
    });
  });
  it('may leave everybody alone where no goal asks for more', () => {
    expect(readPlan(plan({ goalMinExpected: null }), [0, 0, 0, 0])).toMatchObject({
      value: { value: 0, pairs: [], meanKinship: null },
    });
  });
  it('meets a mean that is the limit exactly, though doubles add up to more', () => {
    const pairs = [0.1, 0.2, 0.3].map((kinship, female) => pair(female, 0, kinship));
    expect(
      readPlan(plan({ pairs, meanKinshipLimit: 0.2, goalMinExpected: null, capPerMale: 3 }), [1, 1, 1]),
    ).toMatchObject({
      ok: true,
    });
  });
  it('keeps to every row of the program exactly where core finds it sound', () => {
    const seasons = fc.record({ seed: fc.nat(9999), chosen: fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }) });
    fc.assert(
      fc.property(seasons, ({ seed, chosen }) => {
        const season = seasonOf(seed, 4, 3);
        const { columns, rows } = planModel(season);
        const pairs = season.pairs.map((_pair, at) => (chosen[at] === true ? 1 : 0));
        const used = new Set(season.pairs.filter((_pair, at) => pairs[at] === 1).map(([, male]) => `m${male}`));
        const values = columns.map(({ name }, at) => pairs[at] ?? (used.has(name) ? 1 : 0));
        const keeps = rows.every(({ terms, sign, bound }) => {
          const sum = terms.reduce((all, [column, by]) => all + by * (values[column] ?? 0), 0);
          return sign === '<=' ? sum <= bound + 1e-8 : sum >= bound - 1e-8;
        });
        const read = readPlan(season, values);
        expect(read.ok).toBe(keeps);
        const value = columns.reduce((all, column, at) => all + column.value * (values[at] ?? 0), 0);
        if (read.ok) expect(read.value.value).toBeCloseTo(value, 8);
      }),
    );
  });
  it('can be weighed by its pairs alone', () => {
    expect(weighPlan(plan(), [0, 1, 3])).toMatchObject({ value: { value: 89 } });
    expect(weighPlan(plan(), [9])).toMatchObject({ problem: { code: 'plan-unsound' } });
  });
});
