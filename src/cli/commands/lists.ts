import { basename } from 'node:path';
import { PACK_PAPERS, type PackPaper, printLists } from '../../../print/index.ts';
import { loadFonts } from '../../../print/node/index.ts';
import {
  type Facility,
  type Id,
  type ListSheet,
  parseId,
  problem,
  rackSheet,
  saleListSheet,
  sayId,
  walkingOrder,
} from '../../core/index.ts';
import { type Given, needed, noWords, oneOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { writeWhole } from '../files.ts';
import { type Io, say } from '../io.ts';
import { orRefuse, Refused, refusal } from '../refused.ts';
import { warnOfSigns } from '../signs.ts';
import { openSite } from '../site.ts';

const WHATS = ['rack', 'sale'] as const;
type What = (typeof WHATS)[number];

const HELP = `tubwright lists --site FILE|DIR --what rack|sale --out X.pdf [--manifest X.json] [--only ID,ID,…] [--on DATE]
               [--paper a4|letter]

Lists on whole pages. The same site, date and paper give the same bytes; the file is written whole or not at all.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder; nothing is written into it
  --what WHAT      rack: who stands where, what is due, and room for marks by hand, each rack on pages of its own
                   sale: the animals on offer by species and trait
  --only ID,…      rack: these racks, rooms or exhibits (default: every rack)
  --out X.pdf      the PDF
  --manifest FILE  what stands where, as JSON: codes, and every line of each page
  --on DATE        the day of the list, such as 2026-11-25 (default: today at the site)
  --paper PAPER    a4 (default) or letter`;

/** Lists on whole pages: rack sheets, the sale list. */
export const lists: Command = {
  help: HELP,
  options: { site: 'text', what: 'text', only: 'text', out: 'text', manifest: 'text', on: 'text', paper: 'text' },
  run: runLists,
};

async function runLists(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const [what, out] = [whatOf(given), needed(given, 'out')];
  const paper = oneOf(given, 'paper', Object.keys(PACK_PAPERS) as PackPaper[]) ?? 'a4';
  const site = await openSite(given, io);
  const { facility, on } = site;
  const sheets: readonly ListSheet[] =
    what === 'sale'
      ? [saleListSheet(facility, on)]
      : racksOf(facility, given.texts['only']).map((place) => rackSheet(facility, place, on));
  const { pdf, manifest, missing } = await printLists({
    sheets,
    paper,
    fonts: await loadFonts(),
    host: facility.site.host,
  });
  const table = given.texts['manifest'];
  await writeWhole([
    { path: out, pieces: [pdf] },
    ...(table === undefined ? [] : [{ path: table, pieces: [`${JSON.stringify(manifest)}\n`] }]),
  ]);
  const lines = sheets.reduce((sum, { rows }) => sum + rows.length, 0);
  const pages = manifest.pages.length;
  say(io, `${basename(out)}: ${lines} line${lines === 1 ? '' : 's'} on ${pages} page${pages === 1 ? '' : 's'}`);
  return warnOfSigns(missing, io);
}

function whatOf(given: Given): What {
  needed(given, 'what');
  const what = oneOf(given, 'what', WHATS);
  if (what === undefined) throw refusal('option-missing', { command: given.command, option: '--what' });
  return what;
}

/** Refusals: `not-an-id`, `check-failed`, `unknown-id`. */
function racksOf(facility: Facility, only: string | undefined) {
  const ids: readonly Id[] =
    only === undefined
      ? [...walkingOrder(facility).keys()].filter((id) => facility.places.get(id)?.placeKind === 'rack')
      : only.split(',').map((text) => orRefuse(parseId(text)).id);
  return ids.map((id) => {
    const place = facility.places.get(id);
    if (place === undefined) throw new Refused([problem('unknown-id', { id: sayId(id) })]);
    return place;
  });
}
