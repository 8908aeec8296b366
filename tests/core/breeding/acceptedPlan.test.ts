import { describe, expect, it } from 'vitest';
import {
  acceptPlan,
  askedLabels,
  type Decision,
  type Facility,
  foldFacility,
  followPlan,
  type Id,
  type LogEvent,
  MOST_PAIRS_OF_PART,
  maleRota,
  type NewPlan,
  nextPairings,
  parseEvent,
  plannedFor,
  sayPlanned,
  seasonBegan,
  standingPlan,
  standingPlans,
  withdrawPlan,
} from '../../../src/core/index.ts';
import { added, DAM, day, eventId, id, type Line, log, SIRE, site, value } from '../log.ts';

const [OTHER, SECOND, CORN] = [id(3), id(4), id(5)];
const HOUSE: readonly Line[] = [
  added({ name: 'Dam', sex: 'female' }, { subjects: [DAM] }),
  added({ name: 'Second', sex: 'female' }, { subjects: [SECOND] }),
  added({ name: 'Sire', sex: 'male' }, { subjects: [SIRE] }),
  added({ name: 'Other', sex: 'male' }, { subjects: [OTHER] }),
  added({ name: 'Corn', species: 'Pantherophis guttatus', sex: 'male' }, { subjects: [CORN] }),
];
const paired = (on: string, female: Id = DAM, male: Id = SIRE): Line => [
  on,
  'pairing-started',
  {},
  { subjects: [female, male] },
];
const pairs: NewPlan['pairs'] = [
  { female: DAM, male: SIRE, kinship: 0, expected: [3.1250001] },
  { female: SECOND, male: SIRE, kinship: 0.25, expected: [1.5] },
];
const plan: NewPlan = {
  species: 'Python regius',
  from: day('2025-11-01'),
  eggs: 6.25,
  basis: 'the mean of this site’s own 4 clutches',
  goals: [{ words: 'Clown', least: 2, weight: 1 }],
  limits: { capPerMale: 4, maxMales: 2, meanKinship: null, maleCost: 0 },
  gap: 0,
  pairs,
};
const on = (text: string) => ({ day: day(text), today: day(text), nowMs: 0 });

/** The events that a decision writes, as from a device at a clock. */
function events(decision: Decision, clock: number, device = 1): readonly LogEvent[] {
  if (decision.kind === 'refused') throw new Error(decision.problem.message);
  return decision.drafts.map((draft, at) =>
    value(
      parseEvent({
        v: 1,
        id: eventId(clock * 1000 + at),
        at: `${draft.day}T08:00:00Z`,
        keeper: 'Ada',
        device,
        seq: clock * 1000 + at,
        clock: [clock, at],
        ...draft,
      }),
    ),
  );
}
const accept = (one: NewPlan = plan, text = '2025-11-05', facility = site(...HOUSE)) =>
  acceptPlan(facility, one, on(text));
const house = (lines: readonly Line[], ...written: readonly (readonly LogEvent[])[]): Facility =>
  foldFacility([...log(...HOUSE, ...lines), ...written.flat()]);
const followed = (facility: Facility, text: string) => {
  const standing = standingPlan(facility, 'Python regius', day(text));
  return standing === null ? null : followPlan(facility, standing, day(text)).map(({ now }) => now);
};

