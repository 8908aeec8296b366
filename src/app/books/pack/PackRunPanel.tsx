import { sayNumber } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { DocumentReadBack } from '../../press/DocumentReadBack.tsx';
import { MissingSigns } from '../../press/MissingSigns.tsx';
import type { PackState, ReadyFile } from './usePack.ts';

interface PackRunPanelProps {
  readonly state: PackState;
  make(): void;
  stop(): void;
}

/** The way to begin, how far it is with the way to stop it, and the files once they lie ready. */
export function PackRunPanel({ state, make, stop }: PackRunPanelProps) {
  return (
    <div class="pack-run">
      {state.at !== 'working' && state.at !== 'ready' && (
        <button type="button" class="secondary" onClick={make}>
          Make the pack
        </button>
      )}
      <div aria-live="polite">
        {state.at === 'failed' && <ProblemLine problem={state.problem} />}
        {state.at === 'ready' && (
          <>
            <p class="done-line">
              {counted(state.animals, 'animal')} on {counted(state.manifest.pages.length, 'page')}, and{' '}
              {state.tables.length} tables.
            </p>
            <MissingSigns signs={state.missing} />
            <DocumentReadBack pdf={state.pdf.file} manifest={state.manifest} />
          </>
        )}
      </div>
      {state.at === 'working' && (
        <div class="pack-working">
          <label>
            {state.share === null ? 'Reading the log…' : `Setting the pages: ${Math.round(state.share * 100)} %`}
            <progress {...(state.share === null ? {} : { value: state.share, max: 1 })} />
          </label>
          <button type="button" class="secondary" onClick={stop}>
            Cancel
          </button>
        </div>
      )}
      {state.at === 'ready' && <Files pdf={state.pdf} tables={state.tables} />}
    </div>
  );
}

function Files({ pdf, tables }: { readonly pdf: ReadyFile; readonly tables: readonly ReadyFile[] }) {
  return (
    <>
      <p class="two-answers">
        <a class="secondary" href={pdf.url} target="_blank" rel="noreferrer">
          Open the PDF
        </a>
        <a class="secondary" href={pdf.url} download={pdf.name}>
          Save the PDF
        </a>
      </p>
      <ul class="pack-tables" aria-label="Tables">
        {tables.map(({ name, url }) => (
          <li key={name}>
            <a href={url} download={name}>
              {name}
            </a>
          </li>
        ))}
      </ul>
      <p class="soft because">
        CSV for spreadsheets. A text that would be taken for a formula has an apostrophe before it, so that it stays a
        text.
      </p>
    </>
  );
}

function counted(count: number, what: string): string {
  return `${sayNumber(count)} ${what}${count === 1 ? '' : 's'}`;
}
