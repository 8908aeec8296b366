import { WHATS, type What, whatOf } from '../batch.ts';

/** Where a keeper came from on Print, to go back there with the same things chosen; never anywhere else. */
export interface Back {
  readonly what: What;
  readonly address: string;
}

/** The address of a page about paper, which leads back to what is printed now. */
export function aboutPaper(
  page: 'stock' | 'printer' | 'calibration',
  what: What,
  more: Readonly<Record<string, string>> = {},
): string {
  const here = new URLSearchParams(location.pathname === '/print' ? location.search : '');
  // What an address asked for belongs to the kind that it asked for.
  const kept = whatOf(here.get('what') ?? undefined) === what ? here : new URLSearchParams();
  kept.set('what', what);
  return `/print/${page}?${new URLSearchParams({ ...more, back: kept.toString() })}`;
}

/** Reads `?back=` of such an address; Print itself where there is none. */
export function backFrom(query: Readonly<Record<string, string>>): Back {
  const asked = new URLSearchParams(query['back'] ?? '');
  const what = WHATS.find((one) => one === asked.get('what')) ?? 'card';
  const kept = asked.toString();
  return { what, address: kept === '' ? '/print' : `/print?${kept}` };
}
