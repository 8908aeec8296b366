import { describe, expect, it } from 'vitest';
import {
  DOSE_CAUTION,
  type DoseAnswer,
  type DoseQuestion,
  doseVolume,
  drawUp,
  isYoung,
  markOf,
  type Result,
  roundToMark,
  sayMl,
  tenfoldFault,
  type WrittenQuestion,
  wayOf,
  weightFault,
  writtenVolume,
} from '../../../src/core/index.ts';
import { day, value } from '../log.ts';

const ON = day('2026-11-25');
/** 900 g at 5 mg/kg and 10 mg/mL: 0.45 mL. */
const BASE: DoseQuestion = {
  massG: 900,
  massDate: day('2026-11-20'),
  on: ON,
  dose: { mgPerKg: 5 },
  strength: { mgPerMl: 10 },
  route: 'im',
};
const dose = (more: Partial<DoseQuestion> = {}): DoseAnswer => value(doseVolume({ ...BASE, ...more }));
const refusal = (more: Partial<DoseQuestion>) => said(doseVolume({ ...BASE, ...more }));
const said = (result: Result<unknown>): readonly (string | undefined)[] =>
  result.ok ? ['answered'] : [result.problem.code, result.problem.path];
const says = (words: RegExp) => expect.arrayContaining([expect.stringMatching(words)]);

describe('CARE-DOSE: the volume of a written dose', () => {
  it('is mass times dose by strength, rounded once', () => {
    expect(dose()).toEqual({
      exactMl: 0.45,
      ml: 0.45,
      syringeMl: 1,
      markMl: 0.01,
      differencePercent: 0,
      warnings: [],
      caution: DOSE_CAUTION,
    });
  });
  it('is the same in each unit of mass', () => {
    expect(dose({ massG: undefined, massKg: 0.9 })).toEqual(dose());
    expect(dose({ massG: undefined, massLb: 2 }).exactMl).toBe(0.45359237);
  });
  it('says that it proposes nothing and that the vet is to be called', () => {
    expect(DOSE_CAUTION).toMatch(/proposes no drug and no dose/);
    expect(DOSE_CAUTION).toMatch(/stop and call the vet/);
  });
  const { NaN: nan, POSITIVE_INFINITY: endless } = Number;
  it.each<readonly [string, Partial<DoseQuestion>, string, string | undefined]>([
    ['no mass', { massG: undefined }, 'unit-missing', 'mass'],
    ['two masses', { massKg: 0.9 }, 'one-unit-only', 'mass'],
    ['a mass that is no number', { massG: nan }, 'not-finite', 'massG'],
    ['an endless mass', { massG: endless }, 'not-finite', 'massG'],
    ['a mass of 0', { massG: 0 }, 'not-positive', 'massG'],
    ['a mass below 0', { massG: -900 }, 'not-positive', 'massG'],
    ['grams written as kg', { massG: undefined, massKg: 900 }, 'weight-impossible', 'massKg'],
    ['kg written as grams', { massG: 0.09 }, 'weight-impossible', 'massG'],
    ['a dose of 0', { dose: { mgPerKg: 0 } }, 'not-positive', 'dose.mgPerKg'],
    ['a dose below 0', { dose: { mgPerKg: -5 } }, 'not-positive', 'dose.mgPerKg'],
    ['a dose that is no number', { dose: { mgPerKg: nan } }, 'not-finite', 'dose.mgPerKg'],
    ['a strength without unit', { strength: {} }, 'unit-missing', 'strength'],
    ['two strengths', { strength: { mgPerMl: 10, percentWv: 1 } }, 'one-unit-only', 'strength'],
    ['a strength of 0', { strength: { mgPerMl: 0 } }, 'not-positive', 'strength.mgPerMl'],
    ['an endless strength', { strength: { percentWv: endless } }, 'not-finite', 'strength.percentWv'],
    ['more drug than bottle', { strength: { percentWv: 101 } }, 'strength-impossible', 'strength.percentWv'],
    ['a weight of tomorrow', { massDate: day('2026-11-26') }, 'date-future', 'massDate'],
    ['a doubted weight', { flagged: true }, 'weight-flagged', 'flagged'],
    ['no route', { route: ' ' }, 'text-missing', 'route'],
    ['a cap of 0', { capPercent: 0 }, 'not-positive', 'capPercent'],
    ['a cap that is no number', { capPercent: nan }, 'not-finite', 'capPercent'],
    ['no syringe', { syringesMl: [] }, 'syringe-missing', 'syringesMl'],
    ['a syringe of 0', { syringesMl: [1, 0] }, 'not-positive', 'syringesMl.1'],
    ['a syringe that is no number', { syringesMl: [nan] }, 'not-finite', 'syringesMl.0'],
    ['a syringe of unknown marks', { syringesMl: [1, 2] }, 'syringe-unknown', 'syringesMl.1'],
    ['a dose that no number holds', { dose: { mgPerKg: 1e308 }, strength: { mgPerMl: 1e-9 } }, 'not-finite', undefined],
    ['a dose too small to see', { dose: { mgPerKg: 1e-320 } }, 'rounding-too-coarse', undefined],
  ])('is refused for %s', (_name, more, code, path) => {
    expect(refusal(more)).toEqual([code, path]);
  });
  it('names both fields when the mass is given twice', () => {
    const twice = doseVolume({ ...BASE, massKg: 0.9 });
    expect(twice).toMatchObject({ problem: { message: 'The mass is given more than once: massKg, massG.' } });
  });
});

