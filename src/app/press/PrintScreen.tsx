import { useApp } from '../model/app.ts';

/** Cards onto paper. */
export function PrintScreen() {
  const { site } = useApp();
  const { animals, places } = site.facility.value;
  return (
    <main>
      <h1>Print</h1>
      <p>
        {animals.size} animals, {places.size} places.
      </p>
    </main>
  );
}
