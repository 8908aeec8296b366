import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bestByTrial, seasonOf } from '../core/breeding/seasons.ts';
import { answersOf, type Row, wrong } from './answers.ts';
import { ROOT } from './tubwright.ts';

interface Said {
  readonly status: string;
  readonly value: number | null;
  readonly pairs: readonly (readonly [number, number])[];
  readonly unreachableGoals: readonly number[];
}

/** Examples of the contract, made by brute force elsewhere. */
const EXAMPLES = readFileSync(join(ROOT, 'tests', 'core', 'breeding', 'examples', 'season-plan.ndjson'), 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line) as { case: unknown; answer: { status: string; value: number } });

describe('calc season-plan', () => {
  it('gives the status and the value of the contract’s examples, with all goals reached', async () => {
    const { code, answers } = await answersOf(
      'season-plan',
      EXAMPLES.map((one) => one.case),
    );
    expect([code, answers.length]).toEqual([0, 3]);
    for (const [at, { answer }] of EXAMPLES.entries()) {
      const { value, ...said } = answers[at] as Said;
      expect(said).toMatchObject({ status: answer.status, unreachableGoals: [] });
      expect(Math.abs((value ?? Number.NaN) / answer.value - 1)).toBeLessThan(1e-6);
    }
  });
  it('gives the best of all plans of small seasons, tried one by one', async () => {
    const seasons = Array.from({ length: 30 }, (_none, seed) =>
      seasonOf(100 + seed, 1 + (seed % 6), 1 + (seed % 4), { goalMinExpected: seed % 3 === 0 ? null : [seed % 5, 1] }),
    );
    const { answers } = await answersOf('season-plan', seasons);
    const best = seasons.map(bestByTrial);
    expect(best.filter((one) => one === null).length).toBeGreaterThan(2);
    for (const [at, one] of best.entries()) {
      const said = answers[at] as Said;
      expect(said.status).toBe(one === null ? 'infeasible' : 'optimal');
      if (one === null) expect(said).toMatchObject({ value: null, pairs: [] });
      else expect(said.value).toBeCloseTo(one, 6);
    }
  });

  const plain = {
    females: 2,
    males: 1,
    capPerMale: 1,
    maxMales: 1,
    maleCost: 0,
    meanKinshipLimit: null,
    goalMinExpected: null,
  };
  const pairs = [
    [0, 0, 0.1, 5, null],
    [1, 0, 0.1, 4, null],
  ];
  const rows: readonly Row[] = [
    [
      'takes the better one',
      { ...plain, pairs },
      { status: 'optimal', value: 5, pairs: [[0, 0]], unreachableGoals: [] },
    ],
    ['plans nothing without pairs', { ...plain, pairs: [] }, { status: 'optimal', value: 0, pairs: [] }],
    ['names goals beyond reach', { ...plain, goalMinExpected: [1], pairs }, { value: 5, unreachableGoals: [0] }],
    ['stops in time', { ...plain, pairs, timeLimitSeconds: 0 }, { status: 'stopped', value: null, gap: null }],
    ['wants all figures', { pairs }, wrong('case-malformed', 'females')],
    ['wants pairs of five', { ...plain, pairs: [[0, 0]] }, wrong('case-malformed', 'pairs.0')],
    ['knows its females', { ...plain, pairs: [[2, 0, 0.1, 5, null]] }, wrong('plan-case', 'pairs.0.0', /from 0 to 1/)],
    ['wants a pair once', { ...plain, pairs: [...pairs, pairs[0]] }, wrong('plan-case', 'pairs.2', /pairs.0 already/)],
    ['wants a cap from 0', { ...plain, capPerMale: -1, pairs }, wrong('plan-case', 'capPerMale')],
    ['wants JSON', '{"females":', wrong('case-malformed', '', /not JSON/)],
  ];
  it('answers each case on its own line', async () => {
    const { code, answers } = await answersOf(
      'season-plan',
      rows.map(([, given]) => given),
    );
    expect(code).toBe(1);
    for (const [at, [name, , answer]] of rows.entries()) expect(answers[at], name).toMatchObject(answer);
  });
});
