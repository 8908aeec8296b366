import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  type Course,
  type DoseQuestion,
  doseSchedule,
  doseVolume,
  drawUp,
  ENCLOSURE_RULES,
  enclosureFor,
  type Result,
  roundToMark,
  SYRINGES_ML,
  sayMl,
  standardMetabolism,
  tenfoldFault,
  tubeSheet,
  writtenVolume,
} from '../../src/core/index.ts';
import { day, value } from '../core/log.ts';

const ON = day('2026-11-25');
const odd = fc.constantFrom(
  0,
  -0,
  -1,
  1,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  5e-324,
  1e308,
);
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0, max: 1000 }), odd);
const maybeNumber = fc.option(anyNumber, { nil: undefined });
const anyDay = fc.integer({ min: -40, max: 5 }).map((days) => addDays(ON, days));
const sizes = fc.array(fc.oneof(fc.constantFrom(...SYRINGES_ML), anyNumber), { maxLength: 4 });
const route = fc.constantFrom('im', 'gavage', 'oral', 'somewhere', '');
const yesOrNo = fc.constantFrom(true, false, undefined);
const mass = fc.record({ massKg: maybeNumber, massG: maybeNumber, massLb: maybeNumber });
const anyQuestion: fc.Arbitrary<DoseQuestion> = fc
  .record({
    mass: fc.oneof(
      mass,
      fc.double({ min: 0.5, max: 20_000, noNaN: true }).map((massG) => ({ massG })),
    ),
    massDate: anyDay,
    on: fc.constant(ON),
    young: yesOrNo,
    flagged: yesOrNo,
    dose: fc.record({ mgPerKg: anyNumber }),
    strength: fc.record({ mgPerMl: maybeNumber, percentWv: maybeNumber }),
    syringesMl: fc.option(sizes, { nil: undefined }),
    capPercent: maybeNumber,
    route,
  })
  .map(({ mass: given, ...rest }) => ({ ...given, ...rest }));

/** Every number of an answer is finite and not below 0, but for those that may be; no text has a hole. */
function expectSound(result: Result<object>, mayBeBelow: readonly string[] = ['differencePercent']): void {
  if (!result.ok) {
    expect(`${result.problem.message} ${result.problem.remedy}`).not.toMatch(/NaN|undefined|\{\w+\}/);
    return;
  }
  for (const [name, one] of Object.entries(result.value))
    for (const figure of Array.isArray(one) ? one : [one])
      if (typeof figure === 'number')
        expect(Number.isFinite(figure) && (figure >= 0 || mayBeBelow.includes(name)), name).toBe(true);
  expect(JSON.stringify(result.value)).not.toMatch(/NaN|Infinity|undefined|\{\w+\}/);
}

/** A dose that a syringe can take: 2 to 9 mL of it. */
const usual = fc.record({
  massG: fc.double({ min: 500, max: 5000, noNaN: true }),
  mgPerKg: fc.double({ min: 1, max: 50, noNaN: true }),
  mgPerMl: fc.double({ min: 5, max: 500, noNaN: true }),
});
type Usual = { readonly massG: number; readonly mgPerKg: number; readonly mgPerMl: number };
const exactOf = ({ massG, mgPerKg, mgPerMl }: Usual): number | null => {
  const given = { dose: { mgPerKg }, strength: { mgPerMl }, route: 'im', massDate: ON, on: ON };
  const answer = doseVolume({ ...given, massG });
  return answer.ok ? answer.value.exactMl : null;
};
const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(a, b);

describe('a dose', () => {
  it('is never NaN, negative or endless, whatever is asked', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const answer = doseVolume(asked);
        expectSound(answer);
        if (answer.ok) expect(answer.value.ml > 0 && answer.value.ml <= answer.value.syringeMl).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
  it('has no silent default: without one of its figures, or with two of one, it is refused', () => {
    fc.assert(
      fc.property(usual, ({ massG, mgPerKg, mgPerMl }) => {
        const whole = { massG, dose: { mgPerKg }, strength: { mgPerMl }, route: 'im', massDate: ON, on: ON };
        const code = (more: Partial<DoseQuestion>) => {
          const answer = doseVolume({ ...whole, ...more });
          return answer.ok ? 'answered' : answer.problem.code;
        };
        expect(code({ massG: undefined })).toBe('unit-missing');
        expect(code({ strength: {} })).toBe('unit-missing');
        expect(code({ massKg: massG / 1000 })).toBe('one-unit-only');
        expect(code({ strength: { mgPerMl, percentWv: mgPerMl / 10 } })).toBe('one-unit-only');
        expect(code({ route: '' })).toBe('text-missing');
      }),
    );
  });
  it('scales with mass and dose, and against strength', () => {
    let compared = 0;
    fc.assert(
      fc.property(usual, fc.double({ min: 0.5, max: 2, noNaN: true }), ({ massG, mgPerKg, mgPerMl }, times) => {
        const once = exactOf({ massG, mgPerKg, mgPerMl });
        const more = [
          exactOf({ massG: massG * times, mgPerKg, mgPerMl }),
          exactOf({ massG, mgPerKg: mgPerKg * times, mgPerMl }),
          exactOf({ massG, mgPerKg, mgPerMl: mgPerMl / times }),
        ];
        for (const one of more)
          if (once !== null && one !== null) {
            compared += 1;
            expect(near(one, once * times)).toBe(true);
          }
      }),
    );
    expect(compared).toBeGreaterThan(100);
  });
  it('changes by no more than half a mark, and no more than 5 %', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 60, noNaN: true }), (exactMl) => {
        const drawn = drawUp(exactMl);
        if (!drawn.ok) return;
        const { ml, markMl, syringeMl, differencePercent } = drawn.value;
        expect(Math.abs(ml - exactMl)).toBeLessThanOrEqual(markMl / 2 + 1e-9);
        expect(Math.abs(differencePercent)).toBeLessThanOrEqual(5);
        expect(SYRINGES_ML.filter((size) => size >= exactMl)[0]).toBe(syringeMl);
      }),
      { numRuns: 1000 },
    );
  });
  it('stands on a mark, and a volume that does is left as it is', () => {
    const marks = fc.constantFrom(0.01, 0.1, 0.2, 1);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), marks, (ticks, markMl) => {
        const ml = Number((ticks * markMl).toFixed(2));
        expect(roundToMark(ml, markMl)).toBe(ml);
      }),
    );
  });
  it('is written with a digit before the point and none too many behind', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (ml) => {
        expect(sayMl(ml)).toMatch(/^(\d+(\.\d{0,3}[1-9])?|less than 0\.0001) mL$/);
      }),
    );
  });
});

