import { useSignal } from '@preact/signals';
import { sayAnimal, sayMl } from '../../../core/index.ts';
import { StateDot } from '../../look/StateDot.tsx';
import { GiveSheet } from '../GiveSheet.tsx';
import { NoVolume } from '../NoVolume.tsx';
import { sayCount, sayProgress } from '../standings.ts';
import type { DoseLine } from './todayView.ts';

/** One dose of the walk: where, who, how much and when; the line opens the record, the button at its end the dose. */
export function DoseRow({ line }: { readonly line: DoseLine }) {
  const isOpen = useSignal(false);
  const { animal, treatment, place, state, dot, words, givenToday } = line;
  const { dose, record } = treatment;
  const close = () => {
    isOpen.value = false;
  };
  return (
    <li class={`dose-line dose-${state}`}>
      <a class="dose-open" href={`/animal/${animal.id}`}>
        <StateDot state={dot} />
        <span class="dose-place">{place?.split(' · ').at(-1) ?? '—'}</span>
        <span class="dose-name">{sayAnimal(animal)}</span>
        <span class="dose-what">
          {record.written.drug}, <b>{dose.ok ? sayMl(dose.value.ml) : 'no volume'}</b>
        </span>
        <span class="dose-when">
          {words} · {sayProgress(treatment)}
          {givenToday > 0 && `, ${sayCount(givenToday)} today`}
        </span>
      </a>
      {state !== 'done' && dose.ok && (
        <button
          type="button"
          class="dose-give"
          aria-label={`Give dose: ${sayAnimal(animal)}`}
          onClick={() => {
            isOpen.value = true;
          }}
        >
          Give
        </button>
      )}
      {state !== 'done' && !dose.ok && <NoVolume animal={animal} problem={dose.problem} />}
      {isOpen.value && dose.ok && <GiveSheet animal={animal} treatment={treatment} dose={dose.value} onClose={close} />}
    </li>
  );
}
