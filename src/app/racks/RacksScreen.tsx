import { useApp } from '../model/app.ts';

/** The room as it stands. */
export function RacksScreen() {
  const { site } = useApp();
  const { animals, places } = site.facility.value;
  return (
    <main>
      <h1>Racks</h1>
      <p>
        {animals.size} animals, {places.size} places.
      </p>
    </main>
  );
}
