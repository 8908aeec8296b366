import type { LogEvent, Problem } from '../../core/index.ts';
import { logReader } from '../../store/index.ts';

/** What a file holds, before anything of it is taken in. */
export interface FileReading {
  readonly name: string;
  readonly events: readonly LogEvent[];
  readonly problems: readonly Problem[];
  readonly sealed: boolean;
}

/** Reads a log file piece by piece; nothing is written. Rejects if the file itself cannot be read. */
export async function readFile(file: File, onCount: (count: number) => void): Promise<FileReading> {
  const reader = logReader();
  const events: LogEvent[] = [];
  const pieces = file.stream().pipeThrough(new TextDecoderStream()).getReader();
  for (;;) {
    const { value, done } = await pieces.read();
    if (done) break;
    for (const event of reader.push(value)) events.push(event);
    onCount(events.length);
  }
  const { events: last, problems, sealed } = reader.end();
  return { name: file.name, events: [...events, ...last], problems, sealed };
}
