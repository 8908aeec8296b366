import { ok, type Result, refuse } from '../../src/core/index.ts';
import { type BoxMm, labelBox, labelsPerPage, type Stock } from './stock.ts';

/** `walk`: along the labels of each sheet. `stack`: so that the cut piles, put on each other, are in order. */
export type Order = 'walk' | 'stack';

/** The edge of the page over which a printer turns a sheet to print its back. */
export type Flip = 'long' | 'short';

/** Where to start on a used sheet (1 is its first label), and in what order. */
export interface SlotChoice {
  readonly first?: number | undefined;
  readonly order?: Order | undefined;
}

/** The page (from 1) and label (from 1) of a piece, with the label's box in mm. */
export interface Slot {
  readonly page: number;
  readonly label: number;
  readonly boxMm: BoxMm;
}

/**
 * The labels that `count` pieces get, one each, in the pieces' own order. Both orders use the same labels, so that only
 * the last sheet stays in part unused. Error: `label-unknown` when the sheet has no label `first`.
 */
export function slots(stock: Stock, count: number, choice: SlotChoice = {}): Result<readonly Slot[]> {
  const { first = 1, order = 'walk' } = choice;
  const made = slotMaker(stock, first);
  if (!made.ok) return made;
  const perPage = labelsPerPage(stock);
  const places = order === 'walk' ? inWalk(first, count) : inStack(first, count, perPage);
  return ok(places.map((place) => made.value(place - first + 1)));
}

/**
 * The labels from the first free one on, along the sheets: the slot of a number from 0. Error: `label-unknown` when the
 * sheet has no label `first`.
 */
export function slotMaker(stock: Stock, first = 1): Result<(at: number) => Slot> {
  const perPage = labelsPerPage(stock);
  if (!Number.isInteger(first) || first < 1 || first > perPage)
    return refuse('label-unknown', { first, stock: stock.id, count: perPage });
  const boxes = Array.from({ length: perPage }, (_none, at) => labelBox(stock, at + 1));
  return ok((at) => {
    const place = first - 1 + at;
    const label = (place % perPage) + 1;
    return { page: Math.floor(place / perPage) + 1, label, boxMm: boxes[label - 1] ?? labelBox(stock, label) };
  });
}

/** A label's place seen from the back of its sheet, once the sheet was turned over that edge. */
export function mirrored([x, y, width, height]: BoxMm, stock: Stock, flip: Flip): BoxMm {
  const isHigh = stock.pageHeightMm >= stock.pageWidthMm;
  // Over its long edge a sheet that is high is turned like a page of a book, and one that is wide like a calendar's.
  return (flip === 'long') === isHigh
    ? [rounded(stock.pageWidthMm - x - width), y, width, height]
    : [x, rounded(stock.pageHeightMm - y - height), width, height];
}

function inWalk(first: number, count: number): number[] {
  return Array.from({ length: Math.max(0, count) }, (_none, at) => first - 1 + at);
}

/** The same places, pile by pile: the top sheet's label first, then the one below it. */
function inStack(first: number, count: number, perPage: number): number[] {
  const end = first - 1 + count;
  const places: number[] = [];
  for (let label = 0; label < perPage; label++)
    for (let place = label < first - 1 ? label + perPage : label; place < end; place += perPage) places.push(place);
  return places;
}

function rounded(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
