import type { Problem } from '../../core/index.ts';
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

/** The log was not read: nothing can be written, and the way out is said. */
export function OpeningFailed() {
  const { site } = useApp();
  return <NotOpened why={site.failure.value} />;
}

/** The same where there is no log on this device at all, so that no other screen could stand. */
export function NotOpened({ why }: { readonly why: Problem | null }) {
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
