import '../treatment.css';
import './prescribe.css';
import { useSignal, useSignalEffect } from '@preact/signals';
import { useLocation } from 'preact-iso';
import {
  type AnimalRecord,
  decidePrescription,
  eventIdFrom,
  type Picture,
  type Problem,
  sayAnimal,
  sayId,
} from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';
import { AnimalPage } from '../../shell/AnimalPage.tsx';
import { BLANK, type DraftField, readDraft } from './draft.ts';
import { keepDraft, keepPhotos, keptDraft, keptPhotos } from './kept.ts';
import { PrescriptionForm } from './PrescriptionForm.tsx';
import { SaidBack } from './SaidBack.tsx';

/** Enters a prescription from the vet’s words; nothing is proposed, and nothing is written half. */
export function PrescriptionScreen({ id }: { readonly id?: string }) {
  return <AnimalPage id={id}>{(animal) => <PrescriptionOf key={animal.id} animal={animal} />}</AnimalPage>;
}

function PrescriptionOf({ animal }: { readonly animal: AnimalRecord }) {
  const { desk, clock, signs, site } = useApp();
  const { route } = useLocation();
  const draft = useSignal(keptDraft(animal.id));
  const pictures = useSignal<readonly Picture[]>(keptPhotos(animal.id));
  const wasKept = useSignal(draft.value !== BLANK || pictures.value.length > 0);
  const left = useSignal<ReadonlySet<DraftField>>(new Set());
  const tried = useSignal(false);
  const why = useSignal<Problem | null>(null);
  const today = clock.today.value;
  const { syringesMl } = site.facility.value.site.rules;
  const { written, faults } = readDraft(draft.value, animal, { today, syringesMl });
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    tried.value = true;
    if (written === null) {
      signs.give('refused');
      // The fields have to tell of their problems before the first of them can be found.
      requestAnimationFrame(() => focusFirst(event.target));
      return;
    }
    const moment = { day: today, today, nowMs: clock.nowMs() };
    const decision = decidePrescription(animal, written, moment, withPapers(pictures.value, moment.nowMs));
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    if ((await desk.decided(animal.id, decision)) !== 'accepted') return;
    startEmpty();
    route(`/animal/${animal.id}`);
  }
  function startEmpty(): void {
    draft.value = BLANK;
    pictures.value = [];
    keepDraft(animal.id, BLANK);
    keepPhotos(animal.id, []);
    wasKept.value = false;
    tried.value = false;
  }
  useSignalEffect(() => keepDraft(animal.id, draft.value));
  useSignalEffect(() => keepPhotos(animal.id, pictures.value));
  return (
    <section class="screen prescription" aria-labelledby="prescription-title">
      <h1 id="prescription-title">Prescription for {sayAnimal(animal)}</h1>
      <p class="soft">
        <a href={`/animal/${animal.id}`}>{sayId(animal.id)}</a> · <i>{animal.species}</i>. Every word and figure is the
        vet’s: copy it from the paper. Nothing is filled in.
      </p>
      {wasKept.value && (
        <p class="look-at prescription-kept" role="status">
          What was typed here before was kept. Hold it against the paper again, or{' '}
          <button type="button" class="link" onClick={startEmpty}>
            start empty
          </button>
        </p>
      )}
      <form class="prescription-form" onSubmit={(event) => void write(event)} noValidate>
        <div class="prescription-lines">
          <PrescriptionForm form={{ draft, faults, left, tried }} pictures={pictures} syringesMl={syringesMl} />
        </div>
        <div class="prescription-end">
          <SaidBack animal={animal} written={written} missing={Object.keys(faults).length} today={today} />
          {why.value !== null && <ProblemLine problem={why.value} />}
          {tried.value && written === null && (
            <p class="look-at" role="status">
              Nothing was written. What is missing stands at its line.
            </p>
          )}
          <button type="submit" class="primary">
            Write the prescription
          </button>
          <a class="prescription-leave" href={`/animal/${animal.id}`} onClick={startEmpty}>
            Write nothing
          </a>
        </div>
      </form>
    </section>
  );
}

/** Photos name the prescription that they belong to, so it gets its id here; without photos the log gives it one. */
function withPapers(pictures: readonly Picture[], nowMs: number) {
  if (pictures.length === 0) return null;
  return { id: eventIdFrom(nowMs, crypto.getRandomValues(new Uint8Array(10))), pictures };
}

function focusFirst(form: EventTarget | null): void {
  if (!(form instanceof HTMLFormElement)) return;
  const wrong = form.querySelector<HTMLElement>('input[aria-invalid="true"], .choose:has(.problem-line) input');
  wrong?.closest('details')?.setAttribute('open', '');
  wrong?.focus();
}
