import { beforeAll, describe, expect, it } from 'vitest';
import { type Answers, answersOf, type Row, wrong } from './answers.ts';

const BASE = {
  massG: 900,
  massDate: '2026-11-20',
  on: '2026-11-25',
  dose: { mgPerKg: 5 },
  strength: { mgPerMl: 10 },
  route: 'im',
};
const says = (words: RegExp) => expect.arrayContaining([expect.stringMatching(words)]);
const without = (field: keyof typeof BASE, more: object = {}): object => ({ ...BASE, [field]: undefined, ...more });
/** 500 g at 20 mg/kg and 1 mg/mL are 10 mL, 2 % of it. */
const FED = { ...BASE, massG: 500, dose: { mgPerKg: 20 }, strength: { mgPerMl: 1 }, route: 'gavage' };
const fed = (mgPerKg: number, more: object = {}): object => ({ ...FED, dose: { mgPerKg }, ...more });

/** 1000 g at so many mg/kg and mg/mL, with these syringes. */
const fine = (mgPerKg: number, mgPerMl: number, syringesMl: readonly number[]): object => ({
  ...{ ...BASE, massG: 1000, dose: { mgPerKg }, strength: { mgPerMl }, syringesMl },
});

const ROWS: readonly Row[] = [
  [
    'a volume with its syringe',
    BASE,
    { exactMl: 0.45, ml: 0.45, syringeMl: 1, markMl: 0.01, differencePercent: 0, warnings: [] },
  ],
  ['kilograms', without('massG', { massKg: 0.9 }), { exactMl: 0.45 }],
  // bestvetaustin.com, “Medical math for fun”: 20 lb at 5 mg/kg of 10 mg/mL, and 15 lb at 1 mg/kg of 1 %.
  [
    'pounds',
    without('massG', { massLb: 20 }),
    { exactMl: 4.5359237, ml: 4.6, syringeMl: 5, markMl: 0.2, differencePercent: 1.4126 },
  ],
  [
    'percent',
    without('massG', { massLb: 15, dose: { mgPerKg: 1 }, strength: { percentWv: 1 } }),
    { exactMl: 0.680388555, ml: 0.68, syringeMl: 1, differencePercent: -0.0571 },
  ],
  ['a cap as given', fed(28, { capPercent: 3 }), { ml: 14, warnings: says(/only with the volume that the vet wrote/) }],
  ['the cap itself', FED, { ml: 10, syringeMl: 10, warnings: [] }],
  ['syringes as given', { ...BASE, syringesMl: [3, 5], dose: { mgPerKg: 10 } }, { ml: 0.9, syringeMl: 3, markMl: 0.1 }],
  ['a large syringe', { ...BASE, massG: 5000, dose: { mgPerKg: 40 } }, { ml: 20, syringeMl: 20, markMl: 1 }],
  ['an adult’s weight of 30 days', { ...BASE, massDate: '2026-10-26', young: false }, { ml: 0.45, warnings: [] }],
  [
    'a weight of 30 days of nobody knows whom',
    { ...BASE, massDate: '2026-10-26' },
    { warnings: says(/30 days old.*young animal/) },
  ],
  ['what is not known is passed over', { ...BASE, note: 'left side' }, { ml: 0.45 }],
  [
    'an old weight',
    { ...BASE, massDate: '2026-10-25' },
    wrong('weight-too-old', 'massDate', /31 days old.*at most 30/),
  ],
  [
    'an old weight of a young one',
    { ...BASE, massDate: '2026-11-17', young: true },
    wrong('weight-too-old', 'massDate', /8 days old.*young animal.*at most 7/),
  ],
  ['a doubted weight', { ...BASE, flagged: true }, wrong('weight-flagged', 'flagged')],
  ['a weight of tomorrow', { ...BASE, massDate: '2026-11-26' }, wrong('date-future', 'massDate')],
  ['no mass', without('massG'), wrong('unit-missing', 'mass')],
  ['a mass without unit', without('massG', { mass: 900 }), wrong('unit-missing', 'mass', /massG 850, massKg 0.85/)],
  ['two masses', { ...BASE, massKg: 0.9 }, wrong('one-unit-only', 'mass', /massKg, massG/)],
  ['two masses, one of them empty', { ...BASE, massKg: null }, wrong('one-unit-only', 'mass')],
  ['a mass of NaN, which JSON writes as null', { ...BASE, massG: null }, wrong('not-finite', 'massG')],
  ['a mass in words', { ...BASE, massG: '900' }, wrong('case-malformed', 'massG', /a number is wanted/)],
  ['a mass of 0', { ...BASE, massG: 0 }, wrong('not-positive', 'massG')],
  ['a mass below 0', without('massG', { massKg: -0.9 }), wrong('not-positive', 'massKg')],
  ['grams given as kg', without('massG', { massKg: 900 }), wrong('weight-impossible', 'massKg')],
  ['an endless mass', JSON.stringify(BASE).replace('900', '1e999'), wrong('not-finite', 'massG')],
  ['no dose', without('dose'), wrong('unit-missing', 'dose', /\{"mgPerKg": 5\}/)],
  ['a dose without unit', { ...BASE, dose: 5 }, wrong('unit-missing', 'dose', /“5” has no unit/)],
  ['a dose with another unit', { ...BASE, dose: { mgPerLb: 5 } }, wrong('unit-missing', 'dose')],
  ['an empty dose', { ...BASE, dose: {} }, wrong('unit-missing', 'dose')],
  ['a dose that says more', { ...BASE, dose: { mgPerKg: 5, mostMg: 2 } }, wrong('case-malformed', 'dose.mostMg')],
  ['a dose in words', { ...BASE, dose: '5 mg/kg' }, wrong('case-malformed', 'dose')],
  ['a figure in words', { ...BASE, dose: { mgPerKg: '5' } }, wrong('case-malformed', 'dose.mgPerKg')],
  ['a dose of 0', { ...BASE, dose: { mgPerKg: 0 } }, wrong('not-positive', 'dose.mgPerKg')],
  ['a dose below 0', { ...BASE, dose: { mgPerKg: -5 } }, wrong('not-positive', 'dose.mgPerKg')],
  ['a dose of NaN', { ...BASE, dose: { mgPerKg: null } }, wrong('not-finite', 'dose.mgPerKg')],
  ['no strength', without('strength'), wrong('unit-missing', 'strength', /mgPerMl.*percentWv/)],
  ['a strength without unit', { ...BASE, strength: 10 }, wrong('unit-missing', 'strength')],
  ['a strength with another unit', { ...BASE, strength: { mgPerTablet: 10 } }, wrong('unit-missing', 'strength')],
  ['a list for a strength', { ...BASE, strength: [10] }, wrong('case-malformed', 'strength')],
  ['two strengths', { ...BASE, strength: { mgPerMl: 10, percentWv: 1 } }, wrong('one-unit-only', 'strength')],
  ['a strength of 0', { ...BASE, strength: { percentWv: 0 } }, wrong('not-positive', 'strength.percentWv')],
  ['a strength of NaN', { ...BASE, strength: { mgPerMl: null } }, wrong('not-finite', 'strength.mgPerMl')],
  [
    'more drug than bottle',
    { ...BASE, strength: { percentWv: 250 } },
    wrong('strength-impossible', 'strength.percentWv'),
  ],
  ['over the cap', fed(20.4), wrong('over-cap', '', /10.2 mL is 2.04 % of the body mass.*call the vet/)],
  ['over the cap by mouth', fed(20.4, { route: 'p.o.' }), wrong('over-cap', '')],
  ['over a cap as given', { ...FED, capPercent: 1.5 }, wrong('over-cap', '')],
  ['over all caps', fed(60, { capPercent: 50 }), wrong('over-cap', '', /cap of 5 %/)],
  ['a cap of 0', { ...FED, capPercent: 0 }, wrong('not-positive', 'capPercent')],
  ['a cap below 0', { ...FED, capPercent: -2 }, wrong('not-positive', 'capPercent')],
  ['a cap of NaN', { ...FED, capPercent: null }, wrong('not-finite', 'capPercent')],
  ['a cap in words', { ...FED, capPercent: '2 %' }, wrong('case-malformed', 'capPercent')],
  [
    'between two marks',
    { ...BASE, syringesMl: [5] },
    wrong(
      'rounding-too-coarse',
      '',
      /0.45 mL cannot be drawn up with the 5 mL syringe: its mark is 0.2 mL, .* 11.1 % off/,
    ),
  ],
  ['too little to see', { ...BASE, dose: { mgPerKg: 0.01 } }, wrong('rounding-too-coarse', '', /100 % off/)],
  [
    'a syringe of unknown marks',
    { ...BASE, syringesMl: [1, 2] },
    wrong('syringe-unknown', 'syringesMl.1', /2 mL syringe/),
  ],
  ['a syringe of 0', { ...BASE, syringesMl: [0] }, wrong('not-positive', 'syringesMl.0')],
  ['a syringe of NaN', { ...BASE, syringesMl: [null] }, wrong('not-finite', 'syringesMl.0')],
  ['a syringe in words', { ...BASE, syringesMl: ['1 mL'] }, wrong('case-malformed', 'syringesMl.0')],
  ['one syringe and no list', { ...BASE, syringesMl: 1 }, wrong('case-malformed', 'syringesMl')],
  ['no syringe', { ...BASE, syringesMl: [] }, wrong('syringe-missing', 'syringesMl')],
  [
    'no syringe that is large enough',
    { ...FED, syringesMl: [1, 3] },
    wrong('syringe-too-small', 'syringesMl', /10 mL/),
  ],
  ['5 % off to a hair, below', fine(180, 19, [20]), { ml: 9, differencePercent: -5 }],
  ['5 % off to a hair, above', fine(40, 21, [5]), { ml: 2, differencePercent: 5 }],
  ['a hair more than 5 % off', fine(180.001, 19, [10, 20]), { ml: 9.4, syringeMl: 10 }],
  [
    'a hair more than 5 % off and no finer syringe',
    fine(180.1, 19, [20]),
    wrong('rounding-too-coarse', '', /5.1 % off/),
  ],
  ['what only rounding brings over the cap', fed(20, { massG: 498.95 }), wrong('over-cap', '', /2\.004 %.*cap of 2 %/)],
  [
    'ten times the dose before',
    { ...BASE, earlierMl: [0.045] },
    wrong('dose-tenfold', 'earlierMl', /10 times.*Stop\./),
  ],
  ['a tenth of the doses before', { ...BASE, earlierMl: [4.5, 4.4] }, wrong('dose-tenfold', 'earlierMl')],
  ['much as before', { ...BASE, earlierMl: [0.4, 0.43] }, { ml: 0.45 }],
  ['an earlier dose of NaN', { ...BASE, earlierMl: [null] }, wrong('not-finite', 'earlierMl')],
  ['an earlier dose below 0', { ...BASE, earlierMl: [-0.4] }, wrong('not-positive', 'earlierMl')],
  ['earlier doses in words', { ...BASE, earlierMl: ['0.4 mL'] }, wrong('case-malformed', 'earlierMl.0')],
  ['a mass beyond all numbers', without('massG', { massLb: 1e308 }), wrong('not-finite', 'massLb')],
  ['a mass beyond all snakes', without('massG', { massLb: 400 }), wrong('weight-impossible', 'massLb')],
  ['a dose beyond all numbers', { ...BASE, dose: { mgPerKg: 1e308 } }, wrong('not-finite', '')],
  [
    'a strength beyond all drugs',
    { ...BASE, strength: { mgPerMl: 1e308 } },
    wrong('strength-impossible', 'strength.mgPerMl'),
  ],
  ['the smallest dose of all', { ...BASE, dose: { mgPerKg: 5e-324 } }, wrong('rounding-too-coarse', '')],
  [
    'two strengths that say the same',
    { ...BASE, strength: { mgPerMl: 10, percentWv: 1 } },
    wrong('one-unit-only', 'strength'),
  ],
  [
    'an endless cap',
    JSON.stringify(BASE).replace('"route"', '"capPercent":1e999,"route"'),
    wrong('not-finite', 'capPercent'),
  ],
  [
    'the last day of a young one’s weight',
    { ...BASE, massDate: '2026-11-18', young: true },
    { ml: 0.45, warnings: [] },
  ],
  ['no route', without('route'), wrong('case-malformed', 'route')],
  ['an empty route', { ...BASE, route: '' }, wrong('case-malformed', 'route')],
  ['a route of blanks', { ...BASE, route: '  ' }, wrong('text-missing', 'route')],
  ['young or not in words', { ...BASE, young: 'yes' }, wrong('case-malformed', 'young')],
  ['a date of another country', { ...BASE, massDate: '20.11.2026' }, wrong('date-malformed', 'massDate')],
  ['a day that is not', { ...BASE, on: '2026-02-29' }, wrong('date-malformed', 'on')],
  ['no date of the weight', without('massDate'), wrong('case-malformed', 'massDate')],
  ['no day', without('on'), wrong('case-malformed', 'on')],
  ['a list', [BASE], wrong('case-malformed', '')],
  ['nothing', 'null', wrong('case-malformed', '')],
];

describe('calc dose', () => {
  let ran: Answers;
  beforeAll(async () => {
    ran = await answersOf(
      'dose',
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
    const fields = ['exactMl', 'ml', 'syringeMl', 'markMl', 'differencePercent', 'warnings', 'caution'];
    expect(Object.keys(ran.answers[0] as object)).toEqual(fields);
  });

  it('says in every answer that the vet wrote the dose, and proposes none', () => {
    const cautions = ran.answers.flatMap((one) => (one as { caution?: string }).caution ?? []);
    expect(cautions.length).toBeGreaterThanOrEqual(10);
    for (const caution of cautions)
      expect(caution).toMatch(/proposes no drug and no dose.*the vet wrote.*call the vet/);
  });
});