describe('accepting a plan', () => {
  it('writes one event about the site with its pairs and what they were chosen for', () => {
    const decision = accept();
    expect(decision).toMatchObject({ kind: 'accepted', said: 'plan of 2 pairs accepted' });
    const [event] = events(decision, 1);
    expect(event).toMatchObject({
      kind: 'plan-accepted',
      subjects: [],
      payload: {
        species: 'Python regius',
        from: '2025-11-01',
        eggs: 6.25,
        gap: 0,
        pairs: [
          [DAM, SIRE, 0, [3.125]],
          [SECOND, SIRE, 0.25, [1.5]],
        ],
      },
    });
  });
  it('is a fact of the facility: who with whom, for what, and by whom', () => {
    const standing = standingPlan(house([], events(accept(), 1)), 'Python regius', day('2025-12-01'));
    expect(standing).toMatchObject({ acceptedOn: '2025-11-05', keeper: 'Ada', missingParts: 0, goals: plan.goals });
    expect(standing?.pairs).toEqual([{ ...pairs[0], expected: [3.125] }, pairs[1]]);
  });
  it.each<[string, NewPlan, string]>([
    ['of no pair', { ...plan, pairs: [] }, 'plan-empty'],
    ['that began years ago', { ...plan, from: day('2023-11-01') }, 'plan-first-day'],
  ])('%s is refused', (_what, one, code) => {
    const decision = accept(one);
    expect(decision.kind === 'refused' && decision.problem.code).toBe(code);
  });
  it('in place of another of that season is asked about, and of another species is not', () => {
    const facility = house([], events(accept(), 1));
    const decision = accept({ ...plan, from: day('2025-12-01') }, '2025-12-01', facility);
    expect(decision.kind === 'asks' && decision.problem.message).toBe(
      'A plan of 2 pairs was accepted on 5 Nov 2025 for this season already.',
    );
    expect(accept({ ...plan, species: 'Pantherophis guttatus' }, '2025-12-01', facility).kind).toBe('accepted');
    expect(accept({ ...plan, from: day('2026-11-01') }, '2026-10-20', facility).kind).toBe('accepted');
  });
});

describe('of two plans of one season', () => {
  const first = events(accept(), 1);
  const later = events(accept({ ...plan, from: day('2025-11-20'), pairs: pairs.slice(1) }, '2025-11-21'), 2, 2);
  const stands = (...written: readonly (readonly LogEvent[])[]) =>
    standingPlan(house([], ...written), 'Python regius', day('2025-12-01'))?.pairs.length ?? null;
  it('the last accepted by the clock stands, in whatever order they arrive', () => {
    expect([stands(first, later), stands(later, first), stands(first), stands(later)]).toEqual([1, 1, 2, 1]);
  });
  it('taken back at once the one before stands again; withdrawn, none of that season does', () => {
    const facility = house([], first, later);
    const standing = standingPlan(facility, 'Python regius', day('2025-12-01'));
    if (standing === null) throw new Error('no plan');
    const slip = withdrawPlan({ ...standing, replaced: [] }, on('2025-12-01'));
    expect(stands(first, later, events(slip, 3))).toBe(2);
    const withdrawn = withdrawPlan(standing, on('2025-12-01'));
    expect(withdrawn.kind === 'asks' && withdrawn.problem.code).toBe('plan-withdraw');
    expect(stands(first, later, events(withdrawn, 3))).toBeNull();
    expect(stands(events(withdrawn, 3), later, first)).toBeNull();
  });
  it('a plan of the next season leaves the earlier one as it was', () => {
    const next = events(accept({ ...plan, from: day('2026-11-01'), pairs: pairs.slice(1) }, '2026-10-20'), 4);
    const facility = house([], first, next);
    const shown = (text: string) => standingPlan(facility, 'Python regius', day(text))?.from ?? null;
    expect(facility.site.plans).toHaveLength(2);
    expect([shown('2026-11-02'), shown('2027-11-01'), shown('2027-11-02')]).toEqual(['2026-11-01', '2026-11-01', null]);
  });
});

describe('a plan of more pairs than one event holds', () => {
  const count = 2 * MOST_PAIRS_OF_PART + 7;
  const many = Array.from({ length: count }, (_none, at) => ({
    female: id(1000 + at),
    male: id(5000 + (at % 60)),
    kinship: 0.01,
    expected: [1 + at / 7],
  }));
  const parts = events(accept({ ...plan, pairs: many }), 1);
  it('is written in parts, in one go, each small enough to be sent', () => {
    expect(parts.map(({ payload }) => (payload as { part: unknown }).part)).toEqual([
      [1, 3],
      [2, 3],
      [3, 3],
    ]);
    expect(Math.max(...parts.map((one) => JSON.stringify(one).length))).toBeLessThan(100_000);
  });
  it('is put together again in any order', () => {
    const found = standingPlan(foldFacility(parts.toReversed()), 'Python regius', day('2025-12-01'));
    expect(found?.pairs.map(({ female }) => female)).toEqual(many.map(({ female }) => female));
    expect(found?.missingParts).toBe(0);
  });
  it('says so while a part has not come yet', () => {
    const found = standingPlan(
      foldFacility([parts[0], parts[2]].flatMap((one) => one ?? [])),
      'Python regius',
      day('2025-12-01'),
    );
    expect([found?.pairs.length, found?.missingParts]).toEqual([MOST_PAIRS_OF_PART + 7, 1]);
  });
  it('is withdrawn as a whole', () => {
    const found = standingPlan(foldFacility(parts), 'Python regius', day('2025-12-01'));
    if (found === null) throw new Error('no plan');
    const back = events(withdrawPlan(found, on('2025-12-01')), 2);
    expect(foldFacility([...parts, ...back]).site.plans).toEqual([]);
  });
});

