import { describe, expect, it } from 'vitest';
import {
  countsOfRound,
  dayWork,
  groupsOf,
  handledTooSoon,
  isLeft,
  NO_HANDLING_DAYS,
  type RoundTask,
  roundPlan,
  roundsOfDay,
  sayPace,
  sayWhy,
  WEIGH_DAYS,
  weighEveryDays,
  weighingOf,
} from '../../../src/core/index.ts';
import { day, fed, type Line, undo } from '../log.ts';
import {
  clean,
  EXHIBITS,
  eventsOf,
  FERN,
  HALL,
  HOMES,
  HOUSE,
  houseOf,
  lineOn,
  looked,
  MOSS,
  ON,
  RACK,
  TANSY,
  TUBS,
  water,
} from './house.ts';

const [TUB, SECOND, THIRD] = TUBS;
const skipped = (task: RoundTask, at: (typeof HOMES)[number], why?: string, on: string = ON): Line => [
  on,
  'task-skipped',
  { task, ...(why !== undefined && { why }) },
  { subjects: [at] },
];
const states = (task: RoundTask, ...lines: readonly Line[]) =>
  roundPlan(houseOf(...lines), { task, on: ON }).map((line) => line.state);

describe('CARE-ROUND: the round of a day', () => {
  it('is in walking order, under the racks and rooms that the homes stand in', () => {
    const facility = houseOf();
    const groups = groupsOf(facility, roundPlan(facility, { task: 'water', on: ON }));
    expect(groups.map(({ name, lines }) => [name, lines.map((line) => line.of)])).toEqual([
      ['Rack 1', [...TUBS]],
      ['Hall', [...EXHIBITS]],
    ]);
  });
  it('has what was never logged as due, and says so', () => {
    const facility = houseOf();
    expect(lineOn(facility, 'clean', TUB).state).toBe('due');
    expect(sayWhy(facility, lineOn(facility, 'clean', TUB))[0]).toBe('never logged here');
  });
  it.each<[string, string, string]>([
    ['on the day itself', '2026-03-20', 'done'],
    ['before the soonest day', '2026-03-07', 'soon'],
    ['on the soonest day', '2026-03-06', 'due'],
    ['on the latest day', '2026-02-20', 'due'],
    ['on the day after it', '2026-02-19', 'overdue'],
  ])('cleaned %s', (_what, on, state) => {
    expect(lineOn(houseOf(clean(on, TUB)), 'clean', TUB).state).toBe(state);
  });
  it('says who did it last, and on which day', () => {
    const facility = houseOf(water('2026-03-19', RACK, ...TUBS));
    const line = lineOn(facility, 'water', SECOND);
    expect(line.lastDone).toEqual({ day: '2026-03-19', by: 'Ada' });
    expect(sayWhy(facility, line)[0]).toBe('last on 19 Mar 2026 by Ada');
  });
  it('has a skip of the day with its reason, until it is done all the same; the day after it is due again', () => {
    const skip = skipped('water', TUB, 'glass cracked');
    expect(lineOn(houseOf(skip), 'water', TUB)).toMatchObject({ state: 'skipped', skip: { why: 'glass cracked' } });
    expect(lineOn(houseOf(skip, water(ON, TUB)), 'water', TUB).state).toBe('done');
    expect(lineOn(houseOf(skip), 'water', TUB, day('2026-03-21')).state).toBe('due');
  });
  it('counts what is left, overdue, done, skipped and held', () => {
    const lines = roundPlan(houseOf(water(ON, TUB), water('2026-03-01', SECOND), skipped('water', THIRD)), {
      task: 'water',
      on: ON,
    });
    expect(countsOfRound(lines)).toEqual({ all: 5, left: 3, overdue: 1, done: 1, skipped: 1, held: 0 });
    expect(lines.filter(isLeft)).toHaveLength(3);
  });
  it('is made only of tasks that the site has: no pool, no pool round', () => {
    const tasks = (...lines: readonly Line[]) => roundsOfDay(houseOf(...lines), ON).map((one) => one.task);
    expect(tasks()).toEqual(['feeding', 'water', 'clean', 'weigh', 'look']);
    const pool: Line = [
      '2026-03-01',
      'place-set',
      { pool: { litres: 240, filtered: true } },
      { subjects: [EXHIBITS[0]] },
    ];
    expect(tasks(pool)).toEqual(['feeding', 'water', 'clean', 'weigh', 'look', 'pool-part']);
  });
  it('leaves out empty homes and those that left', () => {
    expect(states('water', ['2026-03-01', 'animal-left', { how: 'sold' }, { subjects: [MOSS] }])).toHaveLength(4);
  });
  it('is of one place and what stands in it where that is asked for', () => {
    expect(roundPlan(houseOf(), { task: 'water', on: ON, within: HALL }).map((line) => line.of)).toEqual([...EXHIBITS]);
    expect(roundPlan(houseOf(), { task: 'weigh', on: ON, within: TUB }).map((line) => line.of)).toEqual([MOSS]);
  });
});

