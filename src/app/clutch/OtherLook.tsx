import '../traits/traits.css';
import { useSignal } from '@preact/signals';
import { useApp } from '../model/app.ts';
import { SaidBack, TraitText, useTraits } from '../traits/index.ts';
import { CountStep } from './CountStep.tsx';
import type { HatchDraft, TypedYoung } from './hatchDraft.ts';

interface OtherLookProps {
  readonly species: string;
  readonly draft: HatchDraft;
  change(part: Partial<HatchDraft>): void;
}

/** A look that is not among the predicted ones: typed, flagged, and kept as it was seen. */
export function OtherLook({ species, draft, change }: OtherLookProps) {
  const set = (at: number, count: number): void =>
    change({ typed: draft.typed.flatMap((one, nth) => (nth !== at ? [one] : count === 0 ? [] : [{ ...one, count }])) });
  return (
    <>
      {draft.typed.length > 0 && (
        <ol class="pick-looks typed-looks">
          {draft.typed.map((one, at) => (
            <li key={one.words} class="look-counted">
              <span class="look-says">
                <strong>{one.words}</strong>
                <small class="look-flag">Entered by hand, not predicted: kept as you saw it, with a note.</small>
              </span>
              <CountStep label={one.words} count={one.count} set={(count) => set(at, count)} />
            </li>
          ))}
        </ol>
      )}
      <AddLook species={species} add={(one) => change({ typed: [...draft.typed, one] })} />
    </>
  );
}

function AddLook({ species, add }: { readonly species: string; add(one: TypedYoung): void }) {
  const { site } = useApp();
  const reading = useTraits(site.facility.value, species, null);
  const isOpen = useSignal(false);
  const { typed, text } = reading;
  function take(event: Event): void {
    event.preventDefault();
    if (typed.kind !== 'said') return;
    add({ traits: typed.said.traits, words: typed.said.words.long, count: 1 });
    text.value = '';
    isOpen.value = false;
  }
  if (!isOpen.value)
    return (
      <button
        type="button"
        class="secondary other-look"
        onClick={() => {
          isOpen.value = true;
        }}
      >
        Another look
      </button>
    );
  return (
    <form class="add-look" onSubmit={take}>
      <TraitText label="How it looks, in trade words or as trait code" text={text} typed={typed} name="look" />
      {typed.kind === 'said' && <SaidBack said={typed.said} />}
      <div class="add-look-ways">
        <button type="submit" class="secondary" disabled={typed.kind !== 'said'}>
          Add this look
        </button>
        <button
          type="button"
          class="link"
          onClick={() => {
            isOpen.value = false;
          }}
        >
          Leave it
        </button>
      </div>
    </form>
  );
}
