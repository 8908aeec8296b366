import {
  type AskedLabels,
  askedSheet,
  type Day,
  type Facility,
  followPlan,
  type Id,
  nameOf,
  type PrintSheet,
  sayId,
  sayPlace,
  speciesOf,
  standingPlans,
  walkingOrder,
} from '../../core/index.ts';

/** One thing to choose from: a rack with what stands in it, a clutch whose eggs lie, or an accepted plan with its open pairs. */
export interface LabelGroup {
  readonly id: string;
  readonly name: string;
  /** What to print for it: ids, or pairs of them. */
  readonly ids: readonly string[];
}

/** Which labels of a kind: those that the address asked for, tags that are out of date, all, or those of one group. */
export type LabelChoice = 'only' | 'stale' | 'all' | 'group';

/** The groups of a kind; none for kinds that have no parts. */
export function labelGroups(facility: Facility, sheet: PrintSheet, today: Day): readonly LabelGroup[] {
  switch (sheet) {
    case 'place':
      return rackGroups(facility);
    case 'egg':
      return clutchGroups(facility, today);
    case 'pairing':
      return planGroups(facility, today);
    case 'clutch':
    case 'treatment':
    case 'tube':
    case 'lot':
    case 'ware':
    case 'shed':
    case 'shelf':
    case 'hang':
    case 'sale':
    case 'exhibit':
    case 'stamps':
    case 'layout-test':
      return [];
    default:
      return sheet satisfies never;
  }
}

/** The labels of a choice. */
export function chosenLabels(
  facility: Facility,
  sheet: PrintSheet,
  choice: LabelChoice,
  { only, group, today }: { readonly only: string | null; readonly group: LabelGroup | null; readonly today: Day },
): AskedLabels {
  switch (choice) {
    case 'only':
      return askedSheet(facility, sheet, only, today);
    case 'stale':
      return askedSheet(facility, sheet, 'stale', today);
    case 'all':
      return askedSheet(facility, sheet, null, today);
    case 'group':
      return group === null ? { labels: [], left: [] } : askedSheet(facility, sheet, group.ids.join(), today);
    default:
      return choice satisfies never;
  }
}

function rackGroups(facility: Facility): readonly LabelGroup[] {
  const inside = new Map<Id, Id[]>();
  const inOrder = [...walkingOrder(facility)].sort(([, a], [, b]) => a - b);
  for (const [id] of inOrder) {
    const parent = facility.places.get(id)?.parent ?? null;
    if (parent !== null && facility.places.has(parent)) inside.set(parent, [...(inside.get(parent) ?? []), id]);
  }
  return inOrder.flatMap(([id]) => {
    const ids = inside.get(id);
    return ids === undefined ? [] : [{ id, name: sayPlace(facility, id) ?? sayId(id), ids: [id, ...ids] }];
  });
}

function clutchGroups(facility: Facility, today: Day): readonly LabelGroup[] {
  const lying = new Set(askedSheet(facility, 'clutch', null, today).labels.map(({ id }) => id));
  return [...facility.clutches.values()]
    .filter(({ id }) => lying.has(id))
    .map(({ id, dam }) => ({ id, name: `${nameOf(facility, dam)} · ${sayId(id)}`, ids: [id] }));
}

/** The accepted plans of which pairs are still open; pairs that are made have their card, and nobody pairs what fell out. */
function planGroups(facility: Facility, today: Day): readonly LabelGroup[] {
  return standingPlans(facility, today).flatMap((plan) => {
    const open = followPlan(facility, plan, today).filter(({ now }) => now.state === 'open');
    if (open.length === 0) return [];
    const name = `${speciesOf(plan.species)?.tradeName ?? plan.species}, ${open.length} of ${plan.pairs.length} still open`;
    return [{ id: plan.id, name, ids: open.map(({ male, female }) => `${male}/${female}`) }];
  });
}
