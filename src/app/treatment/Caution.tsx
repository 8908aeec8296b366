/** A caution of the core, in full and always in view: it is never behind a touch. */
export function Caution({ words }: { readonly words: string }) {
  return (
    <p class="dose-caution">
      <strong>Caution.</strong> {words}
    </p>
  );
}
