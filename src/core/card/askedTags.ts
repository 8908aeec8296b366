import type { AnimalRecord } from '../animal/index.ts';
import { animalsInWalkingOrder, type Facility, type ItemRecord, occupants, walkingOrder } from '../facility/index.ts';
import { type Id, parseId, sayId } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import type { AskedLabels, LabelContent, LabelLeft } from './label.ts';
import { exhibitSign, hangTag, isTagStale, saleTag, shedTag, shelfTag, wareTag } from './shopTags.ts';

/** The words by which tags are asked for, on the command line and in the app's address. */
export const TAG_SHEETS = ['ware', 'shed', 'shelf', 'hang', 'sale', 'exhibit'] as const;
export type TagSheet = (typeof TAG_SHEETS)[number];

/** More copies of one tag than this are a slip of the hand. */
const MOST_COPIES = 500;

/**
 * The tags of `only`: ids with commas between them, each with a number of copies after a slash if more than one is wanted
 * (`7RMB-N615/12`); or null for all: every ware and shed item with as many tags as pieces are left, every shelf tag, every
 * animal on offer, every exhibit; or `stale`: only items whose tag is out of date. Problems of `left`: `not-an-id`,
 * `check-failed`, `unknown-id`, `tag-kind`, `copies-wrong`, `offer-none`.
 */
export function askedTags(facility: Facility, sheet: TagSheet, only: string | null): AskedLabels {
  switch (sheet) {
    case 'sale':
      return saleTags(facility, only);
    case 'exhibit':
      return exhibitSigns(facility, only);
    case 'ware':
    case 'shed':
    case 'shelf':
    case 'hang':
      return itemTags(facility, sheet, only);
    default:
      return sheet satisfies never;
  }
}

const MAKE = { ware: wareTag, shed: shedTag, shelf: shelfTag, hang: hangTag } as const;

function itemTags(facility: Facility, sheet: keyof typeof MAKE, only: string | null): AskedLabels {
  const fits = (item: ItemRecord): boolean => sheet === 'shelf' || sheet === 'hang' || item.kind === sheet;
  const usual = (item: ItemRecord): number => (sheet === 'shelf' ? 1 : Math.min(item.left, MOST_COPIES));
  if (only === null || only === 'stale') {
    const items = [...facility.items.values()].filter((item) => fits(item) && item.retiredOn === null && item.left > 0);
    const wanted = items.filter((item) => only === null || isTagStale(facility, item)).sort(byName);
    return { labels: wanted.flatMap((item) => copies(MAKE[sheet](facility, item), usual(item))), left: [] };
  }
  return together(only, ({ text, id, count }) => {
    const item = facility.items.get(id);
    if (item === undefined) return no(text, problem('unknown-id', { id: sayId(id) }));
    if (!fits(item)) return no(text, problem('tag-kind', { item: item.name, kind: item.kind }));
    return { labels: copies(MAKE[sheet](facility, item), count ?? Math.max(1, usual(item))), left: [] };
  });
}

function saleTags(facility: Facility, only: string | null): AskedLabels {
  const tagOf = (animal: AnimalRecord, text: string, count: number): AskedLabels => {
    const tag = saleTag(facility, animal);
    return tag === null
      ? no(text, problem('offer-none', { animal: animal.name ?? sayId(animal.id) }))
      : { labels: copies(tag, count), left: [] };
  };
  if (only === null || only === 'stale') {
    const tags = animalsInWalkingOrder(facility).flatMap((animal) => saleTag(facility, animal) ?? []);
    const stale = (tag: LabelContent): boolean =>
      facility.animals.get(tag.id as Id)?.saleTag?.revision !== tag.revision;
    return { labels: only === null ? tags : tags.filter(stale), left: [] };
  }
  return together(only, ({ text, id, count }) => {
    const animal = facility.animals.get(id);
    return animal === undefined ? no(text, problem('unknown-id', { id: sayId(id) })) : tagOf(animal, text, count ?? 1);
  });
}

function exhibitSigns(facility: Facility, only: string | null): AskedLabels {
  const lives = occupants(facility);
  const signOf = (id: Id): LabelContent | null => {
    const place = facility.places.get(id);
    return place === undefined ? null : exhibitSign(place, lives.get(id) ?? []);
  };
  if (only === null || only === 'stale') {
    const inOrder = [...walkingOrder(facility)].sort(([, a], [, b]) => a - b).map(([id]) => id);
    const exhibits = inOrder.filter(
      (id) => facility.places.get(id)?.placeKind === 'exhibit' && (lives.get(id) ?? []).length > 0,
    );
    return { labels: exhibits.flatMap((id) => signOf(id) ?? []), left: [] };
  }
  return together(only, ({ text, id, count }) => {
    const sign = signOf(id);
    return sign === null
      ? no(text, problem('unknown-id', { id: sayId(id) }))
      : { labels: copies(sign, count ?? 1), left: [] };
  });
}

interface Word {
  readonly text: string;
  readonly id: Id;
  /** So many copies, where a number stands after a slash. */
  readonly count: number | null;
}

function together(only: string, make: (word: Word) => AskedLabels): AskedLabels {
  const labels: LabelContent[] = [];
  const left: LabelLeft[] = [];
  for (const text of new Set(only.split(',').map((part) => part.trim()))) {
    if (text === '') continue;
    const [first = '', number] = text.split('/');
    const read = parseId(first);
    const count = number === undefined ? null : Number(number);
    const isSound = count === null || (Number.isInteger(count) && count >= 1 && count <= MOST_COPIES);
    const made = !read.ok
      ? no(text, read.problem)
      : isSound
        ? make({ text, id: read.value.id, count })
        : no(text, problem('copies-wrong', { text: number ?? '', most: MOST_COPIES }));
    labels.push(...made.labels);
    left.push(...made.left);
  }
  return { labels, left };
}

function copies(tag: LabelContent, count: number): readonly LabelContent[] {
  return Array.from({ length: count }, () => tag);
}

function no(id: string, why: Problem): AskedLabels {
  return { labels: [], left: [{ id, problem: why }] };
}

function byName(a: ItemRecord, b: ItemRecord): number {
  return a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1;
}
