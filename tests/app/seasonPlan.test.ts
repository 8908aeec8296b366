import { describe, expect, it } from 'vitest';
import { readGoal } from '../../src/app/season/goals.ts';
import { herdOf } from '../../src/app/season/herd.ts';
import { loosenings } from '../../src/app/season/loosening.ts';
import { pairsWanted, planCaseOf } from '../../src/app/season/planCase.ts';
import { NEW_PLAN, readLimits, readShare } from '../../src/app/season/planDraft.ts';
import { usualClutch } from '../../src/app/season/usualClutch.ts';
import { planPairs } from '../../src/app/workers/planPairs.ts';
import { foldFacility, lociFor, type Result, sayFraction } from '../../src/core/index.ts';
import { solvePlan } from '../../src/solver/index.ts';
import { seasonLog, TODAY } from '../browser/seasonHouse.ts';

const FACILITY = foldFacility(seasonLog());
const HERD = herdOf(FACILITY, 'Python regius', TODAY);
const LOCI = lociFor(FACILITY, 'Python regius').loci;
const LIMITS = { capPerMale: 4, maxMales: 3, meanKinshipLimit: null, maleCost: 0 } as const;

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

/** Pairs of the house towards goals, as the worker gives them. */
function pairsFor(...texts: readonly string[]) {
  const goals = texts.map((text) => value(readGoal(text, LOCI)));
  const { ask } = pairsWanted(FACILITY, HERD, goals);
  return { goals, ask, answer: value(planPairs(ask, () => undefined)) };
}

function caseFor(
  limits: Partial<Parameters<typeof planCaseOf>[2]['limits']>,
  ...goals: readonly (readonly [string, number])[]
) {
  const { goals: looks, ask, answer } = pairsFor(...goals.map(([text]) => text));
  const all = looks.map((look, at) => ({ ...look, leastEggs: goals[at]?.[1] ?? 0, weight: 1 }));
  return planCaseOf(ask, answer, { goals: all, limits: { ...LIMITS, ...limits }, eggs: 8 });
}

describe('who is planned with', () => {
  it('is grown, alive, past no ovulation, and waits for no vet; the others are told with the reason', () => {
    expect(HERD.sires.map(({ name }) => name)).toEqual(['Alder', 'Beech', 'Cedar']);
    expect(HERD.dams.map(({ name }) => name)).toEqual(['Fern', 'Gorse', 'Heath', 'Maple', 'Poppy']);
    expect(HERD.leftOut).toEqual([
      expect.stringMatching(/^1 lighter than 1,?000 g/),
      'waiting for the vet’s word: Elder',
      'past pairing this season: Ivy (ovulated), Juniper (pre-lay shed), Kale (laid), Larch (hatched)',
    ]);
  });

  it('is crossed for the usual clutch of the site where it has three of its own, else of the calendar', () => {
    expect(usualClutch(FACILITY, 'Python regius')).toMatchObject({ eggs: (7 + 8 + 7 + 3) / 4 });
    expect(usualClutch(FACILITY, 'Pantherophis guttatus')).toMatchObject({ eggs: 20 });
    // 8.1: Ellis & Chappell 1987, as in the calendar.
    expect(usualClutch(foldFacility([]), 'Python regius').eggs).toBe(8.1);
  });
});

describe('a goal', () => {
  it.each([
    ['Clown', [['CLN', 'Clown']]],
    [
      'super pastel clown',
      [
        ['PAS', 'Super Pastel'],
        ['CLN', 'Clown'],
      ],
    ],
    ['Pinstripe', [['PIN', 'Pinstripe']]],
  ])('“%s” is a look by locus', (text, wanted) => {
    expect([...value(readGoal(text, LOCI)).wanted]).toEqual(wanted);
  });
  it.each(['het Clown', '66 % het Clown', 'Pastel, het Clown', 'normal'])(
    '“%s” does not show, and is refused',
    (text) => {
      const read = readGoal(text, LOCI);
      expect(read.ok ? '' : read.problem.code).toBe('goal-unseen');
    },
  );
  it('that nobody can read is refused with the place', () => {
    expect(readGoal('Clwn', LOCI).ok).toBe(false);
  });
});

