import { useEffect, useState } from 'preact/hooks';
import {
  type AnimalRecord,
  type KeptPaper,
  type Picture,
  pictureIn,
  problem,
  sayAnimal,
  sayDay,
  sayId,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { useUrl } from './useUrl.ts';

interface PaperSheetProps {
  readonly animal: AnimalRecord;
  readonly paper: KeptPaper;
  /** What the paper belongs to, such as a prescription; null for nothing but the animal. */
  readonly about: string | null;
  readonly onClose: () => void;
}

/** One paper, read from the log when it is opened: the record itself holds no picture. */
export function PaperSheet({ animal, paper, about, onClose }: PaperSheetProps) {
  const { site } = useApp();
  const [picture, setPicture] = useState<Picture | null | 'reading'>('reading');
  useEffect(() => {
    let isShown = true;
    void site.history(animal.id).then((events) => {
      if (isShown) setPicture(pictureIn(events, paper.id));
    });
    return () => {
      isShown = false;
    };
  }, [paper.id]);
  const url = useUrl(picture === 'reading' ? null : picture);
  return (
    <Sheet title={`Paper of ${sayAnimal(animal)}`} onClose={onClose}>
      <div class="paper-sheet">
        <p class="slide-sheet-id">
          {sayId(animal.id)} · kept on <time dateTime={paper.day}>{sayDay(paper.day)}</time>
        </p>
        {about !== null && <p>{about}</p>}
        {paper.words !== null && <p class="paper-words">{paper.words}</p>}
        {picture === 'reading' && <p role="status">Reading it from the log …</p>}
        {picture === null && <ProblemLine problem={problem('paper-gone', {})} />}
        {url !== null && (
          <>
            <span class="paper-frame">
              <img
                class="paper-picture"
                src={url}
                alt={paper.words ?? `Paper of ${sayAnimal(animal)}, ${sayDay(paper.day)}`}
              />
            </span>
            <a class="secondary" href={url} target="_blank" rel="noreferrer">
              Open it alone, to enlarge
            </a>
          </>
        )}
        <button type="button" class="give-leave" onClick={onClose}>
          Close
        </button>
      </div>
    </Sheet>
  );
}
