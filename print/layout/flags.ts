import type { CardFlag } from '../../src/core/index.ts';
import { type Block, textMark } from './blocks.ts';
import type { Mark } from './marks.ts';
import { type Measure, PT_MM } from './measure.ts';
import { type Setting, TIGHTEST } from './settings.ts';
import { atLevel, FORMS, type Form, fitting, LEVELS, type Worded, type Wording, worseForm } from './words.ts';

const TAB_PAD_MM = 1.7;
const TAB_GAP_MM = 1.2;
const STRIP_GAP_MM = 0.9;
const HATCH = { pitchMm: 1.5, strokeMm: 0.5 } as const;
/** At least this much hatching stands on each side of a hold's words, or it would not be seen as a band. */
const HATCH_LEAST_MM = 3.5;
const BAND_PAD_MM = 1.6;
const RULE_MM = 0.4;
/** The cut corner, in parts of the tab's height. */
const NOTCH = 0.38;
const NO_TABS: readonly (readonly Tab[])[] = [[]];

/** From where to where, in mm across the label. */
export interface Span {
  readonly left: number;
  readonly right: number;
}

/** The sizes that are tried, and how short the words may get. */
export interface Sizing {
  readonly setting: Setting;
  readonly limit: Form;
  readonly holdLimit: Form;
}

/** A hold across the whole card: hatching, with its words in the clear between. Null when no wording fits. */
export function holdBand(
  flag: Worded<CardFlag>,
  width: Span,
  { setting, holdLimit }: Sizing,
  measure: Measure,
): Block | null {
  const across = width.right - width.left;
  // Why and until when is the last thing on a card to be shortened; it rather stands smaller, or moves under the code.
  const wording = fitting(flag, bandRoom(width), TIGHTEST.holdPt, holdLimit);
  if (!wording) return null;
  const sizePt = Math.min(setting.holdPt, Math.floor((bandRoom(width) / wording.widthAtOnePt) * 10) / 10);
  const size = sizePt * PT_MM;
  const heightMm = bandHeight(setting);
  const xMm = width.left + HATCH_LEAST_MM + BAND_PAD_MM;
  const rest = xMm + wording.widthAtOnePt * sizePt + BAND_PAD_MM;
  const draw = (topMm: number, onto: Mark[]) => {
    const rule = { kind: 'rule', xMm: width.left, widthMm: across, heightMm: RULE_MM } as const;
    // The strokes' square ends stay under the rules.
    const field = { kind: 'hatch', yMm: topMm + RULE_MM / 2, heightMm: heightMm - RULE_MM, ...HATCH } as const;
    onto.push(
      { ...field, xMm: width.left, widthMm: HATCH_LEAST_MM },
      { ...field, xMm: rest, widthMm: width.right - rest },
      { ...rule, yMm: topMm },
      { ...rule, yMm: topMm + heightMm - RULE_MM },
      textMark({ wording, cut: 'bold', xMm }, sizePt, topMm + (heightMm + size * measure.capHeight) / 2),
    );
  };
  return { heightMm, gapMm: 0, stretch: 0, form: wording.form, draw };
}

/** The width that a hold's words may have. */
export function bandRoom({ left, right }: Span): number {
  return right - left - 2 * (HATCH_LEAST_MM + BAND_PAD_MM);
}

/** The width that a flag's words may have. */
export function tabRoom({ left, right }: Span): number {
  return right - left - 2 * TAB_PAD_MM;
}

/** The height of a hold's band in mm. */
export function bandHeight(setting: Setting): number {
  return setting.holdPt * PT_MM * (0.12 + setting.leading);
}

interface Tab {
  readonly wording: Wording;
  readonly widthMm: number;
}

/** The foot of a face: the small print at the left, the flags' tabs at the right, in strips from the bottom up. */
export interface Foot {
  readonly heightMm: number;
  readonly form: Form;
  /** Adds its marks, with its bottom edge at that height. */
  draw(bottomMm: number, onto: Mark[]): void;
}

