/** A flag: a notched corner with its word in it. */
export function Notch({ word, kind }: { readonly word: string; readonly kind: string }) {
  return <span class={`notch notch-${kind}`}>{word}</span>;
}
