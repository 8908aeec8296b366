import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { daysBetween, sayDayShort } from '../days.ts';
import type { Payload } from '../events/index.ts';
import type { Facility, ItemRecord } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { asEan13, ownNumber, readGtin } from './gtin.ts';

/** Rule SHOP-SHED: a shed item belongs to a shed of the last days; an older skin was not seen by anybody who says so now. */
export const SHED_DAYS = 60;

/** What is done to an item of the shop. */
export type ItemAction =
  | { readonly do: 'stocked' | 'counted'; readonly count: number }
  | { readonly do: 'sold'; readonly count: number }
  | { readonly do: 'wasted'; readonly count: number; readonly why?: string }
  | { readonly do: 'priced'; readonly priceMinor: number }
  | { readonly do: 'retired'; readonly why?: string };

/** A new ware, or an old one set anew. Errors: `item-unnamed`, `gtin-malformed`, `gtin-check`, `number-taken`, `edition-passed`. */
export function setWare(facility: Facility, id: Id, ware: Payload<'ware-set'>, moment: Moment): Decision {
  const name = ware.name.trim();
  if (name === '') return refused(problem('item-unnamed'));
  const faulty = gtinFault(ware.gtin) ?? takenFault(facility, id, ware.gtin);
  if (faulty !== null) return refused(faulty);
  const known = facility.items.get(id);
  if (ware.edition !== undefined && known !== undefined && known.made > ware.edition)
    return refused(problem('edition-passed', { item: name, edition: ware.edition, made: known.made }));
  const payload = { ...ware, name };
  const draft: EventDraft = { kind: 'ware-set', subjects: [id], payload, day: moment.day };
  return { kind: 'accepted', drafts: [draft], said: known === undefined ? `ware ${name} made` : `${name} set` };
}

/**
 * Pieces made of the shed that was last seen. The tag keeps what the animal is called now, its species and the day.
 * Errors: `shed-not-seen`, `shed-old`, `not-whole`, `number-taken`; asks where that shed was made into pieces already.
 */
export function makeShedItem(
  facility: Facility,
  id: Id,
  animal: AnimalRecord,
  { priceMinor, count, words }: { readonly priceMinor: number; readonly count: number; readonly words?: string },
  moment: Moment,
): Decision {
  if (!Number.isInteger(count) || count < 1) return refused(problem('not-whole', { what: 'number of pieces' }));
  const shedOn = animal.lastShedOn;
  const shown = sayAnimal(animal);
  if (shedOn === null) return refused(problem('shed-not-seen', { animal: shown }));
  if (daysBetween(shedOn, moment.day) > SHED_DAYS)
    return refused(problem('shed-old', { animal: shown, day: sayDayShort(shedOn), most: SHED_DAYS }));
  const taken = takenFault(facility, id, undefined);
  if (taken !== null) return refused(taken);
  const payload = { shown, species: animal.species, shedOn, priceMinor, count, ...(words && { words }) };
  const draft: EventDraft = { kind: 'shed-item-made', subjects: [id, animal.id], payload, day: moment.day };
  const said = `${count === 1 ? '1 piece' : `${count} pieces`} of the shed of ${sayDayShort(shedOn)}`;
  const before = [...facility.items.values()].find((item) => item.animal === animal.id && item.shedOn === shedOn);
  if (before === undefined) return { kind: 'accepted', drafts: [draft], said };
  const doubt = problem('shed-made-already', { animal: shown, day: sayDayShort(shedOn), made: before.made });
  return { kind: 'asks', problem: doubt, drafts: [draft], said };
}

/** Decides what happens to an item. Errors: `not-whole`, `edition-passed`, `sold-out`, `item-retired`, `price-same`. */
export function decideItem(item: ItemRecord, action: ItemAction, moment: Moment): Decision {
  const write = <K extends ItemEvent>(kind: K, payload: Payload<K>): readonly EventDraft[] => [
    { kind, subjects: [item.id], payload, day: moment.day } as EventDraft,
  ];
  if ('count' in action && (!Number.isInteger(action.count) || action.count < (action.do === 'counted' ? 0 : 1)))
    return refused(problem('not-whole', { what: 'number of pieces' }));
  switch (action.do) {
    case 'stocked':
      return stocked(item, action.count, write('item-stocked', { count: action.count }));
    case 'counted':
      return counted(item, action.count, write('item-counted', { count: action.count }));
    case 'sold': {
      const payload = { count: action.count, priceMinor: item.priceMinor };
      return sold(item, action.count, write('item-sold', payload));
    }
    case 'wasted':
      return accept(
        write('item-wasted', { count: action.count, ...(action.why && { why: action.why }) }),
        `gone: ${action.count}`,
      );
    case 'priced':
      if (action.priceMinor === item.priceMinor) return refused(problem('price-same', { item: item.name }));
      return accept(write('item-priced', { priceMinor: action.priceMinor }), 'new price; its tags are out of date');
    case 'retired':
      return accept(write('item-retired', action.why ? { why: action.why } : {}), 'no longer sold');
    default:
      action satisfies never;
      return refused(problem('not-whole', { what: 'number of pieces' }));
  }
}

