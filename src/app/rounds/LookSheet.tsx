import './rackRound.css';
import { useSignal } from '@preact/signals';
import { type AnimalRecord, type Id, type Problem, sayAnimal, sayId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { Looking } from '../model/rackRound.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';

/** Asks how an animal looks, wherever the round has scanned its card or the label of its home. */
export function LookSheet() {
  const { round } = useApp();
  const looking = round.looking.value;
  return looking === null ? null : <Asked key={`${looking.line.of} ${looking.animal ?? ''}`} looking={looking} />;
}

/** A few things that are seen on the walk; they only save typing. */
const SEEN = ['thin', 'breathing', 'mouth', 'skin', 'droppings', 'mites', 'left its food'];

function Asked({ looking }: { readonly looking: Looking }) {
  const { round } = useApp();
  const { line } = looking;
  const picked = useSignal<Id | null>(
    looking.animal ?? (line.animals.length === 1 ? (line.animals[0]?.id ?? null) : null),
  );
  const words = useSignal('');
  const why = useSignal<Problem | null>(null);
  const animal = line.animals.find((one) => one.id === picked.value);
  const close = (): void => round.look(null);
  async function saw(well: boolean): Promise<void> {
    if (animal === undefined) return;
    // A home that was looked at in one go is well already; nothing more has to be written of it.
    const isKnown = well && line.state === 'done' && animal.lastLook?.well !== false;
    const done = isKnown ? { ok: true as const } : await round.saw(line, { animal, well, words: words.value });
    why.value = done.ok ? null : done.problem;
    if (done.ok) close();
  }
  return (
    <Sheet
      title={animal === undefined ? `Who of ${line.place?.name ?? 'them'}?` : `Look at ${sayAnimal(animal)}`}
      onClose={close}
    >
      {animal === undefined ? (
        <Which animals={line.animals} pick={(id) => (picked.value = id)} />
      ) : (
        <>
          <p class="slide-sheet-id">
            {line.place?.name} · {sayId(animal.id)}
          </p>
          {animal.lastLook?.well === false && (
            <p class="look-before">
              <strong>To be looked at again:</strong> {animal.lastLook.words}
            </p>
          )}
          <fieldset class="second-known">
            <legend class="unseen">What was seen</legend>
            {SEEN.map((seen) => (
              <button key={seen} type="button" onClick={() => (words.value = withWord(words.value, seen))}>
                {seen}
              </button>
            ))}
          </fieldset>
          <TextLine label="What to look at again" value={words} most={400} fault={why.value} />
          <div class="answers">
            <button type="button" class="answer" onClick={() => void saw(true)}>
              It is well
            </button>
            <button type="button" class="answer answer-yes" onClick={() => void saw(false)}>
              Look again
            </button>
          </div>
          <p class="because">If it looks ill, call a reptile vet; a note here calls nobody.</p>
        </>
      )}
    </Sheet>
  );
}

function Which({ animals, pick }: { readonly animals: readonly AnimalRecord[]; readonly pick: (id: Id) => void }) {
  return (
    <ul class="which-animal">
      {animals.map((animal) => (
        <li key={animal.id}>
          <button type="button" onClick={() => pick(animal.id)}>
            <strong>{sayAnimal(animal)}</strong> {animal.species}
          </button>
        </li>
      ))}
    </ul>
  );
}

function withWord(text: string, word: string): string {
  const words = text
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');
  return (words.includes(word) ? words.filter((one) => one !== word) : [...words, word]).join(', ');
}
