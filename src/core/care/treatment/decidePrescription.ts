import type { AnimalRecord } from '../../animal/index.ts';
import { sayDayShort } from '../../days.ts';
import type { Payload } from '../../events/index.ts';
import type { EventId } from '../../ids.ts';
import { problem } from '../../problems.ts';
import { type Decision, dayFault, type EventDraft, type Moment } from '../decide.ts';
import { type Picture, paperDraft, pictureFault } from '../papers.ts';
import { prescriptionFault } from './prescription.ts';
import { prescriptionOf } from './underWay.ts';

/** The photographed papers of a prescription, and the id that the prescription gets, so that they can name it. */
export interface WithPapers {
  readonly id: EventId;
  readonly pictures: readonly Picture[];
}

/** The vet’s word that a prescription ends: whose, and why. */
export interface StopWord {
  readonly by: string;
  readonly why: string;
}

/** How a treatment went, and who says so. */
export interface OutcomeWord {
  readonly words: string;
  readonly by?: string;
}

/** What a prescription that is entered writes, with the pictures of its papers; refused where its figures or pictures cannot be. */
export function decidePrescription(
  animal: AnimalRecord,
  written: Payload<'prescription-written'>,
  moment: Moment,
  papers: WithPapers | null = null,
): Decision {
  const pictures = papers?.pictures ?? [];
  const fault =
    dayFault(animal, moment) ??
    prescriptionFault(prescriptionOf({ ...BLANK, written })) ??
    pictures.map(pictureFault).find((one) => one !== null) ??
    null;
  if (fault !== null) return { kind: 'refused', problem: fault };
  const named = papers === null ? {} : { id: papers.id };
  const kind = 'prescription-written';
  const draft: EventDraft = { kind, subjects: [animal.id], payload: written, day: moment.day, ...named };
  const kept = pictures.map((picture) => paperDraft(animal, picture, papers?.id ?? null, moment));
  return { kind: 'accepted', drafts: [draft, ...kept], said: `prescription: ${written.drug}` };
}

/** What the vet’s word that a prescription ends writes; it needs the vet’s name and reason. */
export function decideStop(animal: AnimalRecord, id: EventId, { by, why }: StopWord, moment: Moment): Decision {
  const record = animal.prescriptions.find((one) => one.id === id);
  if (record === undefined) return { kind: 'refused', problem: problem('prescription-unknown', {}) };
  if (by.trim() === '') return { kind: 'refused', problem: problem('vet-unnamed') };
  if (why.trim() === '') return { kind: 'refused', problem: problem('stop-unexplained', {}) };
  const fault = dayFault(animal, moment);
  if (fault !== null) return { kind: 'refused', problem: fault };
  const payload = { prescription: id, by: by.trim(), why: why.trim() };
  const draft: EventDraft = { kind: 'prescription-stopped', subjects: [animal.id], payload, day: moment.day };
  const said = `prescription stopped by ${by.trim()}`;
  if (record.stopped === null) return { kind: 'accepted', drafts: [draft], said };
  const doubt = problem('prescription-stopped', { day: sayDayShort(record.stopped.day) });
  return { kind: 'asks', problem: doubt, drafts: [draft], said };
}

/** What the words about how a treatment went write; earlier ones stay. */
export function decideOutcome(animal: AnimalRecord, id: EventId, outcome: OutcomeWord, moment: Moment): Decision {
  if (!animal.prescriptions.some((one) => one.id === id))
    return { kind: 'refused', problem: problem('prescription-unknown', {}) };
  const [words, by] = [outcome.words.trim(), outcome.by?.trim() ?? ''];
  if (words === '') return { kind: 'refused', problem: problem('note-empty') };
  const fault = dayFault(animal, moment);
  if (fault !== null) return { kind: 'refused', problem: fault };
  const payload = { prescription: id, words, ...(by !== '' && { by }) };
  const draft: EventDraft = { kind: 'outcome-noted', subjects: [animal.id], payload, day: moment.day };
  return { kind: 'accepted', drafts: [draft], said: 'outcome noted' };
}

const BLANK = { id: '' as EventId, writtenOn: '1970-01-01' as never, stopped: null, given: [], outcomes: [] };
