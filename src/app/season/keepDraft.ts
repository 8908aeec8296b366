import { type GoalDraft, NEW_PLAN, type PlanDraft } from './planDraft.ts';

const DRAFT = 'season-plan-draft';

/** The form as it was left on this device, so that closing loses nothing; a plan that is accepted lies in the log. */
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

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}
