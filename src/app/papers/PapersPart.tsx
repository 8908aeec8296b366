import './papers.css';
import type { AnimalRecord } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { keepPaper } from './keeping.ts';
import { PaperList } from './PaperList.tsx';
import { PaperPhoto } from './PaperPhoto.tsx';

/** An animal’s photographed papers on its record, and the way to add one. */
export function PapersPart({ animal }: { readonly animal: AnimalRecord }) {
  const app = useApp();
  if (animal.left !== null && animal.papers.length === 0) return null;
  return (
    <section class="papers" aria-labelledby="papers-title">
      <header>
        <h2 id="papers-title">Papers</h2>
        {animal.papers.length === 0 && <span class="papers-soft">none photographed</span>}
      </header>
      {animal.papers.length > 0 && <PaperList animal={animal} papers={animal.papers} />}
      <details class="papers-more">
        <summary>Add a photo of a paper</summary>
        <PaperPhoto words="Take or choose a photo" take={(picture) => void keepPaper(app, animal, picture, null)} />
      </details>
    </section>
  );
}
