import { type AskedLabels, askedTags, TAG_SHEETS, type TagSheet } from '../../core/index.ts';
import { type Given, noWords, oneOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import type { Io } from '../io.ts';
import { PAPER_HELP, PAPER_OPTIONS, paperOf } from '../paper.ts';
import { printAsked } from '../printAsked.ts';
import { openSite } from '../site.ts';

const HELP = `tubwright tags --site FILE|DIR --stock ID --out X.pdf --manifest X.json [--what WHAT] [--only …]
               [--on DATE] [paper: see below]

Prints the shop's tags, each with its bar code (EAN-13) and a code that opens it in the app, and a manifest of what stands
where (mm from the page's top left corner). Whatever was asked for and not printed is in the manifest's "left" and on the
screen, and the exit code is then 1. The same site, date and stock give the same bytes.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder; nothing is written into it
  --what WHAT      ware: a tag for each piece of a ware;  shed: for each piece of a shed skin, with its cautions
                   shelf: one tag a ware for the edge of its shelf;  hang: tags for a string, price first
                   sale: the animals on offer;  exhibit: signs for visitors
                   without it: the tags of wares, of shed skins and of shelves
  --only WHICH     ID,ID,… of items, animals or exhibits, each with /N for N copies;  stale: only tags that are out of date
                   without it: as many tags as pieces are left, every animal on offer, every exhibit that is lived in
${PAPER_HELP}
  --on DATE        the day of printing, such as 2026-11-25 (default: today at the site)

A site without a currency prints no prices. Numbers of our own begin with 04 and are for use on this site only.`;

/** What the shop hangs on its things. */
export const tags: Command = {
  help: HELP,
  options: {
    site: 'text',
    what: 'text',
    only: 'text',
    on: 'text',
    ...PAPER_OPTIONS,
  },
  run: runTags,
};

/** What stands on the shelves of a shop. */
const SHELVES: readonly TagSheet[] = ['ware', 'shed', 'shelf'];

async function runTags(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const what = oneOf(given, 'what', TAG_SHEETS);
  const only = given.texts['only'] ?? null;
  const paperFor = paperOf(given);
  const site = await openSite(given, io);
  const paper = paperFor(site.facility.site.paper);
  const asked = (what === undefined ? sheetsFor(only) : [what]).map((sheet) => askedTags(site.facility, sheet, only));
  return printAsked(site, what === undefined ? together(asked) : (asked[0] ?? NONE), paper, io);
}

const NONE: AskedLabels = { labels: [], left: [] };

/** Ids without a kind: each item has the tag of its own kind, and is missed by the others. */
function sheetsFor(only: string | null): readonly TagSheet[] {
  return only === null || only === 'stale' ? SHELVES : ['ware', 'shed'];
}

/** An id that one kind of tag took is not missed by another. */
function together(asked: readonly AskedLabels[]): AskedLabels {
  const labels = asked.flatMap((one) => one.labels);
  const printed = new Set(labels.map(({ id }) => id));
  const missed = asked
    .flatMap((one) => one.left)
    .filter(({ id }) => !printed.has(id.split('/')[0]?.replace('-', '') ?? id));
  const left = new Map(missed.map((one) => [one.id, one]));
  return { labels, left: [...left.values()] };
}
