import type { Mark, PathMark } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';

/** What a plot is made of, as its key names it. */
export const SIGNS = [
  ['dot', 'weighed'],
  ['doubted', 'weighed, asked about and confirmed'],
  ['peak', 'highest since the reset'],
  ['line', 'the highest less 10 %'],
  ['taken', 'fed, as high as its grams'],
  ['refused', 'refused'],
  ['shed', 'shed'],
  ['laying', 'laying or birth: the weights begin anew'],
  ['treatment', 'treatment'],
] as const;
/** One of them. */
export type Sign = (typeof SIGNS)[number][0];

const WORDS_PT = 7;
const DOT_MM = 0.62;
/** Pens: of the weights, of the peak, of its line less 10 %, and of a laying. */
export const PENS = {
  weights: { strokeMm: 0.22, dashMm: 0 },
  peak: { strokeMm: 0.12, dashMm: 0.5 },
  line: { strokeMm: 0.22, dashMm: 1.6 },
  laying: { strokeMm: 0.22, dashMm: 0.8 },
} as const satisfies Record<string, Pick<PathMark, 'strokeMm' | 'dashMm'>>;

/** A sign about a place, about 2 mm wide; the plot and its key draw the same ones. */
export function signAt(sign: Sign, x: number, y: number): Mark {
  switch (sign) {
    case 'dot':
    case 'doubted':
      return weighingDot(x, y, sign === 'doubted');
    case 'peak':
    case 'line':
      return across(x - 2.2, y, 4.4, PENS[sign]);
    case 'taken':
    case 'refused':
      return feedBar(x - 0.4, y + 1, [0.8, 2], sign === 'taken');
    case 'shed':
      return closed(x, y, [-0.8, 0, 0, -0.9, 0.8, 0, 0, 0.9], 'paper');
    case 'laying':
      return closed(x, y, [-1, -0.8, 1, -0.8, 0, 0.9], 'ink');
    case 'treatment':
      return closed(x, y, PLUS, 'ink');
    default:
      return sign satisfies never;
  }
}

// biome-ignore format: x and y of each corner, an arm of the plus a line.
const PLUS = [
  -0.25, -0.25, -0.25, -0.9, 0.25, -0.9,
  0.25, -0.25, 0.9, -0.25, 0.9, 0.25,
  0.25, 0.25, 0.25, 0.9, -0.25, 0.9,
  -0.25, 0.25, -0.9, 0.25, -0.9, -0.25,
];

/** A weighing; one that was asked about is hollow. */
export function weighingDot(xMm: number, yMm: number, doubted: boolean): Mark {
  const fill = doubted ? 'paper' : 'ink';
  return { kind: 'dot', xMm, yMm, radiusMm: doubted ? DOT_MM * 1.25 : DOT_MM, fill, strokeMm: 0.2 };
}

/** A feed on its ground line; a refused one is hollow. */
export function feedBar(xMm: number, ground: number, [width, height]: readonly [number, number], taken: boolean): Mark {
  if (taken) return { kind: 'rule', xMm, yMm: ground - height, widthMm: width, heightMm: height };
  return closed(xMm, ground, [0, 0, width, 0, width, -height, 0, -height], 'paper');
}

/** A line to the right. */
export function across(xMm: number, yMm: number, lengthMm: number, pen: Pick<PathMark, 'strokeMm' | 'dashMm'>): Mark {
  return { kind: 'path', xMm, yMm, points: paired([0, 0, lengthMm, 0]), fill: 'line', ...pen };
}

/** Words of the plot, set to begin, be centred or end at x. */
export function plotWords(
  text: string,
  [x, yMm]: readonly [number, number],
  anchor: 'start' | 'middle' | 'end',
  measure: Measure,
): Mark {
  const reading = measure.read(text, 'regular');
  const widthMm = reading.widthAtOnePt * WORDS_PT;
  const xMm = x - { start: 0, middle: widthMm / 2, end: widthMm }[anchor];
  return { kind: 'text', text: reading.text, cut: 'regular', sizePt: WORDS_PT, xMm, yMm, widthMm, tone: 'ink' };
}

/** How wide words of the plot are, in mm. */
export function wordsWidth(text: string, measure: Measure): number {
  return measure.read(text, 'regular').widthAtOnePt * WORDS_PT;
}

function closed(xMm: number, yMm: number, corners: readonly number[], fill: 'ink' | 'paper'): Mark {
  return { kind: 'path', xMm, yMm, points: paired(corners), fill, strokeMm: 0.16, dashMm: 0 };
}

function paired(corners: readonly number[]): PathMark['points'] {
  return corners.flatMap((x, at) => (at % 2 === 0 ? [[x, corners[at + 1] ?? 0] as const] : []));
}
