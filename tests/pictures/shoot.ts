import { execFileSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Takes pictures into the folder of the docs. */
export interface Shoot {
  /** What a screen shows now, once type and pictures are there. */
  screen(page: Page, name: string): Promise<void>;
  /** A page of paper that was drawn already. */
  paper(png: string, name: string): void;
}

/** Few colours keep a picture small and every edge sharp: paper and ink need no more. */
const COLOURS = 64;

export function shooting(folder: string, into: string): Shoot {
  const keep = (png: string, name: string, frame = ''): void => {
    const out = join(into, `${name}.png`);
    const palette = `split[a][b];[a]palettegen=max_colors=${COLOURS}:reserve_transparent=0[p];[b][p]paletteuse=dither=none`;
    const quiet = ['-y', '-loglevel', 'error', '-i', png];
    execFileSync('ffmpeg', [...quiet, '-vf', `${frame}${palette}`, '-compression_level', '100', '-pred', 'none', out]);
    process.stdout.write(`${out}: ${Math.round(statSync(out).size / 1024)} kB\n`);
  };
  return {
    async screen(page, name) {
      const png = join(folder, `${name}.png`);
      await page.evaluate(() => document.fonts.ready.then(() => true));
      await page.screenshot({ path: png, animations: 'disabled', caret: 'hide' });
      keep(png, name);
    },
    // A thin grey edge shows where the sheet ends on a white page.
    paper: (png, name) => keep(png, name, 'drawbox=color=0x8b8478:thickness=1,'),
  };
}

/** Draws the first page of a PDF; gives the picture's path. */
export function pageOf(pdf: string, dpi: number, folder: string): string {
  const out = join(folder, `page-${dpi}`);
  execFileSync('pdftoppm', ['-r', `${dpi}`, '-png', '-singlefile', pdf, out]);
  return `${out}.png`;
}
