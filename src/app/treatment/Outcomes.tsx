import { useSignal } from '@preact/signals';
import { type AnimalRecord, type PrescriptionRecord, sayDayShort } from '../../core/index.ts';
import { OutcomeSheet } from './OutcomeSheet.tsx';

interface OutcomesProps {
  readonly animal: AnimalRecord;
  readonly record: PrescriptionRecord;
  readonly isOver: boolean;
}

/** How it went, in the words of whoever wrote it; asked for once the course is over. */
export function Outcomes({ animal, record, isOver }: OutcomesProps) {
  const isOpen = useSignal(false);
  return (
    <div class="outcomes">
      {record.outcomes.map(({ id, day, words, by }) => (
        <p key={id}>
          <time dateTime={day}>{sayDayShort(day)}</time> {words}
          {by !== '' && <span class="treatment-soft"> — {by}</span>}
        </p>
      ))}
      {isOver && (
        <button
          type="button"
          class={record.outcomes.length === 0 ? 'secondary' : 'link'}
          onClick={() => {
            isOpen.value = true;
          }}
        >
          {record.outcomes.length === 0 ? 'Write how it went' : 'Add to how it went'}
        </button>
      )}
      {isOpen.value && (
        <OutcomeSheet
          animal={animal}
          record={record}
          onClose={() => {
            isOpen.value = false;
          }}
        />
      )}
    </div>
  );
}
