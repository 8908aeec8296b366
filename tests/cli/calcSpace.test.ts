import { beforeAll, describe, expect, it } from 'vitest';
import { type Answers, answersOf, type Row, wrong } from './answers.ts';

const PYTHON = { rule: 'germany', species: 'Python regius', lengthM: 1.3, animals: 1 };
const AUSTRIA = { ...PYTHON, rule: 'austria' };

/** The figures are those of tests/outside/enclosure.test.ts, with their sources. */
const SPACE: readonly Row[] = [
  ['Germany, a ball python', PYTHON, { lengthM: 1.3, widthM: 0.65, heightM: 0.975 }],
  [
    'Germany, a boa',
    { ...PYTHON, species: 'Boa imperator', lengthM: 1.6 },
    { lengthM: 1.2, widthM: 0.8, heightM: 1.2 },
  ],
  ['Austria, three ground snakes', { ...AUSTRIA, species: 'ground snake', lengthM: 1.4, animals: 3 }, { floorM2: 1.1 }],
  ['Austria, a pair of ball pythons', { ...AUSTRIA, animals: 2 }, { floorM2: 0.9, heightM: 0.7 }],
  ['England', { ...PYTHON, rule: 'england', lengthM: 1.5 }, { lengthM: 1.5, widthM: 1, heightM: 0.5 }],
  [
    'a rule that nobody knows',
    { ...PYTHON, rule: 'atlantis' },
    wrong('enclosure-rule-unknown', 'rule', /austria, germany, england/),
  ],
  [
    'a species without figures',
    { ...PYTHON, species: 'Heterodon nasicus' },
    wrong('enclosure-species-unknown', 'species', /Python regius, Boa constrictor.*your local code decides/),
  ],
  ['no rule', { ...PYTHON, rule: undefined }, wrong('case-malformed', 'rule')],
  ['a rule by number', { ...PYTHON, rule: 1997 }, wrong('case-malformed', 'rule')],
  ['no species', { ...PYTHON, species: '' }, wrong('case-malformed', 'species')],
  ['no length', { ...PYTHON, lengthM: undefined }, wrong('case-malformed', 'lengthM')],
  ['a length in words', { ...PYTHON, lengthM: '1.3' }, wrong('case-malformed', 'lengthM')],
  ['a length of NaN', { ...PYTHON, lengthM: null }, wrong('not-finite', 'lengthM')],
  ['a length of 0', { ...PYTHON, lengthM: 0 }, wrong('not-positive', 'lengthM')],
  ['a length below 0', { ...PYTHON, lengthM: -1.3 }, wrong('not-positive', 'lengthM')],
  ['cm given as m', { ...PYTHON, lengthM: 130 }, wrong('length-impossible', 'lengthM', /m, cm or mm/)],
  ['no animals', { ...PYTHON, animals: undefined }, wrong('case-malformed', 'animals')],
  ['animals in words', { ...PYTHON, animals: 'two' }, wrong('case-malformed', 'animals')],
  ['0 animals', { ...PYTHON, animals: 0 }, wrong('not-positive', 'animals')],
  ['half an animal', { ...PYTHON, animals: 1.5 }, wrong('not-whole', 'animals')],
  ['NaN animals', { ...PYTHON, animals: null }, wrong('not-finite', 'animals')],
  ['no object', '3', wrong('case-malformed', '')],
];

const REST = { massG: 1000, tempC: 30 };
const BURNT: readonly Row[] = [
  // Andrews & Pough 1985, equation 2: see tests/outside/metabolism.test.ts.
  ['a kilogram at 30 °C', REST, { vo2MlPerH: expect.closeTo(45.0758, 4), kjPerDay: expect.closeTo(21.7446, 4) }],
  ['no mass', { ...REST, massG: undefined }, wrong('case-malformed', 'massG')],
  ['a mass in words', { ...REST, massG: '1 kg' }, wrong('case-malformed', 'massG')],
  ['a mass of NaN', { ...REST, massG: null }, wrong('not-finite', 'massG')],
  ['a mass of 0', { ...REST, massG: 0 }, wrong('not-positive', 'massG')],
  ['a mass below 0', { ...REST, massG: -5 }, wrong('not-positive', 'massG')],
  ['a mass that no snake has', { ...REST, massG: 1e6 }, wrong('weight-impossible', 'massG')],
  ['no temperature', { ...REST, tempC: undefined }, wrong('case-malformed', 'tempC')],
  ['a temperature in words', { ...REST, tempC: 'warm' }, wrong('case-malformed', 'tempC')],
  ['a temperature of NaN', { ...REST, tempC: null }, wrong('not-finite', 'tempC')],
  ['degrees Fahrenheit', { ...REST, tempC: 86 }, wrong('temperature-impossible', 'tempC', /degrees Celsius/)],
  ['frost', { ...REST, tempC: -1 }, wrong('temperature-impossible', 'tempC')],
];

describe.each([
  ['enclosure', SPACE],
  ['metabolism', BURNT],
] as const)('calc %s', (kind, rows) => {
  let ran: Answers;
  beforeAll(async () => {
    ran = await answersOf(
      kind,
      rows.map(([, given]) => given),
    );
  });

  it('answers every line in order', () => {
    expect([ran.code, ran.answers.length]).toEqual([1, rows.length]);
  });

  it.each(rows.map(([name, , answer], at) => [name, at, answer] as const))('%s', (_name, at, answer) => {
    expect(ran.answers[at]).toMatchObject(answer);
  });

  it('has the fields of the contract and no others', () => {
    const fields = {
      enclosure: [
        ['lengthM', 'widthM', 'heightM', 'source', 'caution'],
        ['floorM2', 'heightM', 'source', 'caution'],
      ],
      metabolism: [['vo2MlPerH', 'kjPerDay']],
    };
    const answers = kind === 'enclosure' ? [ran.answers[0], ran.answers[2]] : [ran.answers[0]];
    expect(answers.map((one) => Object.keys(one as object))).toEqual(fields[kind]);
  });
});
