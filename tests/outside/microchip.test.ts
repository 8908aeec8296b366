import { describe, expect, it } from 'vitest';
import { readMicrochip } from '../../src/core/index.ts';
import { value } from '../core/log.ts';

const issuerOf = (code: string) => value(readMicrochip(code)).issuer;

describe('numbers of chips as ISO 11784 forms them (as told on web pages; the standard itself was not seen)', () => {
  // animaldata.com, “Mikrochipnummer”: 1 to 899 are countries (ISO 3166), 900 and more are manufacturers; and its examples.
  it.each(['040', '276', '203', '756'])('%s is a country', (first) => {
    expect(issuerOf(`${first}098100111917`)).toBe('country');
  });
  it.each(['972', '968', '985'])('%s is a manufacturer', (first) => {
    expect(issuerOf(`${first}000004531234`)).toBe('manufacturer');
  });
  // ICAR, slides on ISO 11784, 2015: 10 bits of country or manufacturer, 38 bits of number: 274,877,906,944 numbers.
  it('the last twelve digits have 38 bits', () => {
    expect(value(readMicrochip('276274877906943'))).toMatchObject({ form: 'iso', note: null });
    expect(value(readMicrochip('276274877906944'))).toMatchObject({ form: 'other', issuer: null });
  });
  // WSAVA microchip committee: chips of 125 kHz have ten signs, digits or letters, and are no ISO chips.
  it('ten signs are an older chip, taken as they stand', () => {
    expect(value(readMicrochip('4A1B2C3D4E'))).toMatchObject({ code: '4A1B2C3D4E', form: 'other' });
  });
});
