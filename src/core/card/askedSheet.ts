import type { Day } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import { askedLabels, LABEL_SHEETS } from './askedLabels.ts';
import { askedTags, TAG_SHEETS, type TagSheet } from './askedTags.ts';
import type { AskedLabels } from './label.ts';

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
