import type { AnimalRecord, PrescriptionRecord } from '../animal/index.ts';
import { sayAnimal } from '../animal/index.ts';
import { isTubeRoute, isUnderWay } from '../care/index.ts';
import type { Day } from '../days.ts';
import { animalsInWalkingOrder, type Facility } from '../facility/index.ts';
import { parseId, sayId } from '../ids.ts';
import { ok, type Problem, problem, type Result } from '../problems.ts';
import type { AskedLabels, LabelContent, LabelLeft } from './label.ts';
import { treatmentCard } from './treatmentCard.ts';
import { tubeFeedingSheet } from './tubeSheet.ts';

/** Which paper of a treatment. */
export type TreatmentPaper = 'treatment' | 'tube';

/**
 * The treatment cards or tube feeding sheets of `only`: ids of animals with commas between them, each with all that is under
 * way or, after a slash, with its prescription of that number (`7RMB-N615/2`, the oldest is 1); or null for all that are under
 * way at the site, in walking order. Problems of `left`: `not-an-id`, `check-failed`, `unknown-id`, `treatment-none`,
 * `prescription-unknown`, those of a prescription that is over, `tube-not-stomach`.
 */
export function askedTreatments(facility: Facility, paper: TreatmentPaper, only: string | null, on: Day): AskedLabels {
  if (only === null) {
    const all = animalsInWalkingOrder(facility).flatMap((animal) => underWay(animal, paper, on));
    return together(all.map(([animal, record]) => ({ id: animal.id, made: make(paper, animal, record, on) })));
  }
  const words = new Set(only.split(',').map((part) => part.trim()));
  words.delete('');
  return together([...words].flatMap((text) => ofWord(facility, paper, text, on)));
}

/** The number of a prescription among those of its animal, as an address asks for it. */
export function prescriptionNumber(animal: AnimalRecord, record: PrescriptionRecord): number {
  return animal.prescriptions.findIndex((one) => one.id === record.id) + 1;
}

interface Made {
  readonly id: string;
  readonly made: Result<LabelContent>;
}

function ofWord(facility: Facility, paper: TreatmentPaper, text: string, on: Day): readonly Made[] {
  const no = (why: Problem): readonly Made[] => [{ id: text, made: { ok: false, problem: why } }];
  const [first = '', number] = text.split('/');
  const read = parseId(first);
  if (!read.ok) return no(read.problem);
  const animal = facility.animals.get(read.value.id);
  if (animal === undefined) return no(problem('unknown-id', { id: sayId(read.value.id) }));
  if (number !== undefined) {
    const record = animal.prescriptions[Number(number) - 1];
    return record === undefined
      ? no(problem('prescription-unknown', {}))
      : [{ id: text, made: make(paper, animal, record, on) }];
  }
  const all = underWay(animal, paper, on);
  if (all.length === 0) return no(problem('treatment-none', { animal: sayAnimal(animal) }));
  return all.map(([, record]) => ({ id: text, made: make(paper, animal, record, on) }));
}

function underWay(animal: AnimalRecord, paper: TreatmentPaper, on: Day) {
  return animal.prescriptions
    .filter((one) => isUnderWay(one, on) && (paper === 'treatment' || isTubeRoute(one.written.route)))
    .map((record) => [animal, record] as const);
}

function make(paper: TreatmentPaper, animal: AnimalRecord, record: PrescriptionRecord, on: Day): Result<LabelContent> {
  const made = paper === 'treatment' ? treatmentCard(animal, record, on) : tubeFeedingSheet(animal, record, on);
  return made.ok ? ok({ ...made.value, ask: `${animal.id}/${prescriptionNumber(animal, record)}` }) : made;
}

function together(all: readonly Made[]): AskedLabels {
  const labels: LabelContent[] = [];
  const left: LabelLeft[] = [];
  for (const { id, made } of all) {
    if (made.ok) labels.push(made.value);
    else left.push({ id, problem: made.problem });
  }
  return { labels, left };
}
