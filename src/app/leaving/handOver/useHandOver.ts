import { useEffect, useState } from 'preact/hooks';
import type { PrintedDocument } from '../../../../print/index.ts';
import { type AnimalRecord, handOver, type Problem } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import { releaseLater } from '../../model/files.ts';
import { problemOf } from '../../model/site.ts';
import type { HandOverOrder } from '../../workers/handOverMessages.ts';
import { startHandOver } from './startHandOver.ts';

/** A hand-over sheet from its words to its file. */
export type HandOverState =
  | { readonly at: 'working' }
  | ({ readonly at: 'ready'; readonly url: string; readonly pdf: Blob } & Omit<PrintedDocument, 'pdf'>)
  | { readonly at: 'failed'; readonly problem: Problem };

/** What of the sheet the keeper chooses. */
export interface HandOverChoice {
  readonly paper: HandOverOrder['paper'];
  readonly tellsSource: boolean;
}

/** The sheet of an animal as known today, made anew when the record or the choice changes. */
export function useHandOver(animal: AnimalRecord, { paper, tellsSource }: HandOverChoice): HandOverState {
  const { site, clock } = useApp();
  const [state, setState] = useState<HandOverState>(WORKING);
  const [today, revision] = [clock.today.value, site.revision.value];
  useEffect(() => {
    let isOld = false;
    let url: string | null = null;
    setState(WORKING);
    const make = async (): Promise<HandOverState> => {
      const facility = site.facility.value;
      const history = await site.history(animal.id);
      const sheet = handOver({ facility, animal, history, on: today, tellsSource });
      const answer = await startHandOver({ sheet, paper, host: facility.site.host });
      if (answer.kind === 'failed') return { at: 'failed', problem: answer.problem };
      const { manifest, missing } = answer;
      const pdf = new Blob([answer.pdf], { type: 'application/pdf' });
      url = URL.createObjectURL(pdf);
      return { at: 'ready', url, pdf, manifest, missing };
    };
    void make()
      .catch((error: unknown): HandOverState => ({ at: 'failed', problem: problemOf(error) }))
      .then((made) => (isOld ? undefined : setState(made)));
    return () => {
      isOld = true;
      if (url !== null) releaseLater(url);
    };
  }, [animal.id, paper, tellsSource, today, revision]);
  return state;
}

const WORKING: HandOverState = { at: 'working' };
