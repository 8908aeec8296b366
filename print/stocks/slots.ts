import { ok, type Result, refuse } from '../../src/core/index.ts';
import { type BoxMm, labelBox, labelsPerPage, type Stock } from './stock.ts';

/** `walk`: along the labels of each sheet. `stack`: so that the cut piles, put on each other, are in order. */
export type Order = 'walk' | 'stack';

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
  const perPage = labelsPerPage(stock);
  if (!Number.isInteger(first) || first < 1 || first > perPage)
    return refuse('label-unknown', { first, stock: stock.id, count: perPage });
  const boxes = Array.from({ length: perPage }, (_none, at) => labelBox(stock, at + 1));
  const places = order === 'walk' ? inWalk(first, count) : inStack(first, count, perPage);
  return ok(
    places.map((place) => {
      const at = place % perPage;
      return { page: Math.floor(place / perPage) + 1, label: at + 1, boxMm: boxes[at] ?? labelBox(stock, at + 1) };
    }),
  );
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
