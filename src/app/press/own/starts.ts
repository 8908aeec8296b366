import { STOCKS } from '../../../../print/stocks/list.ts';
import { ownStock } from '../../../../print/stocks/own.ts';
import type { Payload } from '../../../core/index.ts';
import { type StockText, textOfStock } from './stockDraft.ts';

/** What a form about a stock begins from: nothing, one of the site's own to change, or a copy of one that is known. */
export type StockStart = 'sheet' | 'roll' | `own-${string}` | `copy ${string}`;

/** Letter paper is cut in inches, and its labels are described in them. */
const LETTER_MM = 215.9;

/**
 * The start that an address asks for: `?id=` changes an own one, `?from=` copies one. Where it asks for none, the one whose form
 * was left half typed.
 */
export function startOf(
  query: Readonly<Record<string, string>>,
  own: readonly Payload<'own-stock-set'>[],
  halfTyped: string | null = null,
): StockStart {
  const [id, from] = [query['id'], query['from']];
  if (id !== undefined && own.some(({ stock }) => stock === id)) return id as `own-${string}`;
  if (from !== undefined) return `copy ${from}`;
  return id === undefined && halfTyped !== null ? keptStart(halfTyped, own) : 'sheet';
}

function keptStart(text: string, own: readonly Payload<'own-stock-set'>[]): StockStart {
  if (text === 'roll') return text;
  if (text.startsWith('copy ')) return `copy ${text.slice('copy '.length)}`;
  // One that was taken off the list meanwhile is changed no more.
  const mine = own.find(({ stock }) => stock === text);
  return mine === undefined ? 'sheet' : (mine.stock as `own-${string}`);
}

/** The form as it begins; a start that is gone by now begins from nothing. */
export function textOfStart(start: StockStart, own: readonly Payload<'own-stock-set'>[]): StockText {
  if (start === 'sheet' || start === 'roll')
    return start === 'sheet' ? SHEET : { ...NOTHING, isRoll: true, printerInsetMm: '1.5' };
  const id = start.startsWith('copy ') ? start.slice('copy '.length) : start;
  const isCopy = start.startsWith('copy ');
  const mine = own.find(({ stock }) => stock === id);
  if (mine !== undefined) {
    const { stock, typedIn, removed: _removed, ...lengths } = mine;
    return textOfStock({ id: stock, ...lengths }, typedIn, isCopy ? '' : mine.name);
  }
  const ours = STOCKS.find((stock) => stock.id === id);
  return ours === undefined ? SHEET : textOfStock(ours, ours.pageWidthMm === LETTER_MM ? 'inch' : 'mm', '');
}

/** The site's own stocks, and why one of them cannot be printed on, as far as that is so. */
export function ownStocks(own: readonly Payload<'own-stock-set'>[]) {
  return own.map((set) => {
    const read = ownStock(set);
    return { id: set.stock, name: set.name, problem: read.ok ? null : read.problem };
  });
}

const NOTHING: StockText = {
  name: '',
  unit: 'mm',
  isRoll: false,
  pageWidthMm: '',
  pageHeightMm: '',
  labelWidthMm: '',
  labelHeightMm: '',
  columns: '',
  rows: '',
  firstXMm: '',
  firstYMm: '',
  pitchXMm: '',
  pitchYMm: '',
  printerInsetMm: '',
};
const SHEET: StockText = { ...NOTHING, pageWidthMm: '210', pageHeightMm: '297', printerInsetMm: '5' };
