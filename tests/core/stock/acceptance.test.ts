import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ACCEPTANCE,
  ACCEPTANCE_OFFERS,
  type AnimalRecord,
  acceptanceOf,
  eaterKind,
  IN_SEASON_DAYS,
  OFFER_OUTCOMES,
} from '../../../src/core/index.ts';
import { DAM, day, fed, type Line, REX, refused, rex, weighed } from '../log.ts';

const ON = day('2026-03-02');
const paired: Line = ['2026-02-20', 'pairing-started', {}, { subjects: [DAM, REX] }];
const chance = (animal: AnimalRecord): number => Number(acceptanceOf(animal, ON).chance.toFixed(6));

describe('CARE-ACCEPTANCE: what an animal takes', () => {
  it.each<[string, AnimalRecord, string, number]>([
    ['a ball python under 1000 g', rex({}, weighed('2026-02-01', 999)), 'grower', 0.925],
    ['one of 1000 g', rex({}, weighed('2026-02-01', 1000)), 'adult', 0.85],
    ['one without a weight', rex({}), 'adult', 0.85],
    ['a species that is not known', rex({ species: 'Lampropeltis getula' }, weighed('2026-02-01', 20)), 'adult', 0.85],
    ['a paired male', rex({ sex: 'male' }, weighed('2026-02-01', 1200), paired), 'breeding male', 0.55],
  ])('begins with the middle of its kind: %s', (_, animal, kind, start) => {
    expect([acceptanceOf(animal, ON).kind, chance(animal)]).toEqual([kind, start]);
  });
  it('has a male in season so long after a pairing or a lock, and never a female', () => {
    const male = rex({ sex: 'male' }, paired);
    expect(
      [day('2026-02-19'), day('2026-02-20'), day('2026-03-22'), day('2026-03-23')].map((on) => eaterKind(male, on)),
    ).toEqual(['adult', 'breeding male', 'breeding male', 'adult']);
    expect(IN_SEASON_DAYS).toBe(30);
    expect(eaterKind(rex({ sex: 'female' }, ['2026-02-20', 'lock-seen', {}]), ON)).toBe('adult');
  });
  it('counts each own offer as one, and the start as eight', () => {
    const animal = rex({}, weighed('2026-01-01', 1200), fed('2026-01-10'), refused('2026-01-30'), fed('2026-02-09'));
    expect(acceptanceOf(animal, ON)).toMatchObject({ offers: 3, taken: 2 });
    expect(chance(animal)).toBe(Number(((8 * 0.85 + 2) / 11).toFixed(6)));
    expect(ACCEPTANCE_OFFERS).toBe(8);
  });
  it('leaves out offers of the other season, and those of later days', () => {
    const lines = [fed('2026-01-10'), refused('2026-02-22'), refused('2026-02-27'), refused('2026-03-05')];
    const male = rex({ sex: 'male' }, weighed('2026-01-01', 1200), ...lines, paired);
    expect(acceptanceOf(male, ON)).toMatchObject({ kind: 'breeding male', offers: 2, taken: 0 });
    expect(acceptanceOf(male, day('2026-01-31'))).toMatchObject({ kind: 'adult', offers: 1, taken: 1 });
  });
  it('is never 0 or 1, and lies between the start and what the log says', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...OFFER_OUTCOMES), { maxLength: 40 }), (outcomes) => {
        const offers = outcomes.map(
          (outcome, n): Line => [
            `2026-01-${String(1 + (n % 28)).padStart(2, '0')}`,
            'prey-offered',
            { prey: 'rat-pup', count: 1, outcome },
          ],
        );
        const found = acceptanceOf(rex({}, weighed('2026-01-01', 1200), ...offers), ON);
        expect(found.chance > 0 && found.chance < 1).toBe(true);
        const seen = found.offers === 0 ? 0.85 : found.taken / found.offers;
        expect(found.chance).toBeGreaterThanOrEqual(Math.min(seen, 0.85) - 1e-12);
        expect(found.chance).toBeLessThanOrEqual(Math.max(seen, 0.85) + 1e-12);
      }),
    );
  });
  it('has starting ranges that are shares', () => {
    for (const [low, high] of Object.values(ACCEPTANCE)) expect(0 < low && low < high && high < 1).toBe(true);
  });
});
