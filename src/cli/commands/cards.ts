import { basename } from 'node:path';
import { type LeftOut, type Manifest, printCards } from '../../../print/index.ts';
import { loadFonts, sha256 } from '../../../print/node/index.ts';
import type { CardContent } from '../../core/index.ts';
import { type Given, noWords } from '../args.ts';
import { askedCards } from '../askedCards.ts';
import type { Command, ExitCode } from '../command.ts';
import { writeWhole } from '../files.ts';
import { type Io, say, warn } from '../io.ts';
import { PAPER_HELP, PAPER_OPTIONS, type PaperAsked, paperOf } from '../paper.ts';
import { progress } from '../progress.ts';
import { openSite, type Site } from '../site.ts';

const HELP = `tubwright cards --site FILE|DIR --stock ID --out X.pdf --manifest X.json [--on DATE] [--only stale|all|ID,…]
                [paper: see below]

Prints the cards of tubs in walking order, and a manifest of what stands where (mm from the page's top left corner).
Whatever was asked for and not printed is in the manifest's "left" and on the screen, and the exit code is then 1.
The same site, date and stock give the same bytes. Both files are written whole or not at all.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder; nothing is written into it
  --on DATE        the day that the cards speak of, such as 2026-11-25 (default: today at the site)
${PAPER_HELP}
  --only WHICH     stale: cards that no longer say what is known, or were never printed (default)
                   all: every animal that is here;  ID,ID,…: these animals

Print at actual size, not “fit to page”, and measure the ruler on the sheet.`;

/** The week's cards. */
export const cards: Command = {
  help: HELP,
  options: {
    site: 'text',
    on: 'text',
    only: 'text',
    ...PAPER_OPTIONS,
  },
  run: runCards,
};

async function runCards(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const paperFor = paperOf(given);
  const site = await openSite(given, io);
  const order = paperFor(site.facility.site.paper);
  const asked = askedCards(site, given.texts['only'] ?? 'stale');
  const { pdf, manifest } = await print(site, asked.cards, order, io);
  const whole: Manifest = { ...manifest, left: [...asked.left, ...manifest.left] };
  await writeWhole([
    { path: order.out, pieces: [pdf] },
    { path: order.manifest, pieces: [`${JSON.stringify(whole)}\n`] },
  ]);
  return report(whole, order.out, io);
}

async function print(site: Site, contents: readonly CardContent[], order: PaperAsked, io: Io) {
  const bar = progress(io, 'setting cards');
  const { out: _out, manifest: _manifest, ...on } = order;
  // Print takes up each card's content once, when it sets that card: that is how far it has come.
  const counted = contents.map((content, at) => ({
    get content() {
      bar.at(at / contents.length);
      return content;
    },
  }));
  const host = site.facility.site.host ?? undefined;
  const job = { ...on, cards: counted, host, printedOn: site.on };
  try {
    return await printCards({ ...job, fonts: await loadFonts(), sha256 });
  } finally {
    bar.end();
  }
}

function report({ pieces, pages, stock, left, warnings = [], sha256: hash }: Manifest, out: string, io: Io): ExitCode {
  const printed = new Set(pieces.map((piece) => piece.id)).size;
  const backs = pieces.filter((piece) => piece.back).length;
  const second = backs === 0 ? '' : `, ${backs} with a second face`;
  say(
    io,
    `${basename(out)}: ${count(printed, 'card')}${second}, ${count(pages.length, 'page')} of ${stock}, sha256 ${hash}`,
  );
  if (printed === 0 && left.length === 0)
    warn(io, 'No card is out of date, so the sheet is empty. Ask with --only all for every card.');
  for (const { id, why } of warnings) warn(io, `${id}: ${why}`);
  return reportLeft(left, io);
}

function reportLeft(left: readonly LeftOut[], io: Io): ExitCode {
  for (const { id, why } of left) warn(io, `not printed: ${id}: ${why}`);
  if (left.length > 0) warn(io, `${count(left.length, 'card')} asked for and not printed; the manifest names them.`);
  return left.length > 0 ? 1 : 0;
}

function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`;
}
