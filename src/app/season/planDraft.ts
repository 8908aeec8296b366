import { type Fraction, fraction, ok, parseFraction, type Result, refuse, toNumber } from '../../core/index.ts';

/** A goal as it stands in the form; figures as typed. */
export interface GoalDraft {
  readonly key: number;
  readonly text: string;
  readonly least: string;
  readonly weight: string;
}

/** The form of a plan, figures as typed; an empty one means no limit. */
export interface PlanDraft {
  readonly species: string | null;
  readonly goals: readonly GoalDraft[];
  readonly cap: string;
  readonly most: string;
  readonly kinship: string;
  readonly cost: string;
}

/** What the limits come to. */
export interface PlanLimits {
  readonly capPerMale: number;
  readonly maxMales: number;
  readonly meanKinshipLimit: number | null;
  readonly maleCost: number;
}

export const FIRST_GOAL: GoalDraft = { key: 1, text: '', least: '', weight: '1' };
/** Four females a male is a number to begin with, no advice (common practice, no source). */
export const NEW_PLAN: PlanDraft = { species: null, goals: [FIRST_GOAL], cap: '4', most: '', kinship: '', cost: '0' };

/** Reads the limits. Errors: `not-a-number` at the field's name. */
export function readLimits({ cap, most, kinship, cost }: PlanDraft, males: number): Result<PlanLimits> {
  const capPerMale = readCount(cap, males === 0 ? 1 : Number.MAX_SAFE_INTEGER, 'cap');
  if (!capPerMale.ok) return capPerMale;
  const maxMales = most.trim() === '' ? ok(males) : readCount(most, Number.MAX_SAFE_INTEGER, 'most');
  if (!maxMales.ok) return maxMales;
  const limit = kinship.trim() === '' ? ok(null) : readShare(kinship, 'kinship');
  if (!limit.ok) return limit;
  const maleCost = cost.trim() === '' ? ok(0) : readFigure(cost, 'cost');
  if (!maleCost.ok) return maleCost;
  return ok({
    capPerMale: capPerMale.value,
    maxMales: Math.min(maxMales.value, males),
    meanKinshipLimit: limit.value === null ? null : toNumber(limit.value),
    maleCost: maleCost.value,
  });
}

/** A share of 1 as a fraction, a decimal or a percent: `1/16`, `0.0625`, `6.25 %`. Errors: `not-a-number`. */
export function readShare(text: string, path: string): Result<Fraction> {
  const percent = /^\s*(.+?)\s*%\s*$/.exec(text);
  const read = parseFraction((percent?.[1] ?? text).trim(), path);
  if (!read.ok) return refuse('not-a-number', { text, example: '1/16 or 6.25 %' }, path);
  const { top, bottom } = read.value;
  const share = percent === null ? read.value : fraction(top, bottom * 100n);
  const isShare = share.top >= 0n && share.top <= share.bottom;
  return isShare ? ok(share) : refuse('not-a-number', { text, example: '1/16 or 6.25 %' }, path);
}

/** A number from 0. Errors: `not-a-number`. */
export function readFigure(text: string, path: string): Result<number> {
  const value = Number(text.trim().replace(',', '.'));
  const isSound = text.trim() !== '' && Number.isFinite(value) && value >= 0;
  return isSound ? ok(value) : refuse('not-a-number', { text, example: '2.5' }, path);
}

function readCount(text: string, most: number, path: string): Result<number> {
  const value = Number(text.trim());
  const isCount = text.trim() !== '' && Number.isSafeInteger(value) && value >= 1;
  return isCount ? ok(Math.min(value, most)) : refuse('not-a-number', { text, example: '4' }, path);
}
