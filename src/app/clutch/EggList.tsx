import type { ClutchRecord, EggState } from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';

/** What can be said of an egg that is candled. */
export type EggWord = EggState['state'];

interface EggListProps {
  readonly clutch: ClutchRecord;
  /** Null where the eggs have hatched: then the list is only read. */
  readonly candle: ((egg: number, state: EggWord) => void) | null;
}

/** The same eggs as lines, for those who would rather read than look. */
export function EggList({ clutch, candle }: EggListProps) {
  const { clock } = useApp();
  return (
    <details class="egg-list">
      <summary>Eggs as a list</summary>
      <ol>
        {Array.from({ length: clutch.eggs }, (_none, at) => {
          const state = clutch.eggStates[at + 1];
          return (
            <li key={at}>
              <strong>{at + 1}</strong>
              <span>
                {state === undefined ? 'not candled yet' : `${state.state}, `}
                {state !== undefined && <SpokenDay day={state.day} today={clock.today.value} />}
              </span>
              {candle !== null && <Words egg={at + 1} now={state?.state ?? null} candle={candle} />}
            </li>
          );
        })}
      </ol>
    </details>
  );
}

interface WordsProps {
  readonly egg: number;
  readonly now: EggWord | null;
  candle(egg: number, state: EggWord): void;
}

function Words({ egg, now, candle }: WordsProps) {
  return (
    <span class="egg-words-list">
      {(['good', 'slug', 'lost'] as const)
        .filter((state) => state !== now)
        .map((state) => (
          <button
            key={state}
            type="button"
            class="link"
            aria-label={`Egg ${egg}: ${state}`}
            onClick={() => candle(egg, state)}
          >
            {state}
          </button>
        ))}
    </span>
  );
}
