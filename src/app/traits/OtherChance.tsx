import { useRef } from 'preact/hooks';

interface OtherChanceProps {
  readonly name: string;
  readonly put: (p: number, q: number) => void;
}

/** A chance of one's own, as `1 in 8`. It is put in by its button, since the form around it writes the traits. */
export function OtherChance({ name, put }: OtherChanceProps) {
  const [p, q] = [useRef<HTMLInputElement>(null), useRef<HTMLInputElement>(null)];
  const putIn = (): void => put(countIn(p.current), countIn(q.current));
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    putIn();
  };
  return (
    <p class="other-chance">
      <input
        ref={p}
        onKeyDown={onKeyDown}
        inputMode="numeric"
        maxLength={6}
        aria-label={`${name}: chance, so many`}
        defaultValue="1"
      />
      <span>in</span>
      <input
        ref={q}
        onKeyDown={onKeyDown}
        inputMode="numeric"
        maxLength={6}
        aria-label={`${name}: of so many`}
        defaultValue="4"
      />
      <button type="button" onClick={putIn}>
        Put it in
      </button>
    </p>
  );
}

function countIn(field: HTMLInputElement | null): number {
  return /^\d+$/.test(field?.value.trim() ?? '') ? Number(field?.value) : Number.NaN;
}
