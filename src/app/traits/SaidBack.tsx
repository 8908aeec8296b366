import type { Signal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { ComboOffer, TraitSaying } from '../../core/index.ts';

interface SaidBackProps {
  readonly said: TraitSaying;
  /** The combo name that the card shall print; null prints the genes. Left out where there is no choice to make. */
  readonly printAs?: Signal<string | null>;
}

/** What was typed said back as the card will say it, with what was taken for granted. */
export function SaidBack({ said, printAs }: SaidBackProps) {
  const offer = said.offers.find((one) => one.name === printAs?.value);
  return (
    <div class="said-back" role="status">
      <p class="said-code">{said.code}</p>
      <p class="said-words">{(offer ?? said).words.long}</p>
      {said.notes.map((note) => (
        <p key={note} class="said-note">
          {note}
        </p>
      ))}
      {printAs !== undefined && said.offers.length > 0 && <Offers offers={said.offers} printAs={printAs} />}
    </div>
  );
}

function Offers({
  offers,
  printAs,
}: {
  readonly offers: readonly ComboOffer[];
  readonly printAs: Signal<string | null>;
}) {
  const group = useId();
  const shown = offers.some((one) => one.name === printAs.value) ? printAs.value : null;
  const lines = [
    { name: null, words: 'the genes', basis: null },
    ...offers.map((one) => ({ ...one, words: one.name })),
  ];
  return (
    <fieldset class="print-as">
      <legend>The card prints</legend>
      {lines.map(({ name, words, basis }) => (
        <label key={words}>
          <input
            type="radio"
            name={group}
            checked={shown === name}
            onChange={() => {
              printAs.value = name;
            }}
          />
          <span>
            {words}
            {basis !== null && <small> {basis}</small>}
          </span>
        </label>
      ))}
    </fieldset>
  );
}
