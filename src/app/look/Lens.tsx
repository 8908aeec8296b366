/** One choice of a lens: what it shows, and how many there are of it. */
export interface LensChoice<T extends string> {
  readonly id: T;
  readonly words: string;
  readonly count?: number;
}

interface LensProps<T extends string> {
  readonly label: string;
  readonly choices: readonly LensChoice<T>[];
  readonly chosen: T;
  readonly choose: (id: T) => void;
}

/** A row of words of which one is underlined: through which lens a list or a room is looked at. */
export function Lens<T extends string>({ label, choices, chosen, choose }: LensProps<T>) {
  return (
    <fieldset class="lens">
      <legend class="unseen">{label}</legend>
      {choices.map(({ id, words, count }) => (
        <button key={id} type="button" aria-pressed={id === chosen} onClick={() => choose(id)}>
          {words} {count === undefined ? null : <span class="lens-count">{count}</span>}
        </button>
      ))}
    </fieldset>
  );
}
