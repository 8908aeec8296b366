import { type Id, type LedgerLine, type LogEvent, sayDay, sayDayShort } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

interface LedgerRowProps {
  readonly line: LedgerLine;
  /** The event behind a line that may still be taken back. */
  readonly event: LogEvent | undefined;
  readonly subject: Id;
}

/** One line of the ledger; what was taken back stays in sight, struck through. */
export function LedgerRow({ line, event, subject }: LedgerRowProps) {
  const { desk } = useApp();
  const founding = line.kind === 'animal-added';
  return (
    <li class={`ledger-line ledger-${line.chip}${line.undone ? ' ledger-undone' : ''}`}>
      <time dateTime={line.day} title={`${line.day} · ${sayDay(line.day)}`}>
        {sayDayShort(line.day)}
      </time>
      <p>
        {line.undone ? <s>{line.words}</s> : line.words}
        {line.undone && <em> taken back</em>}
        {line.amended && <em> amended</em>}
        {line.keeper !== '' && <span class="ledger-keeper"> {line.keeper}</span>}
      </p>
      {event !== undefined && !line.undone && !founding && (
        <button
          type="button"
          class="undo"
          aria-label={`Undo ${line.words}, ${sayDayShort(line.day)}`}
          onClick={() => void desk.takeBack(subject, event, line.words)}
        >
          Undo
        </button>
      )}
    </li>
  );
}
