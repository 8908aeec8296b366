import type { AnimalRecord } from '../../core/index.ts';
import { sayAnimal, sayId } from '../../core/index.ts';
import { Sheet } from '../shell/Sheet.tsx';
import type { Role } from './choice.ts';

interface WhichSheetProps {
  readonly animal: AnimalRecord;
  choose(role: Role): void;
  leave(): void;
}

/** An unsexed animal may be either half: only the keeper can say which is meant. */
export function WhichSheet({ animal, choose, leave }: WhichSheetProps) {
  return (
    <Sheet title={sayAnimal(animal)} tone="asks" onClose={leave}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <p class="slide-sheet-question">Nobody has written its sex. Is it the sire or the dam?</p>
      <p>The record stays as it is; write the sex there once it is known.</p>
      <div class="answers">
        <button type="button" class="answer" onClick={() => choose('sire')}>
          The sire
        </button>
        <button type="button" class="answer" onClick={() => choose('dam')}>
          The dam
        </button>
      </div>
      <button type="button" class="answer" onClick={leave}>
        Neither
      </button>
    </Sheet>
  );
}
