import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

/** While the log is read; a large one takes a moment, so it says how far it is. */
export function Opening() {
  const { site } = useApp();
  const count = site.readSoFar.value;
  return (
    <section class="page opening" aria-busy="true">
      <p role="status">Opening the log{count > 0 ? `: ${count.toLocaleString('en')} events read` : ' …'}</p>
    </section>
  );
}

/** The log could not be opened: nothing can be written, and the way out is said. */
export function OpeningFailed() {
  const { site } = useApp();
  const why = site.failure.value;
  return (
    <section class="page">
      <h1>The log did not open</h1>
      {why !== null && <ProblemLine problem={why} />}
      <p>Nothing that was confirmed is lost. Write on paper until it opens.</p>
      <button type="button" class="primary" onClick={() => location.reload()}>
        Open again
      </button>
    </section>
  );
}
