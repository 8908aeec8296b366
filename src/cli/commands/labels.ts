import { basename } from 'node:path';
import { type LeftOut, type Manifest, PRINTERS, printPieces } from '../../../print/index.ts';
import { loadFonts, sha256 } from '../../../print/node/index.ts';
import { askedLabels, LABEL_SHEETS, type LabelContent, type LabelSheet } from '../../core/index.ts';
import { type Given, needed, noWords, oneOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { writeWhole } from '../files.ts';
import { type Io, say, warn } from '../io.ts';
import { type PaperAsked, paperOf } from '../paper.ts';
import { progress } from '../progress.ts';
import { inWords, refusal } from '../refused.ts';
import { openSite, type Site } from '../site.ts';

const HELP = `tubwright labels --site FILE|DIR --what WHAT --stock ID --out X.pdf --manifest X.json [--only …]
                 [--on DATE] [--first N] [--order walk|stack] [--printer ID]

Prints what hangs in the house besides the cards, and a manifest of what stands where (mm from the page's top left corner).
Whatever was asked for and not printed is in the manifest's "left" and on the screen, and the exit code is then 1.
The same site, date and stock give the same bytes. Both files are written whole or not at all.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder; nothing is written into it
  --what WHAT      place: labels of rooms, racks, tubs …, in walking order; scanning one opens the place
                   clutch: tags of clutches and litters;  egg: a mark for each egg of a clutch, with its number
                   pairing: the cards of pairs, for the female's tub
                   stamps: the wall sheet of stamps;  layout-test: the code that typing scanners are tried with
  --only WHICH     place, clutch: ID,ID,…;  egg: the clutches' ids, or ID/N for one egg;  pairing: SIRE/DAM,…;
                   stamps: their names
                   without it: every place, every clutch whose eggs still lie, every pair that is together
  --stock ID       the paper; an unknown id says which there are
  --on DATE        the day of printing, such as 2026-11-25 (default: today at the site)
  --first N        the first free label of a used sheet, from 1
  --order ORDER    walk: in order over the sheet (default);  stack: so that cut stacks are in that order
  --printer ID     ${PRINTERS.map(({ id, name }) => `${id}: ${name}`).join('\n                   ')}

The layout follows the size of the label: words get shorter before they get too small to read, and what does not fit
whole is not printed. Egg marks are for the box or the substrate beside the egg. Print at actual size.`;

/** What hangs in the house besides the cards. */
export const labels: Command = {
  help: HELP,
  options: {
    site: 'text',
    what: 'text',
    only: 'text',
    stock: 'text',
    on: 'text',
    first: 'text',
    order: 'text',
    printer: 'text',
    out: 'text',
    manifest: 'text',
  },
  run: runLabels,
};

async function runLabels(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const [what, only] = whatOf(given);
  const paper = paperOf(given);
  const site = await openSite(given, io);
  const asked = askedLabels(site.facility, what, only, site.on);
  const { pdf, manifest } = await print(site, asked.labels, paper, io);
  const left = asked.left.map(({ id, problem }) => ({ id, why: inWords(problem) }));
  const whole: Manifest = { ...manifest, left: [...left, ...manifest.left] };
  await writeWhole([
    { path: paper.out, pieces: [pdf] },
    { path: paper.manifest, pieces: [`${JSON.stringify(whole)}\n`] },
  ]);
  return report(whole, paper.out, io);
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

async function print(site: Site, contents: readonly LabelContent[], paper: PaperAsked, io: Io) {
  const bar = progress(io, 'setting labels');
  const { stock, printer, first, order } = paper;
  // Print takes up each label once, when it sets it: that is how far it has come.
  const pieces = contents.map((label, at) => ({
    get label() {
      bar.at(at / contents.length);
      return label;
    },
  }));
  const host = site.facility.site.host ?? undefined;
  try {
    const job = { pieces, stock, printer, first, order, host, printedOn: site.on };
    return await printPieces({ ...job, fonts: await loadFonts(), sha256 });
  } finally {
    bar.end();
  }
}

function report({ pieces, pages, stock, left, sha256: hash }: Manifest, out: string, io: Io): ExitCode {
  say(
    io,
    `${basename(out)}: ${count(pieces.length, 'label')}, ${count(pages.length, 'page')} of ${stock}, sha256 ${hash}`,
  );
  if (pieces.length === 0 && left.length === 0)
    warn(io, 'There is nothing of this kind at the site, so the sheet is empty. Name ids with --only.');
  return reportLeft(left, io);
}

function reportLeft(left: readonly LeftOut[], io: Io): ExitCode {
  for (const { id, why } of left) warn(io, `not printed: ${id}: ${why}`);
  if (left.length > 0) warn(io, `${count(left.length, 'label')} asked for and not printed; the manifest names them.`);
  return left.length > 0 ? 1 : 0;
}

function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`;
}
