import { POUND_G, type Problem, problem, type Result, refuse, weightInRange } from '../../src/core/index.ts';

/** A weight that a scale typed, and its line as it came. */
export interface ScaleReading {
  readonly weightG: number;
  readonly text: string;
}

/** Units of a weighing that are taken; everything else a scale can be set to is refused by its name. */
const PER_UNIT_G: Readonly<Record<string, number>> = {
  G: 1,
  KG: 1000,
  LB: POUND_G,
  LBS: POUND_G,
  OZ: POUND_G / 16,
};
const OTHER_UNITS = ['MG', 'T', 'CT', 'OZT', 'TOZ', 'DWT', 'GN', 'GR', 'PCS', 'PC', '%', 'N'];

/** What stands before the figure, in the general form of such lines (common practice, no source). */
const MARKS: Readonly<Record<string, 'plain' | 'moving' | 'over' | 'tare'>> = {
  ST: 'plain',
  S: 'plain',
  GS: 'plain',
  NT: 'plain',
  G: 'plain',
  N: 'plain',
  GROSS: 'plain',
  NET: 'plain',
  WT: 'plain',
  US: 'moving',
  U: 'moving',
  D: 'moving',
  SD: 'moving',
  OL: 'over',
  UL: 'over',
  OVER: 'over',
  UNDER: 'over',
  ERR: 'over',
  TR: 'tare',
  T: 'tare',
  TARE: 'tare',
  PT: 'tare',
};

const LINE = /^((?:[A-Z]{1,5}[,;:\s]+)*)([+-]?)\s*((?:\d[\d.,]*|[.,]\d+)?)\s*([A-Z%]*(?:\s+[A-Z]+)?)$/;
/** What some scales show and type instead of a figure when they have none. */
const NO_FIGURE =
  /^(?:O[.-]?L|U[.-]?L|OVER(?:LOAD)?|UNDER(?:LOAD)?|ERR(?:OR)?[\s.-]*\d*|[-=_]{3,})(?:\s*(?:G|KG|LB|LBS|OZ))?$/;
/** Both pounds and ounces in one line: it says one weight with two figures. */
const TWO_FIGURES = /^[A-Z,;:\s]*[+-]?\s*\d+\s*LBS?[\s:,]*\d+(?:[.,]\d+)?\s*OZ$/;
const PLAIN = /^\d*[.,]?\d+$/;
const GROUPED = /^(\d{1,3}(?:,\d{3})+)\.\d+$|^(\d{1,3}(?:\.\d{3})+),\d+$/;
const EITHER_WAY = /^[1-9]\d{0,2},\d{3}$/;
/** A bare figure of so many digits can be an id or a shop's number. */
const ID_DIGITS = 8;
const LONGEST = 60;

/**
 * Reads a line as scales type it: `  850.5 g`, `ST,GS,+000850.5g`, `0,8505 kg`; null for a text that is none. Errors:
 * `scale-unstable`, `scale-no-figure`, `scale-tare`, `scale-not-positive`, `scale-unit`, `number-ambiguous`, and those
 * of a weight. Eight bare digits or more are never a weight, for they can be an id.
 */
export function readScaleLine(text: string): Result<ScaleReading> | null {
  const line = text.trim().toUpperCase().replace(/\s+/g, ' ');
  if (line === '' || line.length > LONGEST) return null;
  const shown = text.trim().replace(/\s+/g, ' ');
  if (NO_FIGURE.test(line)) return refuse('scale-no-figure', { text: shown });
  if (TWO_FIGURES.test(line)) return refuse('scale-unit', { text: shown });
  const moves = line.includes('?');
  const found = LINE.exec(line.replaceAll('?', ' ').trim());
  if (found === null) return null;
  const [, before = '', sign = '', figure = '', after = ''] = found;
  const [unit, mark] = unitAndMark(after);
  const marks = [...before.split(/[,;:\s]+/), mark].filter((one) => one !== '');
  const meanings = marks.map((one) => (Object.hasOwn(MARKS, one) ? MARKS[one] : undefined));
  if (meanings.includes(undefined)) return null;
  const parts = { marks: marks.length, sign, figure, unit };
  if (!isScales(parts)) return null;
  const why = whyNot({ meanings, moves, parts, shown });
  return why === null ? weightOf(parts, shown) : { ok: false, problem: why };
}

/** `OZ T` is one unit; in `G US` the second word is a mark that some scales type at the end. */
function unitAndMark(after: string): readonly [unit: string, mark: string] {
  const [unit = '', word = ''] = after.split(' ');
  return OTHER_UNITS.includes(unit + word) ? [unit + word, ''] : [unit, word];
}

interface Parts {
  readonly marks: number;
  readonly sign: string;
  readonly figure: string;
  readonly unit: string;
}

/** Whether this is a scale's line at all: a figure with a unit, a mark, a sign or a decimal, or a few bare digits. */
function isScales({ marks, sign, figure, unit }: Parts): boolean {
  if (figure === '') return false;
  if (!PLAIN.test(figure) && !GROUPED.test(figure)) return false;
  if (unit !== '') return Object.hasOwn(PER_UNIT_G, unit) || OTHER_UNITS.includes(unit);
  return marks > 0 || sign !== '' || /[.,]/.test(figure) || (figure.length > 2 && figure.length < ID_DIGITS);
}

interface Line {
  readonly meanings: readonly (string | undefined)[];
  readonly moves: boolean;
  readonly parts: Parts;
  readonly shown: string;
}

function whyNot({ meanings, moves, parts, shown }: Line): Problem | null {
  if (meanings.includes('over')) return problem('scale-no-figure', { text: shown });
  if (moves || meanings.includes('moving')) return problem('scale-unstable', { text: shown });
  if (meanings.includes('tare')) return problem('scale-tare', { text: shown });
  const isZero = !/[1-9]/.test(parts.figure);
  if (isZero || parts.sign === '-') return problem('scale-not-positive', { text: shown });
  return Object.hasOwn(PER_UNIT_G, parts.unit) ? null : problem('scale-unit', { text: shown });
}

function weightOf({ figure, unit }: Parts, text: string): Result<ScaleReading> {
  const factor = PER_UNIT_G[unit] ?? 0;
  const weights = figuresOf(figure).map((one) => weightInRange(one * factor));
  const [first, second] = weights.filter((one) => one.ok);
  if (first !== undefined && second !== undefined)
    return refuse('number-ambiguous', { text, thousands: second.value, parts: first.value });
  const read = first ?? weights[0] ?? refuse('not-a-number', { text, example: '850.5 g' });
  return read.ok ? { ok: true, value: { weightG: read.value, text } } : read;
}

/** What a figure can be: where a comma stands before three digits, nobody can tell which of two. */
function figuresOf(figure: string): readonly number[] {
  if (EITHER_WAY.test(figure)) return [Number(figure.replace(',', '.')), Number(figure.replace(',', ''))];
  if (PLAIN.test(figure)) return [Number(figure.replace(',', '.'))];
  const [whole = '', part = ''] = figure.split(/[.,](?=\d+$)/);
  return [Number(`${whole.replace(/[.,]/g, '')}.${part}`)];
}
