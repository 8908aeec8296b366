import type { Standing } from './standing.ts';

/** The card in the tub against what is known, with the way to a new one. */
export function CardInTub({ standing }: { readonly standing: Standing }) {
  const { animal, stale } = standing;
  if (stale === 'no' || animal.left !== null) return null;
  const words = stale === 'never-printed' ? 'No card was printed yet' : 'The card in the tub says other than this';
  return (
    <p class="card-in-tub">
      <span>{words} — </span>
      <a href={`/print?only=${animal.id}`}>{stale === 'never-printed' ? 'print' : 'reprint'}</a>
    </p>
  );
}
