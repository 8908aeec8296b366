import {
  CARD_SLOTS,
  type CardContent,
  type CardLine,
  type CardSlot,
  type Day,
  ok,
  type Result,
  refuse,
  sayDayShort,
} from '../../src/core/index.ts';
import type { Sizing } from './flags.ts';
import type { Frame } from './frame.ts';
import { type Bench, type FrontContent, type SetFace, setBack, setFront } from './front.ts';
import type { Mark } from './marks.ts';
import type { Measure } from './measure.ts';
import { roomed } from './room.ts';
import { SETTINGS } from './settings.ts';
import { type Form, type Worded, type WordedCard, wordCard } from './words.ts';

/** One label's worth of a card: its marks without the code, from the label's top left corner. */
export interface Face {
  readonly marks: readonly Mark[];
  /** Every text on the face, top to bottom, left to right. */
  readonly lines: readonly string[];
  /** The shortest form that was used on it. */
  readonly form: Form;
  readonly back: boolean;
}

/** What a card is set with. */
export interface CardSetting {
  readonly frame: Frame;
  readonly measure: Measure;
  readonly printedOn: Day;
  readonly stockId: string;
}

/** The flags that stop a feed are a band across the card, the weightier one first; what else flies is a tab. */
const BANDS = ['vet', 'hold'] as const;

/**
 * Sets a card: on one face if it can be, with long forms in the largest sizes first, then shorter forms; else the lines
 * of the highest rank move to a second face. Errors: `glyph-missing`, `piece-unfit`. Nothing is cut or dropped.
 */
export function layCard(content: CardContent, setting: CardSetting): Result<readonly Face[]> {
  if (!setting.frame.holdsCode) return unfit(content, setting, []);
  const worded = wordCard(content, setting.measure);
  if (!worded.ok) return worded;
  const { lines, flags } = roomed(worded.value, setting.frame, setting.measure);
  const card = { lines: inReadingOrder(lines), flags };
  const front = benchOf(content, setting, smallPrint(content, setting.printedOn));
  const leaving = leavingOrder(card.lines);
  for (let moved = 0; moved <= leaving.length; moved++) {
    const gone = new Set(leaving.slice(0, moved));
    const kept = frontContent({ ...card, lines: card.lines.filter((line) => !gone.has(line.of)) });
    const face = firstOf((sizing) => setFront(kept, front, sizing));
    if (!face) continue;
    if (moved === 0) return ok([finish(face, false)]);
    const print = `second face · ${smallPrint(content, setting.printedOn)}`;
    const back = layBack(card, gone, benchOf(content, setting, print));
    return back ? ok([finish(face, false), finish(back, true)]) : unfit(content, setting, [...gone]);
  }
  return unfit(
    content,
    setting,
    content.lines.filter((line) => line.rank === 1),
  );
}

function layBack(card: WordedCard, gone: ReadonlySet<CardLine>, bench: Bench): SetFace | null {
  const name = card.lines.filter((line) => line.of.slot === 'name' && !gone.has(line.of)).slice(0, 1);
  const moved = card.lines.filter((line) => gone.has(line.of));
  return firstOf((sizing) => setBack(moved, name, bench, sizing));
}

function frontContent({ lines, flags }: WordedCard): FrontContent {
  const bySlot: Partial<Record<CardSlot, Worded<CardLine>[]>> = {};
  for (const line of lines) {
    const same = bySlot[line.of.slot];
    if (same) same.push(line);
    else bySlot[line.of.slot] = [line];
  }
  const hold = BANDS.map((kind) => flags.find((flag) => flag.of.kind === kind)).find((flag) => flag !== undefined);
  return { bySlot, hold, tabs: flags.filter((flag) => flag !== hold) };
}

/** How short the words may get, step by step; why and until when an animal is held is the last to be shortened. */
const LIMITS = [
  { limit: 'long', holdLimit: 'long' },
  { limit: 'medium', holdLimit: 'long' },
  { limit: 'short', holdLimit: 'long' },
  { limit: 'short', holdLimit: 'short' },
] as const;

/** The first way of setting that works: longest words first, and with each the largest sizes first. */
function firstOf(set: (sizing: Sizing) => SetFace | null): SetFace | null {
  for (const limits of LIMITS)
    for (const setting of SETTINGS) {
      const face = set({ setting, ...limits });
      if (face) return face;
    }
  return null;
}

function unfit(content: CardContent, setting: CardSetting, lines: readonly CardLine[]) {
  const slots = [...new Set(lines.map(({ slot }) => slot))].join(', ');
  return refuse('piece-unfit', { what: `card ${content.display} (${slots || 'its code'})`, stock: setting.stockId });
}

/** A set face with its texts in the order of reading. */
export function finish(face: SetFace, back: boolean): Face {
  const texts = face.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
  texts.sort((a, b) => a.yMm - b.yMm || a.xMm - b.xMm);
  return { ...face, back, lines: texts.map(({ text }) => text) };
}

function benchOf(content: CardContent, { frame, measure }: CardSetting, print: string): Bench {
  return {
    frame,
    measure,
    words: { id: measure.read(content.display, 'bold'), print: measure.read(print, 'regular') },
  };
}

function smallPrint(content: CardContent, printedOn: Day): string {
  return `printed ${sayDayShort(printedOn)} · rev ${content.revision.slice(0, 4)}`;
}

function inReadingOrder(lines: readonly Worded<CardLine>[]): Worded<CardLine>[] {
  return CARD_SLOTS.flatMap((slot) => lines.filter((line) => line.of.slot === slot));
}

/** The lines that may move to the second face, in the order in which they go: highest rank first, later slots first. */
function leavingOrder(lines: readonly Worded<CardLine>[]): readonly CardLine[] {
  const movable = new Set(lines.map((line) => line.of).filter(({ rank }) => rank > 1));
  return [...movable].reverse().sort((a, b) => b.rank - a.rank);
}
