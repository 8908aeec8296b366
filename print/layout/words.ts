import {
  type CardContent,
  type CardFlag,
  type CardLine,
  type Forms,
  ok,
  type Result,
  refuse,
} from '../../src/core/index.ts';
import type { Cut } from './marks.ts';
import type { Measure } from './measure.ts';
import { nameSigns, spellOut } from './spelling.ts';

/** Which of a line's lengths was printed. */
export type Form = 'long' | 'medium' | 'short';

/** The three lengths, longest first. */
export const FORMS = ['long', 'medium', 'short'] as const satisfies readonly Form[];

/** How much shorter than the long one a form is. */
export const LEVELS = { long: 0, medium: 1, short: 2 } as const satisfies Record<Form, number>;

/** A text that can be printed: every sign has a glyph, and its width at 1 pt is known. */
export interface Wording {
  readonly form: Form;
  readonly text: string;
  readonly widthAtOnePt: number;
}

/** A line or flag with the wordings that can be printed, longest first; never empty. */
export interface Worded<T> {
  readonly of: T;
  readonly cut: Cut;
  readonly wordings: readonly Wording[];
  /** True for the rest of a line that was broken: it stands under the part before it. */
  readonly follows?: boolean;
}

/** A card's lines and flags, measured. */
export interface WordedCard {
  readonly lines: readonly Worded<CardLine>[];
  readonly flags: readonly Worded<CardFlag>[];
}

/** Measures a card once. Error: `glyph-missing` when no form of a line can be told. */
export function wordCard(content: CardContent, measure: Measure): Result<WordedCard> {
  const lines: Worded<CardLine>[] = [];
  const flags: Worded<CardFlag>[] = [];
  for (const line of content.lines) {
    const worded = word(line, line.strong ? 'bold' : 'regular', measure);
    if (!worded.ok) return worded;
    if (worded.value.wordings.length > 0) lines.push(worded.value);
  }
  for (const flag of content.flags) {
    const worded = word(flag, 'bold', measure);
    if (!worded.ok) return worded;
    if (worded.value.wordings.length > 0) flags.push(worded.value);
  }
  return ok({ lines, flags });
}

/**
 * The longest wording that fits, out of the first `limit` allows; null if none does. The limit counts from the longest
 * that the label can hold at all, so that one line too wide for it does not shorten the others.
 */
export function fitting<T>({ wordings }: Worded<T>, widthMm: number, sizePt: number, limit: Form): Wording | null {
  const end = Math.min(wordings.length, LEVELS[limit] + 1);
  for (let at = 0; at < end; at++) {
    const wording = wordings[at];
    if (wording && wording.widthAtOnePt * sizePt <= widthMm) return wording;
  }
  return null;
}

/** The wording at that level, or the shortest there is. */
export function atLevel<T>({ wordings }: Worded<T>, level: number): Wording | undefined {
  return wordings[Math.min(level, wordings.length - 1)];
}

/** The shorter of two forms. */
export function worseForm(a: Form, b: Form): Form {
  return LEVELS[a] > LEVELS[b] ? a : b;
}

/**
 * Measures one line: the forms that the type has every sign of; where it has none, they are spelled out, see
 * {@link spellOut}. Error: `glyph-missing` when that would be most of it.
 */
export function word<T extends Forms>(of: T, cut: Cut, measure: Measure): Result<Worded<T>> {
  const wordings: Wording[] = [];
  const missing: string[] = [];
  for (const form of FORMS) {
    const { text, widthAtOnePt, missing: gone } = measure.read(of[form], cut);
    if (text === '' || wordings.at(-1)?.text === text) continue;
    if (gone.length > 0) missing.push(...gone);
    else wordings.push({ form, text, widthAtOnePt });
  }
  if (wordings.length > 0 || missing.length === 0) return ok({ of, cut, wordings });
  const spelled = spelledForms(of, missing, cut, measure);
  return spelled.length > 0
    ? ok({ of, cut, wordings: spelled })
    : refuse('glyph-missing', { glyphs: nameSigns(missing) });
}

function spelledForms(of: Forms, missing: readonly string[], cut: Cut, measure: Measure): readonly Wording[] {
  const wordings: Wording[] = [];
  for (const form of FORMS) {
    const said = spellOut(measure.read(of[form], cut).text, missing);
    const { text, widthAtOnePt } = measure.read(said ?? '', cut);
    if (text !== '' && wordings.at(-1)?.text !== text) wordings.push({ form, text, widthAtOnePt });
  }
  return wordings;
}
