import {
  type AskedLabels,
  askedLabels,
  type Day,
  type Facility,
  type Id,
  type LabelSheet,
  nameOf,
  sayId,
  sayPlace,
  walkingOrder,
} from '../../core/index.ts';

/** One thing to choose from: a rack with what stands in it, or a clutch whose eggs lie. */
export interface LabelGroup {
  readonly id: Id;
  readonly name: string;
  /** The ids to print for it. */
  readonly ids: readonly Id[];
}

/** Which labels of a kind: those that the address asked for, all, or those of one group. */
export type LabelChoice = 'only' | 'all' | 'group';

/** The groups of a kind; none for kinds that have no parts. */
export function labelGroups(facility: Facility, sheet: LabelSheet, today: Day): readonly LabelGroup[] {
  switch (sheet) {
    case 'place':
      return rackGroups(facility);
    case 'egg':
      return clutchGroups(facility, today);
    case 'clutch':
    case 'pairing':
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
  sheet: LabelSheet,
  choice: LabelChoice,
  { only, group, today }: { readonly only: string | null; readonly group: LabelGroup | null; readonly today: Day },
): AskedLabels {
  switch (choice) {
    case 'only':
      return askedLabels(facility, sheet, only, today);
    case 'all':
      return askedLabels(facility, sheet, null, today);
    case 'group':
      return group === null ? { labels: [], left: [] } : askedLabels(facility, sheet, group.ids.join(), today);
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
  const lying = new Set(askedLabels(facility, 'clutch', null, today).labels.map(({ id }) => id));
  return [...facility.clutches.values()]
    .filter(({ id }) => lying.has(id))
    .map(({ id, dam }) => ({ id, name: `${nameOf(facility, dam)} · ${sayId(id)}`, ids: [id] }));
}
