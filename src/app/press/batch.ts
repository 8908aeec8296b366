import type { PieceToPrint } from '../../../print/index.ts';
import { type LabelContent, PRINT_SHEETS, type PrintSheet, sayNumber } from '../../core/index.ts';
import type { PressCard } from './selection.ts';

/** What is printed: the cards of animals, or labels of one kind. */
export type What = 'card' | PrintSheet;

/** What goes to the press in one run. */
export type Batch =
  | { readonly what: 'card'; readonly cards: readonly PressCard[] }
  | { readonly what: PrintSheet; readonly labels: readonly LabelContent[] };

/** How a kind is called: in the list of kinds, and one and many of them in a sentence. */
interface WhatWords {
  readonly name: string;
  readonly one: string;
  readonly many: string;
  /** What stands in place of the button when there is nothing to print. */
  readonly none: string;
}

/** The kinds, in the order of the list. */
export const WHATS: readonly What[] = ['card', ...PRINT_SHEETS];

/** The words of every kind. */
export const WHAT_WORDS: Readonly<Record<What, WhatWords>> = {
  card: {
    name: 'Tub cards',
    one: 'card',
    many: 'cards',
    none: 'No card is out of date: nothing to print in this choice.',
  },
  place: {
    name: 'Place labels',
    one: 'place label',
    many: 'place labels',
    none: 'No place in this choice. Add a rack and its tubs in Books.',
  },
  clutch: {
    name: 'Clutch tags',
    one: 'clutch tag',
    many: 'clutch tags',
    none: 'No eggs lie: a clutch has its tag from the day on which its laying is written.',
  },
  egg: {
    name: 'Egg marks of a clutch',
    one: 'egg mark',
    many: 'egg marks',
    none: 'No eggs lie: a clutch has its marks from the day on which its laying is written.',
  },
  pairing: {
    name: 'Pairing cards',
    one: 'pairing card',
    many: 'pairing cards',
    none: 'No such pair now. Scan a male and a female with the stamp “paired”, or accept a season plan.',
  },
  treatment: {
    name: 'Treatment cards',
    one: 'treatment card',
    many: 'treatment cards',
    none: 'No treatment is under way. Enter the vet’s prescription on an animal’s record first.',
  },
  tube: {
    name: 'Tube feeding sheets',
    one: 'tube feeding sheet',
    many: 'tube feeding sheets',
    none: 'Nothing that the vet wrote goes by tube into a stomach now.',
  },
  lot: {
    name: 'Lot labels of the freezer',
    one: 'lot label',
    many: 'lot labels',
    none: 'The freezer is empty by the book: a lot has its label from the day on which it is received.',
  },
  ware: {
    name: 'Ware tags',
    one: 'ware tag',
    many: 'ware tags',
    none: 'No ware is on the shelf. Add one in Shop, and say how many came in.',
  },
  shed: {
    name: 'Shed tags',
    one: 'shed tag',
    many: 'shed tags',
    none: 'No shed item is there. Make one in Shop by scanning the animal that shed.',
  },
  shelf: {
    name: 'Shelf tags',
    one: 'shelf tag',
    many: 'shelf tags',
    none: 'No ware is on the shelf. Add one in Shop, and say how many came in.',
  },
  hang: {
    name: 'Hang tags',
    one: 'hang tag',
    many: 'hang tags',
    none: 'Nothing is on the shelf. Add a ware in Shop, and say how many came in.',
  },
  sale: {
    name: 'Sale tags of animals',
    one: 'sale tag',
    many: 'sale tags',
    none: 'No animal is on offer. Put one on offer on its record.',
  },
  exhibit: {
    name: 'Exhibit signs for visitors',
    one: 'exhibit sign',
    many: 'exhibit signs',
    none: 'No exhibit is lived in. Add one in Books and move an animal there.',
  },
  stamps: { name: 'Stamp sheet', one: 'stamp', many: 'stamps', none: 'No such stamp.' },
  'layout-test': {
    name: 'Scanner test (layout-test code)',
    one: 'test code',
    many: 'test codes',
    none: 'No such code.',
  },
};

/** The kind that an address asks for; cards where it asks for none or for something else. */
export function whatOf(text: string | undefined): What {
  return WHATS.find((what) => what === text) ?? 'card';
}

/** `1 card`, `12 egg marks`. */
export function sayPieces(what: What, count: number): string {
  const { one, many } = WHAT_WORDS[what];
  return `${sayNumber(count)} ${count === 1 ? one : many}`;
}

/** What print gets. */
export function piecesOf(batch: Batch): readonly PieceToPrint[] {
  return batch.what === 'card'
    ? batch.cards.map(({ content }) => ({ card: { content } }))
    : batch.labels.map((label) => ({ label }));
}

/** Differs when what would be printed does. */
export function batchKey(batch: Batch): string {
  const contents = batch.what === 'card' ? batch.cards.map(({ content }) => content) : batch.labels;
  return [batch.what, ...contents.map(({ id, revision }) => `${id}${revision}`)].join();
}

/** Where a piece's own page is; null for one that has none. */
export function addressOf(what: What, id: string): string | null {
  switch (what) {
    case 'card':
    case 'pairing':
    case 'treatment':
    case 'tube':
      return `/animal/${id.split('/')[0]}`;
    case 'sale':
      return `/animal/${id}`;
    case 'ware':
    case 'shed':
    case 'shelf':
    case 'hang':
      return `/item/${id}`;
    case 'exhibit':
    case 'place':
      return `/place/${id}`;
    case 'clutch':
    case 'egg':
      return `/clutch/${id}`;
    case 'lot':
      return `/lot/${id}`;
    case 'stamps':
    case 'layout-test':
      return null;
    default:
      return what satisfies never;
  }
}
