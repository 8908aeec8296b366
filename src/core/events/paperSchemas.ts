import * as z from 'zod/mini';

const text = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const mm = z.number().check(z.gte(-1000), z.lte(2000));
const someMm = z.number().check(z.gt(0), z.lte(2000));
const few = z.int().check(z.gte(1), z.lte(100));
const maybe = z.optional;
/** An id of the site's own stock or printer, never one of ours. */
const ownId = z.string().check(z.regex(/^own-[a-z0-9][a-z0-9-]{0,35}$/));

/** A stock of the site's own, in mm whatever it was typed in; whole each time. Whether it can be laid out is judged in print. */
export const ownStockSchema = z.object({
  stock: ownId,
  name: text(80),
  typedIn: z.enum(['mm', 'inch']),
  pageWidthMm: someMm,
  pageHeightMm: someMm,
  labelWidthMm: someMm,
  labelHeightMm: someMm,
  columns: few,
  rows: few,
  firstXMm: mm,
  firstYMm: mm,
  pitchXMm: mm,
  pitchYMm: mm,
  printerInsetMm: z.number().check(z.gte(0), z.lte(50)),
  removed: maybe(z.boolean()),
});

/** A printer of the site's own: its dots per mm, and what is taken off each edge of a dark module. */
export const ownPrinterSchema = z.object({
  printer: ownId,
  name: text(80),
  dotsPerMm: z.number().check(z.gte(4), z.lte(100)),
  insetDots: z.number().check(z.gte(0), z.lte(1)),
  removed: maybe(z.boolean()),
});

/** What a calibration page showed: how far off, and how much larger than drawn, a printer puts a stock. */
export const calibratedSchema = z.object({
  printer: text(40),
  stock: text(40),
  offsetXMm: z.number().check(z.gte(-20), z.lte(20)),
  offsetYMm: z.number().check(z.gte(-20), z.lte(20)),
  scaleX: z.number().check(z.gte(0.9), z.lte(1.1)),
  scaleY: z.number().check(z.gte(0.9), z.lte(1.1)),
});

/** One event takes so many ids of a run: with the longest ids and revisions half of what a hub takes in one message. */
export const RUN_PART_IDS = 5000;
/** A longer run is laid in so many parts at most. */
const MOST_PARTS = 100;
/** More pages than this are no run of paper; a phone still walks through a list of them. */
export const MOST_RUN_PAGES = 500_000;
const page = z.int().check(z.gte(1), z.lte(MOST_RUN_PAGES));

/**
 * A run as it was laid out, so that the rest can be printed later. `ids` are the words that ask for its pieces again; `revisions`
 * and `lastPages` go with them one to one: what each piece said, and the page on which the last of it stands. The same run is
 * laid again when the rest of it is printed with newer words. A run that is too long for one event is laid in several: `part`
 * says which of how many each is, and all else but the ids and what goes with them is the same in all.
 */
export const runLaidSchema = z
  .object({
    run: text(40),
    what: text(40),
    stock: text(40),
    printer: maybe(text(40)),
    first: maybe(few),
    order: maybe(z.enum(['walk', 'stack'])),
    flip: maybe(z.enum(['long', 'short'])),
    cutMarks: maybe(z.boolean()),
    part: maybe(
      z
        .tuple([z.int().check(z.gte(1)), z.int().check(z.gte(2), z.lte(MOST_PARTS))])
        .check(z.refine(([at, of]) => at <= of, 'a part comes after the last')),
    ),
    ids: z.array(text(40)).check(z.minLength(1), z.maxLength(RUN_PART_IDS)),
    revisions: z.array(text(40)).check(z.maxLength(RUN_PART_IDS)),
    lastPages: z.array(page).check(z.maxLength(RUN_PART_IDS)),
    pages: page,
  })
  .check(
    z.refine(
      ({ ids, revisions, lastPages, pages }) =>
        revisions.length === ids.length && lastPages.length === ids.length && lastPages.every((one) => one <= pages),
      'a run needs a revision and a last page for each id, within its pages',
    ),
  );

/** How far a run has come out of the printer; `done` when the rest is not wanted any more. */
export const runPrintedSchema = z.object({
  run: text(40),
  toPage: z.int().check(z.gte(0), z.lte(MOST_RUN_PAGES)),
  done: maybe(z.boolean()),
});
