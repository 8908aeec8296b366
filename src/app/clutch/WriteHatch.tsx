import { useSignal } from '@preact/signals';
import type { ClutchRecord, YoungLook } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { AskedSheet } from './AskedSheet.tsx';
import { type HatchDraft, saidOf } from './hatchDraft.ts';
import { counted } from './sayClutch.ts';
import { useHatching } from './useHatching.ts';

interface WriteHatchProps {
  readonly clutch: ClutchRecord;
  readonly draft: HatchDraft;
  readonly looks: readonly YoungLook[];
}

/** The sum against the count, and the one touch that writes all of it. */
export function WriteHatch({ clutch, draft, looks }: WriteHatchProps) {
  const hatching = useHatching(clutch, draft, looks);
  const isBusy = useSignal(false);
  const said = saidOf(draft);
  const whyNot = sayGap(draft.hatched, said);
  const write = async (isSure: boolean): Promise<void> => {
    if (isBusy.value) return;
    isBusy.value = true;
    await hatching.write(isSure);
    isBusy.value = false;
  };
  return (
    <div class="hatch-write">
      {hatching.failure !== null && <ProblemLine problem={hatching.failure} />}
      <p class="hatch-sum" role="status">
        <strong>
          {said} of {draft.hatched}
        </strong>{' '}
        {draft.hatched === 1 ? 'has its look' : 'have their look'}
      </p>
      <button
        type="button"
        class="now"
        aria-disabled={whyNot !== null}
        onClick={() => whyNot === null && void write(false)}
      >
        {wordsFor(clutch, draft.hatched)}
        <small>{whyNot ?? (draft.hatched === 0 ? 'no more will come' : 'a record, an id and a card for each')}</small>
      </button>
      {hatching.doubt !== null && (
        <AskedSheet
          title={wordsFor(clutch, draft.hatched)}
          doubt={hatching.doubt}
          yes={() => void write(true)}
          no={hatching.leave}
        />
      )}
    </div>
  );
}

function wordsFor({ bears, hatched }: ClutchRecord, count: number): string {
  if (bears === 'live young') return `Enter ${count} young`;
  const more = (hatched ?? 0) > 0 ? ' more' : '';
  return count === 0 ? `Write: none${more} hatched` : `Write: ${count}${more} hatched`;
}

function sayGap(hatched: number, said: number): string | null {
  if (said === hatched) return null;
  return said < hatched
    ? `${counted(hatched - said, 'look')} still to say`
    : `${counted(said - hatched, 'look')} too many for the count`;
}
