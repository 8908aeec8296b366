import { type Signal, useSignal } from '@preact/signals';
import { type AnimalRecord, breedingOf, type Day, sayDayShort } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { DayChoice } from './DayChoice.tsx';
import { FollicleSheet } from './FollicleSheet.tsx';
import { LayingSheet } from './LayingSheet.tsx';
import { type SeasonDoing, useSeason } from './useSeason.ts';

export type SeasonSheetName = 'follicles' | 'laid' | 'born';

/** What can be written of the season, each at one touch; what needs figures opens a sheet. */
export function SeasonActions({ animal }: { readonly animal: AnimalRecord }) {
  const doing = useSeason(animal);
  const day = useSignal<Day | null>(null);
  const sheet = useSignal<SeasonSheetName | null>(null);
  const isMale = animal.sex === 'male';
  return (
    <div class="breeding-actions">
      <div class="breeding-buttons">
        <PairingButtons animal={animal} doing={doing} day={day} />
        {!isMale && <FemaleButtons animal={animal} doing={doing} day={day} sheet={sheet} />}
      </div>
      <details class="breeding-day">
        <summary>{day.value === null ? 'On another day' : `Writing for ${sayDayShort(day.value)}`}</summary>
        <DayChoice day={day} words="Day of what is written of the season" />
      </details>
      <SeasonSheet animal={animal} sheet={sheet} day={day} doing={doing} />
    </div>
  );
}

interface ButtonsProps {
  readonly animal: AnimalRecord;
  readonly doing: SeasonDoing;
  readonly day: Signal<Day | null>;
}

function PairingButtons({ animal, doing, day }: ButtonsProps) {
  const isTogether = animal.together.length > 0;
  return (
    <>
      {(isTogether || animal.season.length > 0) && (
        <button type="button" onClick={() => doing.stamp('lock', day.value)}>
          Lock
        </button>
      )}
      {isTogether && (
        <button type="button" onClick={() => doing.stamp('apart', day.value)}>
          Apart
        </button>
      )}
      <button type="button" onClick={() => doing.pair(day.value)}>
        Paired with …
      </button>
    </>
  );
}

function FemaleButtons({
  animal,
  doing,
  day,
  sheet,
}: ButtonsProps & { readonly sheet: Signal<SeasonSheetName | null> }) {
  const bears = breedingOf(animal.species)?.bears;
  const open = (name: SeasonSheetName) => () => {
    sheet.value = name;
  };
  return (
    <>
      <button type="button" onClick={open('follicles')}>
        Follicles …
      </button>
      <button type="button" onClick={() => doing.female({ do: 'ovulation' }, day.value)}>
        Ovulation
      </button>
      <button type="button" onClick={() => doing.female({ do: 'pre-lay-shed' }, day.value)}>
        {bears === 'live young' ? 'Shed after ovulation' : 'Pre-lay shed'}
      </button>
      {bears !== 'live young' && (
        <button type="button" onClick={open('laid')}>
          Laid …
        </button>
      )}
      {bears !== 'eggs' && (
        <button type="button" onClick={open('born')}>
          Birth …
        </button>
      )}
    </>
  );
}

interface SeasonSheetProps extends ButtonsProps {
  readonly sheet: Signal<SeasonSheetName | null>;
}

/** The sheet that is open, if one is. */
export function SeasonSheet({ animal, sheet, day, doing }: SeasonSheetProps) {
  const { clock } = useApp();
  const close = () => {
    sheet.value = null;
  };
  const on = day.value ?? clock.today.value;
  if (sheet.value === null) return null;
  if (sheet.value === 'follicles')
    return <FollicleSheet animal={animal} write={(act) => doing.female(act, day.value)} onClose={close} />;
  return <LayingSheet animal={animal} what={sheet.value} on={on} onClose={close} />;
}
