import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { sayAnimal, sayNumber } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { StampSheet } from './StampSheet.tsx';

/** A drag of this many pixels upwards opens the sheet, as a touch does. */
const DRAG_PX = 24;

/** The stamp in hand, above the thumb: a touch or a drag up changes it, one touch puts it down. */
export function StampInHand() {
  const { desk, scale } = useApp();
  const open = useSignal(false);
  const from = useRef<number | null>(null);
  const stamp = desk.stamp.value;
  const goes = desk.goes.value;
  const waits = desk.waits.value;
  const show = () => {
    open.value = true;
  };
  return (
    <div class={`stamp-bar${stamp === null ? '' : ' stamp-held'}`}>
      <button
        type="button"
        class="stamp-choose"
        aria-haspopup="dialog"
        onClick={show}
        onPointerDown={(event) => {
          from.current = event.clientY;
        }}
        onPointerMove={(event) => {
          if (from.current === null || from.current - event.clientY < DRAG_PX) return;
          from.current = null;
          show();
        }}
        onPointerUp={() => {
          from.current = null;
        }}
      >
        <span class="stamp-grip" aria-hidden="true" />
        {stamp === null ? (
          <span>Take a stamp</span>
        ) : (
          <span>
            Stamp: <strong>{stamp.words}</strong>
            {waits !== null && <small>{sayAnimal(waits)} waits for the mate that is scanned next</small>}
            {stamp.needs === 'weight' && scale.boxG.value !== null && (
              <small>the box of {sayNumber(scale.boxG.value)} g is taken off each weight</small>
            )}
            {goes !== null && <small>{sayAnimal(goes)} goes to the place that is scanned next</small>}
          </span>
        )}
      </button>
      {stamp !== null && (
        <button type="button" class="stamp-down" onClick={() => desk.take(null)}>
          Put down
        </button>
      )}
      {open.value && (
        <StampSheet
          onClose={() => {
            open.value = false;
          }}
        />
      )}
    </div>
  );
}
