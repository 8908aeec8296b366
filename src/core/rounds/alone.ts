import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { PEOPLE_CAUTION, peopleFor } from '../care/index.ts';
import type { RoundTask } from '../events/index.ts';
import { type Facility, sayPlace } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { concerns, type Home, homesOf, wayUp } from './homes.ts';

/** Why nobody opens a home alone. */
export interface AloneReason {
  readonly home: Id;
  readonly kind: 'place' | 'two-people' | 'venomous' | 'length';
  /** How many people it takes, the keeper counted in. */
  readonly people: number;
  readonly words: string;
}

/** What has to be confirmed before a round may begin: nothing, or so many people, with what to say of it. */
export interface Company {
  readonly reasons: readonly AloneReason[];
  /** 1 where the keeper may go alone. */
  readonly people: number;
  /** The cautions to show: the site's own safety line for venomous animals, and ours. */
  readonly cautions: readonly string[];
}

const VENOMOUS_CAUTION =
  'Venomous: only people who are trained and licensed for it, by the site’s own protocol. A second name here takes the place of neither.';
const NO_SAFETY_LINE = 'The site has written no safety line of its own; write one in Books, Site.';
const PLACE_CAUTION =
  'The site says that nobody opens this place alone. A name here is no permission: it says who is there.';

/** Rule CARE-ALONE: who is needed for a round at a place; homes that are left out are not opened and ask for nobody. */
export function companyFor(
  facility: Facility,
  place: Id,
  { task, without = [] }: { readonly task: RoundTask; readonly without?: readonly Id[] },
): Company {
  const reasons = homesOf(facility, place)
    .filter((home) => !without.includes(home.place.id) && concerns(task, home))
    .flatMap((home) => aloneReasons(facility, home));
  const people = Math.max(1, ...reasons.map((reason) => reason.people));
  return { reasons, people, cautions: cautionsFor(facility, reasons) };
}

/** Every reason why a home is not opened alone: the place or one above it, a flag, a measured length. */
export function aloneReasons(facility: Facility, home: Home): readonly AloneReason[] {
  const marked = wayUp(facility, home.place.id).find((place) => place.twoPeople);
  const named = sayPlace(facility, home.place.id) ?? home.place.name;
  const atPlace: readonly AloneReason[] =
    marked === undefined
      ? []
      : [{ home: home.place.id, kind: 'place', people: 2, words: `${named}: two people by the site’s own word` }];
  return [...atPlace, ...home.animals.flatMap((animal) => animalReasons(facility, home.place.id, animal))];
}

/** What is wrong with the second people who were named, or null: `round-alone`, `round-second-few`, `round-second-same`. */
export function companyFault(
  facility: Facility,
  {
    place,
    company,
    second,
    keeper,
  }: { readonly place: Id; readonly company: Company; readonly second: string; readonly keeper: string },
): Problem | null {
  if (company.people === 1) return null;
  const named = namesIn(second);
  const words = { place: sayPlace(facility, place) ?? place, why: sayReasons(company.reasons), people: company.people };
  if (named.length === 0) return problem('round-alone', words, 'second');
  if (named.some((name) => isSame(name, keeper)))
    return problem('round-second-same', { name: keeper.trim() }, 'second');
  const others = new Set(named.map((name) => name.toLowerCase())).size;
  return others < company.people - 1
    ? problem('round-second-few', { ...words, more: company.people - 1 }, 'second')
    : null;
}

/** `Tilda, Corin`: the names of one line. */
export function namesIn(text: string): readonly string[] {
  return text
    .split(/[,;&]|\band\b/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
}

function animalReasons(facility: Facility, home: Id, animal: AnimalRecord): readonly AloneReason[] {
  const name = sayAnimal(animal);
  const flags = animal.flags.flatMap((flag): AloneReason[] => {
    if (flag === 'two-people') return [{ home, kind: flag, people: 2, words: `${name}: flagged for two people` }];
    return flag === 'venomous' ? [{ home, kind: flag, people: 2, words: `${name}: venomous` }] : [];
  });
  const people = peopleFor(animal, facility.site.rules.twoPeopleFromM);
  if (people === null || people.people < 2) return flags;
  return [...flags, { home, kind: 'length', people: people.people, words: `${name}: ${people.because}` }];
}

function cautionsFor({ site }: Facility, reasons: readonly AloneReason[]): readonly string[] {
  const has = (...kinds: readonly AloneReason['kind'][]): boolean => reasons.some(({ kind }) => kinds.includes(kind));
  return [
    ...(has('venomous') ? [site.safetyLine ?? NO_SAFETY_LINE, VENOMOUS_CAUTION] : []),
    ...(has('two-people', 'length') ? [PEOPLE_CAUTION] : []),
    ...(has('place') ? [PLACE_CAUTION] : []),
  ];
}

function sayReasons(reasons: readonly AloneReason[]): string {
  const few = reasons.slice(0, 3).map((reason) => reason.words);
  return reasons.length > 3 ? `${few.join('; ')}; and ${reasons.length - 3} more` : few.join('; ');
}

function isSame(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}
