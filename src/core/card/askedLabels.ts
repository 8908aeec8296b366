import { eggsLeft, stillLies } from '../breeding/index.ts';
import type { Day } from '../days.ts';
import { type ClutchRecord, type Facility, nameOf, walkingOrder } from '../facility/index.ts';
import { type Id, parseId, sayId } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { lotsInFreezer } from '../stock/lots.ts';
import { askedTreatments } from './askedTreatments.ts';
import { clutchTag } from './clutchTag.ts';
import type { AskedLabels, LabelLeft } from './label.ts';
import { eggMark, layoutTest, placeLabel, stampSheet } from './labels.ts';
import { lotLabel } from './lotLabel.ts';
import { askedPairings } from './pairingCard.ts';

/** The words by which labels are asked for, on the command line and in the app’s address. */
export const LABEL_SHEETS = [
  'place',
  'clutch',
  'egg',
  'pairing',
  'treatment',
  'tube',
  'lot',
  'stamps',
  'layout-test',
] as const;
export type LabelSheet = (typeof LABEL_SHEETS)[number];

/** One word of what was asked for: an id, for eggs with a number after a slash (`7RMB-N615/3`). */
interface Word {
  readonly text: string;
  readonly id: Id;
  readonly egg: number | null;
}

/**
 * The labels of `only`: ids with commas between them (stamps by name), or null for all: every place, every clutch that
 * still lies, every egg of those that nobody has seen fail, every lot with something left. Problems of `left`: `not-an-id`, `check-failed`, `unknown-id`,
 * `id-no-place`, `clutch-unknown`, `litter-no-eggs`, `egg-beyond`, `lot-unknown`, `stamp-unknown`, and those of treatments.
 */
export function askedLabels(facility: Facility, sheet: LabelSheet, only: string | null, on: Day): AskedLabels {
  switch (sheet) {
    case 'place':
      return placesOf(facility, only);
    case 'clutch':
      return ofClutches(facility, only, on, (clutch) => ({ labels: [clutchTag(facility, clutch, on)], left: [] }));
    case 'egg':
      return ofClutches(facility, only, on, (clutch, word) => eggsOf(facility, clutch, word));
    case 'pairing':
      return askedPairings(facility, only, on);
    case 'treatment':
    case 'tube':
      return askedTreatments(facility, sheet, only, on);
    case 'lot':
      return lotsOf(facility, only, on);
    case 'stamps':
      return stampsOf(only);
    case 'layout-test':
      return { labels: [layoutTest()], left: [] };
    default:
      return sheet satisfies never;
  }
}

function placesOf(facility: Facility, only: string | null): AskedLabels {
  const { words, left } = wordsOf(only);
  const wanted = new Set(words.map(({ id }) => id));
  const strangers = words.flatMap(({ text, id }) =>
    facility.places.has(id) ? [] : [{ id: text, problem: noPlace(facility, id) }],
  );
  const inOrder = [...walkingOrder(facility)].sort(([, a], [, b]) => a - b);
  const labels = inOrder.flatMap(([id]) => {
    const place = facility.places.get(id);
    return place !== undefined && (only === null || wanted.has(id)) ? [placeLabel(facility, place)] : [];
  });
  return { labels, left: [...left, ...strangers] };
}

function ofClutches(
  facility: Facility,
  only: string | null,
  on: Day,
  labelsOf: (clutch: ClutchRecord, word: Word | null) => AskedLabels,
): AskedLabels {
  if (only === null) return together(clutchesLying(facility, on).map((clutch) => labelsOf(clutch, null)));
  const { words, left } = wordsOf(only);
  const each = words.map((word) => {
    const clutch = facility.clutches.get(word.id);
    if (clutch !== undefined) return labelsOf(clutch, word);
    return { labels: [], left: [{ id: word.text, problem: problem('clutch-unknown', { id: sayId(word.id) }) }] };
  });
  return together([...each, { labels: [], left }]);
}

/** The clutches of which eggs lie and have not hatched, the oldest first. */
function clutchesLying({ clutches }: Facility, on: Day): readonly ClutchRecord[] {
  const lying = [...clutches.values()].filter((one) => stillLies(one, on) && eggsLeft(one) > 0);
  return lying.sort((a, b) => (a.laidOn < b.laidOn || (a.laidOn === b.laidOn && a.id < b.id) ? -1 : 1));
}

function eggsOf(facility: Facility, clutch: ClutchRecord, word: Word | null): AskedLabels {
  const isGood = (egg: number): boolean => (clutch.eggStates[egg]?.state ?? 'good') === 'good';
  const all = Array.from({ length: clutch.eggs }, (_none, at) => at + 1);
  const one = word?.egg ?? null;
  const numbers = one !== null || clutch.bears === 'live young' ? [one ?? 1] : all.filter(isGood);
  return together(
    numbers.map((egg) => {
      const mark = eggMark(facility, clutch, egg);
      if (mark.ok) return { labels: [mark.value], left: [] };
      return { labels: [], left: [{ id: word?.text ?? clutch.id, problem: mark.problem }] };
    }),
  );
}

/** The labels of lots; without a wish those in the freezer, the oldest of a class first. */
function lotsOf(facility: Facility, only: string | null, on: Day): AskedLabels {
  const { words, left } = wordsOf(only);
  const ids = only === null ? [...lotsInFreezer(facility, on).values()].flat() : words;
  const each = ids.map((asked): AskedLabels => {
    const lot = facility.lots.get(asked.id);
    if (lot !== undefined) return { labels: [lotLabel(lot)], left: [] };
    return { labels: [], left: [{ id: sayId(asked.id), problem: problem('lot-unknown', { id: sayId(asked.id) }) }] };
  });
  return together([...each, { labels: [], left }]);
}

function stampsOf(only: string | null): AskedLabels {
  const all = stampSheet();
  if (only === null) return { labels: all, left: [] };
  const names = partsOf(only).map((name) => name.toLowerCase());
  const known = all.map(({ id }) => id);
  const left = names
    .filter((name) => !known.includes(name))
    .map((name) => ({ id: name, problem: problem('stamp-unknown', { stamp: name, known: known.join(', ') }) }));
  return { labels: all.filter(({ id }) => names.includes(id)), left };
}

/** Each word once; a word that is no id is left with its reason. */
function wordsOf(only: string | null): { readonly words: readonly Word[]; readonly left: readonly LabelLeft[] } {
  const words: Word[] = [];
  const left: LabelLeft[] = [];
  for (const text of new Set(partsOf(only ?? ''))) {
    const [first = '', egg] = text.split('/');
    const read = parseId(first);
    if (read.ok) words.push({ text, id: read.value.id, egg: egg === undefined ? null : Number(egg) });
    else left.push({ id: text, problem: read.problem });
  }
  return { words, left };
}

function partsOf(only: string): readonly string[] {
  return only
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

function noPlace(facility: Facility, id: Id): Problem {
  const { animals, keepers, lots, clutches } = facility;
  const isOther = animals.has(id) || keepers.has(id) || lots.has(id) || clutches.has(id);
  return isOther
    ? problem('id-no-place', { id: sayId(id), what: nameOf(facility, id) })
    : problem('unknown-id', { id: sayId(id) });
}

function together(all: readonly AskedLabels[]): AskedLabels {
  return { labels: all.flatMap((one) => one.labels), left: all.flatMap((one) => one.left) };
}
