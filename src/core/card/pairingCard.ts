import type { AnimalRecord } from '../animal/index.ts';
import { followPlan, plannedPair, sayEggs, sayFigure, sayKinship, standingPlans } from '../breeding/index.ts';
import type { Day } from '../days.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import { parseId, sayId } from '../ids.ts';
import { cardTraits } from '../lineage/index.ts';
import { problem } from '../problems.ts';
import { speciesForms } from './card.ts';
import type { Forms } from './content.ts';
import { type AskedLabels, type LabelContent, type LabelLeft, type LabelLine, labelLine, labelOf } from './label.ts';

/**
 * The card of a pairing, for the female’s tub: who with whom, what they carry and, where the plan that stands on a day has
 * them, what is expected of them. Its code opens her record.
 */
export function pairingCard(facility: Facility, male: AnimalRecord, female: AnimalRecord, on: Day): LabelContent {
  const [he, she] = [nameOf(facility, male.id), nameOf(facility, female.id)];
  const plain = `${she} × ${he}`;
  return labelOf(
    {
      kind: 'pairing',
      id: female.id,
      called: `pairing card ${plain}`,
      code: { says: 'id', id: female.id },
      lines: [
        labelLine('id', true, sayId(female.id)),
        labelLine('main', true, { long: `0.1 ${she} × 1.0 ${he}`, medium: plain, short: plain }),
        labelLine('body', false, speciesForms(female.species)),
        labelLine('body', false, traitForms(facility, female, '0.1')),
        labelLine('body', false, traitForms(facility, male, '1.0')),
        ...plannedLines(facility, male, female, on),
        labelLine('body', false, {
          long: `1.0 ${he}: ${sayId(male.id)}`,
          medium: sayId(male.id),
          short: sayId(male.id),
        }),
        labelLine('body', false, {
          long: 'with the stamp “paired” scan this, then his card',
          medium: 'paired: scan this, then him',
          short: 'scan, then him',
        }),
      ],
    },
    `${male.id}/${female.id}`,
  );
}

/** The word that asks for the pairs of the accepted plans that are still open. */
export const PLANNED = 'plan';

/**
 * The pairing cards of `only`: pairs of ids as `SIRE/DAM`, with commas between them, or `plan` for the pairs of the accepted
 * plans that are still open on a day, or null for all that are together now.
 * Problems of `left`: `not-an-id`, `check-failed`, `unknown-id`, `pairing-pair`.
 */
export function askedPairings(facility: Facility, only: string | null, on: Day): AskedLabels {
  if (only === null) return { labels: pairsTogether(facility, on), left: [] };
  if (only.trim().toLowerCase() === PLANNED) return { labels: pairsPlanned(facility, on), left: [] };
  const labels: LabelContent[] = [];
  const left: LabelLeft[] = [];
  for (const text of new Set(only.split(',').map((part) => part.trim()))) {
    if (text === '') continue;
    const read = pairIn(facility, text, on);
    if ('kind' in read) labels.push(read);
    else left.push(read);
  }
  return { labels, left };
}

function pairsTogether(facility: Facility, on: Day): readonly LabelContent[] {
  const females = [...facility.animals.values()].filter((one) => one.sex !== 'male' && one.left === null);
  return females
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .flatMap((female) =>
      female.together.flatMap((one) => {
        const male = facility.animals.get(one.with);
        return male === undefined || male.sex === 'female' ? [] : [pairingCard(facility, male, female, on)];
      }),
    );
}

function pairsPlanned(facility: Facility, on: Day): readonly LabelContent[] {
  const open = standingPlans(facility, on)
    .flatMap((plan) => followPlan(facility, plan, on))
    .filter(({ now }) => now.state === 'open');
  return open.flatMap((pair) => {
    const [male, female] = [facility.animals.get(pair.male), facility.animals.get(pair.female)];
    return male === undefined || female === undefined ? [] : [pairingCard(facility, male, female, on)];
  });
}

/** What the plan expects of the pair; nothing where it was not planned. */
function plannedLines(facility: Facility, male: AnimalRecord, female: AnimalRecord, on: Day): readonly LabelLine[] {
  const pair = plannedPair(facility, female, male.id, on);
  if (pair === null) return [];
  const goals = pair.plan.goals.flatMap(({ words }, at) => {
    const eggs = pair.expected[at] ?? 0;
    return eggs === 0 ? [] : [`${sayFigure(eggs)} ${words}`];
  });
  const [first = 'no goal of it'] = goals;
  const more = goals.length > 1 ? ` and ${goals.length - 1} more` : '';
  const kin = sayKinship(pair.kinship);
  return [
    labelLine('body', false, {
      long: `plan: of ${sayEggs(pair.plan.eggs)} ${goals.join(', ') || first}; ${kin}`,
      medium: `plan: ${first}${more}; ${kin}`,
      short: `plan: ${first}`,
    }),
  ];
}

function pairIn(facility: Facility, text: string, on: Day): LabelContent | LabelLeft {
  const parts = text.split('/');
  if (parts.length !== 2) return { id: text, problem: problem('pairing-pair', { text }) };
  const animals: AnimalRecord[] = [];
  for (const part of parts) {
    const read = parseId(part);
    if (!read.ok) return { id: text, problem: read.problem };
    const animal = facility.animals.get(read.value.id);
    if (animal === undefined) return { id: text, problem: problem('unknown-id', { id: sayId(read.value.id) }) };
    animals.push(animal);
  }
  const [male, female] = animals;
  return male === undefined || female === undefined
    ? { id: text, problem: problem('pairing-pair', { text }) }
    : pairingCard(facility, male, female, on);
}

function traitForms(facility: Facility, animal: AnimalRecord, sex: string): Forms {
  const traits = cardTraits(facility, animal);
  if (traits === null) {
    const none = `${sex}: no traits written`;
    return { long: none, medium: none, short: none };
  }
  const { long, medium, short } = traits.words ?? { long: traits.code, medium: traits.code, short: traits.code };
  return { long: `${sex}: ${long}`, medium: `${sex}: ${medium}`, short: `${sex}: ${short}` };
}