describe('the pairs', () => {
  it('have the chance that an egg shows the goal: Clown × het 1/2, het × het 1/4, else none', () => {
    const { ask, answer } = pairsFor('Clown');
    const chance = (sire: number, dam: string) =>
      answer.pairs.find((one) => one.sire === sire && ask.dams[one.dam]?.id === dam)?.chances.map(sayFraction);
    const [fern, heath] = HERD.dams.filter(({ name }) => name === 'Fern' || name === 'Heath').map(({ id }) => id);
    expect([chance(0, fern ?? ''), chance(1, fern ?? ''), chance(0, heath ?? '')]).toEqual([['1/2'], ['1/4'], ['0']]);
  });

  it('count eggs that die as no egg of the goal: Spider × Spider gives 1/2 of the eggs and not 2/3', () => {
    const { ask, answer } = pairsFor('Spider');
    const pair = answer.pairs.find(
      (one) => ask.sires[one.sire]?.code === 'Spi/+' && ask.dams[one.dam]?.code.includes('Spi'),
    );
    expect(pair?.chances.map(sayFraction)).toEqual(['1/2']);
  });

  it('have their kinship: father and daughter 1/4, full sister and brother 1/4, strangers 0 (Wright 1922)', () => {
    const { ask, answer } = pairsFor('Clown');
    const poppy = HERD.dams.findIndex(({ name }) => name === 'Poppy');
    const kin = answer.pairs.filter((one) => one.dam === poppy).map((one) => [HERD.sires[one.sire]?.name, one.kinship]);
    expect(kin).toEqual([
      ['Alder', 0.25],
      ['Beech', 0.25],
      ['Cedar', 0],
    ]);
    expect(ask.animals.length).toBeGreaterThan(0);
  });

  it('are listed with clutch × chance as expected eggs and their weighted sum as value; those towards no goal are not', () => {
    const made = caseFor({}, ['Clown', 1]);
    expect(made.pairs.map(([female, male, , worth, eggs]) => [female, male, worth, eggs])).toEqual([
      [0, 0, 4, [4]],
      [1, 0, 4, [4]],
      [4, 0, 4, [4]],
      [0, 1, 2, [2]],
      [1, 1, 2, [2]],
      [4, 1, 2, [2]],
    ]);
  });
});

describe('a plan that cannot be', () => {
  it('names the limit that binds and what it would have to be', async () => {
    const made = caseFor({ meanKinshipLimit: 0.01 }, ['Clown', 11]);
    const solve = (one: typeof made) => solvePlan(one);
    expect(value(await solve(made)).status).toBe('infeasible');
    // Alder with Fern, Gorse and his daughter Poppy: 12 eggs at a mean of (0 + 0 + 1/4) / 3; without her 8 eggs.
    expect(value(await loosenings(made, solve))).toEqual([
      { limit: 'kinship', possible: expect.closeTo(0.25 / 3, 9) },
      { limit: 'goal', goal: 0, possible: 8 },
    ]);
  });
  it('names the females of a male and the number of males', async () => {
    const made = caseFor({ capPerMale: 1, maxMales: 1 }, ['Clown', 6]);
    const found = value(await loosenings(made, (one) => solvePlan(one)));
    expect(found.map(({ limit, possible }) => [limit, possible])).toEqual([
      ['cap', 3],
      ['males', 2],
      ['goal', 4],
    ]);
  });
  it('names none where no single one is to blame', async () => {
    const made = caseFor({ capPerMale: 1, maxMales: 1, meanKinshipLimit: 0 }, ['Clown', 12]);
    expect(value(await loosenings(made, (one) => solvePlan(one))).map(({ limit }) => limit)).toEqual(['goal']);
  });
});

describe('the limits', () => {
  it.each([
    ['1/16', '1/16'],
    ['6.25 %', '1/16'],
    ['0.0625', '1/16'],
    ['0', '0'],
  ])('“%s” is a share of %s', (text, said) => {
    expect(sayFraction(value(readShare(text, 'kinship')))).toBe(said);
  });
  it.each(['2', '-1/4', '120 %', 'few', '%'])('“%s” is none', (text) => {
    expect(readShare(text, 'kinship').ok).toBe(false);
  });
  it.each([
    ['cap', '0'],
    ['cap', ''],
    ['most', '2.5'],
    ['kinship', '2'],
    ['cost', 'dear'],
  ])('of %s “%s” are refused at their field', (name, text) => {
    const read = readLimits({ ...NEW_PLAN, [name]: text }, 3);
    expect(read.ok ? null : [read.problem.code, read.problem.path]).toEqual(['not-a-number', name]);
  });
  it('left empty are no limits', () => {
    expect(value(readLimits(NEW_PLAN, 3))).toEqual({ capPerMale: 4, maxMales: 3, meanKinshipLimit: null, maleCost: 0 });
  });
});
