import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { daysBetween, sayDayShort } from '../days.ts';
import { canonicalJson, fingerprint, MOST_PAIRS_OF_PART, type Payload } from '../events/index.ts';
import {
  type Facility,
  type PlannedPair,
  type PlanTerms,
  SAME_SEASON_DAYS,
  type SeasonPlan,
} from '../facility/index.ts';
import { problem } from '../problems.ts';
import { standingPlan } from './acceptedPlan.ts';

/** A plan that is to be accepted. */
export interface NewPlan extends PlanTerms {
  readonly pairs: readonly PlannedPair[];
}

/** Nobody plans further ahead or back than a year. */
const MOST_DAYS_OFF = 365;
/** Figures are kept as exactly as anybody reads them. */
const DIGITS = 6;

/**
 * Accepts a season plan: from then on it is a fact of the log, on every device. A plan of very many pairs is written in
 * parts, all in one go. Refused: `plan-empty`, `plan-first-day`. Asked: `plan-replaces`, where one of that season stands.
 */
export function acceptPlan(facility: Facility, plan: NewPlan, { day, today }: Moment): Decision {
  if (plan.pairs.length === 0) return { kind: 'refused', problem: problem('plan-empty', {}) };
  if (Math.abs(daysBetween(today, plan.from)) > MOST_DAYS_OFF)
    return { kind: 'refused', problem: problem('plan-first-day', { day: sayDayShort(plan.from) }) };
  const drafts = partsOf(plan).map((payload): EventDraft => ({ kind: 'plan-accepted', subjects: [], payload, day }));
  const said = `plan of ${counted(plan.pairs.length)} accepted`;
  const before = standingPlan(facility, plan.species, today);
  if (before === null || Math.abs(daysBetween(before.from, plan.from)) >= SAME_SEASON_DAYS)
    return { kind: 'accepted', drafts, said };
  const doubt = problem('plan-replaces', { pairs: counted(before.pairs.length), day: sayDayShort(before.acceptedOn) });
  return { kind: 'asks', problem: doubt, drafts, said };
}

/** Takes a plan back by slips, with those of its season that it took the place of: they do not come up again. Always asked about. */
export function withdrawPlan(plan: SeasonPlan, { day }: Moment): Decision {
  const drafts = [...plan.written, ...plan.replaced].map(
    (corrects): EventDraft => ({ kind: 'slip-made', subjects: [], payload: { corrects, how: 'undo' }, day }),
  );
  const doubt = problem('plan-withdraw', { pairs: counted(plan.pairs.length) });
  return { kind: 'asks', problem: doubt, drafts, said: `plan of ${counted(plan.pairs.length)} withdrawn` };
}

/** What is the same in every part binds them together, whoever writes it. */
function partsOf({ pairs, ...terms }: NewPlan): readonly Payload<'plan-accepted'>[] {
  const all = pairs.map(({ female, male, kinship, expected }): Payload<'plan-accepted'>['pairs'][number] => [
    female,
    male,
    rounded(kinship),
    expected.map(rounded),
  ]);
  const { meanKinship, ...limits } = terms.limits;
  const shared = {
    species: terms.species,
    from: terms.from,
    eggs: terms.eggs,
    basis: terms.basis,
    goals: terms.goals.map((one) => ({ ...one })),
    limits: { ...limits, ...(meanKinship !== null && { meanKinship }) },
    ...(terms.gap !== null && { gap: rounded(terms.gap) }),
  };
  const plan = fingerprint(canonicalJson({ ...shared, pairs: all }));
  const parts = Math.ceil(all.length / MOST_PAIRS_OF_PART);
  return Array.from({ length: parts }, (_none, at) => ({
    plan,
    ...(parts > 1 && { part: [at + 1, parts] as [number, number] }),
    ...shared,
    pairs: all.slice(at * MOST_PAIRS_OF_PART, (at + 1) * MOST_PAIRS_OF_PART),
  }));
}

function rounded(figure: number): number {
  return Number(figure.toPrecision(DIGITS));
}

function counted(pairs: number): string {
  return `${pairs} ${pairs === 1 ? 'pair' : 'pairs'}`;
}
