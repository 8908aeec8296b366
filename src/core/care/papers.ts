import type { AnimalRecord } from '../animal/index.ts';
import { isKnown, type LogEvent, PAPER_LETTERS, type Payload } from '../events/index.ts';
import type { EventId } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { type Decision, dayFault, type EventDraft, type Moment } from './decide.ts';

/** A picture of a paper as the log keeps it: its kind, its bytes in base 64, and what somebody wrote beside it. */
export interface Picture {
  readonly mime: Payload<'paper-kept'>['mime'];
  readonly base64: string;
  readonly words?: string | undefined;
}

/** How each kind of picture begins, in base 64 (JPEG, PNG and RIFF file signatures). */
const BEGINS: Readonly<Record<Picture['mime'], string>> = {
  'image/jpeg': '/9j/',
  'image/png': 'iVBORw0KGgo',
  'image/webp': 'UklGR',
};
const LETTERS = /^[A-Za-z0-9+/]+={0,2}$/;
const MOST_WORDS = 200;

/** What is wrong with a picture, or null: `paper-too-large`, `paper-unreadable`. */
export function pictureFault({ mime, base64 }: Picture): Problem | null {
  if (base64.length > PAPER_LETTERS) return problem('paper-too-large', { letters: base64.length, most: PAPER_LETTERS });
  const isPicture = base64.startsWith(BEGINS[mime]) && LETTERS.test(base64);
  return isPicture ? null : problem('paper-unreadable', { name: 'the paper' });
}

/**
 * What a photographed paper writes, alone or for another event such as a prescription. Refused: the faults of a day and
 * of {@link pictureFault}.
 */
export function decidePaper(animal: AnimalRecord, picture: Picture, of: EventId | null, moment: Moment): Decision {
  const fault = dayFault(animal, moment) ?? pictureFault(picture);
  if (fault !== null) return { kind: 'refused', problem: fault };
  return { kind: 'accepted', drafts: [paperDraft(animal, picture, of, moment)], said: 'paper kept' };
}

/** The event of a picture that was judged already. */
export function paperDraft(
  animal: AnimalRecord,
  { mime, base64, words }: Picture,
  of: EventId | null,
  { day }: Pick<Moment, 'day'>,
): EventDraft {
  const said = words?.trim().slice(0, MOST_WORDS) ?? '';
  const payload = { mime, base64, ...(of !== null && { of }), ...(said !== '' && { words: said }) };
  return { kind: 'paper-kept', subjects: [animal.id], payload, day };
}

/** The picture that an event of a history keeps; null where it is no paper, or the event is not there. */
export function pictureIn(history: readonly LogEvent[], id: EventId): Picture | null {
  const event = history.find((one) => one.id === id);
  if (event === undefined || !isKnown(event) || event.kind !== 'paper-kept') return null;
  const { mime, base64, words } = event.payload;
  return { mime, base64, words };
}
