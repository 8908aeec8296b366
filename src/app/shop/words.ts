import { editionLeft, type ItemRecord, isSoldOut, sayPrice } from '../../core/index.ts';

/** `€12.50`; a bare figure where the site has no currency yet. */
export function priceWords(priceMinor: number, currency: string | null): string {
  return currency === null ? `${priceMinor} (no currency)` : sayPrice(priceMinor, currency);
}

/** How an item stands: a state of its own for a sign, and the words for it. */
export interface ItemStanding {
  readonly state: 'sold-out' | 'none' | 'low' | 'there';
  readonly words: string;
}

/** What is left of an item, and what a limited edition may still get. */
export function itemStanding(item: ItemRecord): ItemStanding {
  if (isSoldOut(item)) return { state: 'sold-out', words: 'sold out' };
  const more = editionLeft(item);
  const rest = more === null ? '' : `, ${more} of ${item.edition} still to make`;
  if (item.left === 0) return { state: 'none', words: `none left${rest}` };
  const isLow = item.lowAt !== null && item.left <= item.lowAt;
  return { state: isLow ? 'low' : 'there', words: `${item.left} left${isLow ? ', low' : ''}${rest}` };
}

/** `1 piece`, `12 pieces`. */
export function sayPieces(count: number): string {
  return `${count} ${count === 1 ? 'piece' : 'pieces'}`;
}
