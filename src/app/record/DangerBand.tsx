import type { CardFlag } from '../../core/index.ts';

const ALONE = 'do not open alone';

/** What can hurt a keeper, above the card itself. */
export function DangerBand({ flags }: { readonly flags: readonly CardFlag[] }) {
  const dangers = flags.filter((flag) => flag.kind === 'venomous' || flag.kind === 'two-people');
  if (dangers.length === 0) return null;
  const said = dangers.map((flag) => flag.long);
  const alone = said.some((words) => words.toLowerCase().includes(ALONE));
  return (
    <div class="danger" role="note" aria-label="Danger">
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d="M12 2L23 22H1zM12 9v6M12 18v1.5" />
      </svg>
      <div>
        {said.map((words) => (
          <p key={words}>{words}</p>
        ))}
        {!alone && <p>Do not open alone</p>}
      </div>
    </div>
  );
}
