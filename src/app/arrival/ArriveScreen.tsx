import '../look/parts.css';
import './arrival.css';
import { useSignal } from '@preact/signals';
import { askedTogether, type Id, type Problem, sayAnimal, sayId } from '../../core/index.ts';
import { AskedSheet } from '../clutch/AskedSheet.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { ArriveForm } from './ArriveForm.tsx';
import { arrivalDraft, BLANK, readArrival } from './draft.ts';

/** An animal arrives: who it is, where from, its papers and its place, and with one touch all of it is written. */
export function ArriveScreen() {
  const { site, clock, signs, strip } = useApp();
  const left = useSignal<ReadonlySet<string>>(new Set());
  const tried = useSignal(false);
  const doubts = useSignal<readonly Problem[]>([]);
  const failed = useSignal<Problem | null>(null);
  const arrived = useSignal<Id | null>(null);
  const today = clock.today.value;
  const moment = { day: today, today, nowMs: clock.nowMs() };
  const { faults, ready } = readArrival(arrivalDraft.value, site.facility.value, moment);

  async function write(): Promise<void> {
    doubts.value = [];
    if (ready === null) return;
    const written = await site.writeNew((mint) => ready.draftsFor(mint()));
    failed.value = written.ok ? null : written.problem;
    signs.give(written.ok ? 'accepted' : 'refused');
    const id = written.ok ? written.value[0]?.subjects[0] : undefined;
    if (!written.ok || id === undefined) return;
    const animal = site.facility.value.animals.get(id);
    const name = animal === undefined ? sayId(id) : sayAnimal(animal);
    strip.add({ subject: id, name, said: 'arrived', result: 'accepted', problem: null, events: written.value });
    arrived.value = id;
    arrivalDraft.value = BLANK;
    tried.value = false;
    left.value = new Set();
    window.scrollTo(0, 0);
  }

  function send(form: HTMLFormElement): void {
    tried.value = true;
    if (ready === null) {
      signs.give('refused');
      // The lines have to tell of their problems before the first of them can be found.
      requestAnimationFrame(() => form.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
      return;
    }
    if (ready.doubts.length === 0) void write();
    else {
      signs.give('asks');
      doubts.value = ready.doubts;
    }
  }

  const [first, ...more] = doubts.value;
  return (
    <section class="screen arrive" aria-labelledby="arrive-title">
      <h1 id="arrive-title">An animal arrives</h1>
      <p class="soft">
        Look at it before anything else. It goes into quarantine and gets no food at first; wash your hands before you
        go to the others.
      </p>
      <div role="status">{arrived.value !== null && <Arrived id={arrived.value} />}</div>
      <form
        class="arrive-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          arrived.value = null;
          send(event.currentTarget);
        }}
      >
        <ArriveForm form={{ faults, left, tried }} notes={ready?.notes ?? []} />
        <div class="arrive-end">
          {failed.value !== null && <ProblemLine problem={failed.value} />}
          {tried.value && ready === null && (
            <p class="look-at" role="status">
              Nothing was written. What is wrong stands at its line.
            </p>
          )}
          <button type="submit" class="primary">
            Write the arrival
          </button>
          <p class="soft">Everything above is written in one go, and one undo takes all of it back.</p>
        </div>
      </form>
      {first !== undefined && (
        <AskedSheet
          title="Before it is written"
          doubt={askedTogether(first, more)}
          yes={() => void write()}
          no={() => {
            doubts.value = [];
          }}
        />
      )}
    </section>
  );
}

/** What was written, with the card to print at once. */
function Arrived({ id }: { readonly id: Id }) {
  const { site } = useApp();
  const animal = site.facility.value.animals.get(id);
  return (
    <div class="arrived done-line">
      <p>
        <strong>{animal === undefined ? 'It' : sayAnimal(animal)}</strong> is here as{' '}
        <a href={`/animal/${id}`}>{sayId(id)}</a>, in quarantine as written.
      </p>
      <p class="two-answers">
        <a class="secondary" href={`/print?only=${id}`}>
          Print its card
        </a>
        <a class="secondary" href={`/animal/${id}`}>
          Open its record
        </a>
        <a class="secondary" href="/quarantine">
          Quarantine
        </a>
      </p>
    </div>
  );
}
