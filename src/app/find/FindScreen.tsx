import { useApp } from '../model/app.ts';

/** Search over everything that is known. */
export function FindScreen() {
  const { site } = useApp();
  const { animals, places } = site.facility.value;
  return (
    <main>
      <h1>Find</h1>
      <p>
        {animals.size} animals, {places.size} places.
      </p>
    </main>
  );
}
