import { askedLabels, LABEL_SHEETS, type LabelSheet } from '../../core/index.ts';
import { type Given, needed, noWords, oneOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import type { Io } from '../io.ts';
import { PAPER_HELP, PAPER_OPTIONS, paperOf } from '../paper.ts';
import { printAsked } from '../printAsked.ts';
import { refusal } from '../refused.ts';
import { openSite } from '../site.ts';

const HELP = `tubwright labels --site FILE|DIR --what WHAT --stock ID --out X.pdf --manifest X.json [--only …]
                 [--on DATE] [paper: see below]

Prints what hangs in the house besides the cards, and a manifest of what stands where (mm from the page's top left corner).
Whatever was asked for and not printed is in the manifest's "left" and on the screen, and the exit code is then 1.
The same site, date and stock give the same bytes. Both files are written whole or not at all.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder; nothing is written into it
  --what WHAT      place: labels of rooms, racks, tubs …, in walking order; scanning one opens the place
                   clutch: tags of clutches and litters;  egg: a mark for each egg of a clutch, with its number
                   pairing: the cards of pairs, for the female's tub
                   treatment: the cards of prescriptions under way, with lines to sign;  tube: tube feeding sheets
                   lot: labels of the feeder lots in the freezer
                   stamps: the wall sheet of stamps;  layout-test: the code that typing scanners are tried with
  --only WHICH     place, clutch, lot: ID,ID,…;  egg: the clutches' ids, or ID/N for one egg;  stamps: their names
                   treatment, tube: the animals' ids, or ID/N for its Nth prescription (the oldest is 1)
                   pairing: SIRE/DAM,…, or “plan”: the pairs of the accepted plans that are still open
                   without it: every place, every clutch whose eggs still lie, every pair that is together,
                   every lot with something left, every treatment under way
${PAPER_HELP}
  --on DATE        the day of printing, such as 2026-11-25 (default: today at the site)

The layout follows the size of the label: words get shorter before they get too small to read, and what does not fit
whole is not printed. Egg marks are for the box or the substrate beside the egg. Print at actual size.
Treatment cards and tube sheets are arithmetic on what a vet wrote; they propose no drug and no dose, and every face says so.`;

/** What hangs in the house besides the cards. */
export const labels: Command = {
  help: HELP,
  options: {
    site: 'text',
    what: 'text',
    only: 'text',
    on: 'text',
    ...PAPER_OPTIONS,
  },
  run: runLabels,
};

async function runLabels(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const [what, only] = whatOf(given);
  const paperFor = paperOf(given);
  const site = await openSite(given, io);
  const paper = paperFor(site.facility.site.paper);
  return printAsked(site, askedLabels(site.facility, what, only, site.on), paper, io);
}

function whatOf(given: Given): readonly [LabelSheet, string | null] {
  needed(given, 'what');
  const what = oneOf(given, 'what', LABEL_SHEETS);
  const only = given.texts['only'] ?? null;
  if (what === undefined) throw refusal('option-missing', { command: given.command, option: '--what' });
  if (what === 'layout-test' && only !== null)
    throw refusal('option-wrong', {
      command: given.command,
      why: 'there is one layout-test code, so it takes no --only',
    });
  return [what, only];
}
