import type { AnimalRecord } from '../animal/index.ts';
import { compareEnclosure, ENCLOSURE_TITLES, enclosureRuleOf, saySize, sayVerdict } from '../care/index.ts';
import type { Day } from '../days.ts';
import { type Facility, occupants, type PlaceRecord, sayPlace } from '../facility/index.ts';
import { roundTo } from '../units.ts';
import { NOT_RECORDED } from './pack.ts';

/** Whose place, and when. */
export interface SpaceSetting {
  readonly facility: Facility;
  readonly animal: AnimalRecord;
  readonly on: Day;
}

/** Where it lives, or lived when it left. */
export function enclosureOf({ facility, animal }: SpaceSetting): string {
  const place = placeOf(facility, animal);
  if (place === undefined) return NOT_RECORDED;
  const last = animal.left === null ? '' : ', until it left';
  const name = sayPlace(facility, place.id) ?? place.name;
  const kind = name.toLowerCase().startsWith(place.placeKind) ? '' : `${place.placeKind} `;
  return `${kind}${name}${last}`;
}

/** The inside of that place. */
export function sizeOf({ facility, animal }: SpaceSetting): string {
  const size = placeOf(facility, animal)?.sizeMm ?? null;
  if (size === null) return NOT_RECORDED;
  return `${saySize(size)} inside, ${roundTo((size.length * size.width) / 1_000_000, 3)} m² of floor`;
}

/** How many live there with it. */
export function animalsThere({ facility, animal }: SpaceSetting): string {
  if (animal.left !== null) return 'no longer here';
  return animal.place === null ? NOT_RECORDED : String(occupants(facility).get(animal.place)?.length ?? 1);
}

/** Rule CARE-ENCLOSURE: the place beside the rule set that the site picked, for comparison only. */
export function ruleSetOf({ facility, animal, on }: SpaceSetting): string {
  const rule = enclosureRuleOf(facility.site.rules.enclosureRule);
  if (rule === null) return 'the site has picked no rule set to compare with';
  const place = placeOf(facility, animal);
  if (animal.left !== null || place === undefined)
    return `not compared with ${ENCLOSURE_TITLES[rule]}: it has no place here`;
  const groups = compareEnclosure(facility, place, on)?.groups ?? [];
  const own = groups.find(({ animals }) => animals.includes(animal.id));
  const verdict = own?.verdicts.find((one) => one.rule === rule);
  if (verdict === undefined) return `not compared with ${ENCLOSURE_TITLES[rule]}: no length is recorded`;
  const whole = `${sayVerdict(verdict)}.`;
  return verdict.has === 'no figures' ? whole : `${whole} ${verdict.source}. ${verdict.caution}`;
}

function placeOf(facility: Facility, animal: AnimalRecord): PlaceRecord | undefined {
  return animal.place === null ? undefined : facility.places.get(animal.place);
}
