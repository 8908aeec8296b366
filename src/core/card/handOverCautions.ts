import type { AnimalRecord } from '../animal/index.ts';
import { ARRIVAL_DAYS, QUARANTINE_DAYS } from '../arrival/index.ts';
import { listingOf, PEOPLE_CAUTION, peopleFor, sayPeople } from '../care/index.ts';
import { addDays, type Day, sayDayShort } from '../days.ts';
import type { Facility } from '../facility/index.ts';
import { traitsOf } from '../lineage/index.ts';
import { restsUntil } from './handOverFeeding.ts';

/** Something that whoever takes the animal has to know, under a word or two. */
export interface Caution {
  readonly title: string;
  readonly words: string;
  /** True where somebody can come to harm at once: it stands on top of the sheet. */
  readonly danger?: true;
}

/** The cautions that go with an animal: the ones for every snake, and those of its size, kind, traits and species. */
export function cautionsOf(facility: Facility, animal: AnimalRecord, on: Day): readonly Caution[] {
  return [
    ...dangersOf(facility, animal),
    {
      title: 'Wash your hands',
      words:
        'Reptiles and their prey can carry Salmonella without looking ill. Wash your hands after touching the animal, its tub or its prey, and keep all of it out of kitchens. Children of five or under, pregnant people and people with weak immunity keep away (CDC).',
    },
    journeyOf(animal, on),
    {
      title: 'After a meal',
      words: 'Leave it alone for 48 hours after a meal: no handling, no carrying (veterinary web pages).',
    },
    {
      title: 'Keep it apart',
      words: `Keep it away from your other animals for ${QUARANTINE_DAYS.join('–')} days at least, with tools of its own (a veterinary web page); your vet decides how long.`,
    },
    ...welfareOf(facility, animal),
    ...listingOf(animal.species).map(({ list, words }) => ({ title: list, words })),
    {
      title: 'Vet',
      words:
        'Figures on this sheet are records and common practice; no vet has reviewed them. When it regurgitates, loses weight or looks unwell, call a reptile vet.',
    },
  ];
}

function dangersOf(facility: Facility, animal: AnimalRecord): readonly Caution[] {
  const people = Math.max(
    peopleFor(animal, facility.site.rules.twoPeopleFromM)?.people ?? 1,
    animal.flags.includes('two-people') ? 2 : 1,
  );
  const venomous: Caution = {
    danger: true,
    title: 'VENOMOUS',
    words:
      'Only for people who are trained and licensed for it, with a bite protocol and the help that it names at hand. Ask your licence and your local code before you take it.',
  };
  const large: Caution = {
    danger: true,
    title: `${sayPeople(people)}: never alone`,
    words: `${PEOPLE_CAUTION} Many places ask for a licence for a snake of this size: ask yours before you take it.`,
  };
  return [...(animal.flags.includes('venomous') ? [venomous] : []), ...(people > 1 ? [large] : [])];
}

/** Rule CARE-ARRIVAL, as the one who carries it home needs it, with the days of this sheet. */
function journeyOf(animal: AnimalRecord, on: Day): Caution {
  const rests = restsUntil(animal, on);
  const wait = rests === null ? '' : ` It ate lately: do not carry it before ${sayDayShort(rests)}.`;
  const [least, most] = ARRIVAL_DAYS;
  return {
    title: 'After the journey',
    words: `No food for ${least} days after transport (hatchlings ${least}–${most}), so not before ${sayDayShort(addDays(on, least))} if it travels today; water always (veterinary web pages).${wait}`,
  };
}

function welfareOf(facility: Facility, animal: AnimalRecord): readonly Caution[] {
  const said = traitsOf(facility, animal);
  if (!said.ok || said.value === null) return [];
  return said.value.welfare
    .filter(({ kind }) => kind === 'welfare')
    .map(({ says, source, sure }) => ({
      title: 'Its traits',
      words: `${sure ? '' : 'Possibly: '}${says} (${source})`,
    }));
}
