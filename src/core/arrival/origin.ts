import { type AnimalRecord, sayAnimal } from '../animal/index.ts';
import type { Decision, EventDraft, Moment } from '../care/index.ts';
import type { Facility } from '../facility/index.ts';
import { problem } from '../problems.ts';
import { knownChip } from './arrive.ts';
import { readMicrochip, sayMicrochip } from './microchip.ts';

/** Where an animal came from, whole each time; null is not written. */
export interface Origin {
  readonly source: string | null;
  readonly licence: string | null;
  readonly papers: string | null;
}

/** Writes where an animal came from anew. Refused: `origin-same`. */
export function decideOrigin(animal: AnimalRecord, { source, licence, papers }: Origin, moment: Moment): Decision {
  if (source === animal.source && licence === animal.licence && papers === animal.originPapers)
    return { kind: 'refused', problem: problem('origin-same', { animal: sayAnimal(animal) }) };
  const payload = {
    ...(source !== null && { source }),
    ...(licence !== null && { licence }),
    ...(papers !== null && { papers }),
  };
  const drafts: readonly EventDraft[] = [{ kind: 'origin-set', subjects: [animal.id], payload, day: moment.day }];
  return { kind: 'accepted', drafts, said: source === null ? 'origin taken off' : `came from ${source}` };
}

/** Writes a chip’s number. Refused: `microchip-malformed`. Asked about: a form that is not ISO 11784’s, and a number that another animal has. */
export function decideMicrochip(facility: Facility, animal: AnimalRecord, text: string, moment: Moment): Decision {
  const read = readMicrochip(text);
  if (!read.ok) return { kind: 'refused', problem: read.problem };
  const { code, note } = read.value;
  const drafts: readonly EventDraft[] = [
    { kind: 'microchip-set', subjects: [animal.id], payload: { code }, day: moment.day },
  ];
  const said = `microchip ${sayMicrochip(code)}`;
  const doubt =
    knownChip(facility, read.value, animal.id) ?? (note === null ? null : problem('microchip-form', { note }));
  return doubt === null ? { kind: 'accepted', drafts, said } : { kind: 'asks', problem: doubt, drafts, said };
}
