import './papers.css';
import { useSignal } from '@preact/signals';
import { type AnimalRecord, type EventId, type KeptPaper, sayDayShort } from '../../core/index.ts';
import { PaperSheet } from './PaperSheet.tsx';

interface PaperListProps {
  readonly animal: AnimalRecord;
  readonly papers: readonly KeptPaper[];
  /** True where the list stands under what the papers belong to. */
  readonly isUnder?: boolean;
}

/** Papers as lines, the newest first; a touch opens one. */
export function PaperList({ animal, papers, isUnder = false }: PaperListProps) {
  const open = useSignal<EventId | null>(null);
  const shown = papers.find((one) => one.id === open.value);
  return (
    <>
      <ul class="paper-list">
        {papers.toReversed().map((paper) => (
          <li key={paper.id}>
            <button
              type="button"
              onClick={() => {
                open.value = paper.id;
              }}
            >
              <time dateTime={paper.day}>{sayDayShort(paper.day)}</time>
              <span>
                {[paper.words ?? 'Paper', ...(isUnder ? [] : [aboutOf(animal, paper) ?? []].flat())].join(' · ')}
              </span>
              <span class="paper-show">Show</span>
            </button>
          </li>
        ))}
      </ul>
      {shown !== undefined && (
        <PaperSheet
          animal={animal}
          paper={shown}
          about={aboutOf(animal, shown)}
          onClose={() => {
            open.value = null;
          }}
        />
      )}
    </>
  );
}

/** What a paper belongs to, in words. */
function aboutOf({ prescriptions }: AnimalRecord, { of }: KeptPaper): string | null {
  const record = prescriptions.find((one) => one.id === of);
  return record === undefined ? null : `prescription: ${record.written.drug}, ${record.written.prescriber}`;
}
