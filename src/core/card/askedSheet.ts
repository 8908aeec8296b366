import type { Day } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import { askedLabels, LABEL_SHEETS } from './askedLabels.ts';
import { askedTags, TAG_SHEETS, type TagSheet } from './askedTags.ts';
import type { AskedLabels, LabelContent } from './label.ts';

/** Everything besides the cards that comes off the press: what hangs in the house, and what hangs in the shop. */
export const PRINT_SHEETS = [...LABEL_SHEETS, ...TAG_SHEETS] as const;
export type PrintSheet = (typeof PRINT_SHEETS)[number];

/** True for what hangs in the shop. */
export function isTagSheet(sheet: PrintSheet): sheet is TagSheet {
  return TAG_SHEETS.some((tag) => tag === sheet);
}

/** The pieces of a sheet that are asked for; see {@link askedLabels} and {@link askedTags}. */
export function askedSheet(facility: Facility, sheet: PrintSheet, only: string | null, on: Day): AskedLabels {
  return isTagSheet(sheet) ? askedTags(facility, sheet, only) : askedLabels(facility, sheet, only, on);
}

/** One thing of a sheet, however many copies of it there are: the word that asks for it again, and what it says. */
export interface AskedAgain {
  readonly ask: string;
  /** The same without the number of copies: what tells one thing of the sheet from another. */
  readonly key: string;
  readonly revision: string;
}

/** What to ask {@link askedSheet} for, with commas between, to get these labels again, in their own order. */
export function asksOf(sheet: PrintSheet, labels: readonly LabelContent[]): readonly AskedAgain[] {
  const counts = new Map<string, number>();
  const keyOf = ({ ask, id }: LabelContent): string => ask ?? id;
  for (const label of labels) counts.set(keyOf(label), (counts.get(keyOf(label)) ?? 0) + 1);
  const once = new Map(labels.map((label) => [keyOf(label), label]));
  return [...once].map(([key, { revision }]) => {
    const ask = isTagSheet(sheet) ? `${key}/${counts.get(key) ?? 1}` : key;
    return { ask, key, revision };
  });
}
