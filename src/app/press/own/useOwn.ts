import { labelsPerPage, type Stock, takesCards } from '../../../../print/stocks/stock.ts';
import type { EventDraft, Payload, Problem } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import type { What } from '../batch.ts';
import { rememberedPaper, rememberPaper } from '../paper.ts';

/** What the site keeps of its own paper and printers. */
type OwnFact =
  | { readonly kind: 'own-stock-set'; readonly payload: Payload<'own-stock-set'> }
  | { readonly kind: 'own-printer-set'; readonly payload: Payload<'own-printer-set'> }
  | { readonly kind: 'printer-calibrated'; readonly payload: Payload<'printer-calibrated'> };

/** Writes such a fact, with its undo on the strip; gives why not, or null. */
export function useOwn(): (fact: OwnFact, name: string, said: string) => Promise<Problem | null> {
  const { site, clock, strip, signs } = useApp();
  return async (fact, name, said) => {
    const draft: EventDraft = { ...fact, subjects: [], day: clock.today.value };
    const written = await site.write([draft]);
    signs.give(written.ok ? 'accepted' : 'refused');
    if (!written.ok) return written.problem;
    strip.add({ subject: null, name, said, result: 'accepted', problem: null, events: written.value });
    return null;
  };
}

/** Lays a paper or printer in for a kind, as if it had been picked from the list; a stock that is too small for cards stays out. */
export function layNew(what: What, { stock, printer }: { readonly stock?: Stock; readonly printer?: string }): void {
  const before = rememberedPaper(what);
  const isFit = stock !== undefined && (what !== 'card' || takesCards(stock));
  const first = isFit && !(before.stock === stock.id && before.first <= labelsPerPage(stock)) ? 1 : before.first;
  rememberPaper(what, {
    ...before,
    ...(isFit ? { stock: stock.id, first } : {}),
    ...(printer === undefined ? {} : { printer }),
  });
}