describe('a pair of an accepted plan', () => {
  const written = events(accept(), 1);
  const now = (text: string, ...lines: readonly Line[]) => followed(house(lines, written), text);
  const open = { state: 'open', meanwhile: [] };
  it('is made once the two were together since the season’s first day', () => {
    expect(now('2025-12-01', paired('2025-11-03'), paired('2025-11-20'))).toEqual([
      { state: 'made', on: '2025-11-03', visits: 2 },
      open,
    ]);
  });
  it('is still open for a pairing of the season before, and says who was with her meanwhile', () => {
    expect(now('2025-12-01', paired('2025-10-20'), paired('2025-11-20', SECOND, OTHER))).toEqual([
      open,
      { state: 'open', meanwhile: [OTHER] },
    ]);
  });
  it('made stays made, whatever happens to the two', () => {
    const died: Line = ['2025-12-02', 'animal-left', { how: 'died' }, { subjects: [SIRE] }];
    expect(now('2025-12-03', paired('2025-11-03'), died)).toEqual([
      { state: 'made', on: '2025-11-03', visits: 1 },
      { state: 'out', why: 'Sire died 2 Dec 2025' },
    ]);
  });
  it.each<[string, Line]>([
    ['Dam was sold 1 Dec 2025', ['2025-12-01', 'animal-left', { how: 'sold' }, { subjects: [DAM] }]],
    ['Dam waits for the vet’s word', ['2025-12-01', 'hold-placed', { reason: 'vet' }, { subjects: [DAM] }]],
    [
      'Dam is in quarantine, until 1 Jan 2026 at least',
      ['2025-12-01', 'hold-placed', { reason: 'quarantine', until: '2026-01-01' }, { subjects: [DAM] }],
    ],
    ['Dam is under treatment', ['2025-12-01', 'hold-placed', { reason: 'treatment' }, { subjects: [DAM] }]],
    ['Dam is past pairing: ovulation 1 Dec 2025', ['2025-12-01', 'ovulation-seen', {}, { subjects: [DAM] }]],
  ])('falls out: %s', (why, line) => {
    expect(now('2025-12-03', line)).toEqual([{ state: 'out', why }, open]);
  });
  it('that a hold took out comes back when the hold is lifted; a keeper’s hold on food takes nobody out', () => {
    const held: Line = ['2025-12-01', 'hold-placed', { reason: 'vet' }, { subjects: [DAM] }];
    const cleared: Line = ['2025-12-04', 'vet-cleared', { by: 'Dr Test' }, { subjects: [DAM] }];
    const keeper: Line = ['2025-12-01', 'hold-placed', { reason: 'keeper' }, { subjects: [DAM] }];
    expect(now('2025-12-05', held, cleared)).toEqual([open, open]);
    expect(now('2025-12-05', keeper)).toEqual([open, open]);
  });
  it('of an animal that is not on record here has fallen out', () => {
    const facility = foldFacility([...log(...HOUSE.slice(1)), ...written]);
    expect(followed(facility, '2025-12-01')?.[0]).toMatchObject({ state: 'out' });
  });
  it('stands on the record of both', () => {
    const facility = house([paired('2025-11-03')], written);
    const of = (who: Id) => {
      const animal = facility.animals.get(who);
      return (
        animal && plannedFor(facility, animal, day('2025-12-01')).map(({ female, now: { state } }) => [female, state])
      );
    };
    expect([of(SIRE), of(SECOND), of(OTHER), of(CORN)]).toEqual([
      [
        [DAM, 'made'],
        [SECOND, 'open'],
      ],
      [[SECOND, 'open']],
      [],
      [],
    ]);
  });
  it('has what was expected of it on its pairing card, and the open ones are printed by one word', () => {
    const facility = house([paired('2025-11-03')], written);
    const { labels, left } = askedLabels(facility, 'pairing', 'plan', day('2025-12-01'));
    expect([labels.map(({ id }) => id), left]).toEqual([[SECOND], []]);
    const line = labels[0]?.lines.find(({ long }) => long.startsWith('plan:'));
    expect([line?.long, line?.short]).toEqual(['plan: of 6.25 eggs 1.5 Clown; kinship ≈ 25 %', 'plan: 1.5 Clown']);
    expect(
      askedLabels(facility, 'pairing', `${OTHER}/${DAM}`, day('2025-12-01')).labels[0]?.lines.some(({ long }) =>
        long.startsWith('plan:'),
      ),
    ).toBe(false);
  });
});

