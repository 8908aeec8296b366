import { basename } from 'node:path';
import { PACK_PAPERS, type PackPaper, type PrintedDocument, printHandOver } from '../../../print/index.ts';
import { loadFonts } from '../../../print/node/index.ts';
import {
  type AnimalRecord,
  type Facility,
  type HandOver,
  handOver as handOverOf,
  historiesOf,
  type LogEvent,
  nameOf,
  parseId,
  problem,
  sayId,
} from '../../core/index.ts';
import { dayOf, type Given, needed, noWords, oneOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { writeWhole } from '../files.ts';
import { type Io, say } from '../io.ts';
import { orRefuse, Refused } from '../refused.ts';
import { warnOfSigns } from '../signs.ts';
import { foldedSite, soundEvents } from '../site.ts';

const HELP = `tubwright hand-over --site FILE|DIR --id ID --out X.pdf [--on DATE] [--paper a4|letter] [--source]

The sheet that goes with one animal to whoever takes it: who it is, what it carries for certain and possibly, what it
eats and the last ten offers, weights, sheds, treatment of twelve months, holds, cautions, and room for signatures.
It reads the log and writes nothing into it. The same site, date and paper give the same bytes; the file is written
whole or not at all.

  --site FILE|DIR  an event log (NDJSON), or a hub's folder
  --id ID          the animal, also one that has left
  --out X.pdf      the PDF
  --on DATE        the day of the sheet, such as 2026-11-25 (default: today at the site)
  --paper PAPER    a4 (default) or letter
  --source         tells whom the site had the animal from, too

A sale is refused in the app while an animal is under treatment, waits for a vet or is in quarantine. The sheet itself
prints at any time, and says so.`;

/** The hand-over sheet of one animal. */
export const handOver: Command = {
  help: HELP,
  options: { site: 'text', id: 'text', out: 'text', on: 'text', paper: 'text', source: 'bare' },
  run: runHandOver,
};

async function runHandOver(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const [path, out] = [needed(given, 'site'), needed(given, 'out')];
  const { id } = orRefuse(parseId(needed(given, 'id')));
  const paper = oneOf(given, 'paper', Object.keys(PACK_PAPERS) as PackPaper[]) ?? 'a4';
  const day = dayOf(given, 'on');
  const events = await soundEvents(path, io);
  const { facility, on } = foldedSite(events, day, io);
  const animal = animalIn(facility, id);
  const history = historyOf(events, animal);
  const sheet = handOverOf({ facility, animal, history, on, tellsSource: given.bare.has('source') });
  const printed = await printHandOver({ sheet, paper, fonts: await loadFonts(), host: facility.site.host });
  await writeWhole([{ path: out, pieces: [printed.pdf] }]);
  return report(sheet, printed, out, io);
}

/** Refusals: `unknown-id`, `hand-over-animal`. */
function animalIn(facility: Facility, id: AnimalRecord['id']): AnimalRecord {
  const animal = facility.animals.get(id);
  if (animal !== undefined) return animal;
  const { places, keepers, lots, clutches, items } = facility;
  const isOther = [places, keepers, lots, clutches, items].some((all) => all.has(id));
  const words = { id: sayId(id), what: nameOf(facility, id) };
  throw new Refused([isOther ? problem('hand-over-animal', words) : problem('unknown-id', words)]);
}

function historyOf(events: readonly LogEvent[], { id }: AnimalRecord): readonly LogEvent[] {
  return historiesOf(events).get(id) ?? [];
}

function report(sheet: HandOver, { manifest, missing }: PrintedDocument, out: string, io: Io): ExitCode {
  const pages = manifest.pages.length;
  say(io, `${basename(out)}: ${sheet.called}, ${sheet.display}, ${pages} page${pages === 1 ? '' : 's'}`);
  return warnOfSigns(missing, io);
}
