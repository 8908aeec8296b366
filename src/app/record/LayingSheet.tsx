import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { type AnimalRecord, breedingOf, type Day, sayAnimal, sayDay, sayId } from '../../core/index.ts';
import { Asked } from '../clutch/AskedSheet.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { type LayingText, siresFor } from './laying.ts';
import { SireChoice } from './SireChoice.tsx';
import { useLaying } from './useLaying.ts';

interface LayingSheetProps {
  readonly animal: AnimalRecord;
  readonly what: 'laid' | 'born';
  readonly on: Day;
  readonly onClose: () => void;
}

const TITLES = { laid: 'Laying of', born: 'Birth of' } as const;

/** A laying or a birth: what there is, what it weighs, and who the sire is, if that is known. */
export function LayingSheet({ animal, what, on, onClose }: LayingSheetProps) {
  const { site, clock } = useApp();
  const sires = siresFor(site.facility.value, animal, on);
  const text = useSignal<LayingText>({ ...EMPTY, sire: sires.first });
  const laying = useLaying(animal, what, on, onClose);
  const set = (part: Partial<LayingText>): void => {
    text.value = { ...text.value, ...part };
  };
  const title = `${TITLES[what]} ${sayAnimal(animal)}`;
  if (laying.doubt !== null)
    return (
      <Sheet key="asked" title={title} tone="asks" onClose={laying.leave}>
        <Asked doubt={laying.doubt} yes={() => void laying.write(text.value, true)} no={laying.leave} />
      </Sheet>
    );
  return (
    <Sheet key="form" title={title} onClose={onClose}>
      <p class="slide-sheet-id">
        {sayId(animal.id)}
        {on !== clock.today.value && `, for ${sayDay(on)}`}
      </p>
      <form
        class="laying"
        onSubmit={(event) => {
          event.preventDefault();
          void laying.write(text.value, false);
        }}
      >
        <Counts what={what} text={text.value} set={set} species={animal.species} />
        <div class="laying-row">
          {what === 'laid' && (
            <Typed
              label="Clutch weight"
              value={text.value.clutchWeight}
              put={(clutchWeight) => set({ clutchWeight })}
            />
          )}
          <Typed label="Her weight after" value={text.value.damWeight} put={(damWeight) => set({ damWeight })} />
        </div>
        <p class="hint">
          Weights may stay empty. Grams unless you write the unit. Her weight after becomes the one that losses are
          measured from.
        </p>
        <SireChoice sires={sires} sire={text.value.sire} choose={(sire) => set({ sire })} />
        {laying.failure !== null && <ProblemLine problem={laying.failure} />}
        <FormAnswers writes={what === 'laid' ? 'Write laying' : 'Write birth'} onClose={onClose} />
      </form>
    </Sheet>
  );
}

const EMPTY: LayingText = { good: '', stillborn: '', slugs: '', clutchWeight: '', damWeight: '', sire: null };

interface CountsProps {
  readonly what: 'laid' | 'born';
  readonly text: LayingText;
  readonly species: string;
  set(part: Partial<LayingText>): void;
}

function Counts({ what, text, species, set }: CountsProps) {
  const usual = breedingOf(species)?.clutch ?? null;
  return (
    <>
      <div class="laying-row">
        <Typed
          label={what === 'laid' ? 'Eggs' : 'Living young'}
          value={text.good}
          put={(good) => set({ good })}
          whole
        />
        {what === 'born' && (
          <Typed label="Stillborn" value={text.stillborn} put={(stillborn) => set({ stillborn })} whole />
        )}
        <Typed label="Slugs" value={text.slugs} put={(slugs) => set({ slugs })} whole />
      </div>
      {usual !== null && (
        <p class="hint">
          Usually {usual.range[0]}–{usual.range[1]} ({usual.mark}: {usual.source}). Empty counts as none.
        </p>
      )}
    </>
  );
}

interface TypedProps {
  readonly label: string;
  readonly value: string;
  readonly whole?: boolean;
  put(text: string): void;
}

function Typed({ label, value, whole = false, put }: TypedProps) {
  const id = useId();
  return (
    <p class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        class={whole ? 'number-field' : undefined}
        inputMode={whole ? 'numeric' : 'decimal'}
        autoComplete="off"
        value={value}
        onInput={(event) => put(event.currentTarget.value)}
      />
    </p>
  );
}
