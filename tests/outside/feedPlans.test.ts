import { describe, expect, it } from 'vitest';
import { bandFor, SPECIES, speciesOf } from '../../src/core/index.ts';

type Row = readonly [belowG: number | null, percent: readonly [number, number], days: readonly [number, number]];

// Common practice, no source: the ranges as the project’s notes collected them. They guard against slips of typing, and
// prove nothing about snakes; only the hatchling corn snake’s upper end has a source, below.
const TABLE: Readonly<Record<string, readonly Row[]>> = {
  'Python regius': [
    [200, [10, 15], [5, 7]],
    [500, [8, 15], [7, 10]],
    [1000, [7, 12], [7, 14]],
    [null, [5, 10], [14, 30]],
  ],
  'Pantherophis guttatus': [
    [30, [15, 40], [5, 7]],
    [150, [10, 20], [7, 8]],
    [null, [5, 10], [10, 21]],
  ],
  'Boa imperator': [
    [300, [7, 12], [10, 14]],
    [2000, [5, 10], [14, 21]],
    [null, [3, 7], [21, 45]],
  ],
  'Heterodon nasicus': [
    [30, [10, 25], [5, 7]],
    [null, [8, 15], [7, 14]],
  ],
  'Morelia spilota': [
    [200, [10, 15], [7, 10]],
    [null, [5, 10], [14, 28]],
  ],
  'Malayopython reticulatus': [
    [1000, [8, 15], [7, 10]],
    [null, [3, 10], [14, 45]],
  ],
  'Xenopeltis unicolor': [[null, [5, 10], [7, 14]]],
};

describe('feed plans (common practice, no source)', () => {
  it('are those of the table and no others', () => {
    expect(SPECIES.map((one) => one.name).sort()).toEqual(Object.keys(TABLE).sort());
  });
  it.each(Object.entries(TABLE))('%s', (name, rows) => {
    const bands = speciesOf(name)?.bands.map((band) => [band.belowG, band.percent, band.everyDays]);
    expect(bands).toEqual(rows);
  });
  it('say of every band where it comes from', () => {
    for (const { bands } of SPECIES)
      for (const { mark, source } of bands) {
        if (mark === 'C') expect(source).toContain('common practice, no source');
        else expect(source).toContain('Penning 2012');
      }
  });
});

describe('Penning 2012: hatchling corn snakes on 20-40 % of their mass grew without a penalty', () => {
  it('that range lies inside the hatchling’s band, and its upper end is ours', () => {
    const corn = speciesOf('Pantherophis guttatus');
    const band = corn && bandFor(corn, 8);
    expect(band?.percent[0]).toBeLessThanOrEqual(20);
    expect(band?.percent[1]).toBe(40);
    expect(band?.mark).toBe('S');
  });
});
