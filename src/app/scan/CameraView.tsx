import { useRef } from 'preact/hooks';
import { ProblemLine } from '../look/ProblemLine.tsx';
import type { ScanResult } from '../model/desk.ts';
import { CameraChooser } from './CameraChooser.tsx';
import { Impression } from './Impression.tsx';
import { useCamera } from './useCamera.ts';

/** The camera's picture in a thin frame, or at once why there is none and what else works. */
export function CameraView({ onText }: { readonly onText: (text: string) => Promise<ScanResult | null> }) {
  const box = useRef<HTMLDivElement>(null);
  const { state, why, start } = useCamera(box, onText);
  return (
    <section class={`camera camera-${state.value}`} aria-label="Camera" data-state={state.value}>
      <div class="camera-box" ref={box} />
      {state.value === 'live' && <div class="camera-frame" aria-hidden="true" />}
      {state.value === 'asking' && <p class="camera-words">Opening the camera … A typing scanner works already.</p>}
      {why.value !== null && (
        <div class="camera-words">
          <ProblemLine problem={why.value} />
          <button type="button" onClick={start}>
            Try the camera again
          </button>
        </div>
      )}
      {state.value === 'live' && <CameraChooser />}
      <Impression />
    </section>
  );
}
