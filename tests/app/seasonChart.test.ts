import { describe, expect, it } from 'vitest';
import { chartOf } from '../../src/app/season/chart.ts';
import { sayRange, spoken } from '../../src/app/season/words.ts';
import { addDays, type Day, foldFacility, seasonBoard } from '../../src/core/index.ts';
import { ago, FERN, GORSE, HEATH, IVY, JUNIPER, KALE, LARCH, seasonLog, TODAY } from '../browser/seasonHouse.ts';

const FACILITY = foldFacility(seasonLog());
const CHART = chartOf(seasonBoard(FACILITY, TODAY), TODAY);
const rowOf = (name: string) => CHART.rows.find(({ season }) => season.animal.name === name);
/** The day on which something stands in the chart. */
const dayAt = (at: number): Day => addDays(CHART.from, Math.floor(at));

describe('the chart of a season', () => {
  it('has a row for every female in season, in the order of the board: the nearest window first', () => {
    const names = CHART.rows.map(({ season }) => season.animal.name);
    expect(names.slice(0, 1)).toEqual([IVY.name]);
    expect([...names].sort()).toEqual(
      [FERN, GORSE, HEATH, IVY, JUNIPER, KALE, LARCH]
        .map(({ name }) => name)
        .concat('Nettle')
        .sort(),
    );
  });

  it('runs over whole months, from the first mark to the last window and at least forty days on', () => {
    const months = CHART.months.map(({ days }) => days).reduce((sum, days) => sum + days, 0);
    expect(CHART.days).toBe(months);
    expect(CHART.from.slice(8)).toBe('01');
    expect(dayAt(CHART.today)).toBe(TODAY);
    expect(addDays(CHART.from, CHART.days) > addDays(TODAY, 40)).toBe(true);
    expect(CHART.months[0]?.year).toBe(CHART.from.slice(0, 4));
    expect(CHART.months.filter(({ words }) => words === 'Jan').every(({ year }) => year !== null)).toBe(true);
  });

  it('puts every mark on its day, pairings and locks with whom', () => {
    const marks = rowOf('Gorse')?.marks.map(({ shape, at }) => [shape, dayAt(at)]);
    expect(marks).toEqual([
      ['paired', ago(30)],
      ['lock', ago(29)],
    ]);
  });

  it('has the next window as a bracket over its days, and says how late it is', () => {
    const [window] = rowOf('Ivy')?.windows ?? [];
    const [next] = rowOf('Ivy')?.season.next ?? [];
    expect([window?.what, window?.from, window?.to]).toEqual(['pre-lay shed', next?.from, next?.to]);
    expect(dayAt(window?.at ?? 0)).toBe(next?.from);
    expect(dayAt((window?.until ?? 0) - 1)).toBe(next?.to);
    expect(window?.lateDays).toBeGreaterThan(0);
    expect(rowOf('Juniper')?.windows[0]?.lateDays).toBe(0);
  });

  it('draws an incubation from the laying to today, and a hatched one to its hatching', () => {
    const bars = [rowOf('Kale'), rowOf('Larch'), rowOf('Fern')].map((row) => row?.incubation ?? null);
    expect(bars.map((bar) => bar && [dayAt(bar.at), dayAt(bar.until)])).toEqual([
      [ago(62), TODAY],
      [ago(75), ago(12)],
      null,
    ]);
    expect(rowOf('Larch')?.marks.at(-1)?.shape).toBe('hatched');
  });

  it('draws a male in her tub from the day he was put there', () => {
    expect(rowOf('Fern')?.together.map((span) => [dayAt(span.at), dayAt(span.until)])).toEqual([[ago(1), TODAY]]);
    expect(rowOf('Gorse')?.together).toEqual([]);
  });

  it('of nobody in season is empty and stands on today', () => {
    const empty = chartOf([], TODAY);
    expect([empty.rows, empty.months.length > 1]).toEqual([[], true]);
  });
});

describe('words', () => {
  it.each([
    ['2026-12-26', '2027-01-03', '26 Dec – 3 Jan'],
    ['2026-12-03', '2026-12-09', '3 – 9 Dec'],
    ['2026-12-03', '2026-12-03', '3 Dec'],
  ])('of the window %s to %s are “%s”', (from, to, said) => {
    expect(sayRange(from as Day, to as Day)).toBe(said);
  });
  it('of core with a day in them are spoken', () => {
    expect(spoken('has waited longest, since 2026-11-05')).toBe('has waited longest, since 5 Nov 2026');
  });
});