describe('CARE-RECENT: the weight behind a dose is at most 7 days old for young animals, 30 for adults', () => {
  const weighed = (massDate: string, young?: boolean) => dose({ massDate: day(massDate), young });
  it('takes the last day of each and refuses the day before', () => {
    expect(weighed('2026-11-18', true).warnings).toEqual([]);
    expect(refusal({ massDate: day('2026-11-17'), young: true })).toEqual(['weight-too-old', 'massDate']);
    expect(weighed('2026-10-26', false).warnings).toEqual([]);
    expect(refusal({ massDate: day('2026-10-25'), young: false })).toEqual(['weight-too-old', 'massDate']);
  });
  it('warns when nobody said whether the animal is young and it matters', () => {
    expect(weighed('2026-11-18').warnings).toEqual([]);
    expect(weighed('2026-11-17').warnings).toEqual(says(/8 days old.*young animal/));
    expect(refusal({ massDate: day('2026-10-25') })).toEqual(['weight-too-old', 'massDate']);
  });
  it('knows who is young where the species is known', () => {
    expect([isYoung('Python regius', 999), isYoung('Python regius', 1000)]).toEqual([true, false]);
    expect(isYoung('Anilius scytale', 100)).toBeUndefined();
  });
  it('says that a doubted weight is to be taken again', () => {
    const fault = weightFault({ massDate: ON, flagged: true }, { on: ON });
    expect(fault?.remedy).toContain('Weigh again');
  });
});

