import { type Signal, useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useCallback, useEffect, useRef } from 'preact/hooks';
import type { CameraState } from '../../../scanner/web/index.ts';
import type { Problem } from '../../core/index.ts';
import { camera } from './camera.ts';

interface CameraUse {
  readonly state: Signal<CameraState>;
  readonly why: Signal<Problem | null>;
  start(): void;
}

/** Runs the camera while its box is on the screen and the page in sight; a hidden page lets the camera go. */
export function useCamera(box: RefObject<HTMLElement | null>, onText: (text: string) => unknown): CameraUse {
  const state = useSignal<CameraState>('asking');
  const why = useSignal<Problem | null>(null);
  const told = useRef(onText);
  told.current = onText;
  const start = useCallback(() => {
    if (box.current === null) return;
    state.value = 'asking';
    why.value = null;
    const onProblem = (problem: Problem) => {
      state.value = 'off';
      why.value = problem;
    };
    const onRead = (codes: readonly { readonly text: string }[]) => {
      for (const code of codes) told.current(code.text);
    };
    void camera.start(box.current, onRead, onProblem).then(() => {
      if (camera.state === 'live') state.value = 'live';
    });
  }, []);
  useEffect(() => {
    const look = () => (document.hidden ? void camera.stop() : start());
    look();
    document.addEventListener('visibilitychange', look);
    return () => {
      document.removeEventListener('visibilitychange', look);
      void camera.stop();
    };
  }, [start]);
  return { state, why, start };
}
