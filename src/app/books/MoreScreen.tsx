import { useApp } from '../model/app.ts';

/** Everything that is not walked every day. */
export function MoreScreen() {
  const { site } = useApp();
  const { animals, places } = site.facility.value;
  return (
    <main>
      <h1>More</h1>
      <p>
        {animals.size} animals, {places.size} places.
      </p>
    </main>
  );
}