describe('what stands beside a dose', () => {
  it('is sound, whatever is asked', () => {
    fc.assert(
      fc.property(anyQuestion, anyNumber, maybeNumber, (asked, ml, snoutVentMm) => {
        expectSound(tubeSheet({ ...asked, volumeMl: ml, slurry: asked.young ?? false, snoutVentMm }));
        expectSound(writtenVolume({ ...asked, ml, weight: asked.flagged === false ? asked : null }));
      }),
      { numRuns: 500 },
    );
  });
  it('the ten-fold check sees ten times more and less and lets the same through', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 60, noNaN: true }), fc.integer({ min: 1, max: 5 }), (ml, doses) => {
        const earlier = Array.from({ length: doses }, () => ml);
        expect(tenfoldFault(ml, earlier)).toBeNull();
        expect([tenfoldFault(ml * 10, earlier)?.code, tenfoldFault(ml / 10, earlier)?.code]).toEqual([
          ...['dose-tenfold', 'dose-tenfold'],
        ]);
      }),
    );
  });
  it('a course counts soundly, whatever is asked', () => {
    const course: fc.Arbitrary<Course> = fc.record({
      ...{ everyHours: anyNumber, startsMs: anyNumber, endsMs: maybeNumber },
      count: fc.oneof(maybeNumber, fc.integer({ min: 1, max: 40 })),
    });
    fc.assert(
      fc.property(course, fc.array(anyNumber, { maxLength: 5 }), anyNumber, (asked, given, now) => {
        expectSound(doseSchedule(asked, given, now), ['nextMs', 'lastMs', 'endsMs', 'lastDueMs', 'doubledMs']);
      }),
      { numRuns: 1000 },
    );
  });
  it('a course that is kept to the hour misses and doubles nothing, and ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 240 }), fc.integer({ min: 1, max: 30 }), (everyHours, count) => {
        const given = Array.from({ length: count }, (_, at) => at * everyHours * 3_600_000);
        for (let done = 1; done <= count; done++) {
          const now = given[done - 1] ?? 0;
          const stands = value(doseSchedule({ everyHours, startsMs: 0, count }, given.slice(0, done), now));
          expect([stands.missed, stands.doubledMs, stands.left]).toEqual([0, [], count - done]);
          expect(stands.nextMs).toBe(done === count ? null : given[done]);
        }
      }),
    );
  });
});

describe('space and metabolism', () => {
  it('are sound, whatever is asked', () => {
    const species = fc.constantFrom('Python regius', 'Boa', 'Morelia spilota', 'Anilius scytale', '');
    fc.assert(
      fc.property(fc.constantFrom(...ENCLOSURE_RULES, 'x'), species, anyNumber, anyNumber, (rule, kind, a, b) => {
        expectSound(enclosureFor({ rule, species: kind, lengthM: a, animals: b }));
        expectSound(standardMetabolism(a, b));
      }),
      { numRuns: 1000 },
    );
  });
  it('a longer snake, or one more, never gets less', () => {
    const lengths = fc.double({ min: 0.05, max: 10, noNaN: true });
    const floorOf = (species: string, lengthM: number, animals: number): number => {
      const space = value(enclosureFor({ rule: 'austria', species, lengthM, animals }));
      return 'floorM2' in space ? (space.floorM2 ?? 0) : 0;
    };
    const species = fc.constantFrom('Python regius', 'ground snake', 'climbing snake');
    fc.assert(
      fc.property(species, lengths, lengths, fc.integer({ min: 1, max: 20 }), (kind, a, b, animals) => {
        const [short, long] = [Math.min(a, b), Math.max(a, b)];
        expect(floorOf(kind, long, animals)).toBeGreaterThanOrEqual(floorOf(kind, short, animals));
        expect(floorOf(kind, long, animals + 1)).toBeGreaterThanOrEqual(floorOf(kind, long, animals));
      }),
    );
  });
});
