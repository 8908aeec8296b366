import { useApp } from '../model/app.ts';
import type { AnimalWanted } from '../model/desk.ts';

/** Stands where the stamp is while somebody waits for an animal: what to scan, and the way out of it. */
export function WantedLine({ wanted }: { readonly wanted: AnimalWanted }) {
  const { desk } = useApp();
  return (
    <div class="stamp-bar stamp-held wanted-line" role="status">
      <p class="stamp-choose">
        <strong>{wanted.says}</strong>
      </p>
      <button type="button" class="stamp-down" onClick={() => desk.want(null)}>
        Leave it
      </button>
    </div>
  );
}
