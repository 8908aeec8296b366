import type { Id } from '../ids.ts';

/** The three lengths of a line; print takes the first that fits. Short is never empty where long is not. */
export interface Forms {
  readonly long: string;
  readonly medium: string;
  readonly short: string;
}

/** Where a line stands on the card, in reading order. */
export const CARD_SLOTS = [
  'name',
  'sex',
  'species',
  'traitCode',
  'traitWords',
  'dates',
  'weight',
  'feed',
  'due',
  'pairings',
  'place',
] as const;
export type CardSlot = (typeof CARD_SLOTS)[number];

/** One line of a card. `strong` lines print in the bold cut; a line of low `rank` goes to the second face first. */
export interface CardLine extends Forms {
  readonly slot: CardSlot;
  readonly strong: boolean;
  /** 1 must stand on the first face; higher numbers may move to the second, highest first. */
  readonly rank: number;
}

/** A flag: a notched corner with its word in it. */
export interface CardFlag extends Forms {
  readonly kind: 'hold' | 'vet' | 'quarantine' | 'treatment' | 'not-for-sale' | 'two-people' | 'venomous' | 'weight';
}

/** What a card says: words and numbers, no paper. */
export interface CardContent {
  readonly id: Id;
  readonly display: string;
  readonly lines: readonly CardLine[];
  readonly flags: readonly CardFlag[];
  /** Fingerprint of all of the above; the printed-on date is not part of it. */
  readonly revision: string;
}
