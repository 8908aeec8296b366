import { STAMPS, type Stamp } from '../care/index.ts';
import { type ClutchRecord, type Facility, nameOf, type PlaceRecord } from '../facility/index.ts';
import { type Id, sayId } from '../ids.ts';
import { ok, type Result, refuse } from '../problems.ts';
import type { Forms } from './content.ts';
import { type LabelContent, labelLine, labelOf } from './label.ts';

/** What stands before a stamp's name in its code: `STAMP:FED-AS-PLANNED`. */
export const STAMP_PREFIX = 'STAMP:';

/** The code that shows whether a typing scanner and the device agree on the keyboard. */
export const LAYOUT_TEST = 'LAYOUT:YZ-QW/0123';

/** Places stand in each other no deeper; it also ends the walk up a ring, which only damage can make. */
const DEEPEST = 8;

/** The label of a tub, rack, incubator …: its name, what it stands in, what it is, its id. */
export function placeLabel(facility: Facility, place: PlaceRecord): LabelContent {
  const within = withinForms(facility, place);
  return labelOf({
    kind: 'place',
    id: place.id,
    called: `place label ${place.name}`,
    code: { says: 'id', id: place.id },
    lines: [
      labelLine('main', true, place.name),
      ...(within === null ? [] : [labelLine('body', false, within)]),
      labelLine('id', true, sayId(place.id)),
      labelLine('small', false, place.placeKind),
    ],
  });
}

/**
 * The mark of one egg, for the box or the substrate beside it: its number and the clutch. Its code opens the clutch.
 * Errors: `litter-no-eggs`, `egg-beyond`.
 */
export function eggMark(facility: Facility, clutch: ClutchRecord, egg: number): Result<LabelContent> {
  if (clutch.bears === 'live young') return refuse('litter-no-eggs', {});
  if (!Number.isInteger(egg) || egg < 1 || egg > clutch.eggs) return refuse('egg-beyond', { egg, eggs: clutch.eggs });
  const id = sayId(clutch.id);
  return ok(
    labelOf(
      {
        kind: 'egg',
        id: clutch.id,
        called: `egg mark ${egg} of ${nameOf(facility, clutch.dam)}’s clutch ${id}`,
        code: { says: 'id', id: clutch.id },
        lines: [labelLine('main', true, String(egg)), labelLine('id', true, id)],
      },
      `${clutch.id}/${egg}`,
    ),
  );
}

/** Every stamp for the wall, in the order of a feeding evening, each with the code that takes it up. */
export function stampSheet(): readonly LabelContent[] {
  return STAMPS.map((stamp) =>
    labelOf({
      kind: 'stamp',
      id: stamp.id,
      called: `stamp “${stamp.words}”`,
      code: { says: 'text', text: `${STAMP_PREFIX}${stamp.id.toUpperCase()}` },
      lines: [labelLine('main', true, stamp.words), labelLine('body', false, nextScan(stamp))],
    }),
  );
}

/** The code that a typing scanner is tried with, and what must come of it. */
export function layoutTest(): LabelContent {
  return labelOf({
    kind: 'layout-test',
    id: 'layout-test',
    called: 'layout-test code',
    code: { says: 'text', text: LAYOUT_TEST },
    lines: [
      labelLine('main', true, 'Scanner test'),
      labelLine('body', false, {
        long: 'Scan with each typing scanner: the screen says whether its letters arrive as they stand here.',
        medium: 'Scan with each typing scanner; the screen says whether its keys fit.',
        short: 'Scan: do the keys fit?',
      }),
      labelLine('small', false, LAYOUT_TEST),
    ],
  });
}

/** What is scanned after the stamp, so that nobody has to learn it. */
function nextScan({ needs }: Stamp): Forms {
  switch (needs) {
    case undefined:
    case 'season':
      return { long: 'scan this, then each card', medium: 'then each card', short: 'then cards' };
    case 'weight':
      return {
        long: 'scan this, then each card and its weight',
        medium: 'then each card and its weight',
        short: 'then card, weight',
      };
    case 'place':
      return {
        long: 'scan this, then the animal’s card and its new place',
        medium: 'then the card and the new place',
        short: 'then card, place',
      };
    case 'mate':
      return {
        long: 'scan this, then the cards of both animals',
        medium: 'then the cards of both',
        short: 'then both cards',
      };
    default:
      return needs satisfies never;
  }
}

/** What a place stands in, from the outside in: `Room 1 · Rack 2`; null where it stands in nothing. */
function withinForms({ places }: Facility, place: PlaceRecord): Forms | null {
  const names: string[] = [];
  let above: Id | null = place.parent;
  while (above !== null && names.length < DEEPEST) {
    const parent: PlaceRecord | undefined = places.get(above);
    if (parent === undefined) break;
    names.unshift(parent.name);
    above = parent.parent;
  }
  const nearest = names.at(-1);
  return nearest === undefined ? null : { long: names.join(' · '), medium: nearest, short: nearest };
}
