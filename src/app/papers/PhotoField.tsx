import type { Signal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Picture } from '../../core/index.ts';
import { PaperPhoto } from './PaperPhoto.tsx';
import { useUrl } from './useUrl.ts';

/** A paper has so many sides at most. */
const MOST = 4;
const MOST_WORDS = 200;

/** Photos of a paper that is being entered: each with what somebody writes beside it, until they are written together. */
export function PhotoField({ pictures }: { readonly pictures: Signal<readonly Picture[]> }) {
  const change = (at: number, picture: Picture | null): void => {
    pictures.value = pictures.value.flatMap((one, place) => {
      if (place !== at) return [one];
      return picture === null ? [] : [picture];
    });
  };
  return (
    <div class="photo-field">
      <p class="photo-field-label">Photo of the paper (may be left out)</p>
      {pictures.value.length > 0 && (
        <ol class="photo-list">
          {pictures.value.map((picture, at) => (
            <Taken
              key={picture.base64.slice(0, 64)}
              picture={picture}
              number={at + 1}
              change={(next) => change(at, next)}
            />
          ))}
        </ol>
      )}
      {pictures.value.length < MOST && (
        <PaperPhoto
          words={pictures.value.length === 0 ? 'Take or choose a photo' : 'One more side'}
          take={(picture) => {
            pictures.value = [...pictures.value, picture];
          }}
        />
      )}
    </div>
  );
}

interface TakenProps {
  readonly picture: Picture;
  readonly number: number;
  readonly change: (picture: Picture | null) => void;
}

function Taken({ picture, number, change }: TakenProps) {
  const id = useId();
  const url = useUrl(picture);
  return (
    <li>
      <span class="paper-frame">{url !== null && <img src={url} alt={`Side ${number} of the paper`} />}</span>
      <div class="field">
        <label for={id}>Words for photo {number} (may stay empty)</label>
        <input
          id={id}
          maxLength={MOST_WORDS}
          autoComplete="off"
          value={picture.words ?? ''}
          onInput={(event) => change({ ...picture, words: event.currentTarget.value })}
        />
        <small>{Math.round((picture.base64.length * 3) / 4000)} kB in the log</small>
      </div>
      <button type="button" class="link" onClick={() => change(null)}>
        Take photo {number} off
      </button>
    </li>
  );
}
