import { useSignal } from '@preact/signals';
import type { ClutchAct, ClutchRecord, Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { sayLeft } from './hatchWords.ts';
import { counted } from './sayClutch.ts';
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
  const write = async (act: ClutchAct): Promise<void> => {
    why.value = await writeAct(app, clutch, act);
  };
  return (
    <section class="clutch-actions" aria-label="Actions">
      {why.value !== null && <ProblemLine problem={why.value} />}
      <div class="clutch-others">
        <a class="secondary" href={`/print?what=clutch&only=${clutch.id}`}>
          Print its tag
        </a>
        {view.isOpen && !view.isPart && clutch.pippedOn === null && (
          <button type="button" class="secondary" onClick={() => void write({ do: 'pip', count: null })}>
            Pip seen
          </button>
        )}
        {view.isOpen && view.next !== 'hatch' && (
          <a class="secondary" href={`/clutch/${clutch.id}/hatch`}>
            {view.isPart ? 'Hatch the rest out' : 'Hatch out'}
          </a>
        )}
        {view.isPart && (
          <button type="button" class="secondary" onClick={() => void write({ do: 'hatched', hatched: 0, last: true })}>
            No more will come
          </button>
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

function Now({ clutch, view: { next, isPart, left, young, unprinted } }: ClutchActionsProps) {
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
          {isPart ? 'Hatch the rest out' : 'Hatch out'}
          <small>{isPart ? `${left} still to come` : sayLeft(left)}</small>
        </a>
      );
    case 'enter':
      return (
        <a class="now" href={`/clutch/${clutch.id}/hatch`}>
          Enter the young<small>{(clutch.hatched ?? 0) - young.length} have no record yet</small>
        </a>
      );
    case 'print': {
      const cards = unprinted.length > 0 ? unprinted : young;
      const been = unprinted.length > 0 ? 'not printed yet' : 'printed before';
      return (
        <a class="now" href={`/print?only=${cards.map(({ id }) => id).join(',')}`}>
          Print their cards
          <small>
            {counted(cards.length, 'card')}, {been}
          </small>
        </a>
      );
    }
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
