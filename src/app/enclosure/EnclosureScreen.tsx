import './enclosure.css';
import { useId, useState } from 'preact/hooks';
import { compareEnclosures, enclosureRuleOf, SPECIES } from '../../core/index.ts';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import { Caution } from './Caution.tsx';
import { PlaceList } from './PlaceList.tsx';
import { RuleChoice } from './RuleChoice.tsx';
import { Sources } from './Sources.tsx';
import { TypedLength } from './TypedLength.tsx';

/** All places beside the published rules of space, and the rules for any species, length and number. */
export function EnclosureScreen() {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const all = compareEnclosures(facility, clock.today.value);
  const picked = enclosureRuleOf(facility.site.rules.enclosureRule);
  return (
    <section class="screen enclosures" aria-labelledby="enclosures-title">
      <h1 id="enclosures-title">Enclosures</h1>
      <Caution />
      <div class="enclosures-body">
        <div>
          {all.length === 0 ? (
            <p class="empty">Nobody lives in a place yet. Add a rack and an animal in Books, and move it in.</p>
          ) : (
            <>
              <Sources picked={picked} />
              <PlaceList all={all} picked={picked} />
            </>
          )}
        </div>
        <div class="enclosures-side">
          <RuleChoice />
          <Calculator />
        </div>
      </div>
    </section>
  );
}

/** What the rules ask for at any length: before an animal comes, or before it has grown. */
function Calculator() {
  const { site } = useApp();
  const [listId, speciesId, countId] = [useId(), useId(), useId()];
  const [species, setSpecies] = useState('Python regius');
  const [animals, setAnimals] = useState('1');
  const count = /^[1-9]\d?$/.test(animals) ? Number(animals) : null;
  return (
    <section class="calculator" aria-labelledby={`${listId}-title`}>
      <h2 id={`${listId}-title`}>What the rules ask for</h2>
      <div class="field">
        <label for={speciesId}>Species</label>
        <input
          id={speciesId}
          list={listId}
          maxLength={80}
          autocomplete="off"
          value={species}
          onInput={(event) => setSpecies(event.currentTarget.value)}
        />
        <datalist id={listId}>
          {SPECIES.map(({ name }) => (
            <option key={name} value={name} />
          ))}
          <option value="ground snake" />
          <option value="climbing snake" />
        </datalist>
      </div>
      <div class="field">
        <label for={countId}>Animals together</label>
        <input
          id={countId}
          inputMode="numeric"
          maxLength={2}
          autocomplete="off"
          value={animals}
          onInput={(event) => setAnimals(event.currentTarget.value)}
        />
      </div>
      {count === null ? (
        <p class="soft">Write how many animals live together: 1, 2, 3 and so on.</p>
      ) : (
        <TypedLength
          species={species}
          animals={count}
          sizeMm={null}
          picked={enclosureRuleOf(site.facility.value.site.rules.enclosureRule)}
        />
      )}
    </section>
  );
}
