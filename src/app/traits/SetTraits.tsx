import { useSignal } from '@preact/signals';
import type { AnimalRecord } from '../../core/index.ts';
import { TraitSheet } from './TraitSheet.tsx';

interface SetTraitsProps {
  readonly animal: AnimalRecord;
  /** How the button looks where it stands. */
  readonly look?: 'quiet' | 'action';
}

/** The way to an animal's traits from its record. */
export function SetTraits({ animal, look = 'quiet' }: SetTraitsProps) {
  const isOpen = useSignal(false);
  return (
    <>
      <button
        type="button"
        class={`set-traits-${look}`}
        onClick={() => {
          isOpen.value = true;
        }}
      >
        {animal.traits === null ? 'Set traits' : 'Change traits'}
      </button>
      {isOpen.value && (
        <TraitSheet
          animal={animal}
          onClose={() => {
            isOpen.value = false;
          }}
        />
      )}
    </>
  );
}
