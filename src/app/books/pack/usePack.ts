import { useEffect, useRef, useState } from 'preact/hooks';
import type { PrintedDocument } from '../../../../print/index.ts';
import type { PackChoice, Problem } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import { releaseLater } from '../../model/files.ts';
import { problemOf } from '../../model/site.ts';
import type { PackOrder } from '../../workers/packMessages.ts';
import { type PackEnd, type PackRun, startPack } from './startPack.ts';

/** A file that lies ready on this page. */
export interface ReadyFile {
  readonly name: string;
  readonly file: Blob;
  readonly url: string;
}

/** A pack from its order to its files. */
export type PackState =
  | { readonly at: 'idle' }
  | { readonly at: 'working'; readonly share: number | null }
  | ({
      readonly at: 'ready';
      readonly animals: number;
      readonly pdf: ReadyFile;
      readonly tables: readonly ReadyFile[];
    } & Omit<PrintedDocument, 'pdf'>)
  | { readonly at: 'failed'; readonly problem: Problem };

/** What is asked for. */
export interface PackWanted {
  readonly choice: PackChoice;
  readonly profile: string;
  readonly paper: PackOrder['paper'];
}

export interface PackModel {
  readonly state: PackState;
  make(wanted: PackWanted): void;
  /** Stops what is under way, or puts away what is ready. */
  stop(): void;
}

/** One pack at a time. */
export function usePack(): PackModel {
  const { site, clock } = useApp();
  const [state, setState] = useState<PackState>(IDLE);
  const turn = useRef(0);
  const run = useRef<PackRun | null>(null);

  function stop(): void {
    turn.current += 1;
    run.current?.stop();
    run.current = null;
    setState(IDLE);
  }

  async function begin(wanted: PackWanted): Promise<void> {
    stop();
    const own = turn.current;
    const isOld = (): boolean => own !== turn.current;
    const on = clock.today.value;
    setState({ at: 'working', share: null });
    try {
      const events = await site.everything(() => undefined);
      if (isOld()) return;
      run.current = startPack({ ...wanted, events, on }, (share) => isOld() || setState({ at: 'working', share }));
      const end = await run.current.end;
      if (!isOld()) setState(stateOf(end, on));
    } catch (error) {
      if (!isOld()) setState({ at: 'failed', problem: problemOf(error) });
    }
  }

  useEffect(() => stop, []);
  useEffect(() => {
    if (state.at !== 'ready') return;
    return () => {
      for (const { url } of [state.pdf, ...state.tables]) releaseLater(url);
    };
  }, [state]);
  return { state, stop, make: (wanted) => void begin(wanted) };
}

const IDLE: PackState = { at: 'idle' };

function stateOf(end: PackEnd, on: string): PackState {
  if (end.kind === 'failed') return { at: 'failed', problem: end.problem };
  const { animals, manifest, missing, pdf, files } = end;
  return {
    at: 'ready',
    animals,
    manifest,
    missing,
    pdf: ready(`pack-${on}.pdf`, new Blob([pdf], { type: 'application/pdf' })),
    tables: files.map(({ name, text }) => ready(name, new Blob([text], { type: 'text/csv;charset=utf-8' }))),
  };
}

function ready(name: string, file: Blob): ReadyFile {
  return { name, file, url: URL.createObjectURL(file) };
}
