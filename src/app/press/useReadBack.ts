import { useEffect, useRef, useState } from 'preact/hooks';
import type { Manifest, PrinterProfile, ReadBack } from '../../../print/index.ts';
import type { Problem } from '../../core/index.ts';
import { startReadingBack } from './readingBack.ts';

/** Reading a made file back: going on, stopped by the keeper, done, or not possible here. */
export type Check =
  | { readonly at: 'working'; readonly done: number }
  | { readonly at: 'stopped' }
  | { readonly at: 'read'; readonly read: ReadBack }
  | { readonly at: 'failed'; readonly problem: Problem };

export interface ReadBackModel {
  readonly check: Check;
  start(): void;
  stop(): void;
}

/** Reads the file back as soon as it is there; another file is another reading. */
export function useReadBack(pdf: Blob, manifest: Manifest, printer: PrinterProfile): ReadBackModel {
  const [check, setCheck] = useState<Check>({ at: 'working', done: 0 });
  const halt = useRef<() => void>(() => undefined);

  function start(): void {
    halt.current();
    setCheck({ at: 'working', done: 0 });
    halt.current = startReadingBack({ pdf, pieces: manifest.pieces, pages: manifest.pages, printer }, (answer) => {
      if (answer.kind === 'at') setCheck({ at: 'working', done: answer.done });
      else if (answer.kind === 'failed') setCheck({ at: 'failed', problem: answer.problem });
      else setCheck({ at: 'read', read: answer });
    });
  }
  function stop(): void {
    halt.current();
    setCheck({ at: 'stopped' });
  }
  useEffect(() => {
    start();
    return () => halt.current();
  }, [pdf]);
  return { check, start, stop };
}
