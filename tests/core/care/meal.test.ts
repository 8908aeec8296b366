import { describe, expect, it } from 'vitest';
import {
  bandFor,
  chooseMeal,
  feedPlan,
  type Meal,
  type MealQuestion,
  type Payload,
  PREY_CLASSES,
  plannedMeal,
  preyClass,
  SPECIES,
  sayPrey,
  speciesOf,
  weighEveryDays,
} from '../../../src/core/index.ts';
import { CLUTCH, day, fed, type Line, REX, refusal, rex, value, weighed } from '../log.ts';

const ON = day('2026-03-20');
const ask = (more: Partial<MealQuestion> = {}): MealQuestion => ({
  species: 'Python regius',
  massG: 850,
  massDay: ON,
  on: ON,
  plan: null,
  lastPrey: [],
  stock: null,
  share: 1,
  ...more,
});
const meal = (more: Partial<MealQuestion> = {}): Meal => value(chooseMeal(ask(more)));
const says = (more: Partial<MealQuestion> = {}): string => `${meal(more).count} × ${meal(more).prey}`;

describe('species', () => {
  it('are found by their name in any case, with blanks around', () => {
    expect(speciesOf(' python REGIUS ')?.tradeName).toBe('ball python');
    expect(speciesOf('Lampropeltis getula')).toBeUndefined();
    expect(speciesOf('constructor')).toBeUndefined();
  });
  it.each(SPECIES)('$name: bands rise, end open, and their ranges run from low to high', ({ bands }) => {
    const ends = bands.map((band) => band.belowG ?? Number.POSITIVE_INFINITY);
    expect(ends).toEqual([...ends].sort((a, b) => a - b));
    expect(bands.at(-1)?.belowG).toBeNull();
    for (const { percent, everyDays } of bands)
      expect(percent[0] < percent[1] && everyDays[0] < everyDays[1] && percent[0] > 0 && everyDays[0] > 0).toBe(true);
  });
  it('CARE-WEIGH: hatchlings every 14 days, growers 30, adults 90; unknown species 30', () => {
    const ball = speciesOf('Python regius');
    expect([80, 199, 200, 999, 1000].map((massG) => weighEveryDays(ball, massG))).toEqual([14, 14, 30, 30, 90]);
    expect(weighEveryDays(undefined, 5000)).toBe(30);
  });
});

describe('CARE-PLAN: the keeper’s own figures, and the species’ band for the rest', () => {
  const own = (plan: Payload<'feed-plan-set'>, massG: number | null = 850) => feedPlan('Python regius', massG, plan);
  it('a mass on the edge falls into the upper band', () => {
    const ball = speciesOf('Python regius');
    expect(ball && [199.9, 200, 499.9, 500, 1000].map((massG) => bandFor(ball, massG)?.belowG)).toEqual([
      200,
      500,
      500,
      1000,
      null,
    ]);
  });
  it('takes each figure from where it is given, and says so', () => {
    expect(value(own({ percent: [6, 6] }))).toMatchObject({ percent: [6, 6], everyDays: [7, 14] });
    expect(value(own({ percent: [6, 6] })).because).toContain('keeper’s own percent; Python regius, under 1000 g');
    expect(value(own({ percent: [6, 6], everyDays: [9, 9] })).because).toBe('keeper’s own percent and days');
  });
  it('spans all bands without a weight', () => {
    expect(value(feedPlan('Python regius', null, null))).toMatchObject({ percent: [5, 15], everyDays: [5, 30] });
  });
  it('refuses figures from high to low, and species that are not in the list', () => {
    expect(refusal(own({ percent: [9, 5] }))).toBe('plan-malformed');
    expect(refusal(own({ everyDays: [9, 5] }))).toBe('plan-malformed');
    expect(refusal(feedPlan('Lampropeltis getula', 500, null))).toBe('species-unknown');
  });
});

