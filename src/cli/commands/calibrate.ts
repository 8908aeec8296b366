import { basename } from 'node:path';
import { findStock, OFFICE_600, PRINTERS, printCalibration } from '../../../print/index.ts';
import { loadFonts, sha256 } from '../../../print/node/index.ts';
import { type Day, NO_PAPER, type PaperRecord } from '../../core/index.ts';
import { dayOf, type Given, needed, noWords } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { writeWhole } from '../files.ts';
import { type Io, say } from '../io.ts';
import { printerOf } from '../paper.ts';
import { orRefuse } from '../refused.ts';
import { openSite } from '../site.ts';
import { dayIn } from '../today.ts';

const HELP = `tubwright calibrate --stock ID --printer ID --out X.pdf [--manifest X.json] [--site FILE|DIR] [--on DATE]

Prints the calibration page of a printer with a paper: a cross at each corner of the labels, rulers, what to measure in
words, and a code that opens the entry in the app. What is measured is entered there; printing then sets it right.
The same paper, printer and date give the same bytes. The page is always drawn true, whatever was entered before.

  --stock ID       the paper, ours or the site's own (own-…, with --site); an unknown id says which there are
  --printer ID     ${PRINTERS.map(({ id, name }) => `${id}: ${name}`).join('\n                   ')}
                   or one of the site's own (own-…, with --site); without it ${OFFICE_600.id}
  --out X.pdf      the PDF
  --manifest FILE  what stands where, as JSON
  --site FILE|DIR  an event log (NDJSON), or a hub's folder; nothing is written into it
  --on DATE        the day that stands on the page, such as 2026-11-25 (default: today)

Print at actual size, not “fit to page”, on the paper itself.`;

/** A calibration page of a printer and a paper. */
export const calibrate: Command = {
  help: HELP,
  options: { stock: 'text', printer: 'text', out: 'text', manifest: 'text', site: 'text', on: 'text' },
  run: runCalibrate,
};

async function runCalibrate(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const [stockId, out] = [needed(given, 'stock'), needed(given, 'out')];
  const { paper, on } = await knownPaper(given, io);
  const stock = orRefuse(findStock(stockId, paper));
  const printer = printerOf(given, paper) ?? OFFICE_600;
  const job = { stock, printer, printedOn: on, fonts: await loadFonts(), sha256 };
  const { pdf, manifest } = orRefuse(await printCalibration(job));
  const table = given.texts['manifest'];
  await writeWhole([
    { path: out, pieces: [pdf] },
    ...(table === undefined ? [] : [{ path: table, pieces: [`${JSON.stringify(manifest)}\n`] }]),
  ]);
  say(io, `${basename(out)}: calibration page of ${printer.id} on ${stock.id}, sha256 ${manifest.sha256}`);
  return 0;
}

/** The site's own paper and day where a site is named, else ours and this machine's. */
async function knownPaper(given: Given, io: Io): Promise<{ readonly paper: PaperRecord; readonly on: Day }> {
  if (given.texts['site'] !== undefined) {
    const { facility, on } = await openSite(given, io);
    return { paper: facility.site.paper, on };
  }
  const here = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  return { paper: NO_PAPER, on: dayOf(given, 'on') ?? dayIn(here, io.now()) };
}
