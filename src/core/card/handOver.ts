import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import { sayMicrochip } from '../arrival/index.ts';
import {
  type GrowthPlot,
  growthPlot,
  holdsOn,
  needsVet,
  peopleFor,
  sayChange,
  sayKindOf,
  sayPeople,
} from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import { standing } from '../events/effective.ts';
import { canonicalJson, fingerprint, type LogEvent, type SiteEvent } from '../events/index.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import { locusWords } from '../genetics/index.ts';
import { type Id, sayId } from '../ids.ts';
import { cardTraits, lociFor, traitsOf } from '../lineage/index.ts';
import { feedsOf, type PackFeed, type PackTreatment, treatmentsOf, yearsBefore } from '../pack/index.ts';
import { sayGrams, sayLength } from '../units.ts';
import { speciesForms } from './card.ts';
import { type Caution, cautionsOf } from './handOverCautions.ts';
import { type FeedingWords, feedingOf } from './handOverFeeding.ts';

/** A line of a label and what it says. */
export type HandOverLine = readonly [label: string, says: string];

/** What the animal carries, as far as anybody knows. */
export interface HandOverTraits {
  readonly code: string;
  /** The same in trade words. */
  readonly words: string;
  /** What shows or was proven; and what is only possible, each with its chance. */
  readonly certain: readonly string[];
  readonly possible: readonly string[];
}

/** What goes with one animal to whoever takes it: words only, no paper. */
export interface HandOver {
  readonly id: Id;
  readonly display: string;
  readonly called: string;
  readonly species: string;
  readonly site: string;
  readonly on: Day;
  readonly identity: readonly HandOverLine[];
  readonly traits: HandOverTraits | null;
  readonly parents: readonly HandOverLine[];
  readonly feeding: FeedingWords;
  /** The last ten offers, newest first. */
  readonly offers: readonly PackFeed[];
  readonly weights: readonly HandOverLine[];
  readonly sheds: string;
  /** Health and treatment of the last twelve months, newest first. */
  readonly health: readonly PackTreatment[];
  readonly hasDoses: boolean;
  readonly holds: readonly string[];
  readonly cautions: readonly Caution[];
  readonly growth: GrowthPlot;
  /** Fingerprint of all of the above. */
  readonly revision: string;
}

/** Whose sheet, and what the site wants on it. */
export interface HandOverQuestion {
  readonly facility: Facility;
  readonly animal: AnimalRecord;
  /** The animal’s whole history, in any order. */
  readonly history: readonly LogEvent[];
  readonly on: Day;
  /** True where the site tells whom it had the animal from. */
  readonly tellsSource: boolean;
}

const OFFERS = 10;
const WEIGHTS = 6;
const SHEDS = 5;
const NOT_KNOWN = 'not known';

/** The hand-over sheet of an animal as known on a day. */
export function handOver(question: HandOverQuestion): HandOver {
  const { facility, animal, history, on } = question;
  const known = history.filter(({ day }) => day <= on);
  const own = standing(known).filter(({ subjects }) => subjects[0] === animal.id);
  const growth = growthPlot(animal, known, on);
  const health = treatmentsOf(own).filter(({ day }) => day >= yearsBefore(on, 1));
  const sheet = {
    id: animal.id,
    display: sayId(animal.id),
    called: animal.name !== null && animal.number !== null ? `${animal.name} · ${animal.number}` : sayAnimal(animal),
    species: speciesForms(animal.species).long,
    site: facility.site.name,
    on,
    identity: identityOf(question),
    traits: handOverTraits(facility, animal),
    parents: parentsOf(facility, animal),
    feeding: feedingOf(animal, on),
    offers: feedsOf(own).slice(-OFFERS).reverse(),
    weights: weightLines(animal, growth),
    sheds: shedWords(own),
    health: [...health].reverse(),
    hasDoses: health.some(({ what }) => what === 'prescription' || what === 'dose'),
    holds: holdWords(animal, on),
    cautions: cautionsOf(facility, animal, on),
    growth,
  };
  return { ...sheet, revision: fingerprint(canonicalJson(sheet)) };
}

