import { Chance } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { type Looks, MOST_LOOKS } from './useLooks.ts';

/** What is below the first lines: all looks on demand, with how far it is and a way to stop it. */
export function MoreLooks({ looks }: { readonly looks: Looks }) {
  const { first, all, lines, more, askAll, cancel, showMore } = looks;
  if (first?.at !== 'done') return null;
  const { count, shown } = first.value;
  if (count <= BigInt(lines.length)) return null;
  if (all?.at === 'working') return <Working done={all.progress?.done ?? 0} of={mostOf(count)} cancel={cancel} />;
  if (all?.at === 'failed') return <ProblemLine problem={all.problem} />;
  const known = all?.at === 'done' ? all.value : null;
  return (
    <div class="more-looks">
      <p>
        {known === null ? 'These are ' : `The list of ${say(known.looks.length)} is `}
        <Chance of={known === null ? shown : known.shown} /> of all young.
      </p>
      {known === null ? (
        <button type="button" onClick={askAll}>
          {count > BigInt(MOST_LOOKS)
            ? `The likeliest ${say(MOST_LOOKS)} of ${say(count)} looks`
            : `All ${say(count)} looks`}
        </button>
      ) : (
        more > 0 && (
          <button type="button" onClick={showMore}>
            More of the {say(known.looks.length)} looks: {say(more)} to come
          </button>
        )
      )}
    </div>
  );
}

function Working({ done, of, cancel }: { readonly done: number; readonly of: number; cancel(): void }) {
  return (
    <div class="more-looks" role="status">
      <p>
        Working out all looks: {say(done)} of {say(of)}
      </p>
      <progress max={of} value={done} aria-label="Looks worked out" />
      <button type="button" onClick={cancel}>
        Cancel
      </button>
    </div>
  );
}

function mostOf(count: bigint): number {
  return count > BigInt(MOST_LOOKS) ? MOST_LOOKS : Number(count);
}

function say(count: number | bigint): string {
  return count.toLocaleString('en');
}
