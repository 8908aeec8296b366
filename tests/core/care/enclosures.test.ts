import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compareEnclosure,
  compareEnclosures,
  decideSizes,
  ENCLOSURE_CAUTION,
  type EnclosureComparison,
  enclosureRuleOf,
  enclosureState,
  enclosureVerdicts,
  type Facility,
  OLD_LENGTH_DAYS,
  parseSize,
  SIDE_LIMITS_MM,
  type SizeMm,
  saySize,
  sayVerdict,
} from '../../../src/core/index.ts';
import { added, DAM, day, id, type Line, RACK, REX, refusal, SIRE, site, TUB, value } from '../log.ts';

const ON = day('2026-11-25');
const onTub = { subjects: [TUB] };
const TUB_2 = id(12);
const PLACES: readonly Line[] = [
  ['2026-01-01', 'place-added', { placeKind: 'rack', name: 'Rack 1', walk: 1 }, { subjects: [RACK] }],
  ['2026-01-01', 'place-added', { placeKind: 'tub', name: '1-01', parent: RACK, walk: 1 }, onTub],
  ['2026-01-01', 'place-added', { placeKind: 'tub', name: '1-02', parent: RACK, walk: 2 }, { subjects: [TUB_2] }],
];
const size = (length: number, width: number, height: number): Line => [
  '2026-01-02',
  'place-set',
  { sizeMm: { length, width, height } },
  onTub,
];
const lives = (animal = REX): Line => ['2026-01-03', 'animal-moved', { to: TUB }, { subjects: [animal] }];
const measured = (lengthMm: number, animal = REX, on = '2026-06-01', of: 'total' | 'snout-vent' = 'total'): Line => [
  on,
  'animal-measured',
  { lengthMm, of },
  { subjects: [animal] },
];

function compared(...lines: readonly Line[]): EnclosureComparison {
  const facility = site(...PLACES, ...lines);
  const found = compareEnclosure(facility, placeIn(facility), ON);
  if (found === null) throw new Error('nobody lives there');
  return found;
}

function placeIn(facility: Facility) {
  const place = facility.places.get(TUB);
  if (place === undefined) throw new Error('no tub');
  return place;
}

const says = (comparison: EnclosureComparison): string[] =>
  comparison.groups.flatMap(({ verdicts }) => verdicts.map(sayVerdict));

