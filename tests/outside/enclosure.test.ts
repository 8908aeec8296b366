import { describe, expect, it } from 'vitest';
import { enclosureFor } from '../../src/core/index.ts';
import { value } from '../core/log.ts';

const space = (rule: string, species: string, lengthM: number, animals = 1) =>
  value(enclosureFor({ rule, species, lengthM, animals }));

type Row = readonly [lengthM: number, floorM2: number, heightM: number, furtherM2: number];
const LONG = 3.5;

// BGBl. II 486/2004, as reproduced at htvoe.at and reptidoc.at: up to this length, floor for one or two, height, each further one.
describe('CARE-ENCLOSURE: Austria, BGBl. II 486/2004', () => {
  const tables: readonly (readonly [string, readonly Row[]])[] = [
    [
      'ground snake',
      [
        [0.2, 0.1, 0.2, 0.015],
        [0.5, 0.2, 0.3, 0.05],
        [1, 0.5, 0.4, 0.15],
        [1.5, 0.9, 0.6, 0.2],
        [2, 1.2, 0.8, 0.4],
        [LONG, 1.5, 1.2, 0.6],
      ],
    ],
    [
      'climbing snake',
      [
        [0.5, 0.2, 0.4, 0.05],
        [1, 0.5, 0.6, 0.1],
        [1.5, 0.9, 1, 0.2],
        [2, 1.2, 1.5, 0.4],
        [LONG, 1.5, 1.8, 0.6],
      ],
    ],
    [
      'Python regius',
      [
        [0.5, 0.2, 0.4, 0.1],
        [1, 0.5, 0.6, 0.1],
        [1.3, 0.9, 0.7, 0.2],
      ],
    ],
    [
      'Elaphe guttata',
      [
        [0.2, 0.1, 0.2, 0.015],
        [0.5, 0.2, 0.3, 0.05],
        [1, 0.5, 0.4, 0.1],
        [1.3, 0.9, 0.6, 0.2],
      ],
    ],
  ];
  const cases = tables.flatMap(([species, rows]) => rows.map((row) => [species, ...row] as const));
  it.each(cases)('%s of %d m: %d m2, %d m high, %d m2 for each further one', (species, lengthM, floor, high, more) => {
    expect(space('austria', species, lengthM, 1)).toMatchObject({ floorM2: floor, heightM: high });
    expect(space('austria', species, lengthM, 2)).toMatchObject({ floorM2: floor, heightM: high });
    expect(space('austria', species, lengthM, 4)).toHaveProperty('floorM2', Number((floor + 2 * more).toFixed(6)));
  });
  it('three ground snakes of 1.4 m: 1.10 m2', () => {
    expect(space('austria', 'ground snake', 1.4, 3)).toMatchObject({ floorM2: 1.1, heightM: 0.6 });
  });
  it('a grown pair of ball pythons: 0.90 m2 and 0.70 m high', () => {
    expect(space('austria', 'Python regius', 1.3, 2)).toMatchObject({ floorM2: 0.9, heightM: 0.7 });
  });
});

// Expert report of 10 January 1997, as quoted at boa-constrictors.com and mks-reptilien.de; its figures are for two animals.
describe('CARE-ENCLOSURE: Germany, expert report of 10 January 1997', () => {
  it('a boa of 1.60 m: 1.20 x 0.80 x 1.20 m', () => {
    expect(space('germany', 'Boa constrictor', 1.6)).toMatchObject({ lengthM: 1.2, widthM: 0.8, heightM: 1.2 });
  });
  it('a boa of 1.40 m, under 1.5 m: 1.40 x 0.70 x 1.05 m', () => {
    expect(space('germany', 'Boa imperator', 1.4)).toMatchObject({ lengthM: 1.4, widthM: 0.7, heightM: 1.05 });
  });
  it('a ball python of 1.30 m: 1.30 x 0.65 x 0.975 m', () => {
    expect(space('germany', 'Python regius', 1.3)).toMatchObject({ lengthM: 1.3, widthM: 0.65, heightM: 0.975 });
  });
  it('no more than 2 m high', () => {
    expect(space('germany', 'Boa constrictor', 3)).toMatchObject({ lengthM: 2.25, widthM: 1.5, heightM: 2 });
  });
  it('20 % more for each animal above two, read as floor', () => {
    expect(space('germany', 'Python regius', 1.3, 2)).not.toHaveProperty('floorM2');
    expect(space('germany', 'Python regius', 1.3, 4)).toMatchObject({ lengthM: 1.3, floorM2: 1.183 });
  });
});

// Animal Welfare Committee, opinion of 2023, as quoted at thefbh.org: 1.0, 0.6667 and 0.3333 of the length of a ground-dwelling snake.
describe('CARE-ENCLOSURE: England, opinion of 2023', () => {
  it('a snake of 1.5 m: 1.5 x 1.0 x 0.5 m', () => {
    expect(space('england', 'Python regius', 1.5)).toMatchObject({ lengthM: 1.5, widthM: 1, heightM: 0.5 });
  });
});
