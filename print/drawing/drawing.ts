import type { Mark } from '../layout/marks.ts';

/** Width and height of a page in mm. */
export interface PageSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Paper to draw on. Layout decides everything; a back end only turns marks into its own form. Every mark is given in
 * the face's own millimetres, with the face's place on the page.
 */
export interface Drawing {
  beginPage(size: PageSize): void;
  /** Puts marks down, moved by `xMm` and `yMm` from the page's top left corner. */
  put(marks: readonly Mark[], xMm: number, yMm: number): void;
  endPage(): void;
}