describe('CARE-ROUND: the lines of animals', () => {
  const on = (who: (typeof HOMES)[number], line: Line): Line =>
    [line[0], line[1], line[2], { subjects: [who] }] as Line;
  it('a meal of the day is done, refused or not; a hold is no work', () => {
    const refused: Line = [ON, 'prey-offered', { prey: 'rat-pup', count: 1, outcome: 'refused' }, { subjects: [FERN] }];
    const hold: Line = ['2026-03-18', 'hold-placed', { reason: 'keeper', words: 'new' }, { subjects: [TANSY] }];
    const facility = houseOf(on(MOSS, fed(ON)), refused, hold);
    expect([MOSS, FERN, TANSY].map((one) => lineOn(facility, 'feeding', one).state)).toEqual(['done', 'done', 'held']);
    expect(lineOn(facility, 'feeding', FERN).words).toBe('refused');
  });
  it('a treatment is due on the day of its next dose, overdue after it, and done when it was given', () => {
    const paper: Line = [
      '2026-03-18',
      'prescription-written',
      {
        ...{
          drug: 'as the vet wrote it',
          prescriber: 'Dr L',
          route: 'by injection',
          everyHours: 48,
          count: 3,
          startsOn: '2026-03-18',
        },
        ...{ amount: { by: 'volume', ml: 0.5 }, withholdFood: false },
      },
      { subjects: [MOSS], n: 900 },
    ] as Line;
    const dose = (at: string): Line =>
      [at, 'dose-given', { prescription: String(eventsOf(paper).at(-1)?.id), ml: 0.5 }, { subjects: [MOSS] }] as Line;
    const at = (...doses: readonly string[]) =>
      roundPlan(houseOf(paper, ...doses.map(dose)), { task: 'treat', on: ON }).map((line) => [line.of, line.state]);
    expect(at()).toEqual([[MOSS, 'overdue']]);
    expect(at('2026-03-18')).toEqual([[MOSS, 'due']]);
    expect(at('2026-03-19')).toEqual([]);
    expect(at('2026-03-18', ON)).toEqual([[MOSS, 'done']]);
    expect(roundPlan(houseOf(), { task: 'treat', on: ON })).toEqual([]);
  });
});

describe('CARE-WEIGH as a round', () => {
  const weighedOf = (...lines: readonly Line[]) => {
    const facility = houseOf(...lines);
    const animal = facility.animals.get(MOSS);
    return animal && weighingOf(facility, animal, ON);
  };
  it('ends each range where the rule of old weights does', () => {
    const ends = [WEIGH_DAYS.hatchling, WEIGH_DAYS.grower, WEIGH_DAYS.adult].map(([, last]) => last);
    expect(ends).toEqual(
      [80, 300, 1500].map((massG) => weighEveryDays({ adultFromG: 1000, bands: [{ belowG: 200 }] } as never, massG)),
    );
  });
  it.each<[string, Line, readonly [number, number]]>([
    ['a grower monthly', ['2026-03-01', 'animal-weighed', { weightG: 300 }, { subjects: [MOSS] }], [28, 30]],
    ['a hatchling every 1-2 weeks', ['2026-03-02', 'animal-weighed', { weightG: 80 }, { subjects: [MOSS] }], [7, 14]],
    ['an adult every 1-3 months', ['2026-03-02', 'animal-weighed', { weightG: 1500 }, { subjects: [MOSS] }], [30, 90]],
    ['a gravid one weekly', ['2026-03-02', 'ovulation-seen', {}, { subjects: [MOSS] }], [7, 7]],
    ['one that needs the vet weekly', ['2026-03-02', 'hold-placed', { reason: 'vet' }, { subjects: [MOSS] }], [7, 7]],
  ])('weighs %s', (_what, line, days) => {
    const ate: Line = [
      '2026-03-15',
      'prey-offered',
      { prey: 'rat-pup', count: 1, outcome: 'taken' },
      { subjects: [MOSS] },
    ];
    expect(weighedOf(line, ate)?.everyDays).toEqual(days);
  });
  it('weighs one that fasts weekly, however the keeper set it, and says why', () => {
    const own: Line = ['2026-03-02', 'interval-set', { task: 'weigh', everyDays: [40, 60] }, { subjects: [RACK] }];
    const ate: Line = [
      '2026-01-01',
      'prey-offered',
      { prey: 'rat-pup', count: 1, outcome: 'taken' },
      { subjects: [MOSS] },
    ];
    expect(weighedOf(own, ate)).toEqual({
      everyDays: [7, 7],
      because: 'no meal taken for 78 days: weekly (C: common practice, no source)',
    });
    const lately: Line = [
      '2026-03-10',
      'prey-offered',
      { prey: 'rat-pup', count: 1, outcome: 'taken' },
      { subjects: [MOSS] },
    ];
    expect(weighedOf(own, lately)?.everyDays).toEqual([40, 60]);
  });
});