describe('the inside size of a place', () => {
  it.each<[string, readonly [number, number, number]]>([
    ['90 x 45 x 30 cm', [900, 450, 300]],
    ['90×45×30cm', [900, 450, 300]],
    ['900*450*300 mm', [900, 450, 300]],
    ['0.9 x 0.45 x 0.3 m', [900, 450, 300]],
    ['0,9 x 0,45 x 0,3 m', [900, 450, 300]],
    ['90 cm x 45 cm x 30 cm', [900, 450, 300]],
    ['90 cm x 45 x 30', [900, 450, 300]],
    ['1.2 m x 60 cm x 450 mm', [1200, 600, 450]],
    ['1,200 x 600 x 450 mm', [1200, 600, 450]],
    // 1 inch is 25.4 mm (NIST SP 811, appendix B.8).
    ['36 x 18 x 12 in', [914, 457, 305]],
    ['36" x 18" x 12"', [914, 457, 305]],
    ['3 ft by 18 by 12 inches', [914, 457, 305]],
    ['  45 X 90 X 30 CM ', [450, 900, 300]],
  ])('%j is %j mm', (text, [length, width, height]) => {
    expect(value(parseSize(text))).toEqual({ length, width, height });
  });
  it.each([
    ['', 'size-malformed'],
    ['90 x 45 cm', 'size-malformed'],
    ['90 x 45 x 30 x 10 cm', 'size-malformed'],
    ['90 x ? x 30 cm', 'size-malformed'],
    ['-90 x 45 x 30 cm', 'size-malformed'],
    ['90 x 45 x 30', 'unit-missing'],
    ['90 x 45 x 30 constructor', 'unit-missing'],
    ['90 x 45 x 0 cm', 'size-impossible'],
    ['9000 x 45 x 30 cm', 'size-impossible'],
    ['90 x 45 x 30 mm', 'size-impossible'],
  ])('%j is refused: %s', (text, code) => {
    expect(refusal(parseSize(text))).toBe(code);
  });
  const side = fc.integer({ min: SIDE_LIMITS_MM.least, max: SIDE_LIMITS_MM.most });
  it('comes back from its words, whatever it is', () => {
    fc.assert(
      fc.property(side, side, side, (length, width, height) => {
        expect(value(parseSize(saySize({ length, width, height })))).toEqual({ length, width, height });
      }),
    );
  });
  it('is never read from any text with a side outside of the limits', () => {
    const some = fc.oneof(fc.string(), fc.stringMatching(/^[\d.,x× cminft"]{0,30}$/));
    fc.assert(
      fc.property(some, (text) => {
        const read = parseSize(text);
        if (!read.ok) return;
        for (const mm of Object.values(read.value)) {
          expect(Number.isInteger(mm)).toBe(true);
          expect(mm >= SIDE_LIMITS_MM.least && mm <= SIDE_LIMITS_MM.most).toBe(true);
        }
      }),
    );
  });
});

describe('CARE-ENCLOSURE: a place beside the rules', () => {
  // The tables behind these: tests/outside/enclosure.test.ts. A ball python of 1.30 m: Austria 0.9 m2 and 70 cm,
  // Germany 1.30 x 0.65 x 0.975 m, England 1.30 x 0.867 x 0.433 m.
  it('says of each rule set what it asks for and by how much the place is short, each side for itself', () => {
    expect(says(compared(added(), lives(), measured(1300), size(900, 450, 300)))).toEqual([
      'Austria asks for 0.9 m² of floor, 70 cm high: short by 0.495 m² of floor, 40 cm of height',
      'Germany asks for 130 cm long, 65 cm wide, 97.5 cm high: short by 40 cm of length, 20 cm of width, 67.5 cm of height',
      'England asks for 130 cm long, 86.7 cm wide, 43.4 cm high: short by 40 cm of length, 41.7 cm of width, 13.4 cm of height',
    ]);
  });
  it('says enough where the place has all of it, whichever side was typed first', () => {
    for (const typed of [size(1300, 870, 980), size(870, 1300, 980)])
      expect(says(compared(added(), lives(), measured(1300), typed)).every((one) => one.endsWith(': enough'))).toBe(
        true,
      );
  });
  it('is short by one mm where one mm is missing, and never by nothing', () => {
    const [, , england] = says(compared(added(), lives(), measured(1300), size(1300, 866, 980)));
    expect(england).toMatch(/short by 0\.1 cm of width$/);
  });
  it('asks for more where more animals live, by the longest of them', () => {
    const three = [added(), added({}, { subjects: [DAM] }), added({}, { subjects: [SIRE] })];
    const all = compared(
      ...three,
      lives(),
      lives(DAM),
      lives(SIRE),
      measured(1300),
      measured(900, DAM),
      size(1400, 700, 700),
    );
    const [group] = all.groups;
    expect(group).toMatchObject({ animals: [REX, DAM, SIRE].sort(), longest: { animal: REX }, unmeasured: [SIRE] });
    // Austria: 0.9 m2 for two and 0.2 m2 for the third; Germany: 1.30 x 0.65 m and 20 % more.
    expect(says(all)[0]).toBe('Austria asks for 1.1 m² of floor, 70 cm high: short by 0.12 m² of floor');
    expect(says(all)[1]).toContain('1.014 m² of floor');
  });
  it('gives a climbing species its own height, and names a rule set that has no figures for it', () => {
    const tree = compared(added({ species: 'Morelia spilota' }), lives(), measured(1300), size(1300, 900, 500));
    expect(says(tree)).toEqual([
      'Austria asks for 0.9 m² of floor, 100 cm high: short by 50 cm of height',
      expect.stringMatching(
        /^Germany has no figures here: The rule “germany” has no figures here for “Morelia spilota”/,
      ),
      'England asks for 130 cm long, 86.7 cm wide, 43.4 cm high: enough',
    ]);
    const [, , england] = tree.groups[0]?.verdicts ?? [];
    expect(england).toMatchObject({ caution: expect.stringContaining('a climbing snake needs more height') });
  });
  it('compares several species for themselves, each as if all were of its kind', () => {
    const corn = added({ species: 'Pantherophis guttatus' }, { subjects: [DAM] });
    const both = compared(added(), corn, lives(), lives(DAM), measured(1300), measured(1200, DAM), size(900, 450, 300));
    expect(both.groups.map(({ species, animals }) => [species, animals])).toEqual([
      ['Pantherophis guttatus', [DAM]],
      ['Python regius', [REX]],
    ]);
    expect(both.animals).toBe(2);
  });
  it('has a source, the mark S and the caution in every answer, and judges no one', () => {
    const all = compared(added(), lives(), measured(1300), size(900, 450, 300));
    for (const verdict of all.groups.flatMap(({ verdicts }) => verdicts)) {
      expect(verdict).toMatchObject({ mark: 'S', source: expect.stringMatching(/\d{4}/) });
      expect(verdict).toMatchObject({ caution: expect.stringContaining(ENCLOSURE_CAUTION) });
      expect(sayVerdict(verdict)).not.toMatch(/legal|lawful|allowed|forbidden|must/i);
    }
  });
  it('asks for a size or a length where there is none, and is nothing where nobody lives', () => {
    const bare = compared(added(), lives(), measured(1300));
    expect(enclosureState(bare, null)).toBe('no size');
    expect(says(bare)[0]).toBe('Austria asks for 0.9 m² of floor, 70 cm high; the place is not measured');
    const unmeasured = compared(added(), lives(), size(900, 450, 300));
    expect([enclosureState(unmeasured, null), unmeasured.groups[0]?.unmeasured]).toEqual(['no length', [REX]]);
    const empty = site(...PLACES, added());
    expect(compareEnclosure(empty, placeIn(empty), ON)).toBeNull();
  });
  it('takes the whole length before the one from snout to vent, and says when a length is old or the least', () => {
    const svl = measured(1100, REX, '2026-06-01', 'snout-vent');
    expect(compared(added(), lives(), svl).groups[0]?.longest).toMatchObject({ isLeast: true, isOld: false });
    expect(compared(added(), lives(), svl, measured(1300)).groups[0]?.longest).toMatchObject({
      isLeast: false,
      measured: { lengthMm: 1300 },
    });
    const old = (on: string) => compared(added(), lives(), measured(1300, REX, on)).groups[0]?.longest?.isOld;
    expect(OLD_LENGTH_DAYS).toBe(365);
    expect([old('2025-11-25'), old('2025-11-24')]).toEqual([false, true]);
  });
});

describe('the rule set of a site', () => {
  const rules = (enclosureRule: string): Line => ['2026-02-01', 'site-rules-set', { enclosureRule }, { subjects: [] }];
  it('comes first, and decides how a place stands', () => {
    const lines = [added(), lives(), measured(1300), size(1400, 700, 700)];
    const by = (rule: string) => compared(rules(rule), ...lines);
    expect(by('england').groups[0]?.verdicts.map((one) => one.rule)).toEqual(['england', 'austria', 'germany']);
    expect(enclosureState(by('austria'), 'austria')).toBe('enough');
    expect(enclosureState(by('germany'), 'germany')).toBe('short');
    expect(enclosureState(by('germany'), null)).toBe('short');
    const hognose = compared(added({ species: 'Heterodon nasicus' }), lives(), measured(500), size(900, 450, 300));
    expect(enclosureState(hognose, 'germany')).toBe('no figures');
  });
  it('is none where the log names one that nobody knows', () => {
    expect(['austria', 'atlantis', null].map(enclosureRuleOf)).toEqual(['austria', null, null]);
    expect(site(rules('austria')).site.rules.enclosureRule).toBe('austria');
    expect(site().site.rules.enclosureRule).toBeNull();
  });
});

describe('writing a size', () => {
  const SIZE: SizeMm = { length: 800, width: 400, height: 200 };
  const pool = { litres: 80, filtered: true };
  it('keeps all else that is known of the place', () => {
    const known: Line = ['2026-01-05', 'place-set', { name: '1-01b', walk: 7, pool, twoPeople: true }, onTub];
    const facility = site(...PLACES, known);
    const decision = decideSizes([placeIn(facility)], SIZE, ON);
    if (decision.kind !== 'accepted') throw new Error(decision.kind);
    expect(decision.said).toBe('80 × 40 × 20 cm inside');
    const [draft] = decision.drafts;
    if (draft?.kind !== 'place-set') throw new Error('no place was set');
    expect(draft.subjects).toEqual([TUB]);
    const after = site(...PLACES, known, ['2026-01-06', 'place-set', draft.payload, onTub]);
    expect(placeIn(after)).toEqual({ ...placeIn(facility), sizeMm: SIZE, lastWritten: expect.anything() });
  });
  it('gives all tubs of a rack one size, leaves those that have it, and is refused where nothing changes', () => {
    const facility = site(...PLACES, size(800, 400, 200));
    const tubs = [TUB, TUB_2].flatMap((one) => facility.places.get(one) ?? []);
    expect(decideSizes(tubs, SIZE, ON)).toMatchObject({
      drafts: [{ subjects: [TUB_2], payload: { name: '1-02', parent: RACK } }],
    });
    expect(decideSizes(tubs.slice(0, 1), SIZE, ON)).toMatchObject({ kind: 'refused', problem: { code: 'size-same' } });
  });
});

describe('laws of the comparison', () => {
  const mm = fc.integer({ min: SIDE_LIMITS_MM.least, max: SIDE_LIMITS_MM.most });
  const someSize = fc.record({ length: mm, width: mm, height: mm });
  const someQuestion = fc.record({
    species: fc.constantFrom('Python regius', 'Boa imperator', 'Morelia viridis', 'Anilius scytale'),
    lengthM: fc.double({ min: 0.05, max: 10, noNaN: true }),
    animals: fc.integer({ min: 1, max: 20 }),
  });
  it('a larger place is never shorter, and the order of its sides changes nothing', () => {
    fc.assert(
      fc.property(someQuestion, someSize, (question, room) => {
        const [plain, turned, larger] = [
          room,
          { length: room.width, width: room.length, height: room.height },
          { length: room.length + 10, width: room.width + 10, height: room.height + 10 },
        ].map((one) => enclosureVerdicts(question, one));
        expect(turned).toEqual(plain);
        for (const [at, verdict] of (plain ?? []).entries())
          if (verdict.has === 'enough') expect(larger?.[at]?.has).toBe('enough');
      }),
    );
  });
  it('more animals never need less', () => {
    fc.assert(
      fc.property(someQuestion, someSize, (question, room) => {
        const more = enclosureVerdicts({ ...question, animals: question.animals + 1 }, room);
        for (const [at, verdict] of enclosureVerdicts(question, room).entries())
          if (verdict.has === 'short') expect(more[at]?.has).toBe('short');
      }),
    );
  });
});

describe('all places of a site', () => {
  it('come in walking order, those that somebody lives in', () => {
    const facility = site(
      ...PLACES,
      added(),
      added({}, { subjects: [DAM] }),
      ['2026-01-03', 'animal-moved', { to: TUB_2 }, { subjects: [REX] }],
      lives(DAM),
    );
    expect(compareEnclosures(facility, ON).map(({ place }) => place)).toEqual([TUB, TUB_2]);
  });
});
