import { useState } from 'preact/hooks';
import type { YoungLook } from '../../core/index.ts';
import { ChanceFigure } from '../genetics/index.ts';
import { CountStep } from './CountStep.tsx';
import { type HatchDraft, keyOf, saidOf } from './hatchDraft.ts';

interface PickLooksProps {
  readonly looks: readonly YoungLook[];
  readonly draft: HatchDraft;
  change(part: Partial<HatchDraft>): void;
}

const FEW = 8;

/** The looks that these parents can give, the likeliest first, each with its count. */
export function PickLooks({ looks, draft, change }: PickLooksProps) {
  const [all, showAll] = useState(false);
  const unsaid = draft.hatched - saidOf(draft);
  const shown = looks.filter((look, at) => all || at < FEW || draft.picked.has(keyOf(look)));
  const set = (look: YoungLook, count: number): void => {
    const picked = new Map(draft.picked);
    if (count === 0) picked.delete(keyOf(look));
    else picked.set(keyOf(look), count);
    change({ picked });
  };
  return (
    <>
      <ol class="pick-looks">
        {shown.map((look) => {
          const count = draft.picked.get(keyOf(look)) ?? 0;
          return (
            <li key={keyOf(look)} class={count > 0 ? 'look-counted' : undefined}>
              <span class="look-says">
                <strong>{look.shows}</strong>
                <Beneath look={look} />
              </span>
              <ChanceFigure of={look.p} />
              <CountStep label={look.shows} count={count} set={(next) => set(look, next)} />
              {unsaid > 1 && count === 0 && (
                <button type="button" class="link look-rest" onClick={() => set(look, unsaid)}>
                  all {unsaid}
                </button>
              )}
            </li>
          );
        })}
      </ol>
      {looks.length > shown.length && (
        <button type="button" class="link" onClick={() => showAll(true)}>
          {looks.length - shown.length} rarer looks
        </button>
      )}
    </>
  );
}

function Beneath({ look: { carries, hidden, needsProving } }: { readonly look: YoungLook }) {
  const words = [...carries.map((one) => one.words), ...hidden];
  return (
    <>
      {words.length > 0 && <small>{words.join(', ')}</small>}
      {needsProving && <small>only breeding it tells what it carries</small>}
    </>
  );
}
