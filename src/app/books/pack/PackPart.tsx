import './pack.css';
import { useState } from 'preact/hooks';
import {
  COUNTRY_PROFILES,
  type CountryProfile,
  type Id,
  type PackChoice,
  type Problem,
  problem,
  profileOfSite,
  sayDayShort,
} from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';
import { AnimalChoice } from './AnimalChoice.tsx';
import { PackRunPanel } from './PackRunPanel.tsx';
import { PlaceChoice } from './PlaceChoice.tsx';
import { SiteProfile } from './SiteProfile.tsx';
import { usePack } from './usePack.ts';

type Of = PackChoice['of'];
const WHAT = [
  ['all', 'All animals that were here in these years'],
  ['place', 'One rack or place'],
  ['only', 'One animal'],
] as const satisfies readonly (readonly [Of, string])[];
const PAPERS = [
  ['a4', 'A4'],
  ['letter', 'Letter'],
] as const;

/** The inspector’s pack: which animals, by whose rules, on what paper. It reads the log and writes nothing into it. */
export function PackPart() {
  const { site } = useApp();
  const { rules } = site.facility.value.site;
  const pack = usePack();
  const [of, setOf] = useState<Of>('all');
  const [place, setPlace] = useState<Id | null>(null);
  const [animal, setAnimal] = useState<Id | null>(null);
  const [picked, setPicked] = useState<string | null>(null);
  const [paper, setPaper] = useState<(typeof PAPERS)[number][0]>('a4');
  const [missing, setMissing] = useState<Problem | null>(null);
  const profile = profileOfSite(picked ?? rules.countryProfile);
  function make(): void {
    const choice = choiceOf(of, place, animal);
    setMissing(choice === null ? problem('pack-unchosen') : null);
    if (choice !== null) pack.make({ choice, profile: profile.id, paper });
  }
  const change = <T,>(set: (value: T) => void) => {
    return (value: T): void => {
      set(value);
      setMissing(null);
      if (pack.state.at !== 'working') pack.stop();
    };
  };
  return (
    <div class="pack">
      <p class="soft">
        The records of the last three years for an inspector, as a PDF and as tables. Nothing is written into the log.
      </p>
      <fieldset class="pack-what">
        <legend>Which animals</legend>
        {WHAT.map(([id, words]) => (
          <label key={id} class="check-line">
            <input type="radio" name="pack-what" checked={of === id} onChange={() => change(setOf)(id)} />
            <span>{words}</span>
          </label>
        ))}
        {of === 'place' && <PlaceChoice chosen={place} choose={change(setPlace)} />}
        {of === 'only' && <AnimalChoice chosen={animal} choose={change(setAnimal)} />}
      </fieldset>
      <div class="field">
        <label for="pack-profile">Profile</label>
        <select
          id="pack-profile"
          value={profile.id}
          aria-describedby="pack-profile-says"
          onChange={(event) => change(setPicked)(event.currentTarget.value)}
        >
          {COUNTRY_PROFILES.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
        <small id="pack-profile-says">
          {sayText(profile)} No legal advice: your licence and your local authority decide.
        </small>
      </div>
      <SiteProfile profile={profile} />
      <div class="field">
        <label for="pack-paper">Paper</label>
        <select
          id="pack-paper"
          value={paper}
          onChange={(event) => change(setPaper)(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}
        >
          {PAPERS.map(([id, words]) => (
            <option key={id} value={id}>
              {words}
            </option>
          ))}
        </select>
      </div>
      {missing !== null && <ProblemLine problem={missing} />}
      <PackRunPanel state={pack.state} make={make} stop={pack.stop} />
    </div>
  );
}

/** The text of a profile, its date, and where it was read. */
function sayText({ law, inForce, dated, source }: CountryProfile): string {
  if (law === null) return 'It follows no country’s text.';
  const date = inForce === null ? (dated ?? '') : `in force since ${sayDayShort(inForce)}`;
  return `${law}; ${date}. Read at ${source}.`;
}

function choiceOf(of: Of, place: Id | null, animal: Id | null): PackChoice | null {
  switch (of) {
    case 'all':
      return { of };
    case 'place':
      return place === null ? null : { of, place };
    case 'only':
      return animal === null ? null : { of, ids: [animal] };
    default:
      return of satisfies never;
  }
}