type ItemEvent = 'item-stocked' | 'item-counted' | 'item-sold' | 'item-wasted' | 'item-priced' | 'item-retired';

/** How many of a limited edition may still be made; null for no limit. */
export function editionLeft({ edition, made }: ItemRecord): number | null {
  return edition === null ? null : Math.max(0, edition - made);
}

/** True when nothing is left and nothing more will come: an edition that was made whole, or a shed that is gone. */
export function isSoldOut(item: ItemRecord): boolean {
  const more = item.kind === 'shed' ? 0 : editionLeft(item);
  return item.left === 0 && item.made > 0 && more === 0;
}

/** The items by the digits of their bar codes, each as thirteen; a number that two share is found for neither. */
export function itemsByNumber(items: Facility['items']): ReadonlyMap<string, Id> {
  const found = new Map<string, Id | null>();
  for (const item of items.values()) {
    const number = numberOf(item);
    if (number !== null) found.set(number, found.has(number) ? null : item.id);
  }
  return new Map([...found].flatMap(([number, id]) => (id === null ? [] : [[number, id] as const])));
}

/** The thirteen digits of an item's bar code: the maker's where it has one, else our own; null for a GTIN-14. */
export function numberOf({ id, gtin }: Pick<ItemRecord, 'id' | 'gtin'>): string | null {
  return gtin === null ? ownNumber(id) : asEan13(gtin);
}

function gtinFault(gtin: string | undefined): Problem | null {
  if (gtin === undefined) return null;
  const read = readGtin(gtin);
  if (!read.ok) return read.problem;
  return read.value.ok && read.value.full === gtin
    ? null
    : problem('gtin-check', { text: gtin, full: read.value.full });
}

function takenFault(facility: Facility, id: Id, gtin: string | undefined): Problem | null {
  const number = numberOf({ id, gtin: gtin ?? null });
  const other = [...facility.items.values()].find((item) => item.id !== id && numberOf(item) === number);
  return other === undefined || number === null ? null : problem('number-taken', { number, item: other.name });
}

function stocked(item: ItemRecord, count: number, drafts: readonly EventDraft[]): Decision {
  const room = editionLeft(item);
  if (room !== null && count > room)
    return refused(problem('edition-passed', { item: item.name, edition: item.edition ?? 0, made: item.made + count }));
  if (item.retiredOn !== null) return asks(drafts, `stocked ${count}`, retired(item));
  return accept(drafts, `stocked ${count}`);
}

function counted(item: ItemRecord, count: number, drafts: readonly EventDraft[]): Decision {
  const missing = item.left - count;
  return accept(
    drafts,
    missing === 0 ? `counted ${count}, as in the book` : `counted ${count}, the book had ${item.left}`,
  );
}

/** What was sold must be loggable, so an empty book is a question and not a wall. */
function sold(item: ItemRecord, count: number, drafts: readonly EventDraft[]): Decision {
  const said = count === 1 ? 'sold' : `sold ${count}`;
  if (count > item.left) return asks(drafts, said, problem('sold-out', { item: item.name, left: item.left, count }));
  return item.retiredOn === null ? accept(drafts, said) : asks(drafts, said, retired(item));
}

function retired(item: ItemRecord): Problem {
  return problem('item-retired', { item: item.name, day: item.retiredOn === null ? '' : sayDayShort(item.retiredOn) });
}

function accept(drafts: readonly EventDraft[], said: string): Decision {
  return { kind: 'accepted', drafts, said };
}

function asks(drafts: readonly EventDraft[], said: string, doubt: Problem): Decision {
  return { kind: 'asks', problem: doubt, drafts, said };
}

function refused(why: Problem): Decision {
  return { kind: 'refused', problem: why };
}
