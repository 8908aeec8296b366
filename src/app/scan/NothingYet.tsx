import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Opening } from '../shell/Opening.tsx';

/** What to do first: on a site without animals, and on one with them. */
export function NothingYet() {
  const { site, hub } = useApp();
  const why = hub.state.value?.problem ?? null;
  if (site.state.value === 'opening') return <Opening />;
  if (site.facility.value.animals.size > 0) {
    return (
      <p class="empty">
        Hold a card in the frame. Its record opens; with a stamp in hand it is written at once, and stands here with its
        undo.
      </p>
    );
  }
  return (
    <>
      <p class="empty">
        This device knows no animals yet. <a href="/books">Open Books</a> to bring in a log, or to add a rack and an
        animal.
      </p>
      {why !== null && <ProblemLine problem={why} />}
    </>
  );
}
