import { describe, expect, it } from 'vitest';
import { beginRound, companyFor, type Decision, type Id, namesIn, type RoundTask } from '../../../src/core/index.ts';
import type { Line } from '../log.ts';
import { AT, EXHIBITS, HALL, HERON, houseOf, MOSS, RACK, ROOM, TEAL, TUBS } from './house.ts';

const flag = (animal: Id, ...flags: readonly ('two-people' | 'venomous' | 'not-for-sale')[]): Line => [
  '2026-03-01',
  'animal-flagged',
  { flags: [...flags] },
  { subjects: [animal] },
];
const measured = (animal: Id, lengthMm: number): Line => [
  '2026-03-01',
  'animal-measured',
  { lengthMm, of: 'total' },
  { subjects: [animal] },
];
const twoAt = (place: Id): Line => [
  '2026-03-01',
  'place-set',
  { twoPeople: true, parent: HALL },
  { subjects: [place] },
];
interface Asked {
  readonly at?: Id;
  readonly task?: RoundTask;
  readonly second?: string;
  readonly without?: readonly Id[];
}
function begun(lines: readonly Line[], { at = HALL, task = 'water', second = '', without = [] }: Asked = {}): string {
  const decision: Decision = beginRound(houseOf(...lines), { place: at, task, second, without, keeper: 'Ada' }, AT);
  return decision.kind === 'refused' ? decision.problem.code : JSON.stringify(decision.drafts[0]?.payload);
}

describe('CARE-ALONE: a lone round is refused until somebody is named', () => {
  it.each<[string, Line]>([
    ['an animal flagged for two people', flag(HERON, 'two-people')],
    ['a venomous animal', flag(HERON, 'venomous')],
    ['a place of two people', twoAt(EXHIBITS[0])],
    ['a snake of 2.4 m', measured(HERON, 2400)],
  ])('for %s', (_what, line) => {
    for (const task of ['feeding', 'water', 'clean', 'weigh', 'look'] as const) {
      expect(begun([line], { task })).toBe('round-alone');
      expect(begun([line], { task, at: EXHIBITS[0] })).toBe('round-alone');
    }
    expect(begun([line], { second: 'Tilda' })).toBe('{"task":"water","second":"Tilda"}');
  });
  it('and not for others: another rack, a flag of the shop, a shorter snake, one that left', () => {
    expect(begun([flag(HERON, 'two-people')], { at: RACK })).toBe('{"task":"water"}');
    expect(begun([flag(HERON, 'not-for-sale')])).toBe('{"task":"water"}');
    expect(begun([measured(HERON, 2390)])).toBe('{"task":"water"}');
    expect(
      begun([flag(HERON, 'venomous'), ['2026-03-02', 'animal-left', { how: 'given' }, { subjects: [HERON] }]]),
    ).toBe('{"task":"water"}');
  });
  it('a room that is marked asks for two people in all that stands in it', () => {
    const room: Line = ['2026-03-01', 'place-set', { twoPeople: true, name: 'Long Room' }, { subjects: [ROOM] }];
    expect(begun([room], { at: TUBS[0] })).toBe('round-alone');
    expect(begun([room])).toBe('{"task":"water"}');
  });
  it('takes the site’s own length, and more people for longer snakes', () => {
    const rule: Line = ['2026-03-01', 'site-rules-set', { twoPeopleFromM: 2 }, { subjects: [] }];
    expect(begun([rule, measured(HERON, 2100)])).toBe('round-alone');
    const long = [measured(HERON, 3700)];
    expect(companyFor(houseOf(...long), HALL, { task: 'water' }).people).toBe(3);
    expect(begun(long, { second: 'Tilda' })).toBe('round-second-few');
    expect(begun(long, { second: 'Tilda and tilda' })).toBe('round-second-few');
    expect(begun(long, { second: 'Tilda, Corin' })).toBe('{"task":"water","second":"Tilda, Corin"}');
  });
  it('the keeper is no second person', () => {
    expect(begun([flag(HERON, 'two-people')], { second: ' ada ' })).toBe('round-second-same');
    expect(begun([flag(HERON, 'two-people')], { second: ' , ' })).toBe('round-alone');
  });
  it('may leave those homes out, if others are left', () => {
    const line = flag(HERON, 'two-people');
    expect(begun([line], { without: [EXHIBITS[0]] })).toBe('{"task":"water"}');
    expect(begun([line], { without: [EXHIBITS[0]], at: EXHIBITS[0] })).toBe('round-empty');
    expect(begun([line, flag(TEAL, 'venomous')], { without: [EXHIBITS[0]] })).toBe('round-alone');
  });
  it('says who, why, and the site’s own safety line for venomous animals', () => {
    const named: Line = [
      '2026-03-01',
      'site-named',
      { name: 'Quillmarsh', timeZone: 'UTC', safetyLine: 'Ring the bell first.' },
      { subjects: [] },
    ];
    const company = companyFor(houseOf(named, flag(HERON, 'venomous')), HALL, { task: 'water' });
    expect(company.reasons.map(({ words }) => words)).toEqual(['Heron: venomous']);
    expect(company.cautions).toEqual(['Ring the bell first.', expect.stringContaining('licensed')]);
    expect(companyFor(houseOf(flag(HERON, 'venomous')), HALL, { task: 'water' }).cautions[0]).toContain(
      'no safety line',
    );
    expect(companyFor(houseOf(), HALL, { task: 'water' })).toEqual({ reasons: [], people: 1, cautions: [] });
  });
  it('a pool asks only where there is one', () => {
    const pool: Line = [
      '2026-03-01',
      'place-set',
      { pool: { litres: 90, filtered: false }, parent: HALL },
      { subjects: [EXHIBITS[1]] },
    ];
    expect(begun([flag(HERON, 'two-people'), pool], { task: 'pool-drain' })).toBe('{"task":"pool-drain"}');
    expect(begun([flag(TEAL, 'two-people'), pool], { task: 'pool-drain' })).toBe('round-alone');
  });
});

describe('a round that cannot begin', () => {
  it.each<[string, Asked, string]>([
    ['at a place that nobody added', { at: MOSS }, 'unknown-id'],
    ['where nothing is for it', { task: 'pool-part' }, 'round-empty'],
    ['where nobody is treated', { task: 'treat' }, 'round-empty'],
  ])('%s', (_what, asked, code) => {
    expect(begun([], asked)).toBe(code);
  });
  it('on a day that lies ahead', () => {
    const ahead = { ...AT, today: '2026-03-19' as typeof AT.day };
    const decision = beginRound(houseOf(), { place: HALL, task: 'water', keeper: 'Ada' }, ahead);
    expect(decision.kind === 'refused' && decision.problem.code).toBe('date-future');
  });
});

describe('names', () => {
  it.each([
    ['Tilda', ['Tilda']],
    ['Tilda, Corin', ['Tilda', 'Corin']],
    ['Tilda and Sandy', ['Tilda', 'Sandy']],
    [' ; ', []],
  ])('%j are %j', (text, names) => {
    expect(namesIn(text)).toEqual(names);
  });
});
