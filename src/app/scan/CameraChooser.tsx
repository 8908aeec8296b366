import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CameraChoice } from '../../../scanner/web/index.ts';
import { camera } from './camera.ts';

/** Another camera, where there is one: some phones pick a lens that cannot focus on a card. */
export function CameraChooser() {
  const choices = useSignal<readonly CameraChoice[]>([]);
  useEffect(() => {
    camera.cameras().then(
      (found) => {
        choices.value = found;
      },
      // A browser that does not name its cameras has opened one all the same.
      () => undefined,
    );
  }, []);
  if (choices.value.length < 2) return null;
  return (
    <label class="camera-chooser">
      <span>Not sharp? Camera</span>
      <select onChange={(event) => void camera.choose(event.currentTarget.value)}>
        {choices.value.map((choice) => (
          <option key={choice.id} value={choice.id}>
            {choice.label}
          </option>
        ))}
      </select>
    </label>
  );
}