describe('CARE-PREY: the fewest items of one class that lie in the planned grams', () => {
  const meals: readonly [number, string, string][] = [
    [80, 'Python regius', '1 × mouse-hopper'],
    [850, 'Python regius', '1 × rat-small'],
    [2000, 'Python regius', '1 × rat-medium'],
    [8, 'Pantherophis guttatus', '1 × mouse-pinky'],
    [600, 'Pantherophis guttatus', '1 × mouse-jumbo'],
  ];
  it.each(meals)('%d g of %s gets %s', (massG, species, words) => {
    const { percent, prey, count } = meal({ massG, species });
    const grams = count * (((preyClass(prey)?.eachG[0] ?? 0) + (preyClass(prey)?.eachG[1] ?? 0)) / 2);
    expect(grams).toBeGreaterThanOrEqual((massG * percent[0]) / 100);
    expect(grams).toBeLessThanOrEqual((massG * percent[1]) / 100);
    expect(says({ massG, species })).toBe(words);
  });
  it('stays with what it took last where that fits, and leaves it where it no longer fits', () => {
    expect(says({ massG: 500, lastPrey: ['rat-weaned'] })).toBe('1 × rat-weaned');
    expect(says({ massG: 500, lastPrey: ['mouse-jumbo'] })).toBe('1 × mouse-jumbo');
    expect(says({ massG: 1500, lastPrey: ['mouse-pinky'] })).not.toContain('pinky');
  });
  it('takes what is at hand, by the lot’s own weights', () => {
    const stock = [{ prey: 'rat-pup', eachG: [28, 36] as const, count: 5 }];
    expect(meal({ stock })).toMatchObject({ prey: 'rat-pup', count: 2, eachG: [28, 36], mealG: [59.5, 102] });
  });
  it('never counts more items than are at hand, nor empty lots', () => {
    const stock = [
      { prey: 'rat-pup', eachG: [20, 30] as const, count: 1 },
      { prey: 'rat-small', eachG: [60, 100] as const, count: 0 },
    ];
    expect(says({ stock })).toBe('1 × rat-pup');
    expect(meal({ stock }).warnings.join()).toContain('less than the planned 60–102 g; nothing nearer is at hand');
  });
  it('goes above the plan for the smallest animals only, and says so', () => {
    expect(meal({ massG: 6, species: 'Heterodon nasicus' }).warnings.join()).toContain('more than the planned');
  });
  it('refuses with an empty freezer', () => {
    expect(refusal(chooseMeal(ask({ stock: [] })))).toBe('freezer-empty');
  });
  it('keeps the plan’s own prey, its count or as many as fit', () => {
    expect(says({ plan: { prey: 'mouse-adult', count: 3 } })).toBe('3 × mouse-adult');
    expect(says({ plan: { prey: 'mouse-adult' } })).toBe('3 × mouse-adult');
    expect(says({ plan: { prey: 'mouse-pinky' } })).toBe('12 × mouse-pinky');
    expect(refusal(chooseMeal(ask({ plan: { prey: 'quail' } })))).toBe('prey-unknown');
    expect(says({ plan: { prey: 'quail' }, stock: [{ prey: 'quail', eachG: [40, 44], count: null }] })).toBe(
      '2 × quail',
    );
  });
  it('says prey as people do', () => {
    expect(['rat-small', 'rat-pup', 'mouse-weaned', 'day-old-chick'].map(sayPrey)).toEqual([
      'small rat',
      'rat pup',
      'weaned mouse',
      'day old chick',
    ]);
  });
  it('classes of one animal follow each other without a gap', () => {
    for (const animal of ['mouse', 'rat']) {
      const classes = PREY_CLASSES.filter((one) => one.id.startsWith(animal));
      for (const [at, one] of classes.slice(1).entries()) expect(one.eachG[0]).toBe(classes[at]?.eachG[1]);
    }
  });

  const nonsense: readonly [Partial<MealQuestion>, string][] = [
    [{ massG: 0 }, 'not-positive'],
    [{ massG: -5 }, 'not-positive'],
    [{ massG: Number.NaN }, 'not-finite'],
    [{ massG: Number.POSITIVE_INFINITY }, 'not-finite'],
    [{ share: 0 }, 'not-positive'],
    [{ share: -1 }, 'not-positive'],
    [{ share: Number.NaN }, 'not-finite'],
    [{ share: 1.5 }, 'plan-malformed'],
    [{ massG: 200_000 }, 'weight-impossible'],
    [{ species: 'Lampropeltis getula' }, 'species-unknown'],
    [{ plan: { percent: [9, 5] } }, 'plan-malformed'],
    [{ stock: [{ prey: 'rat-pup', eachG: [Number.NaN, 5], count: 1 }] }, 'freezer-empty'],
    [{ stock: [{ prey: 'rat-pup', eachG: [0, 0], count: 1 }] }, 'freezer-empty'],
    [{ stock: [{ prey: 'rat-pup', eachG: [20, 35], count: -1 }] }, 'freezer-empty'],
  ];
  it.each(nonsense)('refuses %j: %s', (question, code) => {
    expect(refusal(chooseMeal(ask(question)))).toBe(code);
  });
});

describe('CARE-SHARE: large meals are warned of', () => {
  const one = (eachG: readonly [number, number], massG: number): string =>
    meal({ massG, stock: [{ prey: 'rat-x', eachG, count: 1 }] }).warnings.join(' | ');
  const cases: readonly [number, number, string | null][] = [
    [1000, 200, null],
    [1000, 201, 'over 20 %: a large meal'],
    [999, 290, null],
    [900, 280, 'over 30 %: a large meal'],
    [1000, 400, 'over 20 %: a large meal'],
    [1000, 401, 'over 40 %: confirm before feeding'],
  ];
  it.each(cases)('%d g of ball python and prey of %d g: %s', (massG, preyG, words) => {
    const said = one([preyG, preyG], massG);
    if (words === null) expect(said).not.toContain('of its mass');
    else expect(said).toContain(words);
  });
});

