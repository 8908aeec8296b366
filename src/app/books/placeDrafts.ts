import {
  type Day,
  type EventDraft,
  type Facility,
  type Id,
  ok,
  type Payload,
  PLACE_KINDS,
  type Result,
  refuse,
} from '../../core/index.ts';
import { written } from './Field.tsx';

type PlaceKind = Payload<'place-added'>['placeKind'];

/** A place to add, and how many tubs stand in it. */
export interface NewPlace {
  readonly kind: PlaceKind;
  readonly name: string;
  readonly parent: Id | null;
  readonly tubs: number;
  /** Where it stands in the walk among its neighbours. */
  readonly walk: number;
}

const MOST_TUBS = 200;

/** Reads the form. Errors: `text-missing`, `not-a-number`. */
export function newPlace(form: FormData, facility: Facility): Result<NewPlace> {
  const name = written(form, 'place-name');
  const kind = PLACE_KINDS.find((one) => one === written(form, 'place-kind')) ?? 'rack';
  const tubs = Number(written(form, 'tubs') || '0');
  const parent = [...facility.places.keys()].find((id) => id === written(form, 'parent')) ?? null;
  if (name === '') return refuse('text-missing', { what: 'place’s name' });
  if (!Number.isInteger(tubs) || tubs < 0 || tubs > MOST_TUBS)
    return refuse('not-a-number', { text: written(form, 'tubs'), example: `0 to ${MOST_TUBS}` });
  return ok({ kind, name, parent, tubs, walk: nextWalk(facility, parent) });
}

/** The place with its tubs, named after it: `Rack 3` holds `3-01`, `3-02` and so on, from the top. */
export function placeDrafts({ kind, name, parent, tubs, walk }: NewPlace, day: Day, mint: () => Id): EventDraft[] {
  const id = mint();
  const drafts = [placeDraft(id, { placeKind: kind, name, walk, ...(parent === null ? {} : { parent }) }, day)];
  const stem = /(\S+)$/.exec(name)?.[1] ?? name;
  for (let at = 1; at <= tubs; at++) {
    const tub = `${stem}-${String(at).padStart(2, '0')}`;
    drafts.push(placeDraft(mint(), { placeKind: 'tub', name: tub, walk: at, parent: id }, day));
  }
  return drafts;
}

function placeDraft(id: Id, payload: Payload<'place-added'>, day: Day): EventDraft {
  return { kind: 'place-added', subjects: [id], payload, day };
}

function nextWalk(facility: Facility, parent: Id | null): number {
  const neighbours = [...facility.places.values()].filter((place) => place.parent === parent);
  return Math.max(0, ...neighbours.map((place) => place.walk)) + 1;
}
