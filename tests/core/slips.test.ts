import { describe, expect, it } from 'vitest';
import { foldFacility, type LogEvent, ledger, parseEvent } from '../../src/core/index.ts';
import { added, data, eventId, fed, id, type Line, log, REX, rex, site, TUB, undo, value, weighed } from './log.ts';

const D = '2026-03-09';
const amend = (n: number, payload: Record<string, unknown>, more = {}): Line => [
  D,
  'slip-made',
  { corrects: eventId(n), how: 'amend', payload },
  more,
];
const grams = (...lines: readonly Line[]): readonly number[] => rex({}, ...lines).weights.map((one) => one.weightG);

describe('an undo', () => {
  it('takes an event back', () => {
    expect(grams(weighed(D, 500), weighed(D, 5000), undo(D, 2))).toEqual([500]);
  });
  it('counts wherever it stands in the log, even before what it corrects', () => {
    const lines = [added(), weighed(D, 500), undo(D, 1)] as const;
    const events = log(...lines).reverse();
    expect(foldFacility(events).animals.get(REX)?.weights).toEqual([]);
  });
  it('taken back itself, lets the event stand again', () => {
    expect(grams(weighed(D, 500), undo(D, 1), undo(D, 2))).toEqual([500]);
  });
  it('of an undo of an undo takes it back again', () => {
    expect(grams(weighed(D, 500), undo(D, 1), undo(D, 2), undo(D, 3))).toEqual([]);
  });
  it('twice is as good as once', () => {
    expect(grams(weighed(D, 500), undo(D, 1), undo(D, 1))).toEqual([]);
  });
  it('of two of which one is taken back still counts', () => {
    expect(grams(weighed(D, 500), undo(D, 1), undo(D, 1), undo(D, 2))).toEqual([]);
  });
  it('of nothing that is there changes nothing', () => {
    expect(grams(weighed(D, 500), undo(D, 77))).toEqual([500]);
  });
  it('of the arrival makes the animal a stranger for whom events wait', () => {
    const facility = site(added(), weighed(D, 500), undo(D, 0));
    expect(facility.animals.has(REX)).toBe(false);
    expect(facility.strangers.get(REX)).toBe(3);
  });
  it('reaches the event by its id alone, whatever subject the slip names', () => {
    expect(grams(weighed(D, 500), undo(D, 1, { subjects: [TUB] }))).toEqual([]);
    expect(grams(weighed(D, 500), undo(D, 1, { subjects: [] }), undo(D, 2, { subjects: [id(9)] }))).toEqual([500]);
  });
  it('is not shown as a line of its own; the line that it took back is struck', () => {
    const lines = ledger(log(added(), weighed(D, 500), undo(D, 1)), String, REX);
    expect(lines.map((one) => [one.words, one.undone])).toEqual([
      ['Weighed 500 g', true],
      ['Added: Python regius', false],
    ]);
  });
});

describe('an amendment', () => {
  it('puts a whole new payload in the place of the old one', () => {
    expect(grams(weighed(D, 5000), amend(1, { weightG: 500 }))).toEqual([500]);
  });
  it('by the later writer wins', () => {
    const [early, late] = [{ clock: [5, 0] as const }, { clock: [9, 0] as const }];
    expect(grams(weighed(D, 5), amend(1, { weightG: 90 }, late), amend(1, { weightG: 50 }, early))).toEqual([90]);
  });
  it('that makes no sense leaves the event as it was', () => {
    expect(grams(weighed(D, 500), amend(1, { weightG: -4 }))).toEqual([500]);
    expect(grams(weighed(D, 500), amend(1, {}))).toEqual([500]);
  });
  it('taken back lets the old payload stand again', () => {
    expect(grams(weighed(D, 5000), amend(1, { weightG: 500 }), undo(D, 2))).toEqual([5000]);
  });
  it('does not bring back what was undone', () => {
    expect(grams(weighed(D, 5000), amend(1, { weightG: 500 }), undo(D, 1))).toEqual([]);
  });
  it('shows in the ledger as an amended line', () => {
    const [line] = ledger(log(added(), weighed(D, 5000), amend(1, { weightG: 500 })), String, REX);
    expect(line).toMatchObject({ words: 'Weighed 500 g', amended: true, undone: false });
  });
});

describe('damage', () => {
  it('a slip that undoes itself corrects nothing', () => {
    expect(grams(weighed(D, 500), undo(D, 2))).toEqual([500]);
  });
  it('slips in a ring correct nothing and end', () => {
    expect(grams(weighed(D, 500), undo(D, 3), undo(D, 2))).toEqual([500]);
    expect(grams(weighed(D, 500), undo(D, 3), undo(D, 4), undo(D, 2))).toEqual([500]);
  });
  it('a chain of 30,000 undos of undos ends without a full stack', () => {
    const chain = Array.from({ length: 30_000 }, (_, at): Line => undo(D, at + 1));
    const events = [added(), weighed(D, 500), ...chain].map((line, at) => value(parseEvent(data(line, at))));
    expect(foldFacility(events).animals.get(REX)?.weights).toHaveLength(1);
    expect(foldFacility(events.slice(0, -1)).animals.get(REX)?.weights).toHaveLength(0);
  });
  it('a slip of a newer version is kept and corrects nothing', () => {
    const newer = { ...data(undo(D, 1), 2), v: 2, payload: 'undo it' };
    const events = [...log(added(), weighed(D, 500)), value(parseEvent(newer))];
    expect(foldFacility(events).animals.get(REX)?.weights).toHaveLength(1);
  });
});

describe('an event that came twice', () => {
  it('counts once', () => {
    const events = log(added(), fed(D), weighed(D, 500));
    expect(foldFacility([...events, ...events])).toEqual(foldFacility(events));
    expect(foldFacility([...events, ...events]).animals.get(REX)?.mealsTaken).toBe(1);
  });
  it('counts once for a stranger as well', () => {
    const events = log(weighed(D, 500));
    expect(foldFacility([...events, ...events]).strangers.get(REX)).toBe(1);
  });
  it('with other content counts once, and the same one for any order of arrival', () => {
    const twin = (weightG: number): LogEvent => value(parseEvent(data(weighed(D, weightG), 1)));
    const weights = (...events: readonly LogEvent[]) =>
      foldFacility([...log(added()), ...events])
        .animals.get(REX)
        ?.weights.map((one) => one.weightG);
    expect(weights(twin(400), twin(500), twin(600))).toEqual([400]);
    expect(weights(twin(600), twin(500), twin(400))).toEqual([400]);
  });
});
