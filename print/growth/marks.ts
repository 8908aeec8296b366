import { type Day, type GrowthPlot, sayGrams } from '../../src/core/index.ts';
import type { Mark } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';
import { type GrowthPicture, growthPicture, type PlotRoom } from './geometry.ts';
import { across, feedBar, PENS, plotWords, SIGNS, type Sign, signAt, weighingDot, wordsWidth } from './signs.ts';

/** A growth plot in ink, from the top left corner of its field, and how high it is with its key. */
export interface DrawnGrowth {
  readonly marks: readonly Mark[];
  readonly heightMm: number;
}

const PLOT_MM = 60;
const KEY_ROW_MM = 4;

/** Draws the days of a plot on a field of that width; signs that do not occur are left out of the key. */
export function drawGrowth(
  plot: GrowthPlot,
  days: readonly [Day, Day],
  widthMm: number,
  measure: Measure,
): DrawnGrowth {
  const room: PlotRoom = {
    ...{ width: widthMm, height: PLOT_MM, axis: 14, edge: 3, marks: 7, feeds: 12, foot: 4.5 },
    ...{ dayWords: 15, weightWords: 8 },
  };
  const picture = growthPicture(plot, days, room);
  const key = keyMarks(usedSigns(plot), widthMm, measure);
  const below = key.marks.map((mark) => ({ ...mark, yMm: mark.yMm + PLOT_MM + 1 }));
  return {
    marks: [
      ...axes(picture, measure),
      ...peaks(picture, measure),
      ...layings(picture),
      ...weights(picture),
      ...feeds(picture),
      ...signs(picture),
      ...below,
    ],
    heightMm: PLOT_MM + 1 + key.heightMm,
  };
}

function axes(picture: GrowthPicture, measure: Measure): readonly Mark[] {
  const { left, right, top, bottom, ground, weightTicks, dayTicks, mostFeedG } = picture;
  const widthMm = right - left;
  const most = mostFeedG === null ? [] : [plotWords(sayGrams(mostFeedG), [left - 1.5, bottom + 4.5], 'end', measure)];
  return [
    ...weightTicks.flatMap(({ y, words }): Mark[] => [
      { kind: 'rule', faint: true, xMm: left, yMm: y, widthMm, heightMm: 0.1 },
      plotWords(words, [left - 1.5, y + 0.85], 'end', measure),
    ]),
    ...dayTicks.flatMap(({ x, words }): Mark[] => [
      { kind: 'rule', faint: true, xMm: x, yMm: top, widthMm: 0.1, heightMm: ground - top + 1 },
      plotWords(words, [x, ground + 3.6], 'middle', measure),
    ]),
    { kind: 'rule', xMm: left, yMm: ground, widthMm, heightMm: 0.22 },
    ...most,
  ];
}

/** Each stretch has its own peak; the last one’s grams stand at the right edge. */
function peaks({ peaks: all, right }: GrowthPicture, measure: Measure): readonly Mark[] {
  return all.flatMap(({ x, y, toX, lineY, of, tenPercentG }, at) => {
    const lines = [across(x, y, toX - x, PENS.peak), across(x, lineY, toX - x, PENS.line)];
    if (at < all.length - 1) return lines;
    const words = (grams: number, yMm: number) => plotWords(sayGrams(grams), [right - 0.3, yMm], 'end', measure);
    return [...lines, words(of.weightG, y - 0.8), words(tenPercentG, lineY + 2.9)];
  });
}

function layings({ layings: all, top, ground }: GrowthPicture): readonly Mark[] {
  return all.map(({ x }) => ({
    kind: 'path',
    xMm: x,
    yMm: top - 1,
    points: [
      [0, 0],
      [0, ground - top + 1],
    ],
    fill: 'line',
    ...PENS.laying,
  }));
}

function weights({ runs, dots }: GrowthPicture): readonly Mark[] {
  const joined = runs.filter((run) => run.length > 1);
  return [
    ...joined.map((run): Mark => {
      const points = run.map(({ x, y }) => [x, y] as const);
      return { kind: 'path', xMm: 0, yMm: 0, points, fill: 'line', ...PENS.weights };
    }),
    ...dots.map(({ x, y, of }) => weighingDot(x, y, of.doubted === true)),
  ];
}

function feeds({ feeds: bars, ground }: GrowthPicture): readonly Mark[] {
  return bars.map(({ x, width, height, of }) => feedBar(x - width / 2, ground, [width, height], of.taken));
}

function signs({ sheds, layings: laid, treatments, top }: GrowthPicture): readonly Mark[] {
  return [
    ...laid.map(({ x }) => signAt('laying', x, top - 2.2)),
    ...sheds.map(({ x }) => signAt('shed', x, top - 2.2)),
    ...treatments.map(({ x }) => signAt('treatment', x, top - 5)),
  ];
}

function usedSigns({ weights: all, stretches, feeds: fed, sheds, layings: laid, treatments }: GrowthPlot) {
  const used: Readonly<Record<Sign, boolean>> = {
    dot: all.length > 0,
    doubted: all.some(({ doubted }) => doubted === true),
    peak: stretches.length > 0,
    line: stretches.length > 0,
    taken: fed.some(({ taken }) => taken),
    refused: fed.some(({ taken }) => !taken),
    shed: sheds.length > 0,
    laying: laid.length > 0,
    treatment: treatments.length > 0,
  };
  return SIGNS.filter(([sign]) => used[sign]);
}

function keyMarks(used: ReturnType<typeof usedSigns>, widthMm: number, measure: Measure): DrawnGrowth {
  const marks: Mark[] = [];
  let [x, y] = [0, 2.2];
  for (const [sign, words] of used) {
    const width = 5.5 + wordsWidth(words, measure);
    if (x > 0 && x + width > widthMm) [x, y] = [0, y + KEY_ROW_MM];
    marks.push(signAt(sign, x + 2.4, y), plotWords(words, [x + 5.4, y + 0.9], 'start', measure));
    x += width + 4;
  }
  return { marks, heightMm: y + 2 };
}
