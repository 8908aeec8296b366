import type { PdfPage } from './ownPdf.ts';
import { blankCanvas, type Canvas, type Dot, noCanvas, type Raster } from './raster.ts';
import { tokens } from './tokens.ts';

/** Scale and shift along each axis: print turns nothing. */
interface Frame {
  readonly sx: number;
  readonly sy: number;
  readonly dx: number;
  readonly dy: number;
}

interface Pen {
  readonly frame: Frame;
  readonly tone: number;
  readonly strokePt: number;
}

const INK = 0;
const PT_MM = 25.4 / 72;
/** Capitals of the type, in parts of its size, and the share of a sign's width that has ink. */
const CAPS = 0.67;
const INKED = 0.8;
/** A code that the file does not explain. */
const UNTOLD = '\ufffd';
/** Lines that stand for one curve. */
const CURVE_STEPS = 6;

/**
 * Draws a page of {@link openOwnPdf} onto pixels, from the operators in the file (ISO 32000-1, 8.4 to 9.4). Signs are drawn
 * as bars of their height and width: here it matters only whether words lie over a code. Dashes are drawn whole, and the
 * number of sheets at the ruler not at all. `buffer` is used again. Throws an Error at an operator that print never writes.
 */
export function drawPage(page: PdfPage, dotsPerMm: number, buffer?: Uint8ClampedArray): DrawnPicture {
  const perPt = dotsPerMm * PT_MM;
  const [width, height] = [Math.ceil(page.widthPt * perPt - 1e-3), Math.ceil(page.heightPt * perPt - 1e-3)];
  return drawOn(blankCanvas(width, height, dotsPerMm, buffer), page);
}

/** The words of a page, in the order in which it draws them, and whether each lies on it whole. Nothing is drawn. */
export function wordsOf(page: PdfPage): readonly DrawnWords[] {
  const [width, height] = [page.widthPt * PT_MM, page.heightPt * PT_MM];
  return drawOn(noCanvas(width, height, 1), page).words;
}

/** A run of words as the file says it. */
export interface DrawnWords {
  readonly text: string;
  readonly isOnPage: boolean;
}

/** A page on pixels, with its words. */
export interface DrawnPicture extends Raster {
  readonly words: readonly DrawnWords[];
}

function drawOn(canvas: Canvas, page: PdfPage): DrawnPicture {
  const perPt = canvas.dotsPerMm * PT_MM;
  const said: DrawnWords[] = [];
  const easel = easelOf(canvas, { sx: perPt, sy: -perPt, dx: 0, dy: page.heightPt * perPt }, page, said);
  let words: (number | Uint8Array | string)[] = [];
  for (const token of tokens(page.content)) {
    if (typeof token !== 'object' || token instanceof Uint8Array) words.push(token);
    else {
      easel(token.operator, words);
      words = [];
    }
  }
  return { ...canvas, words: said };
}

type Operand = number | Uint8Array | string;

