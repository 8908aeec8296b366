import type { Action } from '../../core/index.ts';
import type { SheetName } from './WordSheets.tsx';

/** What an action button of a record does: it writes at once, asks for a weight, or opens a sheet for words. */
export interface Doing {
  act(action: Action): void;
  weigh(): void;
  open(sheet: SheetName): void;
}
