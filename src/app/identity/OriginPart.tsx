import './identity.css';
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { type AnimalRecord, readMicrochip, sayDayShort, sayMicrochip } from '../../core/index.ts';
import { IntoQuarantine } from '../arrival/QuarantinePart.tsx';
import { MicrochipSheet } from './MicrochipSheet.tsx';
import { OriginSheet } from './OriginSheet.tsx';

/** Where an animal came from, with what papers, and its chip; each can be written anew later. */
export function OriginPart({ animal }: { readonly animal: AnimalRecord }) {
  const open = useSignal<'origin' | 'microchip' | null>(null);
  const close = () => {
    open.value = null;
  };
  const { source, licence, originPapers, microchip, acquiredOn } = animal;
  return (
    <section class="origin" aria-labelledby="origin-title">
      <h2 id="origin-title">Origin and chip</h2>
      <dl class="identity-lines">
        <Line term="From">{source ?? 'nothing written'}</Line>
        <Line term="Licence">{licence ?? 'nothing written'}</Line>
        <Line term="Came with">{originPapers ?? 'nothing written'}</Line>
        {acquiredOn !== null && <Line term="Acquired">{sayDayShort(acquiredOn)}</Line>}
        <Line term="Microchip">{microchip === null ? 'none written' : <Chip code={microchip} />}</Line>
      </dl>
      <div class="identity-actions">
        <button
          type="button"
          onClick={() => {
            open.value = 'origin';
          }}
        >
          Change the origin …
        </button>
        <button
          type="button"
          onClick={() => {
            open.value = 'microchip';
          }}
        >
          {microchip === null ? 'Write a microchip …' : 'Change the microchip …'}
        </button>
        <IntoQuarantine animal={animal} />
      </div>
      {open.value === 'origin' && <OriginSheet animal={animal} onClose={close} />}
      {open.value === 'microchip' && <MicrochipSheet animal={animal} onClose={close} />}
    </section>
  );
}

function Chip({ code }: { readonly code: string }) {
  const read = readMicrochip(code);
  const note = read.ok ? read.value.note : null;
  return (
    <>
      {sayMicrochip(code)}
      {note !== null && <small class="identity-note">{note}</small>}
    </>
  );
}

/** A line of a list of facts. */
export function Line({ term, children }: { readonly term: string; readonly children: ComponentChildren }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}
