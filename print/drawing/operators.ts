import { eanBars } from '../ean/ean13.ts';
import type {
  BarMark,
  CodeMark,
  DotMark,
  HatchMark,
  Mark,
  NotchMark,
  PathMark,
  RuleMark,
  TextMark,
  TotalMark,
} from '../layout/marks.ts';
import { PT_MM } from '../layout/measure.ts';
import type { ModuleRect } from '../qr/rectangles.ts';
import type { GlyphCodes } from './glyphCodes.ts';
import { exact, hundredths, mm, scale } from './numbers.ts';

/** The name of what holds the number of sheets, in page content. */
export const TOTAL = '/N';

/** Page content in mm from the top left corner, y downwards, for a page of that height. */
export function millimetres(heightMm: number): string {
  const points = scale(1 / PT_MM);
  return `${points} 0 0 -${points} 0 ${exact(heightMm / PT_MM)} cm\n`;
}

/**
 * The PDF operators of marks (ISO 32000-1, 8.4 to 9.4): shapes first, then all text as one text object. They speak from
 * the face's own corner, so that what two faces have alike is written alike, and packs to almost nothing.
 */
export function operatorsOf(marks: readonly Mark[], xMm: number, yMm: number, codes: GlyphCodes): string {
  let shapes = '';
  const texts: TextMark[] = [];
  for (const mark of marks)
    if (mark.kind === 'text') texts.push(mark);
    else shapes += shape(mark);
  const all = texts.length === 0 ? shapes : `${shapes}BT\n${textRuns(texts, codes)}ET\n`;
  return xMm === 0 && yMm === 0 ? all : `q 1 0 0 1 ${exact(xMm)} ${exact(yMm)} cm\n${all}Q\n`;
}

function shape(mark: Exclude<Mark, TextMark>): string {
  switch (mark.kind) {
    case 'rule':
      return rule(mark);
    case 'notch':
      return notch(mark);
    case 'hatch':
      return hatch(mark);
    case 'code':
      return code(mark);
    case 'bar':
      return bars(mark);
    case 'total':
      return total(mark);
    case 'path':
      return path(mark);
    case 'dot':
      return dot(mark);
    default:
      return mark satisfies never;
  }
}

/** The first run is set where it stands, with its y turned; each other is moved to from the one before. */
function textRuns(texts: readonly TextMark[], codes: GlyphCodes): string {
  let all = '';
  let font = '';
  let from: readonly [number, number] | null = null;
  for (const mark of texts) {
    const { name, encode } = codes[mark.cut];
    const wanted = `${name} ${exact(Math.round(mark.sizePt * PT_MM * 1000) / 1000)} Tf\n`;
    if (wanted !== font) all += wanted;
    font = wanted;
    const [x, y] = [Math.round(mark.xMm * 100), Math.round(mark.yMm * 100)];
    const where: string = from
      ? `${hundredths(x - from[0])} ${hundredths(from[1] - y)} Td`
      : `1 0 0 -1 ${hundredths(x)} ${hundredths(y)} Tm`;
    from = [x, y];
    const run = `${where}${encode(mark.text)}Tj\n`;
    all += mark.tone === 'paper' ? `1 g\n${run}0 g\n` : run;
  }
  return all;
}

/** Grey of a faint rule: seen beside text, and lost before it where a copier loses anything. */
const FAINT = '.7 g\n';

function rule(mark: RuleMark): string {
  const bar = `${mm(mark.xMm)} ${mm(mark.yMm)} ${mm(mark.widthMm)} ${mm(mark.heightMm)} re f\n`;
  return mark.faint ? `${FAINT}${bar}0 g\n` : bar;
}

function notch({ xMm: left, yMm: top, widthMm, heightMm, cutMm }: NotchMark): string {
  const [right, bottom] = [left + widthMm, top + heightMm];
  const points = [
    [left, top],
    [right - cutMm, top],
    [right, top + cutMm],
    [right, bottom],
    [left, bottom],
  ] as const;
  return `${line(points)} f\n`;
}

function line(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], at) => `${mm(x)} ${mm(y)} ${at === 0 ? 'm' : 'l'}`).join(' ');
}

