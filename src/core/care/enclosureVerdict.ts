import type { Problem } from '../problems.ts';
import type { Mark } from '../stock/index.ts';
import { roundTo } from '../units.ts';
import {
  ENCLOSURE_RULES,
  type Enclosure,
  type EnclosureQuestion,
  type EnclosureRule,
  enclosureFor,
} from './enclosure.ts';
import type { SizeMm } from './enclosureSize.ts';

/** One thing that a rule asks of a place, what the place has of it, and what is missing: 0 where it is enough. */
export type EnclosureSide =
  | {
      readonly of: 'length' | 'width' | 'height';
      readonly asksMm: number;
      /** Null where nobody has measured the place. */
      readonly hasMm: number | null;
      readonly shortMm: number;
    }
  | { readonly of: 'floor'; readonly asksM2: number; readonly hasM2: number | null; readonly shortM2: number };

/** What one published rule says, and whether a place has it; or that the rule has no figures. */
export type EnclosureVerdict =
  | {
      readonly rule: EnclosureRule;
      readonly has: 'enough' | 'short' | 'unmeasured';
      readonly sides: readonly EnclosureSide[];
      readonly source: string;
      readonly mark: Mark;
      readonly caution: string;
    }
  | { readonly rule: EnclosureRule; readonly has: 'no figures'; readonly problem: Problem };

/** What the rule sets are called; each is one country's text and no more. */
export const ENCLOSURE_TITLES: Readonly<Record<EnclosureRule, string>> = {
  austria: 'Austria',
  germany: 'Germany',
  england: 'England',
};

/** All three texts were seen as quoted. */
export const ENCLOSURE_MARK: Mark = 'S';
const MM2_PER_M2 = 1_000_000;

/**
 * Rule CARE-ENCLOSURE: what every rule set asks for and whether a size has it, the one that is shown first before the
 * others. For comparison only. A problem of the question itself stands in each of them.
 */
export function enclosureVerdicts(
  question: Omit<EnclosureQuestion, 'rule'>,
  sizeMm: SizeMm | null,
  first: EnclosureRule | null = null,
): readonly EnclosureVerdict[] {
  const rules = [...ENCLOSURE_RULES].sort((a, b) => Number(b === first) - Number(a === first));
  return rules.map((rule) => {
    const asked = enclosureFor({ ...question, rule });
    return asked.ok ? compared(rule, asked.value, sizeMm) : { rule, has: 'no figures', problem: asked.problem };
  });
}

/** The rule set that a site picked to be shown first; null where it picked none, or one that this version does not know. */
export function enclosureRuleOf(picked: string | null): EnclosureRule | null {
  return ENCLOSURE_RULES.find((rule) => rule === picked) ?? null;
}

/** `0.9 m² of floor`, `70 cm high`: what one side asks for. */
export function saySide(side: EnclosureSide): string {
  return side.of === 'floor'
    ? `${roundTo(side.asksM2, 3)} m² of floor`
    : `${sayCm(side.asksMm)} ${SIDE_WORDS[side.of]}`;
}

/** A side's figures for a table, each with its unit; `has` is null where nobody measured, `short` where nothing is missing. */
export function sideFigures(side: EnclosureSide): {
  readonly asks: string;
  readonly has: string | null;
  readonly short: string | null;
} {
  const say = side.of === 'floor' ? (m2: number) => `${m2} m²` : sayCm;
  const [asks, has, short] =
    side.of === 'floor'
      ? [roundTo(side.asksM2, 3), side.hasM2 === null ? null : roundTo(side.hasM2, 3), up(side.shortM2, 3)]
      : [side.asksMm, side.hasMm, side.shortMm];
  return { asks: say(asks), has: has === null ? null : say(has), short: isShort(side) ? say(short) : null };
}

/** `0.12 m² of floor`, `15 cm of height`: what is missing. */
export function sayShort(side: EnclosureSide): string {
  return side.of === 'floor' ? `${up(side.shortM2, 3)} m² of floor` : `${sayCm(side.shortMm)} of ${side.of}`;
}

/** What a rule says of a place in one line: what it asks for, and whether the place has it. */
export function sayVerdict(verdict: EnclosureVerdict): string {
  const title = ENCLOSURE_TITLES[verdict.rule];
  if (verdict.has === 'no figures') return `${title} has no figures here: ${verdict.problem.message}`;
  const { has, sides } = verdict;
  const asks = `${title} asks for ${sides.map(saySide).join(', ')}`;
  switch (has) {
    case 'enough':
      return `${asks}: enough`;
    case 'short':
      return `${asks}: short by ${sides.filter(isShort).map(sayShort).join(', ')}`;
    case 'unmeasured':
      return `${asks}; the place is not measured`;
    default:
      return has satisfies never;
  }
}

/** True for a side of which the place has too little. */
export function isShort(side: EnclosureSide): boolean {
  return (side.of === 'floor' ? side.shortM2 : side.shortMm) > 0;
}

const SIDE_WORDS = { length: 'long', width: 'wide', height: 'high' } as const;

function compared(rule: EnclosureRule, asked: Enclosure, sizeMm: SizeMm | null): EnclosureVerdict {
  const sides = sidesOf(asked, sizeMm);
  const has = sizeMm === null ? 'unmeasured' : sides.some(isShort) ? 'short' : 'enough';
  return { rule, has, sides, source: asked.source, mark: ENCLOSURE_MARK, caution: asked.caution };
}

/** The longer side of a place is its length, whichever way it was typed; the height stays the height. */
function sidesOf(asked: Enclosure, sizeMm: SizeMm | null): readonly EnclosureSide[] {
  const [long, wide] = sizeMm === null ? [null, null] : longerFirst(sizeMm);
  const floorM2 = long === null || wide === null ? null : (long * wide) / MM2_PER_M2;
  const sides: EnclosureSide[] = [];
  if ('lengthM' in asked) sides.push(sideOf('length', asked.lengthM, long), sideOf('width', asked.widthM, wide));
  if (asked.floorM2 !== undefined) sides.push(floorOf(asked.floorM2, floorM2));
  return [...sides, sideOf('height', asked.heightM, sizeMm?.height ?? null)];
}

function longerFirst({ length, width }: SizeMm): readonly [number, number] {
  return length >= width ? [length, width] : [width, length];
}

function sideOf(of: 'length' | 'width' | 'height', asksM: number, hasMm: number | null): EnclosureSide {
  const asksMm = roundTo(asksM * 1000, 1);
  return { of, asksMm, hasMm, shortMm: hasMm === null ? 0 : Math.max(0, roundTo(asksMm - hasMm, 1)) };
}

function floorOf(asksM2: number, hasM2: number | null): EnclosureSide {
  return { of: 'floor', asksM2, hasM2, shortM2: hasM2 === null ? 0 : Math.max(0, roundTo(asksM2 - hasM2, 6)) };
}

/** In cm, up to the next whole mm: a place that is short by less must not read as short by nothing. */
function sayCm(mm: number): string {
  return `${up(mm, 0) / 10} cm`;
}

function up(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  return roundTo(Math.ceil(roundTo(value * scale, 6)) / scale, decimals);
}
