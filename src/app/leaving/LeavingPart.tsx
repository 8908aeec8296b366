import './leaving.css';
import { useSignal } from '@preact/signals';
import { type AnimalRecord, saleFault, sayDayShort } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { DiedSheet } from './DiedSheet.tsx';
import { LostSheet } from './LostSheet.tsx';
import { SaleSheet } from './SaleSheet.tsx';

const WAYS = [
  ['sale', 'Sold or given …'],
  ['died', 'Died …'],
  ['lost', 'Lost …'],
] as const;

/** The ways in which an animal leaves, and the sheet that goes with it; or how it left. */
export function LeavingPart({ animal }: { readonly animal: AnimalRecord }) {
  const open = useSignal<(typeof WAYS)[number][0] | null>(null);
  const close = () => {
    open.value = null;
  };
  return (
    <section class="leaving" aria-labelledby="leaving-title">
      <header class="leaving-head">
        <h2 id="leaving-title">Leaving</h2>
        <a href={`/animal/${animal.id}/hand-over`}>Hand-over sheet</a>
      </header>
      {animal.left !== null ? (
        <Gone left={animal.left} />
      ) : (
        <>
          <HeldBack animal={animal} />
          <div class="leaving-ways">
            {WAYS.map(([way, words]) => (
              <button
                key={way}
                type="button"
                onClick={() => {
                  open.value = way;
                }}
              >
                {words}
              </button>
            ))}
          </div>
        </>
      )}
      {open.value === 'sale' && <SaleSheet animal={animal} onClose={close} />}
      {open.value === 'died' && <DiedSheet animal={animal} onClose={close} />}
      {open.value === 'lost' && <LostSheet animal={animal} onClose={close} />}
    </section>
  );
}

/** Why it is not to be sold now, before anybody tries. */
function HeldBack({ animal }: { readonly animal: AnimalRecord }) {
  const today = useApp().clock.today.value;
  const fault = saleFault(animal, today);
  if (fault !== null)
    return (
      <p class="look-at">
        {fault.message} {fault.remedy}
      </p>
    );
  return animal.flags.includes('not-for-sale') ? <p class="look-at">Not for sale, by its flag.</p> : null;
}

const HOW = { sold: 'Sold', given: 'Given away', died: 'Died', lost: 'Lost' } as const;

function Gone({ left }: { readonly left: NonNullable<AnimalRecord['left']> }) {
  const { how, day, to, cause } = left;
  return (
    <p>
      <strong>{HOW[how]}</strong> on <time dateTime={day}>{sayDayShort(day)}</time>
      {to !== null && `, to ${to}`}
      {how === 'died' && `, ${cause === null ? 'cause not known' : cause}`}.{' '}
      <span class="leaving-soft">Undo in the ledger brings it back.</span>
    </p>
  );
}
