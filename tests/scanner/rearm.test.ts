import { describe, expect, test } from 'vitest';
import { GONE_AFTER_ANOTHER_MS, GONE_MS, look, NOTHING_SEEN } from '../../scanner/index.ts';

/** Looks every `stepMs`; each letter is a code in view, `.` is an empty view. Gives the fresh codes of each look. */
function watch(looks: string, stepMs = 100): string {
  let state = NOTHING_SEEN;
  return looks
    .split(' ')
    .map((seen, i) => {
      const step = look(state, seen === '.' ? [] : [...seen], i * stepMs);
      state = step.state;
      return step.fresh.join('') || '.';
    })
    .join(' ');
}

describe('a code counts once while it stays in view', () => {
  test.each([
    ['a first look', 'A', 'A'],
    ['a card held still', 'A A A A A A A A A A A', 'A . . . . . . . . . .'],
    ['a flicker of half a second', 'A . . . . . A', 'A . . . . . .'],
    ['gone for 600 ms', 'A . . . . . A', 'A . . . . . .'],
    ['gone for 700 ms', 'A . . . . . . A', 'A . . . . . . A'],
    ['gone for 900 ms', 'A . . . . . . . . A', 'A . . . . . . . . A'],
    ['another came', 'A A B B', 'A . B .'],
    ['another came and the first came back after 300 ms', 'A B B A', 'A B . A'],
    ['another came and the first came back after 200 ms', 'A B A', 'A B .'],
    ['two cards read in turn', 'A B A B A B A B A B', 'A B . . . . . . . .'],
    ['two cards at once', 'AB AB A B AB', 'AB . . . .'],
    ['a third card beside two', 'AB AB ABC ABC', 'AB . C .'],
    ['the second of two stays armed by its own time', 'A B . . . . B', 'A B . . . . .'],
  ])('%s', (_, looks, fresh) => {
    expect(watch(looks)).toBe(fresh);
  });

  test('twice in one look counts once', () => {
    expect(look(NOTHING_SEEN, ['A', 'A'], 0).fresh).toEqual(['A']);
  });

  test('time in which nobody looked is not absence', () => {
    expect(watch('A A', 60_000)).toBe('A .');
    expect(watch('A . . A', 60_000)).toBe('A . . A');
  });

  test('a clock that steps back changes nothing', () => {
    const { state } = look(NOTHING_SEEN, ['A'], 1000);
    expect(look(state, ['A'], 0).fresh).toEqual([]);
  });

  test('the state before stays as it was', () => {
    const { state } = look(NOTHING_SEEN, ['A'], 0);
    look(state, ['B'], 100);
    expect([...state.codes.keys()]).toEqual(['A']);
    expect(NOTHING_SEEN.codes.size).toBe(0);
  });

  test('a code is forgotten once it counts again, so a day of scanning holds only what is in view', () => {
    let state = NOTHING_SEEN;
    for (let i = 0; i < 1000; i += 1) state = look(state, [`card ${i}`], i * 100).state;
    expect(state.codes.size).toBeLessThanOrEqual(GONE_MS / 100 + 1);
    expect(GONE_AFTER_ANOTHER_MS).toBeLessThan(GONE_MS);
  });
});