describe('CARE-MARK: one rounding, to the mark of the smallest syringe that holds the volume', () => {
  it.each([
    [0.45, 1, 0.45],
    [1, 1, 1],
    [1.004, 3, 1],
    [2.26, 3, 2.3],
    [3.1, 5, 3.2],
    [9.9, 10, 10],
    [10.4, 20, 10],
    [25, 30, 25],
  ])('%d mL goes into the %d mL syringe as %d', (exactMl, syringeMl, ml) => {
    expect(value(drawUp(exactMl))).toMatchObject({ syringeMl, ml });
  });
  it('rounds the middle up, whatever binary arithmetic makes of it', () => {
    expect([0.175, 1.005, 0.285].map((ml) => roundToMark(ml, 0.01))).toEqual([0.18, 1.01, 0.29]);
    expect([2.25, 4.35].map((ml) => roundToMark(ml, 0.1))).toEqual([2.3, 4.4]);
    expect([3.1, 3.3, 4.5].map((ml) => roundToMark(ml, 0.2))).toEqual([3.2, 3.4, 4.6]);
    expect(dose({ massKg: 0.7, massG: undefined, strength: { mgPerMl: 20 } }).ml).toBe(0.18);
  });
  it('takes a change of up to 5 % and refuses more', () => {
    expect(value(drawUp(10.5, [20])).differencePercent).toBe(4.7619);
    expect(value(drawUp(0.094)).differencePercent).toBe(-4.2553);
    expect(said(drawUp(9.5, [20]))).toEqual(['rounding-too-coarse', undefined]);
    expect(said(drawUp(0.095))).toEqual(['rounding-too-coarse', undefined]);
  });
  it('says under the exact volume as a minus', () => {
    expect(value(drawUp(2.04, [3])).differencePercent).toBe(-1.9608);
  });
  it('never takes a larger syringe than need be, and refuses when none is large enough', () => {
    expect(value(drawUp(0.5, [10, 1, 3])).syringeMl).toBe(1);
    expect(said(drawUp(3.2, [1, 3]))).toEqual(['syringe-too-small', 'syringesMl']);
  });
  it('knows the larger syringes of whole mL by their mark of 1', () => {
    expect([20, 50, 60, 200].map((size) => value(markOf(size)))).toEqual([1, 1, 1, 1]);
    expect([0.5, 2, 12.5, 201].map((size) => said(markOf(size))[0])).toEqual(Array(4).fill('syringe-unknown'));
  });
  it.each([
    [0.5, '0.5 mL'],
    [5, '5 mL'],
    [0.05, '0.05 mL'],
    [1234.5, '1234.5 mL'],
    [0, '0 mL'],
    [4.5359237, '4.5359 mL'],
    [0.00001, 'less than 0.0001 mL'],
    [1e-300, 'less than 0.0001 mL'],
    [Number.NaN, 'no volume'],
  ])('writes %d as %s', (ml, words) => {
    expect(sayMl(ml)).toBe(words);
  });
});

describe('CARE-CAP: at most 2 % of body mass at once into the stomach', () => {
  /** 10 mL/kg for each mg/kg: 20 mg/kg are 2 %. */
  const fed = (mgPerKg: number, more: Partial<DoseQuestion> = {}) =>
    doseVolume({ ...BASE, massG: 500, dose: { mgPerKg }, strength: { mgPerMl: 1 }, route: 'gavage', ...more });
  it('takes 2 % and refuses more', () => {
    expect(value(fed(20))).toMatchObject({ ml: 10, warnings: [] });
    expect(said(fed(20.1))).toEqual(['over-cap', undefined]);
  });
  it('refuses what only rounding brings over the cap', () => {
    expect(said(fed(20, { massG: 495 }))).toEqual(['over-cap', undefined]);
  });
  it('goes by the site’s lower cap for any route', () => {
    expect(said(fed(20, { capPercent: 1 }))).toEqual(['over-cap', undefined]);
    expect(said(fed(20, { capPercent: 1, route: 'sc' }))).toEqual(['over-cap', undefined]);
  });
  it('takes a higher cap with a warning, but never above 5 %', () => {
    expect(value(fed(28, { capPercent: 3 })).warnings).toEqual(
      says(/3 % and not 2 %: only with the volume that the vet/),
    );
    expect(said(fed(60, { capPercent: 10 }))).toEqual(['over-cap', undefined]);
    expect(value(fed(28, { capPercent: 10 })).warnings).toEqual(says(/held at 5 %/));
  });
  it('warns of a large volume by another way, and refuses above 5 %', () => {
    expect(value(fed(24, { route: 's.c.' })).warnings).toEqual(says(/2.4 % of the body mass: ask the vet/));
    expect(said(fed(52, { route: 'sc' }))).toEqual(['over-cap', undefined]);
  });
  it('counts a route that it does not know as one into the stomach, and says so', () => {
    expect(value(fed(10, { route: 'per telephone' })).warnings).toEqual(says(/“per telephone” is not known here/));
    expect(said(fed(24, { route: 'per telephone' }))).toEqual(['over-cap', undefined]);
  });
  it('reads routes in capitals, with dots and hyphens', () => {
    expect(['P.O.', 'Stomach-tube', ' oral ', 'I.M.', 'SubQ', 'knee'].map(wayOf)).toEqual([
      ...Array(3).fill('stomach'),
      ...Array(2).fill('other'),
      'unknown',
    ]);
  });
});