function hatch(mark: HatchMark): string {
  const { xMm: left, yMm: top } = mark;
  const strokes = hatchStrokes(mark).map(
    ([x1, y1, x2, y2]) => `${mm(left + x1)} ${mm(top + y1)} m ${mm(left + x2)} ${mm(top + y2)} l`,
  );
  return `${mm(mark.strokeMm)} w ${strokes.join(' ')} S\n`;
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
function code(mark: CodeMark): string {
  const { moduleMm, insetModules, rectangles, base = [] } = mark;
  // With an inset the unit is the inset itself where a module is so many of them: whole numbers again.
  const parts = insetModules === 0 ? 1 : Math.round(1 / insetModules);
  const whole = insetModules === 0 || Math.abs(parts * insetModules - 1) < 1e-9;
  const unit = scale(whole ? moduleMm / parts : moduleMm);
  const grid = whole ? { parts, inset: insetModules === 0 ? 0 : 1 } : { parts: 1, inset: insetModules };
  const frame = `q ${unit} 0 0 ${unit} ${exact(mark.xMm)} ${exact(mark.yMm)} cm\n`;
  return `${frame}${knownBase(base, grid)}${rects(rectangles, grid)}f\nQ\n`;
}

interface Grid {
  /** Units in a module, and units that each edge loses. */
  readonly parts: number;
  readonly inset: number;
}

function rects(rectangles: readonly ModuleRect[], { parts, inset }: Grid): string {
  let body = '';
  if (inset === 0) for (const [x, y, width, height] of rectangles) body += `${x} ${y} ${width} ${height} re\n`;
  else
    for (const [x, y, width, height] of rectangles) {
      const [across, down] = [width * parts - 2 * inset, height * parts - 2 * inset];
      body += `${exact(x * parts + inset)} ${exact(y * parts + inset)} ${exact(across)} ${exact(down)} re\n`;
    }
  return body;
}

/** The bases that were written before, and how: a run has one or two of them, thousands of times. */
const bases = new WeakMap<readonly ModuleRect[], { readonly grid: Grid; readonly text: string }>();

function knownBase(base: readonly ModuleRect[], grid: Grid): string {
  const known = bases.get(base);
  if (known?.grid.parts === grid.parts && known.grid.inset === grid.inset) return known.text;
  const text = rects(base, grid);
  bases.set(base, { grid, text });
  return text;
}

function bars({ digits, xMm, yMm, moduleMm, heightMm, guardMm, insetMm }: BarMark): string {
  const strokes = eanBars(digits).map(({ at, width, guard }) => {
    const high = (guard ? guardMm : heightMm) - 2 * insetMm;
    return `${exact(at * moduleMm + insetMm)} 0 ${exact(width * moduleMm - 2 * insetMm)} ${exact(high)} re\n`;
  });
  return `q 1 0 0 1 ${exact(xMm)} ${exact(yMm + insetMm)} cm\n${strokes.join('')}f\nQ\n`;
}

/** What is drawn there is written at the end of the file: see {@link TOTAL}. */
function total({ xMm, yMm, sizePt }: TotalMark): string {
  const size = exact(sizePt * PT_MM);
  return `q ${size} 0 0 -${size} ${mm(xMm)} ${mm(yMm)} cm ${TOTAL} Do Q\n`;
}

function path({ xMm, yMm, points, fill, strokeMm, dashMm }: PathMark): string {
  const steps = line(points.map(([x, y]) => [xMm + x, yMm + y] as const));
  if (fill === 'ink') return `${steps} f\n`;
  const pen = `${mm(strokeMm)} w `;
  if (fill === 'paper') return `${pen}1 g ${steps} h B 0 g\n`;
  const dash = dashMm === 0 ? ['', ''] : [`[${mm(dashMm)}] 0 d `, ' [] 0 d'];
  return `${pen}${dash[0]}${steps} S${dash[1]}\n`;
}

/** How far the handles of four curves lie from their ends, in radii, so that they look round. */
const ROUND = 0.5523;

function dot({ xMm: x, yMm: y, radiusMm: r, fill, strokeMm }: DotMark): string {
  const k = r * ROUND;
  const to = (...along: readonly number[]): string => along.map((far, n) => mm((n % 2 === 0 ? x : y) + far)).join(' ');
  const ring = `${to(r, 0)} m ${to(r, k, k, r, 0, r)} c ${to(-k, r, -r, k, -r, 0)} c ${to(-r, -k, -k, -r, 0, -r)} c ${to(k, -r, r, -k, r, 0)} c`;
  return fill === 'ink' ? `${ring} f\n` : `${mm(strokeMm)} w 1 g ${ring} h B 0 g\n`;
}
