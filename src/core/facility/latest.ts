import { laterWriter, type SiteEvent } from '../events/index.ts';

/** The event of a kind whose writer came last; undefined if there is none. */
export function latest<K extends SiteEvent['kind']>(
  events: readonly SiteEvent[],
  kind: K,
): Extract<SiteEvent, { kind: K }> | undefined {
  const of = events.filter((event): event is Extract<SiteEvent, { kind: K }> => event.kind === kind);
  return of.reduce<Extract<SiteEvent, { kind: K }> | undefined>(
    (last, event) => (last && laterWriter(last, event) > 0 ? last : event),
    undefined,
  );
}
