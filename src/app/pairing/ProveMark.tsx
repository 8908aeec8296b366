/** The mark of what nobody can see: a ring that is not closed. */
export function ProveMark() {
  return (
    <svg class="prove-mark" viewBox="0 0 16 16" aria-hidden="true">
      <circle cx="8" cy="8" r="5.5" />
    </svg>
  );
}
