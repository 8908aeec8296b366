import type { Findable } from './findIndex.ts';

/** More lines than this are not read by anybody; another word is quicker. */
const MOST = 60;

interface FoundListProps {
  readonly found: readonly Findable[];
  readonly list: { current: HTMLOListElement | null };
}

/** What was found, best first; the arrows walk it. */
export function FoundList({ found, list }: FoundListProps) {
  return (
    <>
      <p class="soft find-count" role="status">
        {found.length} found{found.length > MOST ? `, the first ${MOST} shown: add a word` : ''}
      </p>
      <ol class="found" ref={list} onKeyDown={walk}>
        {found.slice(0, MOST).map((one) => (
          <li key={one.id}>
            <a href={`/${one.kind}/${one.id}`}>
              <strong>{one.title}</strong>
              <span class="found-id">{`${one.id.slice(0, 4)} ${one.id.slice(4)}`}</span>
              <span class="found-sub">{one.sub}</span>
              <span class="found-where">{one.where}</span>
            </a>
          </li>
        ))}
      </ol>
    </>
  );
}

function walk(event: KeyboardEvent & { readonly currentTarget: HTMLOListElement }): void {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (step === 0) return;
  const links = [...event.currentTarget.querySelectorAll('a')];
  const active = document.activeElement;
  const at = active instanceof HTMLAnchorElement ? links.indexOf(active) : -1;
  event.preventDefault();
  if (at + step < 0) document.querySelector<HTMLInputElement>('.find-field')?.focus();
  else links[at + step]?.focus();
}
