import {
  type Day,
  type Facility,
  type Id,
  type ListSheet,
  nameOf,
  type PlaceRecord,
  type Problem,
  parseId,
  problem,
  rackSheet,
  saleListSheet,
  sayId,
  sayPlace,
  walkingOrder,
} from '../../core/index.ts';

/** What goes on whole pages instead of labels. */
export const LIST_KINDS = ['sale-list', 'rack-sheet'] as const;
export type ListKind = (typeof LIST_KINDS)[number];

/** How a kind is called in the list of kinds, in a sentence, and what stands there when there is none. */
export const LIST_WORDS: Readonly<Record<ListKind, Readonly<Record<'name' | 'one' | 'many' | 'none', string>>>> = {
  'sale-list': {
    name: 'Sale list',
    one: 'sale list',
    many: 'the sale list',
    none: 'No animal is on offer. Put one on offer on its record.',
  },
  'rack-sheet': {
    name: 'Rack sheets',
    one: 'rack sheet',
    many: 'rack sheets',
    none: 'No rack yet. Add one in Books.',
  },
};

/** True for what goes on whole pages. */
export function isListKind(kind: string): kind is ListKind {
  return LIST_KINDS.some((one) => one === kind);
}

/** A rack, room or exhibit that can have its sheet. */
export interface ListPlace {
  readonly id: Id;
  readonly name: string;
  readonly isRack: boolean;
}

/** What animals are kept in, and not a single tub. */
const WALKED: readonly string[] = ['room', 'rack', 'exhibit', 'quarantine'];

/** The places that can have a sheet of their own, in walking order. */
export function listPlaces(facility: Facility): readonly ListPlace[] {
  const places = inOrder(facility).filter(({ placeKind }) => WALKED.includes(placeKind));
  return places.map(({ id, placeKind }) => ({
    id,
    name: sayPlace(facility, id) ?? sayId(id),
    isRack: placeKind === 'rack',
  }));
}

/** The place of `?only=ID`: itself, or the rack around a tub. Problems: `not-an-id`, `check-failed`, `id-no-place`, `unknown-id`. */
export function askedPlace(
  facility: Facility,
  only: string | undefined,
): { readonly id: Id | null; readonly problem: Problem | null } {
  if (only === undefined) return { id: null, problem: null };
  const read = parseId(only);
  if (!read.ok) return { id: null, problem: read.problem };
  const { id } = read.value;
  const places = listPlaces(facility);
  const parent = facility.places.get(id)?.parent;
  const found = places.find((place) => place.id === id) ?? places.find((place) => place.id === parent);
  if (found !== undefined) return { id: found.id, problem: null };
  const name = nameOf(facility, id);
  const isKnown = name !== sayId(id);
  const why = isKnown
    ? problem('id-no-place', { id: sayId(id), what: name })
    : problem('unknown-id', { id: sayId(id) });
  return { id: null, problem: why };
}

/** The sheets of a kind: the one sale list, or of a place, or without one of every rack. */
export function listSheets(facility: Facility, kind: ListKind, place: Id | null, today: Day): readonly ListSheet[] {
  if (kind === 'sale-list') {
    const sheet = saleListSheet(facility, today);
    return sheet.rows.length === 0 ? [] : [sheet];
  }
  const wanted = inOrder(facility).filter(({ id, placeKind }) =>
    place === null ? placeKind === 'rack' : id === place,
  );
  return wanted.map((one) => rackSheet(facility, one, today));
}

function inOrder(facility: Facility): readonly PlaceRecord[] {
  const order = [...walkingOrder(facility)].sort(([, a], [, b]) => a - b);
  return order.flatMap(([id]) => facility.places.get(id) ?? []);
}

/** `14 lines on 2 pages`. */
export function sayListed(sheets: readonly ListSheet[], pages: number): string {
  const lines = sheets.reduce((sum, { rows }) => sum + rows.length, 0);
  return `${counted(lines, 'line')} on ${counted(pages, 'page')}`;
}

/** `the sale list`, `3 rack sheets`. */
export function sayLists(kind: ListKind, count: number): string {
  return kind === 'sale-list' ? LIST_WORDS[kind].many : counted(count, LIST_WORDS[kind].one);
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
