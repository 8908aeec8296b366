import { useSignal } from '@preact/signals';
import type { ClutchRecord, Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { useIncubatorScan } from './useIncubatorScan.ts';
import type { ClutchView } from './view.ts';
import { writeAct } from './writing.ts';

interface ClutchActionsProps {
  readonly clutch: ClutchRecord;
  readonly view: ClutchView;
}

/** What else can be done with the clutch, besides the one thing at the thumb. */
export function ClutchActions({ clutch, view }: ClutchActionsProps) {
  const app = useApp();
  const why = useSignal<Problem | null>(null);
  const pip = async (): Promise<void> => {
    why.value = await writeAct(app, clutch, { do: 'pip', count: null });
  };
  return (
    <section class="clutch-actions" aria-label="Actions">
      {why.value !== null && <ProblemLine problem={why.value} />}
      <div class="clutch-others">
        <a class="secondary" href={`/print?what=clutch&only=${clutch.id}`}>
          Print its tag
        </a>
        {view.isOpen && clutch.pippedOn === null && (
          <button type="button" class="secondary" onClick={() => void pip()}>
            Pip seen
          </button>
        )}
        {view.isOpen && view.next !== 'hatch' && (
          <a class="secondary" href={`/clutch/${clutch.id}/hatch`}>
            Hatch out
          </a>
        )}
      </div>
    </section>
  );
}

/** The one thing to do with the clutch now, at the thumb. */
export function ClutchNow({ clutch, view }: ClutchActionsProps) {
  if (view.next === 'nothing') return null;
  return (
    <div class="clutch-now">
      <Now clutch={clutch} view={view} />
    </div>
  );
}

function Now({ clutch, view: { next, left, young } }: ClutchActionsProps) {
  const walk = useIncubatorScan(clutch).walk;
  switch (next) {
    case 'incubate':
      return (
        <button type="button" class="now" onClick={walk}>
          Scan its incubator place<small>or pick it from the list</small>
        </button>
      );
    case 'read':
      return (
        <button type="button" class="now" onClick={toReadField}>
          Read the incubator<small>temperature and humidity</small>
        </button>
      );
    case 'hatch':
      return (
        <a class="now" href={`/clutch/${clutch.id}/hatch`}>
          Hatch out<small>{left} eggs are left</small>
        </a>
      );
    case 'enter':
      return (
        <a class="now" href={`/clutch/${clutch.id}/hatch`}>
          Enter the young<small>{(clutch.hatched ?? 0) - young.length} have no record yet</small>
        </a>
      );
    case 'print':
      return (
        <a class="now" href={`/print?only=${young.map(({ id }) => id).join(',')}`}>
          Print their cards<small>{young.length === 1 ? '1 card' : `${young.length} cards`}</small>
        </a>
      );
    case 'nothing':
      return null;
    default:
      next satisfies never;
      return null;
  }
}

/** On a phone the keyboard comes with it, so that the figure is the next touch. */
function toReadField(): void {
  document.querySelector<HTMLInputElement>('#incubator-read input')?.focus();
}
