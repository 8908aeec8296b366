import type { CodeMark, DotMark, HatchMark, Mark, NotchMark, PathMark, RuleMark, TextMark } from '../layout/marks.ts';
import { PT_MM } from '../layout/measure.ts';
import type { GlyphCodes } from './glyphCodes.ts';

/** Page content in mm with y downwards, for a page whose origin pdfkit has put at the top left corner in points. */
export const MILLIMETRES = `${1 / PT_MM} 0 0 ${1 / PT_MM} 0 0 cm\n`;

/** The PDF operators of marks (ISO 32000-1, 8.4 to 9.4): shapes first, then all text as one text object. */
export function operatorsOf(marks: readonly Mark[], xMm: number, yMm: number, codes: GlyphCodes): string {
  let shapes = '';
  let texts = '';
  let font = '';
  for (const mark of marks) {
    if (mark.kind !== 'text') {
      shapes += shape(mark, xMm, yMm);
      continue;
    }
    const wanted = `${codes[mark.cut].name} ${thousandth(mark.sizePt * PT_MM)} Tf\n`;
    texts += (wanted === font ? '' : wanted) + textRun(mark, xMm, yMm, codes);
    font = wanted;
  }
  return texts === '' ? shapes : `${shapes}BT\n${texts}ET\n`;
}

function shape(mark: Exclude<Mark, TextMark>, xMm: number, yMm: number): string {
  switch (mark.kind) {
    case 'rule':
      return rule(mark, xMm, yMm);
    case 'notch':
      return notch(mark, xMm, yMm);
    case 'hatch':
      return hatch(mark, xMm, yMm);
    case 'code':
      return code(mark, xMm, yMm);
    case 'path':
      return path(mark, xMm, yMm);
    case 'dot':
      return dot(mark, xMm, yMm);
    default:
      return mark satisfies never;
  }
}

function textRun(mark: TextMark, xMm: number, yMm: number, codes: GlyphCodes): string {
  const run = `1 0 0 -1 ${hundredth(xMm + mark.xMm)} ${hundredth(yMm + mark.yMm)} Tm <${codes[mark.cut].encode(mark.text)}> Tj\n`;
  return mark.tone === 'paper' ? `1 g\n${run}0 g\n` : run;
}

/** Grey of a faint rule: seen beside text, and lost before it where a copier loses anything. */
const FAINT = '0.7 g\n';

function rule(mark: RuleMark, xMm: number, yMm: number): string {
  const bar = `${hundredth(xMm + mark.xMm)} ${hundredth(yMm + mark.yMm)} ${hundredth(mark.widthMm)} ${hundredth(mark.heightMm)} re f\n`;
  return mark.faint ? `${FAINT}${bar}0 g\n` : bar;
}

function notch(mark: NotchMark, xMm: number, yMm: number): string {
  const [left, top] = [xMm + mark.xMm, yMm + mark.yMm];
  const [right, bottom] = [left + mark.widthMm, top + mark.heightMm];
  const points = [
    [left, top],
    [right - mark.cutMm, top],
    [right, top + mark.cutMm],
    [right, bottom],
    [left, bottom],
  ] as const;
  return `${points.map(([x, y], at) => `${hundredth(x)} ${hundredth(y)} ${at === 0 ? 'm' : 'l'}`).join(' ')} f\n`;
}

function hatch(mark: HatchMark, xMm: number, yMm: number): string {
  const [left, top] = [xMm + mark.xMm, yMm + mark.yMm];
  const strokes = hatchStrokes(mark).map(
    ([x1, y1, x2, y2]) =>
      `${hundredth(left + x1)} ${hundredth(top + y1)} m ${hundredth(left + x2)} ${hundredth(top + y2)} l`,
  );
  return `${hundredth(mark.strokeMm)} w ${strokes.join(' ')} S\n`;
}

/** Rising strokes at 45°, cut at the field's edges, in mm from its top left corner. */
export function hatchStrokes(field: Pick<HatchMark, 'widthMm' | 'heightMm' | 'pitchMm'>) {
  const { widthMm: width, heightMm: height, pitchMm: pitch } = field;
  const strokes: (readonly [x1: number, y1: number, x2: number, y2: number])[] = [];
  for (let foot = pitch / 2 - height; foot < width; foot += pitch) {
    const start = Math.max(0, foot);
    const end = Math.min(width, foot + height);
    if (end > start) strokes.push([start, height - (start - foot), end, height - (end - foot)]);
  }
  return strokes;
}

/** One `cm` to whole modules, then whole numbers only: short, exact, and one fill so that no seam can show. */
function code(mark: CodeMark, xMm: number, yMm: number): string {
  const inset = mark.insetModules;
  const frame = `q ${exact(mark.moduleMm)} 0 0 ${exact(mark.moduleMm)} ${exact(xMm + mark.xMm)} ${exact(yMm + mark.yMm)} cm\n`;
  let body = '';
  for (const [x, y, width, height] of mark.rectangles)
    body +=
      inset === 0
        ? `${x} ${y} ${width} ${height} re\n`
        : `${exact(x + inset)} ${exact(y + inset)} ${exact(width - 2 * inset)} ${exact(height - 2 * inset)} re\n`;
  return `${frame}${body}f\nQ\n`;
}

function path({ points, fill, strokeMm, dashMm, ...at }: PathMark, xMm: number, yMm: number): string {
  const steps = points
    .map(([x, y], n) => `${hundredth(xMm + at.xMm + x)} ${hundredth(yMm + at.yMm + y)} ${n === 0 ? 'm' : 'l'}`)
    .join(' ');
  if (fill === 'ink') return `${steps} f\n`;
  const pen = `${hundredth(strokeMm)} w `;
  if (fill === 'paper') return `${pen}1 g ${steps} h B 0 g\n`;
  const dash = dashMm === 0 ? ['', ''] : [`[${hundredth(dashMm)}] 0 d `, ' [] 0 d'];
  return `${pen}${dash[0]}${steps} S${dash[1]}\n`;
}

/** How far the handles of four curves lie from their ends, in radii, so that they look round. */
const ROUND = 0.5523;

function dot({ radiusMm: r, fill, strokeMm, ...at }: DotMark, xMm: number, yMm: number): string {
  const [x, y, k] = [xMm + at.xMm, yMm + at.yMm, r * ROUND];
  const to = (...along: readonly number[]): string =>
    along.map((far, n) => hundredth((n % 2 === 0 ? x : y) + far)).join(' ');
  const ring = `${to(r, 0)} m ${to(r, k, k, r, 0, r)} c ${to(-k, r, -r, k, -r, 0)} c ${to(-r, -k, -k, -r, 0, -r)} c ${to(k, -r, r, -k, r, 0)} c`;
  return fill === 'ink' ? `${ring} f\n` : `${hundredth(strokeMm)} w 1 g ${ring} h B 0 g\n`;
}

function hundredth(value: number): number {
  return Math.round(value * 100) / 100;
}

function thousandth(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function exact(value: number): number {
  return Math.round(value * 1e5) / 1e5;
}
