/** Stands on every view of a comparison, above its figures. */
export function Caution() {
  return (
    <p class="enclosure-caution" role="note">
      <strong>For comparison only.</strong> Your local code, licence or inspector decides. These are texts of three
      countries as they were quoted; no figure here says whether anybody may keep an animal so.
    </p>
  );
}
