import type { Cursor } from './eventLog.ts';

/** The arrivals after `after` up to and with `until`. */
export interface Range {
  readonly after: Cursor;
  readonly until: Cursor;
}

/** Adds arrivals at the end of the ranges; neighbours grow together. */
export function addRange(ranges: readonly Range[], added: Range): readonly Range[] {
  if (added.until <= added.after) return ranges;
  const last = ranges.at(-1);
  if (last === undefined || last.until < added.after) return [...ranges, added];
  return [
    ...ranges.slice(0, -1),
    { after: Math.min(last.after, added.after), until: Math.max(last.until, added.until) },
  ];
}

/** The ranges without single arrivals. */
export function dropNumbers(ranges: readonly Range[], gone: readonly Cursor[]): readonly Range[] {
  const numbers = [...new Set(gone)].sort((a, b) => a - b);
  return ranges.flatMap((range) => dropFrom(range, numbers));
}

/** How many arrivals the ranges hold. */
export function countOf(ranges: readonly Range[]): number {
  return ranges.reduce((sum, range) => sum + range.until - range.after, 0);
}

function dropFrom(range: Range, numbers: readonly Cursor[]): Range[] {
  const left: Range[] = [];
  let after = range.after;
  for (const number of numbers) {
    if (number <= after || number > range.until) continue;
    if (number - 1 > after) left.push({ after, until: number - 1 });
    after = number;
  }
  return after < range.until ? [...left, { after, until: range.until }] : left;
}