describe('CARE-WRITTEN: a volume that the vet wrote is drawn up as written', () => {
  const weight = { massG: 500, massDate: ON };
  const asked = (more: Partial<WrittenQuestion>) =>
    writtenVolume({ ml: 0.45, on: ON, young: false, weight, route: 'gavage', ...more });
  it('is not worked out from the weight', () => {
    expect(value(asked({}))).toEqual(value(asked({ weight: { massG: 700, massDate: ON } })));
    expect(value(asked({}))).toMatchObject({ exactMl: 0.45, ml: 0.45, warnings: [], caution: DOSE_CAUTION });
  });
  it('may be more than 2 % of body mass, with a warning, but not more than 5 %', () => {
    expect(value(asked({ ml: 20 })).warnings).toEqual(says(/More than 2 % of 500 g: ask the vet/));
    expect(said(asked({ ml: 26 }))).toEqual(['over-cap', undefined]);
  });
  it.each<readonly [string, Partial<WrittenQuestion>, RegExp]>([
    ['no weight', { weight: null }, /no weight to hold/],
    ['an old weight', { weight: { ...weight, massDate: day('2026-09-01') } }, /85 days old/],
    ['a doubted weight', { weight: { ...weight, flagged: true } }, /asked about/],
  ])('warns of %s', (_name, more, words) => {
    expect(value(asked(more)).warnings).toEqual(says(words));
  });
  it.each<readonly [string, Partial<WrittenQuestion>, string]>([
    ['nothing', { ml: 0 }, 'not-positive'],
    ['less than nothing', { ml: -1 }, 'not-positive'],
    ['no number', { ml: Number.NaN }, 'not-finite'],
    ['too little for the syringe', { ml: 0.25, syringesMl: [5] }, 'rounding-too-coarse'],
    ['a weight of two units', { weight: { ...weight, massKg: 0.5 } }, 'one-unit-only'],
    ['no route', { route: '' }, 'text-missing'],
  ])('is refused for %s', (_name, more, code) => {
    expect(said(asked(more))[0]).toBe(code);
  });
});

describe('CARE-TENFOLD: a dose is held against the earlier ones of its prescription', () => {
  const found = (ml: number, earlier: readonly number[]) => tenfoldFault(ml, earlier)?.code ?? null;
  it('passes the first dose, and one that follows the weight', () => {
    expect([found(0.5, []), found(0.5, [0.5]), found(0.55, [0.45, 0.5])]).toEqual([null, null, null]);
    expect(found(2.4, [0.5])).toBeNull();
  });
  it('stops at ten times more and ten times less', () => {
    expect(tenfoldFault(5, [0.5, 0.5])).toMatchObject({
      code: 'dose-tenfold',
      message: '5 mL is 10 times what was given before on this prescription (0.5 mL).',
    });
    expect(tenfoldFault(0.05, [0.5])?.message).toContain('0.05 mL is 1/10 of what was given before');
    expect([found(2.5, [0.5]), found(0.1, [0.5])]).toEqual(['dose-tenfold', 'dose-tenfold']);
  });
  it('is not misled by one earlier slip', () => {
    expect(found(5, [0.5, 5, 0.5])).toBe('dose-tenfold');
    expect(found(0.5, [0.5, 5, 0.5])).toBeNull();
  });
  it('refuses figures that are none', () => {
    expect([found(Number.NaN, [1]), found(1, [Number.NaN]), found(0, []), found(1, [0])]).toEqual([
      ...['not-finite', 'not-finite'],
      ...['not-positive', 'not-positive'],
    ]);
  });
});