describe('what is said of a planned pair', () => {
  it('is what it gives towards each goal, and of what share of its eggs', () => {
    const terms = { ...plan, goals: [...plan.goals, { words: 'Pastel', least: 0, weight: 1 }] };
    const standing = standingPlan(house([], events(accept(terms), 1)), 'Python regius', day('2025-12-01'));
    if (standing === null) throw new Error('no plan');
    const said = (expected: readonly number[]) =>
      sayPlanned({ female: DAM, male: SIRE, kinship: 0, expected }, standing);
    expect(said([3.125, 0])).toEqual(['Clown: ≈ 3.13 eggs expected, 50 % of the eggs']);
    expect(said([0, 6.25])).toEqual(['Pastel: 6.25 eggs expected, 100 % of the eggs']);
    expect(said([1, 2.08333])).toEqual([
      'Clown: 1 egg expected, 16 % of the eggs',
      'Pastel: ≈ 2.08 eggs expected, ≈ 33.3 % of the eggs',
    ]);
    expect(said([0, 0])).toEqual([]);
  });
});

describe('the rota of males with an accepted plan', () => {
  const written = events(accept(), 1);
  const next = (text: string, ...lines: readonly Line[]) => {
    const facility = house(lines, written);
    const rota = maleRota(facility, 'Python regius', day(text));
    return nextPairings(facility, rota, () => true).map((one) => [one.male, one.female, one.why]);
  };
  it('has a planned male before anything is written of his season, and gives him the plan’s first female', () => {
    expect(next('2025-11-06')).toEqual([[SIRE, DAM, 'the plan gives him Dam, and he was not with her yet']]);
  });
  it('gives him the next one when the first is made, and nobody else takes her', () => {
    const apart: Line = ['2025-11-22', 'pairing-ended', {}, { subjects: [SECOND, OTHER] }];
    const made = [paired('2025-11-10'), ['2025-11-12', 'pairing-ended', {}, { subjects: [DAM, SIRE] }] as Line];
    expect(
      next('2025-12-01', ...made, paired('2025-11-20', SECOND, OTHER), apart).map(([male, female]) => [male, female]),
    ).toEqual([[SIRE, SECOND]]);
  });
});

describe('the season’s first day', () => {
  const began = (text: string, ...lines: readonly Line[]) =>
    seasonBegan(site(...HOUSE, ...lines), 'Python regius', day(text));
  it('is the first pairing after two months without one', () => {
    expect(began('2026-01-10', paired('2025-04-01'), paired('2025-11-03'), paired('2025-12-20', SECOND)).from).toBe(
      '2025-11-03',
    );
  });
  it('is the day itself where nobody was paired of late', () => {
    expect(began('2025-11-01', paired('2025-04-01'))).toEqual({
      from: '2025-11-01',
      why: 'nobody was paired in the 60 days before',
    });
    expect(began('2025-11-03', paired('2025-11-03')).why).toBe('the first pairing of this season');
  });
  it('is the one of the plan that stands', () => {
    const facility = house([paired('2025-11-03')], events(accept(), 1));
    expect(seasonBegan(facility, 'Python regius', day('2026-01-10')).from).toBe('2025-11-01');
    expect(standingPlans(facility, day('2026-01-10')).map(({ from }) => from)).toEqual(['2025-11-01']);
  });
});
