/** A bar from module `at` on, `width` modules wide; guard bars are longer. */
export interface Bar {
  readonly at: number;
  readonly width: number;
  readonly guard: boolean;
}

/**
 * An EAN-13 is 95 modules wide, with a blank rim of 11 at its left and 7 at its right (GS1 General Specifications). The
 * tables below are from memory; an independent decoder reads back what they make.
 */
export const EAN_MODULES = 95;
export const EAN_QUIET = { left: 11, right: 7 } as const;

/** Set A as widths of space, bar, space, bar; set C is A with bars for spaces, and set B is C mirrored. */
const SET_A = ['3211', '2221', '2122', '1411', '1132', '1231', '1114', '1312', '1213', '3112'] as const;
/** Which of the six left digits come from set B says the first digit, which has no bars of its own. */
const PARITY = [
  'AAAAAA',
  'AABABB',
  'AABBAB',
  'AABBBA',
  'ABAABB',
  'ABBAAB',
  'ABBBAA',
  'ABABAB',
  'ABABBA',
  'ABBABA',
] as const;
const GUARD = '111';
const CENTRE = '11111';

/** The bars of thirteen digits, from left to right; the check digit is taken as it is. Other texts are a bug: RangeError. */
export function eanBars(digits: string): readonly Bar[] {
  if (!/^\d{13}$/.test(digits)) throw new RangeError(`“${digits}” is not thirteen digits`);
  const [first = 0, ...rest] = [...digits].map(Number);
  const left = rest.slice(0, 6).map((digit, at) => leftWidths(digit, PARITY[first]?.[at] === 'B'));
  const right = rest.slice(6).map((digit) => SET_A[digit] ?? '');
  // Every part but the left digits starts with a bar; those start with a space, and the guard before them ends with a bar.
  const widths = [GUARD, ...left, CENTRE, ...right, GUARD].join('');
  const bars: Bar[] = [];
  let at = 0;
  for (const [index, sign] of [...widths].entries()) {
    const width = Number(sign);
    if (index % 2 === 0) bars.push({ at, width, guard: isGuard(at) });
    at += width;
  }
  return bars;
}

function leftWidths(digit: number, mirrored: boolean): string {
  const widths = SET_A[digit] ?? '';
  return mirrored ? [...widths].reverse().join('') : widths;
}

function isGuard(at: number): boolean {
  return at < 3 || at >= EAN_MODULES - 3 || (at >= 45 && at < 50);
}
