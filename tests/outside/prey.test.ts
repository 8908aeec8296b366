import { describe, expect, it } from 'vitest';
import { preyClass } from '../../src/core/index.ts';

const range = (id: string): readonly [number, number] => preyClass(id)?.eachG ?? [0, 0];

describe('a university web chart of mouse weights by age', () => {
  const rows: readonly [string, number, number][] = [
    ['mouse-hopper', 7.0, 12.99],
    ['mouse-weaned', 13.0, 17.99],
  ];
  it.each(rows)('%s: %d-%d g', (id, low, high) => {
    expect(range(id)[0]).toBe(low);
    expect(range(id)[1]).toBeCloseTo(high, 1);
  });
});

describe('laboratory-animal handbook figures of a breeding centre', () => {
  const rows: readonly [string, string, number, number][] = [
    ['mouse pups are born with 1.5-2 g', 'mouse-pinky', 1.5, 2],
    ['adult mice weigh 30-35 g', 'mouse-adult', 30, 35],
    ['rat pups are born with 6-8 g', 'rat-pinky', 6, 8],
    ['rats are weaned with 40-60 g', 'rat-weaned', 40, 60],
  ];
  it.each(rows)('%s, inside %s', (_, id, low, high) => {
    expect(range(id)[0]).toBeLessThanOrEqual(low);
    expect(range(id)[1]).toBeGreaterThanOrEqual(high);
  });
});

describe('Small Animal Clinical Nutrition, 5th edition, table 71-5', () => {
  const rows: readonly [string, number, string][] = [
    ['mouse pup', 1.5, 'mouse-pinky'],
    ['mouse pup', 4, 'mouse-fuzzy'],
    ['adult mouse', 27, 'mouse-adult'],
    ['adult rat', 330, 'rat-jumbo'],
  ];
  it.each(rows)('its %s of %d g is inside our %s', (_, weightG, id) => {
    expect(range(id)[0] <= weightG && weightG <= range(id)[1]).toBe(true);
  });
});

describe('common practice, no source: the other classes', () => {
  const rows: readonly [string, number, number][] = [
    ['mouse-pinky', 1, 3],
    ['mouse-fuzzy', 3, 7],
    ['mouse-adult', 18, 35],
    ['mouse-jumbo', 35, 50],
    ['rat-pinky', 4, 10],
    ['rat-fuzzy', 10, 20],
    ['rat-pup', 20, 35],
    ['rat-weaned', 35, 60],
    ['rat-small', 60, 100],
    ['rat-medium', 100, 175],
    ['rat-large', 175, 275],
    ['rat-jumbo', 275, 450],
  ];
  it.each(rows)('%s: %d-%d g', (id, low, high) => {
    expect(range(id)).toEqual([low, high]);
    expect(preyClass(id)?.mark).toBe('C');
  });
});
