import { type Pack, type PackAnimal, sayDayShort } from '../../src/core/index.ts';
import { finishDocument, noting, type PrintedDocument } from '../drawing/document.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { pdfDrawing } from '../drawing/pdf.ts';
import { type FontBytes, openTypeface } from '../drawing/typeface.ts';
import type { Measure } from '../layout/measure.ts';
import { breathe } from '../platform.ts';
import { animalPieces } from './animalPages.ts';
import { flow, type PageBody } from './flow.ts';
import { frontPieces } from './frontPages.ts';
import type { Bench } from './pieces.ts';
import { runningMarks } from './running.ts';

/** The papers that a pack is set on, in mm. */
export const PACK_PAPERS = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;
/** One of them. */
export type PackPaper = keyof typeof PACK_PAPERS;

/** A pack to print, on what, and whom to tell how far it is (from 0 to 1). */
export interface PackPrint {
  readonly pack: Pack;
  readonly paper: PackPaper;
  readonly fonts: FontBytes;
  readonly compress?: boolean | undefined;
  readonly onProgress?: ((share: number) => void) | undefined;
}

const EDGE_MM = { left: 18, right: 15, top: 19, bottom: 16 } as const;
const ANIMALS_A_BREATH = 5;
/** Setting takes about so much of the whole, and drawing the rest. */
const SETTING_SHARE = 0.7;

/** A page with what runs above it. */
interface SetPage {
  readonly body: PageBody;
  readonly about: string;
}

/** Prints a pack: every word of it, on as many pages as it needs. The same pack and paper give the same bytes. */
export async function printPack({ pack, paper, fonts, compress, onProgress }: PackPrint): Promise<PrintedDocument> {
  const typeface = openTypeface(fonts);
  const { measure, missing } = noting(typeface);
  const pages = await setPages(pack, paper, measure, (share) => onProgress?.(share * SETTING_SHARE));
  const drawing = pdfDrawing(typeface);
  for (const [at, page] of pages.entries()) {
    drawPage(page, { pack, paper, at: at + 1, of: pages.length }, measure, drawing);
    if (at % 20 === 19) {
      onProgress?.(SETTING_SHARE + ((1 - SETTING_SHARE) * at) / pages.length);
      await breathe();
    }
  }
  const content = JSON.stringify([paper, pack]);
  const title = `Inspector’s pack, ${pack.site}`;
  const made = await finishDocument(drawing, { paper, kind: 'pack', title, on: pack.on, content, compress });
  onProgress?.(1);
  return { ...made, missing: missing() };
}

async function setPages(
  pack: Pack,
  paper: PackPaper,
  measure: Measure,
  onProgress: (share: number) => void,
): Promise<readonly SetPage[]> {
  const { widthMm, heightMm } = PACK_PAPERS[paper];
  const bench: Bench = { widthMm: widthMm - EDGE_MM.left - EDGE_MM.right, measure };
  const bodyMm = heightMm - EDGE_MM.top - EDGE_MM.bottom;
  const parts: { readonly animal: PackAnimal; readonly pages: readonly PageBody[] }[] = [];
  for (const [at, animal] of pack.animals.entries()) {
    parts.push({ animal, pages: flow(animalPieces(animal, pack, bench), bodyMm) });
    if (at % ANIMALS_A_BREATH !== ANIMALS_A_BREATH - 1) continue;
    onProgress(at / pack.animals.length);
    await breathe();
  }
  const front = (first: number) => flow(frontPieces(pack, pageNumbers(parts, first), bench), bodyMm);
  // The list of animals has as many rows whatever their pages are, so one setting tells how long it is.
  const fronts = front(front(0).length + 1);
  return [
    ...fronts.map((body) => ({ body, about: 'Contents' })),
    ...parts.flatMap(({ animal, pages }) =>
      pages.map((body) => ({
        body,
        about: animal.called === animal.display ? animal.display : `${animal.called} · ${animal.display}`,
      })),
    ),
  ];
}

function pageNumbers(
  parts: readonly { readonly animal: PackAnimal; readonly pages: readonly PageBody[] }[],
  first: number,
): ReadonlyMap<PackAnimal, number> {
  let page = first;
  return new Map(
    parts.map(({ animal, pages }) => {
      const own = page;
      page += pages.length;
      return [animal, own];
    }),
  );
}

interface PagePlace {
  readonly pack: Pack;
  readonly paper: PackPaper;
  readonly at: number;
  readonly of: number;
}

function drawPage(
  { body, about }: SetPage,
  { pack, paper, at, of }: PagePlace,
  measure: Measure,
  drawing: Drawing,
): void {
  const size = PACK_PAPERS[paper];
  const [left, right] = [EDGE_MM.left, size.widthMm - EDGE_MM.right];
  const foot = size.heightMm - 9;
  const made = `Made on ${sayDayShort(pack.on)} · ${pack.profile.name}`;
  const page = `page ${at} of ${of}`;
  drawing.beginPage(size);
  drawing.put(body, EDGE_MM.left, EDGE_MM.top);
  drawing.put(
    [
      ...runningMarks([pack.site, about], [left, right], 12, measure),
      { kind: 'rule', xMm: left, yMm: 14, widthMm: right - left, heightMm: 0.1 },
      { kind: 'rule', xMm: left, yMm: foot - 4.2, widthMm: right - left, heightMm: 0.1 },
      ...runningMarks([made, page], [left, right], foot, measure),
    ],
    0,
    0,
  );
  drawing.endPage();
}