function identityOf({ facility, animal, tellsSource }: HandOverQuestion): readonly HandOverLine[] {
  const { hatchedOn, microchip, left, lengths } = animal;
  const people = peopleFor(animal, facility.site.rules.twoPeopleFromM);
  const longest = lengths.map(({ lengthMm, of, day, guessed }) => {
    return `${sayLength(lengthMm)} ${sayKindOf(of)} on ${sayDayShort(day)}${guessed ? ' (guessed)' : ''}`;
  });
  return [
    ['Id', sayId(animal.id)],
    ['Sex', animal.sex],
    ['Hatched', hatchedOn === null ? NOT_KNOWN : sayDayShort(hatchedOn)],
    ['Came here', cameHere(animal)],
    ...(tellsSource ? sourceLines(animal) : []),
    ['Microchip', microchip === null ? 'none on record' : sayMicrochip(microchip)],
    ...(longest.length === 0 ? [] : [['Length', longest.join('; ')] as const]),
    ...(people !== null && people.people > 1
      ? [['Opened by', `${sayPeople(people.people)}: ${people.because}`] as const]
      : []),
    ...(left === null ? [] : [leftLine(left)]),
  ];
}

function cameHere({ acquiredOn, clutch, sire, dam, addedOn }: AnimalRecord): string {
  if (acquiredOn !== null) return `acquired ${sayDayShort(acquiredOn)}`;
  return clutch !== null || (sire !== null && dam !== null)
    ? 'bred here'
    : `on this record since ${sayDayShort(addedOn)}`;
}

function sourceLines({ source, licence, originPapers }: AnimalRecord): readonly HandOverLine[] {
  return [
    ...(source === null ? [] : [['From', source] as const]),
    ...(licence === null ? [] : [['Its licence', licence] as const]),
    ...(originPapers === null ? [] : [['Papers', originPapers] as const]),
  ];
}

function leftLine({ how, day, to }: NonNullable<AnimalRecord['left']>): HandOverLine {
  const words = { sold: 'Sold', given: 'Given', died: 'Died', lost: 'Lost' }[how];
  return [words, `${sayDayShort(day)}${to === null ? '' : ` to ${to}`}`];
}

function handOverTraits(facility: Facility, animal: AnimalRecord): HandOverTraits | null {
  const card = cardTraits(facility, animal);
  if (card === null) return null;
  const said = traitsOf(facility, animal);
  const words = card.words?.long ?? card.code;
  if (!said.ok || said.value === null) return { code: card.code, words, certain: [], possible: [] };
  const all = locusWords(said.value.traits, lociFor(facility, animal.species).loci);
  return {
    code: card.code,
    words,
    certain: all.filter(({ standing: how }) => how !== 'possible').map(({ long }) => long),
    possible: all.filter(({ standing: how }) => how === 'possible').map(({ long }) => long),
  };
}

function parentsOf(facility: Facility, { sire, dam }: AnimalRecord): readonly HandOverLine[] {
  const say = (id: Id | null): string => {
    if (id === null) return NOT_KNOWN;
    const parent = facility.animals.get(id);
    const traits = parent === undefined ? null : cardTraits(facility, parent);
    return [nameOf(facility, id), sayId(id), traits?.code, traits?.words?.long].filter(Boolean).join(' · ');
  };
  return [
    ['Sire', say(sire)],
    ['Dam', say(dam)],
  ];
}

function weightLines(animal: AnimalRecord, { weights }: GrowthPlot): readonly HandOverLine[] {
  const change = sayChange(animal);
  return weights
    .slice(-WEIGHTS)
    .reverse()
    .map(({ day, weightG, doubted }, at) => {
      const more = [at === 0 ? change : null, doubted ? 'asked about and confirmed' : null].filter(Boolean).join('; ');
      return [sayDayShort(day), `${sayGrams(weightG)}${more === '' ? '' : ` (${more})`}`] as const;
    });
}

function shedWords(own: readonly SiteEvent[]): string {
  const sheds = own.flatMap((event) => {
    if (event.kind !== 'shed-seen') return [];
    return [`${sayDayShort(event.day)}${event.payload.whole === false ? ' (in pieces)' : ''}`];
  });
  if (sheds.length === 0) return 'none on record';
  return `${sheds.slice(-SHEDS).reverse().join(', ')}${sheds.length > SHEDS ? `; ${sheds.length} on record` : ''}`;
}

/** What stands when it goes; nothing is left out, since the next keeper has to know. */
function holdWords(animal: AnimalRecord, on: Day): readonly string[] {
  const vet = needsVet(animal);
  const until = (day: Day | null): string => (day === null ? '' : `, until ${sayDayShort(day)}`);
  const quarantine = animal.holds.find(({ reason }) => reason === 'quarantine');
  return [
    ...(vet === null ? [] : [`a vet’s word is needed: ${vet}`]),
    ...holdsOn(animal, on)
      .filter(({ kind }) => kind !== 'vet')
      .map((hold) => (hold.reason.includes('until') ? hold.reason : `${hold.reason}${until(hold.until)}`)),
    ...(quarantine === undefined
      ? []
      : [`quarantine since ${sayDayShort(quarantine.since)}${until(quarantine.until)}`]),
  ];
}
