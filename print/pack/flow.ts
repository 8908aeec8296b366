import type { Mark } from '../layout/marks.ts';
import type { PagePiece } from './pieces.ts';

/** The marks of a page’s body, from the body’s top left corner. */
export type PageBody = readonly Mark[];

/** Sets strips one below the other on as many pages as they need; a list that goes on has its heads again. */
export function flow(pieces: readonly PagePiece[], heightMm: number): readonly PageBody[] {
  const pages: Mark[][] = [[]];
  let y = 0;
  const put = (piece: PagePiece): void => {
    const page = pages.at(-1) ?? [];
    // At the top of a page the margin is air enough.
    const top = y === 0 ? y - (piece.airMm ?? 0) : y;
    for (const mark of piece.marks) page.push({ ...mark, yMm: mark.yMm + top });
    y = top + piece.heightMm;
  };
  for (const [at, piece] of pieces.entries()) {
    if (y > 0 && y + togetherMm(pieces, at) > heightMm) {
      pages.push([]);
      y = 0;
      if (piece.head !== undefined) put(piece.head);
    }
    put(piece);
  }
  return pages;
}

/** The height of a strip with those that it stays with; of a heading, its table’s heads and the first row. */
function togetherMm(pieces: readonly PagePiece[], from: number): number {
  let height = 0;
  for (let at = from; at < pieces.length; at++) {
    const piece = pieces[at];
    if (piece === undefined) break;
    height += piece.heightMm;
    if (piece.keeps !== true) break;
  }
  return height;
}
