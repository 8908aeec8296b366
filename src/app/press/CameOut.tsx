import { useId, useState } from 'preact/hooks';
import { type Problem, problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';

interface CameOutProps {
  /** The last page that was on paper before; 0 for none. */
  readonly after: number;
  /** The last page of the run. */
  readonly pages: number;
  /** `7,012 cards`, while it is written that they are printed; null at any other time. */
  readonly writing: string | null;
  readonly say: (toPage: number) => void;
}

/** Whether it is on paper: one touch for all of it, or the last page that came out. */
export function CameOut({ after, pages, writing, say }: CameOutProps) {
  const field = useId();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<Problem | null>(null);
  function sayPart(event: Event): void {
    event.preventDefault();
    // The screen says 7,012, so that may be typed too.
    const page = Number(text.trim().replace(/^(\d{1,3}),(?=\d{3}$)/, '$1'));
    const isPart = text.trim() !== '' && Number.isInteger(page) && page > after && page <= pages;
    setWrong(isPart ? null : problem('page-not-of-run', { text, from: after + 1, to: pages }));
    if (isPart) say(page);
  }
  return (
    <>
      <button type="button" class="primary" disabled={writing !== null} onClick={() => say(pages)}>
        These are printed
      </button>
      <p class="came-out-writing" role="status">
        {writing === null ? null : `Writing that ${writing} came out…`}
      </p>
      {pages - after > 1 ? (
        <details class="came-out">
          <summary>Only a part came out</summary>
          <form onSubmit={sayPart}>
            <div class="field">
              <label for={field}>Last page that came out</label>
              <input
                id={field}
                inputMode="numeric"
                value={text}
                onInput={(event) => setText(event.currentTarget.value)}
              />
            </div>
            <button type="submit" class="secondary" disabled={writing !== null}>
              Write it
            </button>
          </form>
          {wrong === null ? null : <ProblemLine problem={wrong} />}
        </details>
      ) : null}
    </>
  );
}