/** Sets the small print and the tabs. Null when a flag does not fit: flags are never moved or dropped. */
export function footOf(
  print: Omit<Wording, 'form'>,
  flags: readonly Worded<unknown>[],
  width: Span,
  { setting, limit }: { readonly setting: Pick<Setting, 'flagPt' | 'footPt'>; readonly limit: Form },
  measure: Measure,
): Foot | null {
  const across = width.right - width.left;
  const printWidth = print.widthAtOnePt * setting.footPt;
  if (printWidth > across) return null;
  const strips = tabStrips(flags, across, across - printWidth - 2 * TAB_GAP_MM, setting.flagPt, limit);
  if (!strips) return null;
  const tabMm = setting.flagPt * PT_MM * 1.4;
  const printMm = setting.footPt * PT_MM;
  const lowestMm = strips[0]?.length === 0 ? printMm : tabMm;
  let form: Form = 'long';
  for (const strip of strips) for (const { wording } of strip) form = worseForm(form, wording.form);
  const draw = (bottomMm: number, onto: Mark[]) => {
    onto.push(textMark({ wording: print, cut: 'regular', xMm: width.left }, setting.footPt, bottomMm - 0.25 * printMm));
    let bottom = bottomMm;
    for (const [at, strip] of strips.entries()) {
      drawStrip(strip, { right: width.right, bottom, height: tabMm }, setting.flagPt, measure, onto);
      bottom -= (at === 0 ? lowestMm : tabMm) + STRIP_GAP_MM;
    }
  };
  return { heightMm: lowestMm + (strips.length - 1) * (tabMm + STRIP_GAP_MM), form, draw };
}

/** The strips with the longest words among those that need the fewest, for shorter words save whole rows. */
function tabStrips(
  flags: readonly Worded<unknown>[],
  across: number,
  besidePrint: number,
  sizePt: number,
  limit: Form,
): readonly (readonly Tab[])[] | null {
  if (flags.length === 0) return NO_TABS;
  let best: readonly (readonly Tab[])[] | null = null;
  for (const form of FORMS.slice(0, LEVELS[limit] + 1)) {
    const tabs = flags.map((flag) => tabOf(flag, across, sizePt, form));
    if (tabs.includes(null)) continue;
    const strips = packed(
      tabs.flatMap((tab) => tab ?? []),
      across,
      besidePrint,
    );
    if (!best || strips.length < best.length) best = strips;
  }
  return best;
}

/** A flag in that form, or in the next longer one that it has. */
function tabOf(flag: Worded<unknown>, across: number, sizePt: number, form: Form): Tab | null {
  const wording = atLevel(flag, LEVELS[form]);
  if (!wording) return null;
  const widthMm = wording.widthAtOnePt * sizePt + 2 * TAB_PAD_MM;
  return widthMm <= across ? { wording, widthMm } : null;
}

/** Strips from the bottom up; the lowest shares its room with the small print and may be empty. */
function packed(tabs: readonly Tab[], across: number, besidePrint: number): readonly (readonly Tab[])[] {
  const strips: Tab[][] = [[]];
  let room = besidePrint;
  for (const tab of tabs.toReversed()) {
    if (tab.widthMm > room) {
      strips.push([]);
      room = across;
    }
    strips.at(-1)?.unshift(tab);
    room -= tab.widthMm + TAB_GAP_MM;
  }
  return strips;
}

interface StripPlace {
  readonly right: number;
  readonly bottom: number;
  readonly height: number;
}

function drawStrip(strip: readonly Tab[], place: StripPlace, sizePt: number, measure: Measure, onto: Mark[]): void {
  const { bottom, height } = place;
  let xMm = place.right + TAB_GAP_MM;
  for (const tab of strip) xMm -= tab.widthMm + TAB_GAP_MM;
  const baseline = bottom - (height - sizePt * PT_MM * measure.capHeight) / 2;
  for (const { wording, widthMm } of strip) {
    onto.push({ kind: 'notch', xMm, yMm: bottom - height, widthMm, heightMm: height, cutMm: height * NOTCH });
    onto.push(textMark({ wording, cut: 'bold', xMm: xMm + TAB_PAD_MM }, sizePt, baseline, 'paper'));
    xMm += widthMm + TAB_GAP_MM;
  }
}
