import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BREEDING, breedingOf, narrowed, type Step, sayWindow, windowOf } from '../../../src/core/index.ts';
import { day } from '../log.ts';

const stepOf = (species: string, to: Step['to']): Step => {
  const found = breedingOf(species)?.steps.find((step) => step.to === to);
  if (found === undefined) throw new Error(`no step to ${to}`);
  return found;
};
const PRE_LAY = stepOf('Python regius', 'laid');

describe('BREED-CALENDAR', () => {
  it('holds the published figures: Ellis & Chappell 1987 and Gorzula 1997, ball pythons', () => {
    const ball = breedingOf('Python regius');
    expect(stepOf('Python regius', 'hatched').days).toEqual([58, 70]);
    expect([ball?.clutch?.range, ball?.clutch?.mean]).toEqual([[4, 15], 8.1]);
    expect(ball?.hatchlingG?.range).toEqual([25, 90]);
  });
  it('names a source for every step, and what has none says so', () => {
    const steps = BREEDING.flatMap((one) => one.steps);
    expect(steps.length).toBeGreaterThan(10);
    for (const { source, mark, days } of steps) {
      expect(source.length).toBeGreaterThan(5);
      expect(mark === 'C').toBe(source.startsWith('common practice, no source'));
      expect(days[0]).toBeLessThan(days[1]);
    }
  });
  it('tells the live-bearers from those that lay', () => {
    expect(breedingOf('Boa imperator')?.bears).toBe('live young');
    expect(breedingOf('Python regius')?.bears).toBe('eggs');
    expect(breedingOf('Lampropeltis getula')).toBeUndefined();
  });
});

describe('BREED-WINDOW', () => {
  it('is the species’ range while the site has no dates', () => {
    expect(narrowed(PRE_LAY, [], [])).toEqual([28, 32]);
  });
  it('stays near the range with one odd date, and follows many', () => {
    expect(narrowed(PRE_LAY, [40], [])[1]).toBeLessThan(42);
    const [low, high] = narrowed(PRE_LAY, Array(40).fill(40), []);
    expect([low >= 36, high <= 43]).toEqual([true, true]);
  });
  it('follows her own dates before those of others', () => {
    const hers = narrowed(PRE_LAY, [28, 28, 28, 28], [34, 34, 34, 34]);
    const others = narrowed(PRE_LAY, [34, 34, 34, 34], [28, 28, 28, 28]);
    expect(hers[0] + hers[1]).toBeGreaterThan(others[0] + others[1]);
  });
  it('leaves dates out that are writing mistakes', () => {
    expect(narrowed(PRE_LAY, [400, -3, 0], [])).toEqual([28, 32]);
  });
  it('says where it comes from', () => {
    const window = windowOf(PRE_LAY, day('2026-03-01'), [29], [30, 31]);
    expect(sayWindow(window)).toMatch(/^usually 28–32 d \(weak\), hers 30, 31, here 1 more date: taken as \d+–\d+ d$/);
    expect(window.from >= day('2026-03-27') && window.to <= day('2026-04-04')).toBe(true);
  });
  it('is in order and within reach of what went into it, for any dates', () => {
    const spans = fc.array(fc.integer({ min: 1, max: 90 }), { maxLength: 12 });
    fc.assert(
      fc.property(spans, spans, (site, hers) => {
        const [low, high] = narrowed(PRE_LAY, site, hers);
        expect(low).toBeGreaterThanOrEqual(1);
        expect(high).toBeGreaterThan(low);
        expect(Number.isInteger(low) && Number.isInteger(high)).toBe(true);
      }),
    );
  });
});
