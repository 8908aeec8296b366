import { useEffect, useState } from 'preact/hooks';
import type { Problem } from '../../core/index.ts';
import type { GeneticAnswers, GeneticAsk, GeneticProgress } from '../workers/geneticsMessages.ts';
import { startGenetics } from './asking.ts';

/** Where an ask stands; `working` has no progress until the worker has said some. */
export type Asked<T> =
  | { readonly at: 'working'; readonly progress: GeneticProgress | null }
  | { readonly at: 'done'; readonly value: T }
  | { readonly at: 'failed'; readonly problem: Problem };

/** The answer to an ask while it is wanted; the key says when it is another ask, and a null ask is none. */
export function useAsked<A extends GeneticAsk>(ask: A | null, key: string): Asked<GeneticAnswers[A['ask']]> | null {
  type Answer = Asked<GeneticAnswers[A['ask']]>;
  const [known, setKnown] = useState<{ readonly key: string; readonly asked: Answer } | null>(null);
  useEffect(() => {
    if (ask === null) return setKnown(null);
    const set = (asked: Answer): void => setKnown({ key, asked });
    const asking = startGenetics(ask, (progress) => set({ at: 'working', progress }));
    void asking.answer.then((answer) =>
      set(answer.ok ? { at: 'done', value: answer.value } : { at: 'failed', problem: answer.problem }),
    );
    return () => asking.stop();
  }, [key, ask === null]);
  if (ask === null) return null;
  // An answer to the ask before this one must not stand under the new one's words.
  return known?.key === key ? known.asked : { at: 'working', progress: null };
}
