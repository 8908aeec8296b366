import { useState } from 'preact/hooks';
import { type Problem, problem, sayNumber } from '../../core/index.ts';
import type { Appended } from '../../store/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { type FileReading, readFile } from './readFile.ts';

type Import =
  | { readonly at: 'idle' }
  | { readonly at: 'reading'; readonly words: string }
  | { readonly at: 'asks'; readonly reading: FileReading }
  | { readonly at: 'done'; readonly reading: FileReading; readonly appended: Appended }
  | { readonly at: 'failed'; readonly problem: Problem };

/** Takes a log file in: all of it, or after a question its sound lines, or nothing. */
export function ImportLog() {
  const { site } = useApp();
  const [now, setNow] = useState<Import>({ at: 'idle' });

  async function take(reading: FileReading): Promise<void> {
    setNow({ at: 'reading', words: `Writing ${sayNumber(reading.events.length)} entries…` });
    const taken = await site.takeIn(reading.events);
    setNow(taken.ok ? { at: 'done', reading, appended: taken.value } : { at: 'failed', problem: taken.problem });
  }

  async function open(file: File): Promise<void> {
    setNow({ at: 'reading', words: `Reading ${file.name}…` });
    try {
      const reading = await readFile(file, (count) =>
        setNow({ at: 'reading', words: `Reading ${file.name}: ${sayNumber(count)} entries…` }),
      );
      if (reading.events.length === 0) setNow({ at: 'failed', problem: problem('file-empty', { name: file.name }) });
      else if (reading.problems.length > 0) setNow({ at: 'asks', reading });
      else await take(reading);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      setNow({ at: 'failed', problem: problem('storage-failed', { why }) });
    }
  }

  return (
    <div class="import">
      <label class="secondary file-choice">
        Import a log file
        <input
          type="file"
          accept=".ndjson,.jsonl,.txt,application/x-ndjson"
          disabled={now.at === 'reading'}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            event.currentTarget.value = '';
            if (file !== undefined) void open(file);
          }}
        />
      </label>
      <div aria-live="polite">
        <ImportState now={now} take={(reading) => void take(reading)} leave={() => setNow({ at: 'idle' })} />
      </div>
    </div>
  );
}

interface ImportStateProps {
  readonly now: Import;
  readonly take: (reading: FileReading) => void;
  readonly leave: () => void;
}

function ImportState({ now, take, leave }: ImportStateProps) {
  switch (now.at) {
    case 'idle':
      return null;
    case 'reading':
      return <p class="soft">{now.words}</p>;
    case 'asks':
      return <Ask reading={now.reading} take={() => take(now.reading)} leave={leave} />;
    case 'done':
      return <p class="done-line">{sayDone(now.reading, now.appended)}</p>;
    case 'failed':
      return <ProblemLine problem={now.problem} />;
    default:
      return now satisfies never;
  }
}

const SHOWN = 20;

interface AskProps {
  readonly reading: FileReading;
  readonly take: () => void;
  readonly leave: () => void;
}

function Ask({ reading, take, leave }: AskProps) {
  const { problems, events, name } = reading;
  return (
    <div class="import-ask">
      <p>
        <strong>Not all of {name} is sound.</strong> {sayNumber(events.length)} entries can be read; nothing was written
        yet.
      </p>
      <ul>
        {problems.slice(0, SHOWN).map((one) => (
          <li key={one.path ?? one.message}>
            {one.message} <span class="soft">{one.remedy}</span>
          </li>
        ))}
        {problems.length > SHOWN ? <li>and {problems.length - SHOWN} more</li> : null}
      </ul>
      <div class="two-answers">
        <button type="button" class="secondary" onClick={take}>
          Take the {sayNumber(events.length)} sound entries
        </button>
        <button type="button" class="secondary" onClick={leave}>
          Take nothing
        </button>
      </div>
    </div>
  );
}

function sayDone({ name, sealed, problems }: FileReading, { stored, known, clashes }: Appended): string {
  const parts = [`${sayNumber(stored)} new entries from ${name}`, `${sayNumber(known)} were here already`];
  if (clashes.length > 0) parts.push(`${clashes.length} set aside, see below`);
  if (problems.length > 0) parts.push(`${problems.length} problems left out`);
  return `${parts.join(', ')}. ${sealed ? 'The seal fits: nothing is missing.' : 'The file has no seal, so nobody can say whether it is whole.'}`;
}