describe('CARE-HANDLING: 48 hours after a meal nobody is weighed or moved', () => {
  const ate = (on: string): Line => [
    on,
    'prey-offered',
    { prey: 'rat-pup', count: 1, outcome: 'taken' },
    { subjects: [MOSS] },
  ];
  it.each([
    ['2026-03-20', 'held'],
    ['2026-03-19', 'held'],
    ['2026-03-18', 'due'],
  ])('one that ate on %s: a full clean is %s', (on, state) => {
    expect(lineOn(houseOf(ate(on)), 'clean', TUB).state).toBe(state);
  });
  it('says until when, and leaves water alone', () => {
    const facility = houseOf(ate('2026-03-19'));
    expect(lineOn(facility, 'clean', TUB).problem?.remedy).toContain('before 21 Mar 2026');
    expect(lineOn(facility, 'water', TUB).state).toBe('due');
    expect(NO_HANDLING_DAYS).toBe(2);
    expect(handledTooSoon([], ON)).toBeNull();
  });
});

describe('CARE-LOOK: a second look', () => {
  const again: Line = ['2026-03-18', 'health-looked', { well: false, words: 'wheezes' }, { subjects: [MOSS, TUB] }];
  it('stays due with its words, and is not ended by a look at the whole rack', () => {
    const line = lineOn(houseOf(again, looked('2026-03-19', SECOND, THIRD)), 'look', TUB);
    expect(line).toMatchObject({ state: 'overdue', words: 'look again, wheezes', problem: { code: 'look-again' } });
  });
  it('ends when that animal is looked at and is well', () => {
    const well: Line = ['2026-03-19', 'health-looked', { well: true }, { subjects: [MOSS, TUB] }];
    expect(lineOn(houseOf(again, well), 'look', TUB)).toMatchObject({ state: 'due', words: null, problem: null });
  });
  it('is daily for everybody else', () => {
    expect(states('look', looked('2026-03-19', ...HOMES))).toEqual(['due', 'due', 'due', 'due', 'due']);
    expect(states('look', looked('2026-03-18', ...HOMES))[0]).toBe('overdue');
  });
});

describe('CARE-PACE: what a day’s log says of a task', () => {
  const at = (minute: number, line: Line): Line => {
    const ms = Date.parse(`${ON}T08:00:00Z`) + minute * 60_000;
    return [line[0], line[1], line[2], { ...line[3], clock: [ms, 0], at: new Date(ms).toISOString() }] as Line;
  };
  const work = (...lines: readonly Line[]) => {
    const events = eventsOf(...lines);
    return dayWork(houseOf(...lines), events, ON).get('water');
  };
  it('counts homes and not the rack around them, by keeper', () => {
    expect(work(at(0, water(ON, RACK, ...TUBS)))).toMatchObject({ pieces: 3, byKeeper: [['Ada', 3]], perHour: null });
    expect(work(at(0, water(ON, ...EXHIBITS)))?.pieces).toBe(2);
    expect(work(at(0, water(ON, TUB, MOSS)))?.pieces).toBe(1);
  });
  it('is what came after the first entry by the time walked, breaks left out', () => {
    const walk = [
      at(0, water(ON, TUB)),
      at(4, water(ON, SECOND)),
      at(64, water(ON, THIRD)),
      at(66, water(ON, ...EXHIBITS)),
    ];
    expect(work(...walk)).toMatchObject({ pieces: 5, timed: 3, minutes: 6, perHour: 30 });
  });
  it('begins with the round, so that one touch for a rack has a pace', () => {
    const begun: Line = [ON, 'round-started', { task: 'water' }, { subjects: [RACK] }];
    const one = work(at(0, begun), at(6, water(ON, RACK, ...TUBS)));
    expect(one).toMatchObject({ perHour: 30, minutes: 6 });
    expect(one && sayPace(one)).toBe('30 an hour (3 in 6 minutes)');
  });
  it('says nothing after less than two minutes, and nothing of what was taken back', () => {
    expect(work(at(0, water(ON, TUB)), at(1, water(ON, SECOND)))?.perHour).toBeNull();
    expect(work(at(0, water(ON, TUB)), undo(ON, HOUSE.length, { subjects: [TUB] }))).toBeUndefined();
  });
});
