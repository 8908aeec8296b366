import { useApp } from '../model/app.ts';

/** Keeper, device, export and import. */
export function BooksScreen() {
  const { site } = useApp();
  const { animals, places } = site.facility.value;
  return (
    <main>
      <h1>Books</h1>
      <p>
        {animals.size} animals, {places.size} places.
      </p>
    </main>
  );
}
