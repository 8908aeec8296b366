import { useApp } from '../model/app.ts';

/** What is to be done today, in walking order. */
export function RoundsScreen() {
  const { site } = useApp();
  const { animals, places } = site.facility.value;
  return (
    <main>
      <h1>Rounds</h1>
      <p>
        {animals.size} animals, {places.size} places.
      </p>
    </main>
  );
}
