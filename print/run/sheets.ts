import { ok, type Result } from '../../src/core/index.ts';
import { checkCalibration, placing } from '../calibration/calibration.ts';
import { breathe } from '../platform.ts';
import { OFFICE_600 } from '../qr/profiles.ts';
import { mirrored, type Slot, slotMaker, slots } from '../stocks/slots.ts';
import { checkStock } from '../stocks/stock.ts';
import type { LaidFace, Paper, PlacedFace, SheetSide } from './job.ts';

const PIECES_A_BREATH = 200;

/** Checks what must hold before anything is laid out. Errors: `stock-…`, `label-unknown`, `calibration-too-far`. */
export function checkPaper({ stock, printer = OFFICE_600, calibration, first }: Paper): Result<null> {
  const sound = checkStock(stock);
  if (!sound.ok) return sound;
  const places = slotMaker(stock, first);
  if (!places.ok) return places;
  return calibration === undefined ? ok(null) : checkCalibration(stock, placing(stock, printer, calibration));
}

/**
 * The sides of a run's sheets, each as soon as all is known that stands on it: in walking order a run of any length
 * keeps one sheet in mind, while the order for cut stacks needs to know how many there are, and so keeps every face.
 * Takes a job that {@link checkPaper} found sound.
 */
export async function* sheetSides(paper: Paper, pieces: Iterable<readonly LaidFace[]>): AsyncGenerator<SheetSide> {
  if (paper.order === 'stack') yield* stacked(paper, pieces);
  else yield* walked(paper, pieces);
}

async function* walked(paper: Paper, pieces: Iterable<readonly LaidFace[]>): AsyncGenerator<SheetSide> {
  const slotOf = must(slotMaker(paper.stock, paper.first));
  let sheet = 1;
  let onSheet: Spot[] = [];
  let [spots, faces, taken] = [0, 0, 0];
  for (const laid of pieces) {
    for (const spot of spotsOf(laid, paper)) {
      const slot = slotOf(spots++);
      if (slot.page > sheet) {
        yield* sidesOf(sheet++, onSheet, paper);
        onSheet = [];
      }
      onSheet.push({ slot, at: faces, faces: spot });
      faces += spot.length;
    }
    if (++taken % PIECES_A_BREATH === 0) await breathe();
  }
  yield* sidesOf(sheet, onSheet, paper);
}

async function* stacked(paper: Paper, pieces: Iterable<readonly LaidFace[]>): AsyncGenerator<SheetSide> {
  const all: (readonly LaidFace[])[] = [];
  let taken = 0;
  for (const laid of pieces) {
    all.push(...spotsOf(laid, paper));
    if (++taken % PIECES_A_BREATH === 0) await breathe();
  }
  const places = must(slots(paper.stock, all.length, paper));
  const sheets: Spot[][] = [[]];
  let at = 0;
  for (const [index, faces] of all.entries()) {
    const slot = places[index];
    if (slot === undefined) continue;
    for (let more = sheets.length; more < slot.page; more++) sheets.push([]);
    sheets[slot.page - 1]?.push({ slot, at, faces });
    at += faces.length;
  }
  for (const [index, spots] of sheets.entries()) yield* sidesOf(index + 1, spots, paper);
}

/** A label's place with the faces that go there: one, or one and its back. */
interface Spot {
  readonly slot: Slot;
  /** The number of its first face. */
  readonly at: number;
  readonly faces: readonly LaidFace[];
}

function spotsOf(laid: readonly LaidFace[], { flip }: Paper): readonly (readonly LaidFace[])[] {
  if (flip === undefined) return laid.map((face) => [face]);
  return laid.flatMap((face, at) => (at % 2 === 0 ? [[face, ...laid.slice(at + 1, at + 2)]] : []));
}

function* sidesOf(sheet: number, spots: readonly Spot[], { flip, stock }: Paper): Generator<SheetSide> {
  const side = (of: 0 | 1, page: number): SheetSide => ({
    page,
    sheet,
    isBack: of === 1,
    faces: spots.flatMap(({ slot, at, faces }): PlacedFace[] => {
      const face = faces[of];
      if (face === undefined) return [];
      const boxMm = of === 1 && flip ? mirrored(slot.boxMm, stock, flip) : slot.boxMm;
      return [{ ...face, at: at + of, slot: { ...slot, page, boxMm } }];
    }),
  });
  if (flip === undefined) yield side(0, sheet);
  else {
    yield side(0, 2 * sheet - 1);
    // A blank back is a page all the same, or the printer would put the next sheet's front there.
    yield side(1, 2 * sheet);
  }
}

/** What {@link checkPaper} found sound before. */
function must<T>(result: Result<T>): T {
  if (!result.ok) throw new RangeError(result.problem.message);
  return result.value;
}
