import '../../look/parts.css';
import '../leaving.css';
import { useSignal } from '@preact/signals';
import { useState } from 'preact/hooks';
import { type AnimalRecord, saleFault, sayAnimal, sayId } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';
import { DocumentReadBack } from '../../press/DocumentReadBack.tsx';
import { MissingSigns } from '../../press/MissingSigns.tsx';
import { AnimalPage } from '../../shell/AnimalPage.tsx';
import { type HandOverChoice, type HandOverState, useHandOver } from './useHandOver.ts';

/** The hand-over sheet of an animal: what goes on it, and the PDF itself. */
export function HandOverScreen({ id }: { readonly id?: string }) {
  return <AnimalPage id={id}>{(animal) => <HandOverOf key={animal.id} animal={animal} />}</AnimalPage>;
}

const PAPERS = [
  ['a4', 'A4'],
  ['letter', 'Letter'],
] as const;

function HandOverOf({ animal }: { readonly animal: AnimalRecord }) {
  const { clock } = useApp();
  const choice = useSignal<HandOverChoice>({ paper: 'a4', tellsSource: false });
  const state = useHandOver(animal, choice.value);
  const fault = animal.left === null ? saleFault(animal, clock.today.value) : null;
  return (
    <section class="screen hand-over" aria-labelledby="hand-over-title">
      <h1 id="hand-over-title">Hand-over sheet of {sayAnimal(animal)}</h1>
      <p class="soft">
        <a href={`/animal/${animal.id}`}>{sayId(animal.id)}</a> · <i>{animal.species}</i>. What is on record goes on it;
        nothing is written into the log.
      </p>
      <div class="hand-over-body">
        <div class="hand-over-run">
          {fault !== null && <ProblemLine problem={fault} />}
          <div class="hand-over-choice">
            <div class="field">
              <label for="hand-over-paper">Paper</label>
              <select
                id="hand-over-paper"
                value={choice.value.paper}
                onChange={(event) => {
                  const paper = event.currentTarget.value === 'letter' ? 'letter' : 'a4';
                  choice.value = { ...choice.value, paper };
                }}
              >
                {PAPERS.map(([paper, words]) => (
                  <option key={paper} value={paper}>
                    {words}
                  </option>
                ))}
              </select>
            </div>
            <label class="check-line">
              <input
                type="checkbox"
                checked={choice.value.tellsSource}
                onChange={(event) => {
                  choice.value = { ...choice.value, tellsSource: event.currentTarget.checked };
                }}
              />
              <span>Tell whom we had it from</span>
            </label>
          </div>
          <Made state={state} name={`hand-over-${animal.id}-${clock.today.value}.pdf`} />
        </div>
        {state.at === 'ready' && <Preview url={state.url} />}
      </div>
    </section>
  );
}

function Made({ state, name }: { readonly state: HandOverState; readonly name: string }) {
  return (
    <div aria-live="polite">
      {state.at === 'working' && <p class="soft">Setting the sheet …</p>}
      {state.at === 'failed' && <ProblemLine problem={state.problem} />}
      {state.at === 'ready' && (
        <>
          <MissingSigns signs={state.missing} />
          <p class="done-line">
            {state.manifest.pages.length} {state.manifest.pages.length === 1 ? 'page' : 'pages'}, ready to print. Both
            keep a signed one.
          </p>
          <DocumentReadBack pdf={state.pdf} manifest={state.manifest} />
          <p class="hand-over-links">
            <a class="primary" href={state.url} target="_blank" rel="noreferrer">
              Open the PDF
            </a>
            <a class="secondary" href={state.url} download={name}>
              Save the PDF
            </a>
          </p>
        </>
      )}
    </div>
  );
}

/** The PDF itself. A phone without a viewer gets the links only; at night the white page is lit only when asked for. */
function Preview({ url }: { readonly url: string }) {
  const { settings } = useApp();
  const [asked, ask] = useState(false);
  const canShow = navigator.pdfViewerEnabled;
  if (!canShow) return null;
  return (
    <div class="hand-over-run">
      {asked || settings.look.value === 'day' ? (
        <iframe src={`${url}#view=FitH&navpanes=0`} title="Preview of the hand-over sheet" />
      ) : (
        <button type="button" class="secondary" onClick={() => ask(true)}>
          Show the preview (white paper, bright)
        </button>
      )}
    </div>
  );
}
