import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { readPhoto } from '../../../scanner/web/index.ts';
import type { Problem } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { ScanResult } from '../model/desk.ts';
import { decoding } from './decoding.ts';

type OnText = (text: string) => Promise<ScanResult | null>;

/** The ways beside the camera: an id typed from the card, and a photo of it. */
export function OtherWays({ onText }: { readonly onText: OnText }) {
  return (
    <div class="other-ways">
      <TypedId onText={onText} />
      <Photo onText={onText} />
    </div>
  );
}

function TypedId({ onText }: { readonly onText: OnText }) {
  const typed = useSignal('');
  const wrong = useSignal(false);
  const fieldId = useId();
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // With a keyboard on the desk the field is ready; on a phone it would pull the screen keyboard over the camera.
    if (matchMedia('(hover: hover) and (pointer: fine)').matches) field.current?.focus({ preventScroll: true });
  }, []);
  async function open(event: Event): Promise<void> {
    event.preventDefault();
    if (typed.value.trim() === '') return;
    const result = await onText(typed.value);
    wrong.value = result?.to === 'nothing';
    if (!wrong.value) typed.value = '';
  }
  return (
    <form class="typed-id" onSubmit={(event) => void open(event)}>
      <label for={fieldId} class="unseen">
        Id on the card
      </label>
      <input
        ref={field}
        id={fieldId}
        value={typed}
        placeholder="Type an id"
        autoComplete="off"
        autoCapitalize="characters"
        spellcheck={false}
        enterKeyHint="go"
        aria-invalid={wrong.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
          wrong.value = false;
        }}
      />
      <button type="submit">Open</button>
    </form>
  );
}

function Photo({ onText }: { readonly onText: OnText }) {
  const { strip, signs } = useApp();
  const reading = useSignal(false);
  const fieldId = useId();
  const refuse = (problem: Problem) => {
    signs.give('refused');
    strip.add({ subject: null, name: 'Photo', said: 'not read', result: 'refused', problem });
  };
  async function read(field: HTMLInputElement): Promise<void> {
    const file = field.files?.[0];
    if (file === undefined) return;
    reading.value = true;
    const found = await readPhoto(file, decoding);
    reading.value = false;
    // The same file may be chosen again after this.
    field.value = '';
    if (!found.ok) return refuse(found.problem);
    for (const code of found.value) await onText(code.text);
  }
  return (
    <label class="photo" for={fieldId}>
      {reading.value ? 'Reading …' : 'Photo'}
      <input
        id={fieldId}
        type="file"
        accept="image/*"
        capture="environment"
        disabled={reading.value}
        onChange={(event) => void read(event.currentTarget)}
      />
    </label>
  );
}
