import type { Mark } from '../layout/marks.ts';
import type { Drawing, PageSize } from './drawing.ts';

/** A page as the list of marks on it, in mm from its top left corner. */
export interface RecordedPage extends PageSize {
  readonly marks: readonly Mark[];
}

/** A back end that keeps the marks: for previews on a screen, and for tests that ask what stands where. */
export interface Recording extends Drawing {
  readonly pages: readonly RecordedPage[];
}

/** An empty recording. */
export function recording(): Recording {
  const pages: RecordedPage[] = [];
  let size: PageSize = { widthMm: 0, heightMm: 0 };
  let marks: Mark[] = [];
  return {
    pages,
    beginPage(next) {
      size = next;
      marks = [];
    },
    put(added, xMm, yMm) {
      for (const mark of added) marks.push({ ...mark, xMm: mark.xMm + xMm, yMm: mark.yMm + yMm });
    },
    endPage() {
      pages.push({ ...size, marks });
    },
  };
}
