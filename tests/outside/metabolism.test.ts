import { describe, expect, it } from 'vitest';
import { standardMetabolism } from '../../src/core/index.ts';
import { value } from '../core/log.ts';

// Andrews & Pough 1985, equation 2, as quoted in several public texts and programs: VO2 = 0.013 M^0.80 10^(0.038 T), standard.
describe('CARE-METABOLISM: Andrews & Pough 1985, equation 2', () => {
  it.each([
    [100, 30, 7.144],
    [500, 25, 16.7155],
    [1000, 30, 45.0758],
    [2000, 28.5, 68.8283],
  ])('%d g at %d °C: %d mL of oxygen an hour', (massG, tempC, vo2) => {
    expect(value(standardMetabolism(massG, tempC)).vo2MlPerH).toBeCloseTo(vo2, 4);
  });
  it('rises 2.39883 times with ten degrees', () => {
    const at = (tempC: number): number => value(standardMetabolism(850, tempC)).vo2MlPerH;
    expect(at(30) / at(20)).toBeCloseTo(2.39883, 5);
  });
  it('is turned into kJ a day with 20.1 J a mL', () => {
    const { vo2MlPerH, kjPerDay } = value(standardMetabolism(1000, 30));
    expect(kjPerDay / vo2MlPerH).toBeCloseTo((24 * 20.1) / 1000, 9);
    expect(kjPerDay).toBeCloseTo(21.7446, 4);
  });
});
