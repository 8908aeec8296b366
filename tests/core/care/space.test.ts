import { describe, expect, it } from 'vitest';
import {
  ENCLOSURE_CAUTION,
  type EnclosureQuestion,
  enclosureFor,
  METABOLISM_CAUTION,
  PEOPLE_CAUTION,
  PEOPLE_RULE,
  peopleNeeded,
  standardMetabolism,
} from '../../../src/core/index.ts';
import { value } from '../log.ts';

const BASE: EnclosureQuestion = { rule: 'austria', species: 'Python regius', lengthM: 1.3, animals: 1 };
const ask = (more: Partial<EnclosureQuestion>) => enclosureFor({ ...BASE, ...more });

describe('CARE-ENCLOSURE: space to compare with', () => {
  it('says in each answer that the local code decides, and where the figures come from', () => {
    for (const rule of ['austria', 'germany', 'england']) {
      const { source, caution } = value(ask({ rule }));
      expect(caution).toContain('your local code, licence or inspector decides');
      expect(source.toLowerCase()).toContain(rule);
    }
    expect(ENCLOSURE_CAUTION).toContain('For comparison only');
  });
  it.each(['AT', 'Austria 2004', 'at-2004', 'AUSTRIA'])('knows Austria as %s', (rule) => {
    expect(ask({ rule })).toEqual(ask({}));
  });
  it('says when a species was taken as ground-dwelling', () => {
    expect(value(ask({ species: 'Anilius scytale' })).caution).toMatch(/ground-dwelling snakes in general were used/);
    expect(value(ask({ species: 'ground snake' })).caution).toBe(ENCLOSURE_CAUTION);
    expect(value(ask({ species: 'Morelia spilota' })).heightM).toBe(1);
  });
  it('says that the opinion of England is for ground-dwelling snakes, and not of groups', () => {
    expect(value(ask({ rule: 'england', species: 'Morelia spilota' })).caution).toMatch(/needs more height/);
    expect(value(ask({ rule: 'england', animals: 2 })).caution).toMatch(/nothing of several animals/);
  });
  it('keeps a boa of 1.5 m to the longer factor', () => {
    expect(value(ask({ rule: 'germany', species: 'Boa', lengthM: 1.5 }))).toHaveProperty('lengthM', 1.5);
  });
  it.each<readonly [string, Partial<EnclosureQuestion>, string, string]>([
    ['a rule that nobody knows', { rule: 'atlantis' }, 'enclosure-rule-unknown', 'rule'],
    [
      'a species without figures',
      { rule: 'germany', species: 'Heterodon nasicus' },
      'enclosure-species-unknown',
      'species',
    ],
    ['no species', { species: ' ' }, 'text-missing', 'species'],
    ['a length of 0', { lengthM: 0 }, 'not-positive', 'lengthM'],
    ['a length below 0', { lengthM: -1 }, 'not-positive', 'lengthM'],
    ['cm written as m', { lengthM: 130 }, 'length-impossible', 'lengthM'],
    ['a length that is no number', { lengthM: Number.NaN }, 'not-finite', 'lengthM'],
    ['no animals', { animals: 0 }, 'not-positive', 'animals'],
    ['half an animal', { animals: 1.5 }, 'not-whole', 'animals'],
    ['animals without number', { animals: Number.NaN }, 'not-finite', 'animals'],
  ])('is refused for %s', (_name, more, code, path) => {
    expect(ask(more)).toMatchObject({ problem: { code, path } });
  });
});

describe('CARE-PEOPLE: how many open the tub of a large constrictor', () => {
  const people = (lengthM: number): number => value(peopleNeeded(lengthM)).people;
  it('two from 2.4 m, one more for each further 1.2 m', () => {
    expect([0.5, 2.39, 2.4, 3.59, 3.6, 4.8, 6].map(people)).toEqual([1, 1, 2, 2, 3, 4, 5]);
    expect(PEOPLE_RULE).toEqual({ fromM: 2.4, stepM: 1.2 });
  });
  it('by the site’s own rule where there is one', () => {
    expect(value(peopleNeeded(3.9, { fromM: 2.4, stepM: 1.5 })).people).toBe(3);
    expect(peopleNeeded(3, { fromM: 2.4, stepM: 0 })).toMatchObject({ problem: { code: 'not-positive' } });
    expect(peopleNeeded(3, { fromM: Number.NaN, stepM: 1 })).toMatchObject({ problem: { code: 'not-finite' } });
  });
  it('never alone, and the least only', () => {
    expect(PEOPLE_CAUTION).toMatch(/Never open or feed a large constrictor alone/);
    expect(peopleNeeded(30)).toMatchObject({ problem: { code: 'length-impossible' } });
  });
});

describe('CARE-METABOLISM: for display only', () => {
  it('says that it sizes no meal', () => {
    expect(METABOLISM_CAUTION).toMatch(/sizes no meal/);
  });
  it.each([
    [0, 30, 'not-positive', 'massG'],
    [Number.NaN, 30, 'not-finite', 'massG'],
    [1e6, 30, 'weight-impossible', 'massG'],
    [900, Number.NaN, 'not-finite', 'tempC'],
    [900, -1, 'temperature-impossible', 'tempC'],
    [900, 86, 'temperature-impossible', 'tempC'],
  ])('%d g at %d °C is refused: %s', (massG, tempC, code, path) => {
    expect(standardMetabolism(massG, tempC)).toMatchObject({ problem: { code, path } });
  });
});
