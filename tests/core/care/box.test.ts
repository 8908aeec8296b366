import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Action, type Decision, decide, lessBox, sayLessBox } from '../../../src/core/index.ts';
import { day, refusal, rex, value, weighed } from '../log.ts';

const NOW = { day: day('2026-11-25'), today: day('2026-11-25'), nowMs: Date.UTC(2026, 10, 25, 9) };
const weigh = (weightG: number, boxG: number): Decision => {
  const action: Action = { do: 'weighed', weightG, boxG };
  return decide(rex({}, weighed('2026-11-01', 850)), action, NOW);
};

describe('the box that an animal is weighed in', () => {
  it('comes off what the scale shows, and both figures are said', () => {
    expect(weigh(970.5, 120)).toMatchObject({
      kind: 'accepted',
      said: 'weighed 850.5 g (970.5 g less the box of 120 g)',
      drafts: [{ kind: 'animal-weighed', payload: { weightG: 850.5 } }],
    });
  });
  it('is asked about like any weight, by what is left', () => {
    expect(weigh(1970, 120)).toMatchObject({
      kind: 'asks',
      problem: { code: 'weight-unlikely' },
      drafts: [{ payload: { weightG: 1850 } }],
    });
    expect(weigh(400, 120)).toMatchObject({ kind: 'asks', problem: { code: 'weight-unlikely' } });
  });
  it.each([
    [120, 120, 'box-heavier'],
    [100, 120, 'box-heavier'],
    [120.2, 120, 'weight-impossible'],
    [0, 120, 'not-positive'],
    [Number.NaN, 120, 'not-finite'],
    [500_000, 120, 'weight-impossible'],
  ])('%d g less %d g is refused: %s', (shownG, boxG, code) => {
    expect(refusal(lessBox(shownG, boxG))).toBe(code);
  });
  it('adds up to what the scale shows, for every weight and box', () => {
    const cents = fc.integer({ min: 50, max: 5_000_000 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(cents, cents, (netG, boxG) => {
        expect(value(lessBox(netG + boxG, boxG))).toBeCloseTo(netG, 2);
        expect(sayLessBox(netG + boxG, boxG)).toMatch(/^[\d.,]+ g \([\d.,]+ g less the box of [\d.,]+ g\)$/);
      }),
    );
    expect(value(lessBox(850.5, null))).toBe(850.5);
  });
});
