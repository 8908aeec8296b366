import { canonicalJson, fingerprint } from '../events/index.ts';
import type { Id } from '../ids.ts';
import type { Problem } from '../problems.ts';
import type { Forms } from './content.ts';

/** The printed things besides the card of an animal. */
export const LABEL_KINDS = [
  'place',
  'clutch',
  'egg',
  'pairing',
  'treatment',
  'tube',
  'lot',
  'ware',
  'shed',
  'shelf',
  'hang',
  'sale',
  'exhibit',
  'stamp',
  'layout-test',
] as const;
export type LabelKind = (typeof LABEL_KINDS)[number];

/**
 * What a line of a label is: what is read from afar, the id, what is read with the label in hand, a side note. Papers of a
 * treatment also have a figure that must not be misread, a flag, a caution, and lines that are signed.
 */
export type LabelSlot = 'main' | 'id' | 'body' | 'small' | 'figure' | 'flag' | 'caution' | 'sign';

/** One line of a label, in reading order; `strong` lines print in the bold cut. */
export interface LabelLine extends Forms {
  readonly slot: LabelSlot;
  readonly strong: boolean;
}

/** What a label's code holds: an id, to which print may put the site's address, or a text as it is. */
export type LabelCode = { readonly says: 'id'; readonly id: Id } | { readonly says: 'text'; readonly text: string };

/** What a label says: words and numbers, no paper. */
export interface LabelContent {
  readonly kind: LabelKind;
  /** What lists name it by: an id of the site, a stamp's name, or `layout-test`. */
  readonly id: string;
  /** What a sentence calls it, such as `clutch tag 7RMB-N615`. */
  readonly called: string;
  readonly code: LabelCode;
  /** The thirteen digits of a bar code beside it, on what the shop sells. */
  readonly bar?: string;
  readonly lines: readonly LabelLine[];
  /** Fingerprint of all of the above; the day of printing is not part of it. */
  readonly revision: string;
  /** The word that asks for it again, where its id alone would bring others too. */
  readonly ask?: string;
}

/** Something that was asked for and is no label, and why. */
export interface LabelLeft {
  readonly id: string;
  readonly problem: Problem;
}

/** The labels that were asked for, in the order in which they are put up, and what of it cannot be. */
export interface AskedLabels {
  readonly labels: readonly LabelContent[];
  readonly left: readonly LabelLeft[];
}

/** A label with its fingerprint. */
export function labelOf(label: Omit<LabelContent, 'revision' | 'ask'>, ask?: string): LabelContent {
  const whole = { ...label, revision: fingerprint(canonicalJson(label)) };
  return ask === undefined ? whole : { ...whole, ask };
}

/** A line of a label; one text stands for all three forms. */
export function labelLine(slot: LabelSlot, strong: boolean, forms: Forms | string): LabelLine {
  const three = typeof forms === 'string' ? { long: forms, medium: forms, short: forms } : forms;
  return { slot, strong, long: three.long, medium: three.medium, short: three.short };
}
