import { basename } from 'node:path';
import { type LeftOut, type Manifest, printPieces } from '../../print/index.ts';
import { loadFonts, sha256 } from '../../print/node/index.ts';
import type { AskedLabels, LabelContent } from '../core/index.ts';
import type { ExitCode } from './command.ts';
import { writeWhole } from './files.ts';
import { type Io, say, warn } from './io.ts';
import type { PaperAsked } from './paper.ts';
import { progress } from './progress.ts';
import { inWords } from './refused.ts';
import type { Site } from './site.ts';

/**
 * Prints labels or tags and their manifest, both files whole or not at all. Whatever was asked for and not printed is in the
 * manifest's `left` and on the screen, and the exit code is then 1.
 */
export async function printAsked(site: Site, asked: AskedLabels, paper: PaperAsked, io: Io): Promise<ExitCode> {
  const { pdf, manifest } = await print(site, asked.labels, paper, io);
  const left = asked.left.map(({ id, problem }) => ({ id, why: inWords(problem) }));
  const whole: Manifest = { ...manifest, left: [...left, ...manifest.left] };
  await writeWhole([
    { path: paper.out, pieces: [pdf] },
    { path: paper.manifest, pieces: [`${JSON.stringify(whole)}\n`] },
  ]);
  return report(whole, paper.out, io);
}

async function print(site: Site, contents: readonly LabelContent[], paper: PaperAsked, io: Io) {
  const bar = progress(io, 'setting labels');
  const { out: _out, manifest: _manifest, ...on } = paper;
  // Print takes up each label once, when it sets it: that is how far it has come.
  const pieces = contents.map((label, at) => ({
    get label() {
      bar.at(at / contents.length);
      return label;
    },
  }));
  const host = site.facility.site.host ?? undefined;
  try {
    const job = { ...on, pieces, host, printedOn: site.on };
    return await printPieces({ ...job, fonts: await loadFonts(), sha256 });
  } finally {
    bar.end();
  }
}

function report({ pieces, pages, stock, left, warnings = [], sha256: hash }: Manifest, out: string, io: Io): ExitCode {
  const backs = pieces.filter(({ back }) => back).length;
  const labelled = `${count(pieces.length - backs, 'label')}${backs === 0 ? '' : `, ${count(backs, 'further face')}`}`;
  say(io, `${basename(out)}: ${labelled}, ${count(pages.length, 'page')} of ${stock}, sha256 ${hash}`);
  if (pieces.length === 0 && left.length === 0)
    warn(io, 'There is nothing of this kind at the site, so the sheet is empty. Name ids with --only.');
  for (const { id, why } of warnings) warn(io, `${id}: ${why}`);
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
