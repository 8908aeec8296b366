import type { Day } from '../days.ts';
import { type EventOf, laterWriter, type Payload, RUN_PART_IDS, type SiteEvent } from '../events/index.ts';

/** A whole run, however many events it takes to lay it. */
export interface LaidRun extends Omit<Payload<'run-laid'>, 'part'> {
  /** In how many parts it was laid; nothing for a run in one piece. */
  readonly parts?: number;
}

/** A print run, with the last page that came out of the printer; 0 for none yet. */
export interface RunRecord extends LaidRun {
  readonly day: Day;
  readonly keeper: string;
  readonly printedTo: number;
}

/** So many runs can be taken up again; the log holds all. */
export const KEPT_RUNS = 12;

/** The payloads that lay a run: one, or for one that is too long for an event as many as it needs, in their order. */
export function partsOfRun({ parts, ...run }: LaidRun): readonly Payload<'run-laid'>[] {
  // A run that is laid again keeps its seams, or a part with newer words would not fit between the others.
  const of = parts ?? Math.ceil(run.ids.length / RUN_PART_IDS);
  if (of <= 1) return [run];
  const seam = (part: number): number => Math.round((run.ids.length * part) / of);
  return Array.from({ length: of }, (_none, at) => {
    const cut = <T>(list: readonly T[]): T[] => list.slice(seam(at), seam(at + 1));
    const [ids, revisions, lastPages] = [cut(run.ids), cut(run.revisions), cut(run.lastPages)];
    return { ...run, part: [at + 1, of] as [number, number], ids, revisions, lastPages };
  });
}

/** The latest runs that are not all on paper, oldest first, at most {@link KEPT_RUNS}; one of which a part is missing is none. */
export function runsOf(events: readonly SiteEvent[]): readonly RunRecord[] {
  const laid = new Map<string, Map<number, EventOf<'run-laid'>>>();
  const printed = new Map<string, EventOf<'run-printed'>>();
  for (const event of events) {
    if (event.kind === 'run-laid') keepPart(laid, event);
    if (event.kind === 'run-printed') printed.set(event.payload.run, later(printed.get(event.payload.run), event));
  }
  const open = [...laid.values()]
    .flatMap((parts) => wholeRun([...parts.values()]))
    .filter(({ run }) => {
      const { toPage = 0, done = false } = printed.get(run.run)?.payload ?? {};
      return !done && toPage < run.pages;
    });
  const latest = open.sort((a, b) => laterWriter(a.last, b.last)).slice(-KEPT_RUNS);
  return latest.map(({ run, last: { day, keeper } }) => {
    return { ...run, day, keeper, printedTo: printed.get(run.run)?.payload.toPage ?? 0 };
  });
}

type Laid = EventOf<'run-laid'>;

/** Each part by its last writer. */
function keepPart(laid: Map<string, Map<number, Laid>>, event: Laid): void {
  const { run, part } = event.payload;
  const parts = laid.get(run) ?? new Map<number, Laid>();
  // In one piece is another way to lay the same run: the later of the two ways counts.
  const at = part?.[0] ?? 0;
  laid.set(run, parts.set(at, later(parts.get(at), event)));
}

interface WholeRun {
  readonly run: LaidRun;
  /** The event that was written last. */
  readonly last: Laid;
}

/** The run that the last of these events belongs to; none as long as not all of its parts are here. */
function wholeRun(events: readonly Laid[]): readonly WholeRun[] {
  const last = events.reduce((a, b) => later(a, b));
  const { part, ...head } = last.payload;
  if (part === undefined) return [{ run: head, last }];
  const [, of] = part;
  const same = events.filter(({ payload }) => payload.part?.[1] === of && payload.pages === head.pages);
  if (same.length < of) return [];
  const parts = same.map(({ payload }) => payload).sort((a, b) => (a.part?.[0] ?? 0) - (b.part?.[0] ?? 0));
  const [ids, revisions, lastPages] = [
    parts.flatMap((one) => one.ids),
    parts.flatMap((one) => one.revisions),
    parts.flatMap((one) => one.lastPages),
  ];
  return [{ run: { ...head, parts: of, ids, revisions, lastPages }, last }];
}

function later<E extends SiteEvent>(before: E | undefined, event: E): E {
  return before === undefined || laterWriter(before, event) < 0 ? event : before;
}
