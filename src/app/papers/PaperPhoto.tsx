import './papers.css';
import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Picture, Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { shrinkPicture } from './shrink.ts';

interface PaperPhotoProps {
  /** What the button says. */
  readonly words: string;
  readonly take: (picture: Picture) => void;
}

/** Takes or chooses a photo of a paper and makes it small enough to be kept; works without a network. */
export function PaperPhoto({ words, take }: PaperPhotoProps) {
  const isWorking = useSignal(false);
  const inColour = useSignal(false);
  const fault = useSignal<Problem | null>(null);
  const [fieldId, colourId] = [useId(), useId()];
  async function read(field: HTMLInputElement): Promise<void> {
    const file = field.files?.[0];
    if (file === undefined) return;
    isWorking.value = true;
    fault.value = null;
    const picture = await shrinkPicture(file, { inColour: inColour.value });
    isWorking.value = false;
    // The same file may be chosen again after this.
    field.value = '';
    if (picture.ok) take(picture.value);
    else fault.value = picture.problem;
  }
  return (
    <div class="paper-photo">
      <label class="secondary paper-take" for={fieldId}>
        {isWorking.value ? 'Making it small …' : words}
        <input
          id={fieldId}
          type="file"
          accept="image/*"
          disabled={isWorking.value}
          onChange={(event) => void read(event.currentTarget)}
        />
      </label>
      <label class="paper-colour" for={colourId}>
        <input
          id={colourId}
          type="checkbox"
          checked={inColour}
          onChange={(event) => {
            inColour.value = event.currentTarget.checked;
          }}
        />
        <span>In colour (grey stays sharper)</span>
      </label>
      <div role="status">{fault.value !== null && <ProblemLine problem={fault.value} />}</div>
    </div>
  );
}
