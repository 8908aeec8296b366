import { type Day, type Id, isDay, parseId } from '../../core/index.ts';
import { type GoalDraft, NEW_PLAN, type PlanDraft } from './planDraft.ts';

/** A pair of an accepted plan, with its reasons as they were said. */
export interface KeptPair {
  readonly sire: Id;
  readonly dam: Id;
  readonly reasons: readonly string[];
}

/** A plan that somebody accepted: a list on this device, nothing in the log. */
export interface KeptPlan {
  readonly day: Day;
  readonly species: string;
  readonly goals: readonly string[];
  readonly pairs: readonly KeptPair[];
}

const PLAN = 'season-plan';
const DRAFT = 'season-plan-draft';

/** The accepted plan of this device; null where there is none or it cannot be read. */
export function keptPlan(storage: Storage = localStorage): KeptPlan | null {
  const read = objectIn(storage, PLAN);
  if (read === null || !isText(read['day']) || !isDay(read['day']) || !isText(read['species'])) return null;
  const pairs = listIn(read['pairs']).flatMap((one): readonly KeptPair[] => {
    const [sire, dam] = [idIn(one['sire']), idIn(one['dam'])];
    return sire === null || dam === null ? [] : [{ sire, dam, reasons: textsIn(one['reasons']) }];
  });
  return { day: read['day'], species: read['species'], goals: textsIn(read['goals']), pairs };
}

export function keepPlan(plan: KeptPlan | null, storage: Storage = localStorage): void {
  if (plan === null) storage.removeItem(PLAN);
  else storage.setItem(PLAN, JSON.stringify(plan));
}

/** The form as it was left, so that closing loses nothing. */
export function keptDraft(storage: Storage = localStorage): PlanDraft {
  const read = objectIn(storage, DRAFT);
  if (read === null) return NEW_PLAN;
  const text = (name: 'cap' | 'most' | 'kinship' | 'cost'): string =>
    isText(read[name]) ? read[name] : NEW_PLAN[name];
  const goals = listIn(read['goals']).map(
    (one, at): GoalDraft => ({
      key: at + 1,
      text: isText(one['text']) ? one['text'] : '',
      least: isText(one['least']) ? one['least'] : '',
      weight: isText(one['weight']) ? one['weight'] : '1',
    }),
  );
  return {
    species: isText(read['species']) ? read['species'] : null,
    goals: goals.length === 0 ? NEW_PLAN.goals : goals,
    cap: text('cap'),
    most: text('most'),
    kinship: text('kinship'),
    cost: text('cost'),
  };
}

export function keepDraft(draft: PlanDraft, storage: Storage = localStorage): void {
  storage.setItem(DRAFT, JSON.stringify(draft));
}

type Fields = Readonly<Record<string, unknown>>;

function objectIn(storage: Storage, key: string): Fields | null {
  try {
    const read: unknown = JSON.parse(storage.getItem(key) ?? 'null');
    return isFields(read) ? read : null;
  } catch {
    return null;
  }
}

function listIn(value: unknown): readonly Fields[] {
  return Array.isArray(value) ? value.filter(isFields) : [];
}

function textsIn(value: unknown): readonly string[] {
  return Array.isArray(value) ? value.filter(isText) : [];
}

function idIn(value: unknown): Id | null {
  const read = isText(value) ? parseId(value) : null;
  return read?.ok ? read.value.id : null;
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}
