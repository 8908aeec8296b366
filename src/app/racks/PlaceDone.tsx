import { useState } from 'preact/hooks';
import type { AnimalRecord, Day, EventDraft, PlaceRecord, Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';

interface PlaceDoneProps {
  readonly place: PlaceRecord;
  readonly here: readonly AnimalRecord[];
}

type Deed = 'water' | 'spot' | 'full';
const DEEDS: readonly { readonly deed: Deed; readonly words: string; readonly said: string }[] = [
  { deed: 'water', words: 'Water changed', said: 'water changed' },
  { deed: 'spot', words: 'Spot cleaned', said: 'spot cleaned' },
  { deed: 'full', words: 'Cleaned in full', said: 'cleaned in full' },
];

/** What was done at a place, and the three deeds that can be logged there; each shows on the strip with its undo. */
export function PlaceDone({ place, here }: PlaceDoneProps) {
  const { site, clock, strip, signs } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  async function log(deed: Deed, said: string): Promise<void> {
    const written = await site.write([draftOf(deed, place, here, clock.today.value)]);
    setFailed(written.ok ? null : written.problem);
    signs.give(written.ok ? 'accepted' : 'refused');
    if (!written.ok) return;
    strip.add({ subject: place.id, name: place.name, said, result: 'accepted', problem: null, events: written.value });
  }
  return (
    <section class="place-done" aria-labelledby="done-title">
      <h2 id="done-title">Done here</h2>
      <dl>
        <Done words="Water" day={place.waterOn} />
        <Done words="Cleaned" day={place.cleanedOn} />
        <Done words="Cleaned in full" day={place.cleanedFullyOn} />
      </dl>
      <div class="place-deeds">
        {DEEDS.map(({ deed, words, said }) => (
          <button key={deed} type="button" class="secondary" onClick={() => void log(deed, said)}>
            {words}
          </button>
        ))}
      </div>
      {failed === null ? null : <ProblemLine problem={failed} />}
      <p class="because">
        Move the animal out before a full clean; let a disinfectant stand as its label says, rinse and dry. Reptiles can
        carry Salmonella: wash hands afterwards, keep food away.
      </p>
    </section>
  );
}

function Done({ words, day }: { readonly words: string; readonly day: Day | null }) {
  const { clock } = useApp();
  return (
    <div>
      <dt>{words}</dt>
      <dd>{day === null ? 'never logged' : <SpokenDay day={day} today={clock.today.value} />}</dd>
    </div>
  );
}

function draftOf(deed: Deed, place: PlaceRecord, here: readonly AnimalRecord[], day: Day): EventDraft {
  const subjects = [place.id, ...here.map((animal) => animal.id)];
  return deed === 'water'
    ? { kind: 'water-changed', subjects, payload: {}, day }
    : { kind: 'place-cleaned', subjects, payload: { how: deed }, day };
}
