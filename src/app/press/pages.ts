import { ok, type Result, refuse } from '../../core/index.ts';
import type { Pages } from './paper.ts';

const TYPED = /^(\d{1,6})(?:\s*[-–]\s*(\d{1,6}))?$/;

/** Reads pages of a run as typed: `3-7`, or one alone; nothing is all of them. Error: `pages-unread`. */
export function readPages(text: string): Result<Pages | null> {
  const typed = text.trim();
  if (typed === '') return ok(null);
  const [, from, to = from] = TYPED.exec(typed) ?? [];
  const pages: Pages = [Number(from), Number(to)];
  return pages[0] >= 1 && pages[1] >= pages[0] ? ok(pages) : refuse('pages-unread', { text: typed });
}

/** `3-7`, `3`, or nothing for all. */
export function sayPages(pages: Pages | null): string {
  if (pages === null) return '';
  return pages[0] === pages[1] ? String(pages[0]) : pages.join('-');
}