describe('a weight that is old', () => {
  it('is warned of after as many days as this animal is weighed', () => {
    expect(meal({ massDay: day('2026-02-18') }).warnings).toEqual([]);
    expect(meal({ massDay: day('2026-02-17') }).warnings[0]).toContain('The weight is 31 days old');
  });
  it('is warned of when it lies in the future', () => {
    expect(meal({ massDay: day('2026-03-21') }).warnings[0]).toContain('dated 1 days after');
  });
});

describe('a meal says why', () => {
  it('with percent, grams and source, and asks to look at the animal first', () => {
    const why = meal({ lastPrey: ['rat-small'] }).why;
    expect(why[0]).toBe('7–12 % of 850 g is 60–102 g: Python regius, under 1000 g (C: common practice, no source)');
    expect(why[1]).toContain('as it took last');
    expect(why[2]).toContain('Look at the animal first');
  });
});

describe('the meal of a record', () => {
  const W = weighed('2026-03-19', 1200);
  const laid: Line = ['2026-03-18', 'clutch-laid', { clutch: CLUTCH, eggs: 6 }, { subjects: [REX, CLUTCH] }];
  const plan = (own: Payload<'feed-plan-set'>): Line => ['2026-01-01', 'feed-plan-set', own];
  const planned = (...lines: readonly Line[]): Meal => value(plannedMeal(rex({}, ...lines), ON));
  const about = ({ count, eachG }: Meal): number => (count * (eachG[0] + eachG[1])) / 2;

  it('goes by the last weight', () => {
    expect(planned(W).mealG).toEqual([60, 120]);
  });
  it('CARE-REGURGITATION: half a meal first, then two small ones, then the whole again', () => {
    const ill: Line = ['2026-02-01', 'regurgitation-seen', {}];
    const mealAfter = (meals: number): Meal =>
      planned(W, ill, ...Array.from({ length: meals }, (_, n): Line => fed(`2026-03-0${n + 1}`)));
    expect([0, 1, 2, 3].map((meals) => mealAfter(meals).mealG)).toEqual([
      [30, 60],
      [60, 90],
      [60, 90],
      [60, 120],
    ]);
    expect(mealAfter(0).why[0]).toContain('first after a regurgitation');
    expect(mealAfter(1).why[0]).toContain('number 2 after a regurgitation');
  });
  it('CARE-REGURGITATION: a plan of one fixed item does not make the half meal a whole one', () => {
    const ill: Line = ['2026-03-01', 'regurgitation-seen', {}];
    const half = planned(W, plan({ prey: 'rat-small', count: 1 }), ill);
    expect(half.prey).not.toBe('rat-small');
    expect(about(half)).toBeLessThanOrEqual(60);
    expect(planned(W, plan({ prey: 'rat-pup', count: 2 }), ill)).toMatchObject({ prey: 'rat-pup', count: 1 });
    expect(about(planned(W, plan({ prey: 'rat-medium' }), ill))).toBeLessThanOrEqual(60);
  });
  it('CARE-GRAVID: half a meal while gravid', () => {
    const gravid = planned(W, fed('2026-02-01'), ['2026-03-01', 'ovulation-seen', {}]);
    expect(gravid.mealG).toEqual([30, 60]);
    expect(gravid.why[0]).toContain('gravid');
  });
  it('CARE-LAYING: half a meal after laying, once', () => {
    expect(planned(W, fed('2026-02-01'), laid).mealG).toEqual([30, 60]);
    expect(planned(W, laid, fed('2026-03-19')).mealG).toEqual([60, 120]);
  });
  it('without a weight takes the plan’s prey and count, and asks for a weight', () => {
    const { prey, count, warnings } = planned(plan({ prey: 'rat-small', count: 2 }));
    expect([prey, count, warnings]).toEqual(['rat-small', 2, ['No weight yet: weigh first.']]);
  });
  it('without a weight and a prey has no answer', () => {
    expect(refusal(plannedMeal(rex({}), ON))).toBe('weight-missing');
    expect(refusal(plannedMeal(rex({}, plan({ prey: 'quail', count: 1 })), ON))).toBe('weight-missing');
  });
  it('CARE-REGURGITATION: without a weight the half meal is half the count, and none of one item', () => {
    const ill: Line = ['2026-03-01', 'regurgitation-seen', {}];
    expect(planned(plan({ prey: 'rat-pup', count: 2 }), ill).count).toBe(1);
    expect(refusal(plannedMeal(rex({}, plan({ prey: 'rat-pup', count: 1 }), ill), ON))).toBe('weight-missing');
  });
});