/** What an operator does to the page; keeps the pen, the path and the place of text. */
function easelOf(
  canvas: Canvas,
  start: Frame,
  { advances, signs }: PdfPage,
  said: DrawnWords[],
): (operator: string, words: Operand[]) => void {
  let pen: Pen = { frame: start, tone: INK, strokePt: 1 };
  const kept: Pen[] = [];
  let boxes: (readonly [Dot, Dot])[] = [];
  let lines: Dot[][] = [];
  let text = { x: 0, y: 0, size: 0, font: '', isTurned: false };

  const dot = (x: number, y: number): Dot => {
    const { sx, sy, dx, dy } = pen.frame;
    return [x * sx + dx, y * sy + dy];
  };
  const fill = () => {
    for (const [from, to] of boxes) canvas.box(from, to, pen.tone);
    for (const line of lines) canvas.field(line, pen.tone);
  };
  const stroke = (isClosed: boolean) => {
    const half = (Math.abs(pen.frame.sx) * pen.strokePt) / 2;
    for (const line of lines) {
      const all = isClosed && line[0] !== undefined ? [...line, line[0]] : line;
      for (let at = 1; at < all.length; at++) {
        const [a, b] = [all[at - 1], all[at]];
        if (a && b) canvas.field(around(a, b, half), INK);
      }
    }
  };
  const done = () => {
    boxes = [];
    lines = [];
  };
  const curve = (numbers: readonly number[]) => {
    const line = lines.at(-1);
    const from = line?.at(-1);
    if (line === undefined || from === undefined) return;
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = numbers;
    const ends = [from, dot(x1, y1), dot(x2, y2), dot(x3, y3)] as const;
    for (let step = 1; step <= CURVE_STEPS; step++) line.push(along(ends, step / CURVE_STEPS));
  };
  const write = (codes: Uint8Array) => {
    const [widths, own] = [advances.get(text.font) ?? [], signs.get(text.font) ?? []];
    let x = text.x;
    let line = '';
    for (let at = 0; at + 1 < codes.length; at += 2) {
      const code = ((codes[at] ?? 0) << 8) | (codes[at + 1] ?? 0);
      const wide = ((widths[code] ?? 500) / 1000) * text.size;
      const rim = (wide * (1 - INKED)) / 2;
      canvas.box(dot(x + rim, text.y), dot(x + wide - rim, text.y - CAPS * text.size), pen.tone);
      x += wide;
      line += own[code] ?? UNTOLD;
    }
    if (line !== '')
      said.push({ text: line, isOnPage: isOn(canvas, dot(text.x, text.y - CAPS * text.size), dot(x, text.y)) });
  };

  return (operator, words) => {
    const numbers = words.filter((word) => typeof word === 'number');
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    switch (operator) {
      case 'q':
        kept.push(pen);
        return;
      case 'Q':
        pen = kept.pop() ?? pen;
        return;
      case 'cm': {
        if (b !== 0 || c !== 0) throw new Error('a page turns what it draws');
        const { sx, sy, dx, dy } = pen.frame;
        pen = { ...pen, frame: { sx: a * sx, sy: d * sy, dx: e * sx + dx, dy: f * sy + dy } };
        return;
      }
      case 'w':
        pen = { ...pen, strokePt: a };
        return;
      case 'g':
        pen = { ...pen, tone: Math.round(a * 255) };
        return;
      case 're':
        boxes.push([dot(a, b), dot(a + c, b + d)]);
        return;
      case 'm':
        lines.push([dot(a, b)]);
        return;
      case 'l':
        lines.at(-1)?.push(dot(a, b));
        return;
      case 'c':
        curve(numbers);
        return;
      case 'f':
        fill();
        return done();
      case 'S':
        stroke(false);
        return done();
      case 'B':
        fill();
        stroke(true);
        return done();
      case 'n':
        return done();
      case 'Tf':
        text = { ...text, font: String(words[0] ?? '').slice(1), size: a };
        return;
      case 'Tm':
        text = { ...text, x: e, y: f };
        return;
      case 'Td':
        // Text stands with its y turned, so that down the page is down in it.
        text = { ...text, x: text.x + a, y: text.y - b };
        return;
      case 'Tj':
        for (const word of words) if (word instanceof Uint8Array) write(word);
        return;
      case 'h':
      case 'd':
      case 'BT':
      case 'ET':
      case 'Do':
        return;
      default:
        throw new Error(`a page says “${operator}”, which print never writes`);
    }
  };
}

/** To a thousandth of a pixel, as the file rounds. */
function isOn({ width, height }: Canvas, [left, top]: Dot, [right, bottom]: Dot): boolean {
  return left > -1e-3 && top > -1e-3 && right < width + 1e-3 && bottom < height + 1e-3;
}

function along(ends: readonly [Dot, Dot, Dot, Dot], t: number): Dot {
  const s = 1 - t;
  const shares = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  const sum = (axis: 0 | 1) => ends.reduce((all, end, at) => all + end[axis] * (shares[at] ?? 0), 0);
  return [sum(0), sum(1)];
}

/** The four corners of a stroke with blunt ends. */
function around([x1, y1]: Dot, [x2, y2]: Dot, half: number): readonly Dot[] {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [nx, ny] = [(-(y2 - y1) / long) * half, ((x2 - x1) / long) * half];
  return [
    [x1 + nx, y1 + ny],
    [x2 + nx, y2 + ny],
    [x2 - nx, y2 - ny],
    [x1 - nx, y1 - ny],
  ];
}
