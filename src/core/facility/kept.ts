import type { Payload } from '../events/index.ts';
import type { SiteRules } from './others.ts';
import type { PlaceRecord } from './places.ts';

/** All that is known of a place as a `place-set` says it: such an event is whole, so whoever changes one fact keeps the others by this. */
export function keptPlace({ name, parent, walk, sizeMm, pool, twoPeople }: PlaceRecord): Payload<'place-set'> {
  return {
    name,
    ...(parent !== null && { parent }),
    walk,
    ...(sizeMm !== null && { sizeMm }),
    ...(pool !== null && { pool }),
    ...(twoPeople && { twoPeople }),
  };
}

/** The same for the rules of a site, which a `site-rules-set` says whole. */
export function keptRules(rules: SiteRules): Payload<'site-rules-set'> {
  const { secondAtDoses, countryProfile, twoPeopleFromM, syringesMl, enclosureRule } = rules;
  const { orderWeeks, leadDays, freezerItems, reservePercent } = rules;
  return {
    secondAtDoses,
    ...(countryProfile !== null && { countryProfile }),
    ...(twoPeopleFromM !== null && { twoPeopleFromM }),
    ...(syringesMl !== null && { syringesMl: [...syringesMl] }),
    ...(enclosureRule !== null && { enclosureRule }),
    ...(orderWeeks !== null && { orderWeeks }),
    ...(leadDays !== null && { leadDays }),
    ...(freezerItems !== null && { freezerItems }),
    ...(reservePercent !== null && { reservePercent }),
  };
}
